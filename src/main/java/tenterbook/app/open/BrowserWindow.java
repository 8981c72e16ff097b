package tenterbook.app.open;

import java.io.IOException;
import java.util.List;
import java.util.Locale;

/** A window of the browser that the person at this computer has chosen as the usual one. */
public final class BrowserWindow {
    private BrowserWindow() {}

    /**
     * Opens a page of this program.
     *
     * @param address one that this program made itself, never one from a file or a request
     * @return false where there is no program that opens browsers
     */
    public static boolean show(String address) {
        try {
            new ProcessBuilder(command(System.getProperty("os.name"), address))
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start();
            return true;
        } catch (IOException e) {
            return false;
        }
    }

    static List<String> command(String system, String address) {
        String name = system.toLowerCase(Locale.ROOT);
        if (name.startsWith("windows")) {
            return List.of("rundll32", "url.dll,FileProtocolHandler", address);
        }
        return List.of(name.startsWith("mac") ? "open" : "xdg-open", address);
    }
}

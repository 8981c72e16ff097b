package tenterbook.exchange;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;

/** The explanation in a bag or a backup, for a reader without this program. */
public final class ReadMe {
    private ReadMe() {}

    static String text(Map<String, String> values) throws IOException {
        return text("read-me-first.txt", values);
    }

    /** The explanation in a folder of encrypted backups. */
    public static String ofEncryptedBackups() throws IOException {
        return text("encrypted-read-me-first.txt", Map.of());
    }

    private static String text(String name, Map<String, String> values) throws IOException {
        try (InputStream in = ReadMe.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("The program is incomplete: a text is not in it");
            }
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            for (Map.Entry<String, String> value : values.entrySet()) {
                text = text.replace("{{" + value.getKey() + "}}", value.getValue());
            }
            return text;
        }
    }
}

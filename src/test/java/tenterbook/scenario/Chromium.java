package tenterbook.scenario;

import static org.assertj.core.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.abort;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Playwright;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The Chromium of the machine, driven by Playwright: one for all browser tests of a process, started by the first of them
 * and closed when the process ends. A test opens a context of its own, which shares nothing with another.
 */
final class Chromium {
    /** The first draws no windows and tabs around its pages, which takes a good third off the time of a browser test. */
    private static final List<String> NAMES =
            List.of("chromium-headless-shell", "chromium", "chromium-browser", "google-chrome", "chrome");

    private static Browser browser;

    private Chromium() {}

    /** The browser; without one the tests are skipped, except where CI=true, which must have it. */
    static synchronized Browser browser() {
        if (browser == null) {
            browser = start();
        }
        return browser;
    }

    private static Browser start() {
        Optional<Path> found = find();
        if (found.isEmpty()) {
            String line = "No Chromium on this machine (looked on PATH for " + NAMES + "): browser tests need one.";
            if ("true".equals(System.getenv("CI"))) {
                fail(line + " CI=true does not let them be skipped.");
            }
            abort(line + " They are skipped.");
        }
        Playwright playwright = Playwright.create(
                new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
        Runtime.getRuntime().addShutdownHook(new Thread(playwright::close));
        return playwright
                .chromium()
                .launch(new BrowserType.LaunchOptions()
                        .setExecutablePath(found.get())
                        .setHeadless(true)
                        .setArgs(List.of(
                                "--no-sandbox",
                                "--disable-gpu",
                                "--disable-quic",
                                "--disable-background-networking",
                                "--disable-component-update",
                                "--disable-sync")));
    }

    private static Optional<Path> find() {
        return Stream.of(System.getenv().getOrDefault("PATH", "").split(":"))
                .flatMap(folder -> NAMES.stream().map(name -> Path.of(folder, name)))
                .filter(Files::isExecutable)
                .findFirst();
    }
}

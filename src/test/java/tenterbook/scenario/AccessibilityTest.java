package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.deque.html.axecore.results.AxeResults;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Kinds;
import tenterbook.piece.PhotoRole;

/** Every page by axe-core's rules (WCAG 2.2 A and AA, and its best practices), on a desk and on a phone, light and dark. */
class AccessibilityTest {
    @TempDir
    static Path folder;

    private static Chromium chromium;
    private static SampleStudio studio;

    @BeforeAll
    static void open() throws IOException {
        chromium = Chromium.start();
        studio = SampleStudio.open(folder, Clock.systemUTC());
        Client client = new Client(studio.wiring().port());
        client.postFiles(
                "/photos",
                List.of(
                        new Client.Part("files", "V24-003 and V24-004.jpg", Pictures.jpeg(1)),
                        new Client.Part("files", "V24-005.jpg", Pictures.jpeg(2)),
                        new Client.Part("files", "unnamed.jpg", Pictures.jpeg(3))));
    }

    @AfterAll
    static void close() {
        if (studio != null) {
            studio.close();
        }
        if (chromium != null) {
            chromium.close();
        }
    }

    private static List<String> pages() {
        String photo = studio.wiring()
                .archive()
                .piece("V24-004")
                .orElseThrow()
                .photos()
                .get(0)
                .photo()
                .hex();
        String clamping = studio.wiring()
                .archive()
                .ledger()
                .latest(Kinds.CLAMPING, 1)
                .get(0)
                .record()
                .id()
                .value();
        return List.of(
                "/",
                "/?colour=48,-5,-24&within=12",
                "/?q=nothingoftheword",
                "/pieces/new",
                "/pieces/V24-004",
                "/pieces/V24-002",
                "/pieces/V24-004/edit",
                "/pieces/V24-004/photos/" + photo,
                "/pieces/V24-004/photos/" + photo + "?illuminant=D50",
                "/history/piece/V24-003",
                "/colours",
                "/dips?cloth=SH&target=36,-3,-26&from=V24-001",
                "/pieces/V24-004/photos/" + photo + "?propose=1",
                "/pieces/V24-002/change",
                "/pieces/V24-002/change?before=" + front(2) + "&after=" + front(2),
                "/pieces/V24-002/change?before=" + front(1) + "&after=" + front(2),
                "/clampings/C24-002/layers",
                "/clampings/C24-001/layers",
                "/photos/folder",
                "/photos/waiting",
                "/compare?first=V24-002+state+1&second=V24-002",
                "/boards",
                "/boards/B02",
                "/boards/B02/edit",
                "/clampings",
                "/clampings/" + clamping,
                "/clampings/" + clamping + "/edit",
                "/clampings/new?from=" + clamping,
                "/materials",
                "/cloths/SH",
                "/cloths/SH/edit",
                "/lots/new",
                "/people",
                "/people/new",
                "/print?pieces=V24-003",
                "/print",
                "/studio",
                "/not-a-page");
    }

    /** The front of V24-002 in its first state or its second. */
    private static String front(int state) {
        return studio.wiring().archive().piece("V24-002").orElseThrow().photos().stream()
                .filter(photo -> photo.role() == PhotoRole.FRONT && photo.state() == state)
                .findFirst()
                .orElseThrow()
                .photo()
                .hex();
    }

    private static List<String> violations(int width, ColorScheme scheme) {
        List<String> found = new ArrayList<>();
        try (BrowserContext context = chromium.browser()
                .newContext(new Browser.NewContextOptions()
                        .setViewportSize(width, 800)
                        .setColorScheme(scheme))) {
            Page page = context.newPage();
            for (String path : pages()) {
                page.navigate(studio.at(path));
                AxeResults results = new AxeBuilder(page).analyze();
                results.getViolations()
                        .forEach(violation -> violation
                                .getNodes()
                                .forEach(node -> found.add("%s: %s: %s %s"
                                        .formatted(
                                                path, violation.getId(), node.getTarget(), node.getFailureSummary()))));
                int wide = (Integer) page.evaluate("document.documentElement.scrollWidth");
                if (wide > width) {
                    found.add("%s is %d pixels wide on a screen of %d".formatted(path, wide, width));
                }
            }
        }
        return found;
    }

    @Test
    void noPageBreaksARuleOnADeskInLight() {
        assertThat(violations(1280, ColorScheme.LIGHT)).isEmpty();
    }

    @Test
    void noPageBreaksARuleOnAPhoneInDark() {
        assertThat(violations(360, ColorScheme.DARK)).isEmpty();
    }

    @Test
    void aPageWithAFaultIsFound() {
        try (BrowserContext context = chromium.browser().newContext()) {
            Page page = context.newPage();
            page.setContent("<html lang=en><title>x</title><main><h1>x</h1><img src='x.png'></main></html>");
            assertThat(new AxeBuilder(page).analyze().getViolations()).isNotEmpty();
        }
    }
}

package tenterbook.scenario;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.BoundingBox;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Kinds;
import tenterbook.colour.palette.Region;
import tenterbook.piece.PhotoRole;

/** Outlining the cloth on a photograph by hand, in a real browser: drag, press; or the keyboard alone. */
class OutliningTest {
    /** A grey cloth on grey stone, whose edge the program does not find. */
    private static final String PIECE = "V24-012";

    @TempDir
    static Path folder;

    private static SampleStudio studio;

    @BeforeAll
    static void open() {
        Chromium.browser();
        studio = SampleStudio.open(folder, Clock.systemUTC());
    }

    @AfterAll
    static void close() {
        if (studio != null) {
            studio.close();
        }
    }

    private static List<Region.Corner> drawn(String digest) {
        return studio.wiring()
                .archive()
                .ledger()
                .find(Kinds.PHOTO, digest)
                .orElseThrow()
                .record()
                .cloth();
    }

    @Test
    void anEdgeThatWasNotFoundIsDrawnInTwoGesturesOrTyped() {
        String digest = studio.wiring().archive().piece(PIECE).orElseThrow().photos().stream()
                .filter(shot -> shot.role() == PhotoRole.FRONT)
                .findFirst()
                .orElseThrow()
                .photo()
                .hex();
        List<String> complaints = new ArrayList<>();
        try (BrowserContext context = Chromium.browser().newContext()) {
            Page page = context.newPage();
            page.setDefaultTimeout(30_000);
            page.onPageError(complaints::add);
            page.navigate(studio.at("/pieces/" + PIECE + "/photos/" + digest));
            Locator cloth = page.locator("#cloth");
            assertThat(cloth).containsText("The edge of the cloth was not found");
            assertThat(page.locator(".cloth-edge")).hasCount(0);

            Locator picture = page.locator("[data-marker]");
            picture.scrollIntoViewIfNeeded();
            BoundingBox box = picture.boundingBox();
            page.mouse().move(box.x + box.width * 0.2, box.y + box.height * 0.15);
            page.mouse().down();
            page.mouse().move(box.x + box.width * 0.7, box.y + box.height * 0.6);
            page.mouse().up();
            button(page, "Use this outline").click();

            assertThat(cloth).containsText("A person outlined the cloth");
            assertThat(page.locator(".cloth-edge").last()).isVisible();
            assertThat(drawn(digest)).hasSize(4);
            assertThat(drawn(digest).get(2).x()).isCloseTo(0.7, within(0.01));
            assertThat(drawn(digest).get(2).y()).isCloseTo(0.6, within(0.01));

            page.getByLabel("Outline of the cloth").fill("10,10 60,10 60,90");
            page.keyboard().press("Enter");
            assertThat(page.locator("body")).containsText("Saved. From now on");
            assertThat(drawn(digest)).hasSize(3);

            button(page, "Use the program’s outline").focus();
            page.keyboard().press("Enter");
            assertThat(cloth).containsText("The edge of the cloth was not found");
            assertThat(drawn(digest)).isEmpty();
        }
        assertThat(complaints).as("what the browser complained of").isEmpty();
    }

    private static Locator button(Page page, String name) {
        return page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName(name));
    }
}

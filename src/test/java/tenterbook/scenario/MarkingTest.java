package tenterbook.scenario;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.BoundingBox;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Kinds;
import tenterbook.piece.condition.Examination;
import tenterbook.piece.condition.PhotoMark;

/** Marking photographs with a finger on a telephone, in a real browser. */
class MarkingTest {
    @TempDir
    static Path folder;

    private static SampleStudio studio;
    private final List<String> complaints = new ArrayList<>();
    private BrowserContext context;
    private Page page;

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

    @BeforeEach
    void telephone() {
        context = Chromium.browser()
                .newContext(new Browser.NewContextOptions()
                        .setViewportSize(390, 844)
                        .setHasTouch(true)
                        .setColorScheme(ColorScheme.DARK));
        page = context.newPage();
        page.setDefaultTimeout(20_000);
        page.onPageError(complaints::add);
        page.onConsoleMessage(message -> {
            if (message.type().equals("error")) {
                complaints.add(message.text());
            }
        });
    }

    @AfterEach
    void noComplaints() {
        context.close();
        assertThat(complaints).as("what the browser complained of").isEmpty();
    }

    private static List<Examination> examinations(String piece) {
        return studio.wiring()
                .archive()
                .examinationsOf(
                        studio.wiring().archive().piece(piece).orElseThrow().number());
    }

    private void tap(Locator frame, double across, double down) {
        frame.scrollIntoViewIfNeeded();
        BoundingBox box = frame.boundingBox();
        frame.tap(new Locator.TapOptions().setPosition(box.width * across, box.height * down));
    }

    private void save() {
        page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Save this examination"))
                .last()
                .click();
        page.waitForURL("**/examinations/**");
    }

    @Test
    void tappingAPhotographPutsMarkOneAndItIsSaved() {
        page.navigate(studio.at("/pieces/V24-004/condition/new"));
        Locator frame = page.locator("[data-plate]").first();
        tap(frame, 0.42, 0.31);

        assertThat(frame.locator("svg .mark text")).hasText("1");
        Locator row = page.locator("[data-observation]");
        assertThat(row).hasCount(1);
        Locator what = row.getByLabel("What it is", new Locator.GetByLabelOptions().setExact(true));
        assertThat(what).isFocused();
        what.fill("stain");
        tap(frame, 0.8, 0.6);
        assertThat(page.locator("[data-observation]")).hasCount(2);
        page.locator("[data-observation]")
                .last()
                .getByLabel("What it is", new Locator.GetByLabelOptions().setExact(true))
                .fill("loose thread");
        save();

        Examination kept = examinations("V24-004").get(0);
        assertThat(kept.observations())
                .extracting(seen -> seen.number() + " " + seen.what())
                .containsExactly("1 stain", "2 loose thread");
        PhotoMark mark = kept.observations().get(0).marks().get(0);
        assertThat(mark.photo()).isEqualTo(kept.photos().get(0).photo());
        assertThat(mark.area()).isFalse();
        assertThat(mark.left()).isCloseTo(0.42, within(0.01));
        assertThat(mark.top()).isCloseTo(0.31, within(0.01));
        // The page shows it at the same place of the picture.
        BoundingBox picture = page.locator("[data-plate] img").first().boundingBox();
        BoundingBox spot = page.locator("[data-plate] .mark-spot").first().boundingBox();
        assertThat((spot.x + spot.width / 2 - picture.x) / picture.width).isCloseTo(0.42, within(0.015));
        assertThat((spot.y + spot.height / 2 - picture.y) / picture.height).isCloseTo(0.31, within(0.015));
    }

    @Test
    void aMarkIsMovedAndAnAreaDrawnAndBothWaitInTheDraft() {
        page.navigate(studio.at("/pieces/V24-005/condition/new"));
        Locator frame = page.locator("[data-plate]").first();
        tap(frame, 0.2, 0.2);
        page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Put mark 1 on a photograph"))
                .click();
        tap(frame, 0.5, 0.25);
        assertThat(page.locator("[data-observation]")).hasCount(1);
        page.getByLabel("an area: drag").check();
        frame.scrollIntoViewIfNeeded();
        BoundingBox box = frame.boundingBox();
        page.mouse().move(box.x + box.width * 0.3, box.y + box.height * 0.4);
        page.mouse().down();
        page.mouse().move(box.x + box.width * 0.6, box.y + box.height * 0.6);
        page.mouse().up();
        assertThat(page.locator("[data-observation]")).hasCount(2);
        page.waitForCondition(() -> studio.wiring()
                .archive()
                .ledger()
                .drafts()
                .find("examination/@V24-005")
                .filter(draft -> draft.body().contains("observations.1.marks.0.at=30"))
                .isPresent());

        page.reload();
        assertThat(frame.locator("svg .mark text")).hasText(new String[] {"1", "2"});
        assertThat(frame.locator("svg .mark-area")).hasCount(2);
        for (Locator what : page.getByLabel("What it is", new Page.GetByLabelOptions().setExact(true))
                .all()) {
            what.fill("crease");
        }
        save();

        Examination kept = examinations("V24-005").get(0);
        assertThat(kept.observations().get(0).marks())
                .singleElement()
                .satisfies(mark -> assertThat(mark.left()).isCloseTo(0.5, within(0.01)));
        PhotoMark area = kept.observations().get(1).marks().get(0);
        assertThat(area.right() - area.left()).isCloseTo(0.3, within(0.02));
        assertThat(area.bottom() - area.top()).isCloseTo(0.2, within(0.02));
    }

    @Test
    void aFreshPhotographIsTakenInAndCanBeMarkedAtOnce() throws Exception {
        page.navigate(studio.at("/pieces/V24-006/condition/new"));
        int before = page.locator("[data-plate]").count();
        page.locator("#f-files")
                .setInputFiles(new com.microsoft.playwright.options.FilePayload(
                        "raking.jpg", "image/jpeg", Pictures.jpeg(77)));
        assertThat(page.locator("[data-plate]")).hasCount(before + 1);
        tap(page.locator("[data-plate]").last(), 0.5, 0.5);
        page.getByLabel("What it is", new Page.GetByLabelOptions().setExact(true))
                .fill("hole");
        save();

        Examination kept = examinations("V24-006").get(0);
        assertThat(kept.photos()).hasSize(before + 1);
        assertThat(kept.observations().get(0).marks().get(0).photo())
                .isEqualTo(kept.photos().get(before).photo());
        assertThat(studio.wiring().archive().ledger().count(Kinds.EXAMINATION)).isPositive();
    }
}

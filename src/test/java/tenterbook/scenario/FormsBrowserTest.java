package tenterbook.scenario;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.FilePayload;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tenterbook.archive.Kinds;

/** The forms of the studio's work in a browser: cards, rows, things made in place, the board's outline, the keyboard. */
class FormsBrowserTest {
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

    @BeforeEach
    void nothingIsLeftUnsaved() {
        var drafts = studio.wiring().archive().ledger().drafts();
        drafts.all().forEach(draft -> drafts.discard(draft.name()));
    }

    private static BrowserContext context(int width, int height, boolean scripts) {
        return Chromium.browser()
                .newContext(new Browser.NewContextOptions()
                        .setViewportSize(width, height)
                        .setJavaScriptEnabled(scripts));
    }

    private static void press(Page page, String button) {
        page.getByRole(
                        AriaRole.BUTTON,
                        new Page.GetByRoleOptions().setName(button).setExact(true))
                .first()
                .click();
    }

    private static void unfold(Page page, String card) {
        page.locator("#" + card + " > summary").click();
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void aStepIsAddedByItsKindWithOnlyItsOwnFieldsAndABoltIsMadeInPlace(boolean scripts) {
        String cloth = scripts ? "Hemp tabby" : "Nettle tabby";
        String code = scripts ? "HT" : "NT";
        try (BrowserContext context = context(1440, 900, scripts)) {
            Page page = context.newPage();
            page.navigate(studio.at("/clampings/new"));
            page.fill("#f-title", "Tide");
            press(page, "dips");
            assertThat(page.locator("#f-steps-0-dips-count")).isVisible();
            assertThat(page.locator("#f-steps-0-holes")).hasCount(0);
            assertThat(page.locator("#f-title")).hasValue("Tide");
            page.fill("#f-steps-0-dips-count", "6");

            if (!page.locator("#f-cuts-0-cloth").isVisible()) {
                unfold(page, "card-cuts");
            }
            page.locator("#card-cuts .make summary").first().click();
            page.fill("#f-make-cuts-0-name", cloth);
            page.locator("#card-cuts .make button").first().click();
            assertThat(page.locator("#f-cuts-0-cloth")).hasValue(code);
            assertThat(page.locator("#f-steps-0-dips-count")).hasValue("6");
            assertThat(page.locator("#f-title")).hasValue("Tide");
            assertThat(studio.wiring().archive().ledger().find(Kinds.CLOTH, code))
                    .hasValueSatisfying(made -> assertThat(made.record().name()).isEqualTo(cloth));

            String number = page.inputValue("#f-id");
            page.locator(".form-end .primary").click();
            assertThat(page.locator("h1")).containsText(number);
            page.navigate(studio.at("/clampings/" + number + "/edit"));
            assertThat(page.locator("#card-steps-0-line")).containsText("6 dips");
            assertThat(page.locator("#f-steps-0-dips-count")).isHidden();
        }
    }

    @Test
    void rowsAddNoPageToGoBackThrough() {
        try (BrowserContext context = context(1440, 900, true)) {
            Page page = context.newPage();
            page.navigate(studio.at("/clampings"));
            page.navigate(studio.at("/clampings/new"));
            press(page, "resting");
            assertThat(page.locator("#f-steps-0-duration")).isVisible();
            press(page, "washing");
            assertThat(page.locator("#f-steps-1-duration")).isVisible();
            page.goBack();
            assertThat(page.url()).endsWith("/clampings");
        }
    }

    @Test
    void theNextStateOfABoardStartsAsACopyAndAClickOnItsOutlineOpensAHoleThere() {
        try (BrowserContext context = context(1440, 900, true)) {
            Page page = context.newPage();
            page.navigate(studio.at("/boards/B02/edit"));
            int states = page.locator(".card[id^=card-states]").count();
            int holes = page.locator("#card-states-" + (states - 1) + " .hole").count();
            page.locator("button[value^='copy states']").click();
            String fresh = "#card-states-" + states;
            assertThat(page.locator(fresh + " .hole")).hasCount(holes);
            page.locator(fresh + " .pick-holes svg").click();
            assertThat(page.locator(fresh + " .hole")).hasCount(holes + 1);
            double across = Double.parseDouble(
                    page.inputValue("#f-states-" + states + "-holes-" + last(page, states) + "-acrossMm"));
            double wide = ((Number) page.evaluate("document.querySelector('" + fresh + " svg').viewBox.baseVal.width"))
                    .doubleValue();
            assertThat(across).isBetween(wide / 2 - 3, wide / 2 + 3);
            page.goBack();
        }
    }

    private static int last(Page page, int state) {
        return ((Number) page.evaluate("Math.max(...[...document.querySelectorAll('[name^=\"states." + state
                        + ".holes.\"]')].map(each => Number(each.name.split('.')[3])))"))
                .intValue();
    }

    @Test
    void aCopyForOtherClothOffersItsAmountsScaledAndTakesThem() throws IOException {
        String body =
                "{\"id\": \"C24-901\", \"cuts\": [{\"cloth\": \"SH\", \"weighed\": \"85 g\"}], \"steps\": [{\"kind\": \"bath\","
                        + " \"charges\": [{\"lot\": \"%s\", \"wof\": \"40\", \"weighed\": \"34 g\"}]}]}";
        String lot = studio.wiring()
                .archive()
                .ledger()
                .all(Kinds.LOT)
                .get(0)
                .record()
                .id()
                .value();
        Answer made = new Client(studio.wiring().port()).postJson("/api/clampings", body.formatted(lot));
        assertThat(made.status()).as(made.text()).isEqualTo(201);
        try (BrowserContext context = context(1440, 900, true)) {
            Page page = context.newPage();
            page.navigate(studio.at("/clampings/new?from=C24-901"));
            unfold(page, "card-cuts");
            page.fill("#f-cuts-0-weighed", "172 g");
            assertThat(page.locator(".scaled li")).containsText("68.8\u00a0g, copied as 34 g");
            press(page, "Use these amounts");
            assertThat(page.locator("#f-steps-0-charges-0-weighed")).hasValue("68.8\u00a0g");
            assertThat(page.locator(".scaled")).hasCount(0);
        }
    }

    @Test
    void aPieceIsRecordedFromAnyClampingWithAPhotographThatIsStillOnItsWay() throws IOException {
        try (BrowserContext context = context(360, 740, true)) {
            Page page = context.newPage();
            page.navigate(studio.at("/clampings/C24-001"));
            page.getByText("Record a piece from this clamping").click();
            assertThat(page.locator("#f-earlier")).hasValue("C24-001");
            page.fill("#f-title", "Again");
            List<Route> held = new ArrayList<>();
            page.route("**/photos", held::add);
            page.setInputFiles("#f-files", new FilePayload("again.jpg", "image/jpeg", Pictures.jpeg(77)));
            Locator record = page.locator(".form-end .primary");
            record.click();
            assertThat(record).hasText("Waiting for the photographs …");
            press(page, "Stop waiting");
            assertThat(record).not().hasText("Waiting for the photographs …");
            record.click();
            assertThat(record).hasText("Waiting for the photographs …");
            held.get(0).resume();
            assertThat(page.locator(".dyeing").first()).containsText("C24-001");
            assertThat(page.locator(".gallery img")).hasCount(1);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"/clampings/C24-001/edit", "/pieces/V24-004/edit"})
    void theBarCoversNoFieldThatHasTheFocus(String path) {
        for (int[] size : List.of(new int[] {360, 740}, new int[] {1440, 900})) {
            try (BrowserContext context = context(size[0], size[1], true)) {
                Page page = context.newPage();
                page.navigate(studio.at(path));
                assertThat(((Number) page.evaluate("document.querySelector('.form-end').offsetHeight")).intValue())
                        .isLessThan(80);
                for (int i = 0; i < 40; i++) {
                    page.keyboard().press("Tab");
                    Object under = page.evaluate(
                            "new Promise(done => requestAnimationFrame(() => requestAnimationFrame(() => done((() => { const e = document.activeElement; const bar = document.querySelector('.form-end');"
                                    + " if (!e || bar.contains(e) || e === document.body) return '';"
                                    + " const a = e.getBoundingClientRect(), b = bar.getBoundingClientRect();"
                                    + " return a.bottom > b.top + 1 && a.top < b.bottom - 1 && a.left < b.right && a.right > b.left"
                                    + " ? (e.name || e.outerHTML.slice(0, 80)) : ''; })()))))");
                    assertThat(under)
                            .as(path + " at " + size[0] + " × " + size[1])
                            .isEqualTo("");
                }
            }
        }
    }

    @Test
    void piecesForPrintAreChosenFromPictures() {
        try (BrowserContext context = context(360, 740, true)) {
            Page page = context.newPage();
            page.navigate(studio.at("/print"));
            page.fill("#find", "linen");
            page.keyboard().press("Enter");
            page.waitForURL("**find=linen**");
            String number = page.locator(".picker input[name=pieces]").first().getAttribute("value");
            page.locator(".picker input[name=pieces]").first().check();
            press(page, "Use the ticked pieces");
            assertThat(page.locator("#pieces")).hasValue(number);
            assertThat(page.locator(".picker input[value=" + number + "]")).isChecked();
        }
    }

    @Test
    void recordSearchAndPrintAreWalkedWithTheKeyboard() {
        try (BrowserContext context = context(1440, 900, true)) {
            Page page = context.newPage();
            page.navigate(studio.at("/"));
            reach(page, "a.record-link");
            page.keyboard().press("Enter");
            page.waitForURL("**/pieces/new");
            reach(page, "#f-title");
            page.keyboard().type("By keyboard");
            reach(page, ".form-end .primary");
            page.keyboard().press("Enter");
            assertThat(page.locator("h1")).containsText("By keyboard");
            String number = page.url().substring(page.url().lastIndexOf('/') + 1);

            page.navigate(studio.at("/"));
            reach(page, "#q");
            page.keyboard().type("By keyboard");
            page.keyboard().press("Enter");
            page.waitForURL("**q=By**");
            reach(page, "a.hang[href='/pieces/" + number + "']");
            page.keyboard().press("Enter");
            page.waitForURL("**/pieces/" + number);

            page.navigate(studio.at("/print"));
            reach(page, "#find");
            page.keyboard().type("By keyboard");
            page.keyboard().press("Enter");
            page.waitForURL("**find=By**");
            reach(page, ".picker input[value=" + number + "]");
            page.keyboard().press("Space");
            reach(page, ".picker > .primary");
            page.keyboard().press("Enter");
            page.waitForURL("**pieces=" + number + "**");
            assertThat(page.locator("#pieces")).hasValue(number);
        }
    }

    /** Presses Tab until the element has the focus. */
    private static void reach(Page page, String selector) {
        for (int i = 0; i < 120; i++) {
            page.keyboard().press("Tab");
            if ((Boolean) page.evaluate("selector => document.activeElement.matches(selector)", selector)) {
                return;
            }
        }
        org.assertj.core.api.Assertions.fail(selector + " was not reached with Tab on " + page.url());
    }

    @Test
    void onAPhoneTheHeadIsOneLine() {
        try (BrowserContext context = context(360, 740, true)) {
            Page page = context.newPage();
            for (String path :
                    List.of("/", "/pieces/new", "/clampings/C24-001/edit", "/print", "/pieces/V24-004/edit")) {
                page.navigate(studio.at(path));
                assertThat(page.locator(".masthead").boundingBox().height)
                        .as(path)
                        .isLessThan(70);
            }
        }
    }
}

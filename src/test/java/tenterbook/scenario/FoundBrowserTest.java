package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.nio.file.Path;
import java.time.Clock;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;

/** Views, ticked pieces and saved searches in a browser, with scripts and without, on a phone and on a desk. */
class FoundBrowserTest {
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

    private static BrowserContext context(int width, boolean scripts) {
        return Chromium.browser()
                .newContext(new Browser.NewContextOptions()
                        .setViewportSize(width, 900)
                        .setJavaScriptEnabled(scripts));
    }

    private static void press(Page page, String button) {
        page.getByRole(
                        AriaRole.BUTTON,
                        new Page.GetByRoleOptions().setName(button).setExact(true))
                .first()
                .click();
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void aSearchIsSavedListedCountedAndRemoved(boolean scripts) {
        String name = scripts ? "cotton lawn" : "cotton lawn, plainly";
        try (BrowserContext context = context(1440, scripts)) {
            Page page = context.newPage();
            page.navigate(studio.at("/?view=table"));
            page.fill("#q", "cotton");
            press(page, "Find");
            page.waitForURL("**q=cotton**");
            assertThat(page.url()).contains("view=table");
            // The address changes before the results do.
            page.waitForCondition(() -> page.locator(".found-table tbody tr").count() < 10);
            int before = page.locator(".found-table tbody tr").count();
            // What waits for a pause in typing asks once more; the new results keep a name that was begun.
            page.fill("#search-name", name);
            page.waitForTimeout(700);
            assertThat(page.inputValue("#search-name")).isEqualTo(name);
            press(page, "Save");

            Locator saved = page.locator(".saved-searches li")
                    .filter(new Locator.FilterOptions()
                            .setHas(page.getByText(name, new Page.GetByTextOptions().setExact(true))));
            assertThat(saved.locator(".count").innerText()).isEqualTo(Integer.toString(before));

            Archive archive = studio.wiring().archive();
            String number = scripts ? "V24-016" : "V24-017";
            var piece = archive.ledger().find(Kinds.PIECE, number).orElseThrow();
            archive.ledger().write("maker", act -> {
                act.withdraw(Kinds.PIECE, number, piece.version(), "lost");
                return 0;
            });
            page.navigate(studio.at("/"));
            assertThat(saved.locator(".count").innerText()).isEqualTo(Integer.toString(before - 1));

            page.navigate(studio.at("/searches"));
            page.getByRole(
                            AriaRole.BUTTON,
                            new Page.GetByRoleOptions()
                                    .setName("Remove " + name)
                                    .setExact(true))
                    .click();
            assertThat(page.locator(".saved-list").innerText()).doesNotContain(name);
            assertThat(page.locator("main").innerText()).contains("Bring it back");
            page.navigate(studio.at("/"));
            assertThat(saved.count()).isZero();
        }
    }

    @ParameterizedTest
    @CsvSource({"360, table", "1440, table", "360, plot", "1440, plot", "360, list", "1440, lines"})
    void aViewFitsItsScreenAndItsPiecesCanBeTickedAndCompared(int width, String view) {
        try (BrowserContext context = context(width, true)) {
            Page page = context.newPage();
            page.navigate(studio.at("/?board=B01&view=" + view));
            assertThat((Integer) page.evaluate("document.documentElement.scrollWidth"))
                    .isLessThanOrEqualTo(width);
            page.locator("input[name=pieces]").nth(0).check();
            page.locator("input[name=pieces]").nth(2).check();
            press(page, "Compare these");
            page.waitForURL("**/compare/pieces?pieces=V24-*");
            assertThat(page.locator(".compared thead th a").count()).isEqualTo(2);
            assertThat((Integer) page.evaluate("document.documentElement.scrollWidth"))
                    .isLessThanOrEqualTo(width);
        }
    }

    @Test
    void columnsAndAxesAreChosenWithoutScripts() {
        try (BrowserContext context = context(1440, false)) {
            Page page = context.newPage();
            page.navigate(studio.at("/?fibre=linen&view=table"));
            page.getByText("Columns", new Page.GetByTextOptions().setExact(true))
                    .first()
                    .click();
            page.getByLabel("mordants").check();
            press(page, "Show these columns");
            assertThat(page.locator(".found-table thead").innerText()).containsIgnoringCase("mordants");
            assertThat(page.url()).contains("fibre=linen");

            page.getByRole(
                            AriaRole.LINK,
                            new Page.GetByRoleOptions().setName("plot").setExact(true))
                    .click();
            page.selectOption("#plot-x", "length");
            press(page, "Draw");
            assertThat(page.locator(".found-plot svg").getAttribute("aria-label"))
                    .contains("length, cm");
            assertThat(page.url()).contains("fibre=linen");
        }
    }

    @Test
    void onAPhoneARowIsACardThatNamesEachValue() {
        try (BrowserContext context = context(360, true)) {
            Page page = context.newPage();
            page.navigate(studio.at("/?view=table&size=3"));
            Object label =
                    page.evaluate("getComputedStyle(document.querySelector('.found-table td'), '::before').content");
            assertThat(label.toString()).contains("title");
            assertThat(page.locator(".found-table tbody tr").nth(0).boundingBox().width)
                    .isLessThanOrEqualTo(360);
        }
    }
}

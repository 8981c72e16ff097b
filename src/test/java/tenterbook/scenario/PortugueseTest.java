package tenterbook.scenario;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

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
import tenterbook.words.Language;

/** The archive read in Portuguese, in a real browser. */
class PortugueseTest {
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

    @Test
    void theLanguageIsSwitchedAtTheFootOfAPageAndStaysOnThatPageAndOnTheNext() {
        try (BrowserContext context =
                Chromium.browser().newContext(new Browser.NewContextOptions().setLocale("en-GB"))) {
            Page page = context.newPage();
            page.setDefaultTimeout(120_000);
            page.navigate(studio.at("/pieces/V24-003"));
            assertThat(page.locator("html")).hasAttribute("lang", "en-GB");
            button(page, Language.PORTUGUESE.ownName()).click();

            assertThat(page).hasURL(studio.at("/pieces/V24-003"));
            assertThat(page.locator("html")).hasAttribute("lang", "pt-PT");
            assertThat(link(page, "Imprimir etiqueta pendente")).isVisible();
            assertThat(button(page, Language.PORTUGUESE.ownName())).hasAttribute("aria-pressed", "true");

            page.navigate(studio.at("/pieces/new"));
            page.locator("#f-title").fill("Figueira");
            page.locator("#f-length").fill("1,500 m");
            button(page, "Registar esta peça").click();
            assertThat(page.locator("#f-length-problem, .problem").first()).containsText("não foi compreendido");
            assertThat(page.locator("#f-title")).hasValue("Figueira");
            page.locator("#f-length").fill("cerca de 1,5 m");
            button(page, "Registar esta peça").click();
            assertThat(page.locator("main")).containsText("cerca de 1,5 m");

            page.navigate(studio.at("/pieces/V99-999"));
            assertThat(page.locator("main")).containsText("Não existe a peça “V99-999” neste arquivo.");

            button(page, Language.ENGLISH.ownName()).click();
            assertThat(page.locator("html")).hasAttribute("lang", "en-GB");
        }
    }

    private static Locator button(Page page, String name) {
        return page.getByRole(
                AriaRole.BUTTON, new Page.GetByRoleOptions().setName(name).setExact(true));
    }

    private static Locator link(Page page, String name) {
        return page.getByRole(
                AriaRole.LINK, new Page.GetByRoleOptions().setName(name).setExact(true));
    }
}

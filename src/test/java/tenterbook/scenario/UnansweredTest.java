package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** In a browser: nothing typed or pressed is lost to a program that is down or to a page that loads anew. */
class UnansweredTest extends Scenario {
    private BrowserContext context;
    private Page page;

    @BeforeEach
    void open() {
        context = Chromium.browser().newContext();
        page = context.newPage();
    }

    @AfterEach
    void leave() {
        context.close();
    }

    private String at(String path) {
        return wiring.address() + path;
    }

    @Test
    void savingWhileTheProgramIsDownKeepsTheFormAndTheTyping() throws Exception {
        saved("/pieces", "number", "V24-001", "title", "Maré");
        page.navigate(at("/pieces/V24-001/edit"));
        page.fill("[name=title]", "Maré alta");
        context.setOffline(true);
        page.click(".form-end button.primary");
        page.waitForSelector("[data-unanswered]");
        assertThat(page.textContent("[data-unanswered]"))
                .contains("Not saved: the program does not answer", "kept in this browser", "press Save");
        assertThat(page.inputValue("[name=title]")).isEqualTo("Maré alta");
        assertThat(page.evaluate("Object.entries(localStorage).flat().join(' ')")
                        .toString())
                .contains("piece/V24-001", "title=Mar%C3%A9+alta");

        context.setOffline(false);
        page.click(".form-end button.primary");
        page.waitForURL(at("/pieces/V24-001"));
        assertThat(wiring.archive().piece("V24-001").orElseThrow().title()).isEqualTo("Maré alta");
        assertThat(page.evaluate("localStorage.length")).isEqualTo(0);
    }

    @Test
    void typingKeptInTheBrowserIsOfferedWhenTheProgramIsBack() throws Exception {
        saved("/pieces", "number", "V24-001", "title", "Maré");
        page.navigate(at("/pieces/V24-001/edit"));
        page.fill("[name=title]", "Maré alta");
        context.setOffline(true);
        page.click(".form-end button.primary");
        page.waitForSelector("[data-unanswered]");
        context.setOffline(false);
        page.reload();
        page.waitForSelector(".draft-note");
        assertThat(page.inputValue("[name=title]")).isEqualTo("Maré alta");
    }

    @Test
    void whatIsTypedAfterTheLabelWasShownIsShownBeforeItIsPrinted() throws Exception {
        studio();
        clamping();
        for (String number : List.of("V24-001", "V24-002")) {
            saved("/pieces", "number", number, "title", "Maré", "made.0.clamping", "C24-001", "length", "120 cm");
        }
        page.navigate(at("/print?pieces=V24-001&kind=hang_tag&market=eu"));
        page.fill("#pieces", "V24-002");
        Page shown = context.waitForPage(() -> page.click(".issue button"));
        shown.waitForSelector(".preview img[alt*='V24-002']");
        assertThat(wiring.archive().ledger().count(tenterbook.archive.Kinds.ISSUED_PAPER))
                .isZero();
        Page paper = context.waitForPage(() -> shown.click(".issue button"));
        paper.waitForTimeout(1500);
        assertThat(wiring.archive().ledger().all(tenterbook.archive.Kinds.ISSUED_PAPER))
                .singleElement()
                .satisfies(saved -> assertThat(
                                saved.record().pieces().get(0).piece().value())
                        .isEqualTo("V24-002"));
    }
}

package tenterbook.scenario;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.FilePayload;
import java.io.IOException;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.time.Clock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.app.Wiring;

/** A phone of 390 pixels and a computer, side by side. */
class PhoneBrowserTest {
    @TempDir
    Path folder;

    @Test
    void aPhoneIsPairedAndItsPhotographLandsOnThePieceThatIsOpenOnTheComputer()
            throws IOException, GeneralSecurityException {
        Browser browser = Chromium.browser();
        try (Wiring wiring = Wiring.serve(folder.resolve("studio"), 0, Clock.systemUTC());
                BrowserContext computer = browser.newContext();
                BrowserContext pocket = browser.newContext(new Browser.NewContextOptions()
                        .setViewportSize(390, 844)
                        .setIgnoreHTTPSErrors(true))) {
            new Client(wiring.port()).post("/pieces", "number", "V24-013", "title", "Maré");
            wiring.network().openEncrypted(0);
            Page desk = computer.newPage();
            desk.navigate(wiring.address() + "/studio/devices");
            desk.locator("form[action='/studio/devices/code'] button").click();
            String code = desk.locator(".digits").textContent();

            assertThat(new AxeBuilder(desk).analyze().getViolations()).isEmpty();

            Page phone = pocket.newPage();
            phone.navigate("https://127.0.0.1:" + wiring.network().port() + "/pair?code=" + code.replace(" ", ""));
            assertThat(desk.locator("#code")).containsText("A device has opened the page");
            phone.fill("#name", "Tomé");
            phone.locator("main button").click();
            assertThat(phone.locator("h1")).hasText("Phone");
            assertThat(phone.locator(".nothing")).containsText("No piece is open");
            assertThat(desk.locator("#code")).containsText("The device is paired");

            desk.navigate(wiring.address() + "/pieces/V24-013");
            assertThat(desk.locator(".gallery img")).hasCount(0);
            phone.reload();
            assertThat(phone.locator("h2").first()).hasText("Photograph V24-013 Maré (open on the computer)");
            assertThat(new AxeBuilder(phone).analyze().getViolations()).isEmpty();
            phone.setInputFiles("#camera", new FilePayload("IMG_1.jpg", "image/jpeg", Pictures.jpeg(5)));
            phone.locator("form[action='/phone/photographs'] button").click();
            assertThat(phone.locator(".said")).hasText("One photograph was added to V24-013.");
            assertThat(desk.locator(".gallery img")).hasCount(1);
            assertThat((Integer) phone.evaluate("document.documentElement.scrollWidth"))
                    .isLessThanOrEqualTo(390);
            assertThat(wiring.archive()
                            .ledger()
                            .find(tenterbook.archive.Kinds.PIECE, "V24-013")
                            .orElseThrow()
                            .author())
                    .isEqualTo("Tomé");
        }
    }
}

package tenterbook.scenario;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.FilePayload;
import java.awt.Color;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tenterbook.measure.Digest;

/** Searching by a place in a photograph, by a picture and by a pair, in a real browser on a telephone and on a desk. */
class ColourSearchBrowserTest {
    private static SampleStudio studio;
    private static Digest photo;
    private final List<String> complaints = new ArrayList<>();
    private BrowserContext context;
    private Page page;

    @BeforeAll
    static void open() {
        Chromium.browser();
        studio = SampleStudio.readOnly();
        photo = studio.wiring()
                .archive()
                .piece("V24-003")
                .orElseThrow()
                .photos()
                .get(0)
                .photo();
    }

    private void screen(int width) {
        context = Chromium.browser().newContext(new Browser.NewContextOptions().setViewportSize(width, 900));
        page = context.newPage();
        page.setDefaultTimeout(60_000);
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

    private void sound(String name) throws IOException {
        Path folder = Files.createDirectories(Path.of("target", "looks"));
        int width = page.viewportSize().width;
        page.screenshot(new Page.ScreenshotOptions()
                .setPath(folder.resolve(name + "-" + width + ".png"))
                .setFullPage(true));
        assertThat((Integer) page.evaluate("document.documentElement.scrollWidth"))
                .as(name)
                .isLessThanOrEqualTo(width);
        assertThat(new AxeBuilder(page).setLegacyMode(true).analyze().getViolations())
                .as(name)
                .isEmpty();
    }

    @ParameterizedTest
    @ValueSource(ints = {360, 1440})
    void aPlaceIsTouchedOnThePhotographAndItsColourSearched(int width) throws IOException {
        screen(width);
        page.navigate(studio.at("/pieces/V24-003/photos/" + photo));
        page.locator("[data-way][value=place]").check();
        Locator marker = page.locator("[data-marker]");
        marker.scrollIntoViewIfNeeded();
        var box = marker.boundingBox();
        page.mouse().click(box.x + box.width / 2, box.y + box.height / 2);
        Locator found = page.locator("#place-found a.button");
        assertThat(found).isVisible();
        assertThat(page.locator("[data-place-form] [name=across]").inputValue()).startsWith("50.");
        sound("photo-place");
        found.click();
        assertThat(page.locator("#results")).containsText("V24-003");
    }

    @ParameterizedTest
    @ValueSource(ints = {360, 1440})
    void thePictureIsAButtonOnThePageOfPlaces(int width) throws IOException {
        screen(width);
        page.navigate(studio.at("/pieces/V24-003/photos/" + photo + "/place"));
        page.locator("input[type=image]").click();
        assertThat(page.locator(".place-colour a")).isVisible();
        sound("place");
    }

    @ParameterizedTest
    @ValueSource(ints = {360, 1440})
    void aPictureThatIsChosenIsSearchedByAtOnce(int width) throws IOException {
        screen(width);
        page.navigate(studio.at("/by-picture"));
        sound("by-picture-form");
        page.locator("#picture")
                .setInputFiles(new FilePayload(
                        "mine.jpg", "image/jpeg", Pictures.hung(new Color(0xe0d6c6), new Color(0x4d6c8c))));
        assertThat(page.locator(".by-picture")).isVisible();
        assertThat(page.locator("#results")).isVisible();
        sound("by-picture");
    }

    @ParameterizedTest
    @ValueSource(ints = {360, 1440})
    void resultsShowWhereTheColourIs(int width) throws IOException {
        screen(width);
        page.navigate(studio.at("/?ground=48,-5,-24&resist=80,-4,2&within=15"));
        Locator outline = page.locator(".where").first();
        outline.scrollIntoViewIfNeeded();
        page.waitForFunction(
                "() => [...document.querySelectorAll('.where')].slice(0, 3).every(each => each.complete && each.naturalWidth > 0)");
        var over = outline.boundingBox();
        var under = page.locator(".hang img").first().boundingBox();
        assertThat(over.width).isEqualTo(under.width);
        assertThat(over.height).isEqualTo(under.height);
        assertThat(over.y).isEqualTo(under.y);
        page.waitForTimeout(1500);
        sound("results");
    }

    @Test
    void thePlaneIsSound() throws IOException {
        screen(1440);
        page.navigate(studio.at("/colours"));
        sound("colours");
    }
}

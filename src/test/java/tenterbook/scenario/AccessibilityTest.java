package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.Thorough;
import tenterbook.archive.Kinds;
import tenterbook.archive.record.LabelSheet;
import tenterbook.labelling.LabelKind;
import tenterbook.labelling.PrintSettings;
import tenterbook.labelling.issue.LabelIssuer;
import tenterbook.labelling.rule.Market;
import tenterbook.ledger.file.Progress;
import tenterbook.material.Cloth;
import tenterbook.piece.PhotoRole;
import tenterbook.piece.fair.Fair;
import tenterbook.web.server.FirstStartPage;
import tenterbook.words.Message;

/** Every page by axe-core's rules (WCAG 2.2 A and AA, and its best practices), on a desk and on a phone, light and dark. */
class AccessibilityTest {
    @TempDir
    static Path folder;

    private static final Pattern VIEW = Pattern.compile("(view|kind)=[a-z-]+");

    /** Each page is looked at in one language, in turn, and every second one on a phone in dark; in the thorough run all in both. */
    private static final int EACH = Thorough.times(2, 1);

    private static SampleStudio studio;
    private static String second;

    @BeforeAll
    static void open() throws IOException {
        Chromium.browser();
        studio = SampleStudio.open(folder, Clock.systemUTC());
        Client client = new Client(studio.wiring().port());
        client.postFiles(
                "/photos",
                List.of(
                        new Client.Part("files", "V24-003 and V24-004.jpg", Pictures.jpeg(1)),
                        new Client.Part("files", "V24-005.jpg", Pictures.jpeg(2)),
                        new Client.Part("files", "unnamed.jpg", Pictures.jpeg(3))));
        String first = examine(
                "{\"when\": \"2024-03-14\", \"photos\": [{\"photo\": \"%1$s\", \"view\": \"front\"}], \"observations\": ["
                        + "{\"what\": \"stain\", \"zone\": \"front\", \"extent\": \"8 mm\", \"marks\": [{\"photo\": \"%1$s\", \"left\": 0.4, \"top\": 0.3}]}, {\"what\": \"dust\"}]}");
        second = examine("{\"when\": \"2024-09-27\", \"earlier\": \"" + first
                + "\", \"photos\": [{\"photo\": \"%1$s\"}], \"observations\": ["
                + "{\"number\": 1, \"what\": \"stain\", \"standing\": \"still there\", \"extent\": \"12 mm\", \"marks\": [{\"photo\": \"%1$s\", \"left\": 0.4, \"top\": 0.3, \"right\": 0.5, \"bottom\": 0.4}]},"
                + "{\"number\": 2, \"what\": \"dust\", \"standing\": \"gone\"}, {\"what\": \"snag\"}]}");
        printed();
        studio.wiring().archive().ledger().savedSearches().save("linen", "fibre=linen&view=table", false);
        studio.wiring().archive().ledger().savedSearches().save("not to be read", "dips=many", false);
    }

    private static String photo() {
        return studio.wiring()
                .archive()
                .piece("V24-004")
                .orElseThrow()
                .photos()
                .get(0)
                .photo()
                .hex();
    }

    /** Records an examination of V24-004 and gives its name. */
    private static String examine(String json) throws IOException {
        Answer answer = new Client(studio.wiring().port())
                .postJson("/api/pieces/V24-004/examinations", json.formatted(photo()));
        assertThat(answer.status()).as(answer.text()).isEqualTo(201);
        return answer.json().get("id").textValue();
    }

    /** A kept sheet, and a tag that is out of date. */
    private static void printed() {
        var archive = studio.wiring().archive();
        var sheet = new LabelSheet("Market tags", 210, 297, 3, 3, 55, 90, 10, 8, 5, 2, 0, 0, 0, 0);
        archive.ledger().write("maker", act -> act.create(Kinds.LABEL_SHEET, sheet));
        Fair fair = Kinds.FAIR
                .codec()
                .fromText("{\"id\": \"F24-001\", \"kind\": \"fair\", \"name\": \"Tides\", \"soldIn\": \"Portugal\","
                        + " \"pieces\": [{\"piece\": \"V24-002\"}, {\"piece\": \"V24-012\", \"box\": \"1\"}],"
                        + " \"tasks\": [{\"text\": \"Rent the stall\", \"done\": true}]}");
        archive.ledger().write("maker", act -> act.create(Kinds.FAIR, fair));
        var piece = archive.ledger().find(Kinds.PIECE, "V24-003").orElseThrow();
        try {
            LabelIssuer.print(
                    archive,
                    List.of(piece),
                    PrintSettings.of(LabelKind.HANG_TAG, Market.EU),
                    Clock.systemUTC(),
                    "maker",
                    Progress.UNWATCHED);
        } catch (IOException e) {
            throw new UncheckedIOException("printing a tag of the sample studio", e);
        }
        var cloth = archive.ledger().find(Kinds.CLOTH, "SH").orElseThrow();
        var elsewhere = new Cloth(
                cloth.record().id(),
                "silk twill",
                cloth.record().content(),
                "",
                null,
                null,
                "",
                "",
                "",
                "Italy",
                null,
                null,
                null,
                "");
        archive.ledger().write("maker", act -> act.save(Kinds.CLOTH, elsewhere, cloth.version(), ""));
    }

    @AfterAll
    static void close() {
        if (studio != null) {
            studio.close();
        }
    }

    private static List<String> pages() {
        String photo = photo();
        String clamping = studio.wiring()
                .archive()
                .ledger()
                .latest(Kinds.CLAMPING, 1)
                .get(0)
                .record()
                .id()
                .value();
        String paper = studio.wiring()
                .archive()
                .ledger()
                .latest(Kinds.ISSUED_PAPER, 1)
                .get(0)
                .record()
                .id();
        return List.of(
                "/",
                "/?colour=48,-5,-24&within=12",
                "/?ground=48,-5,-24&resist=85,-2,4",
                "/by-picture",
                "/pieces/V24-004/photos/" + photo + "/place?across=50&down=50",
                "/?q=nothingoftheword",
                "/?view=list",
                "/?view=table&column=title&column=dips&column=holder&column=tag&column=overall&sort=dips",
                "/?view=plot",
                "/?view=plot&x=finished&y=price",
                "/searches",
                "/today",
                "/agreements",
                "/agreements/A24-001",
                "/agreements/A24-001/edit",
                "/fairs/F24-001",
                "/fairs/F24-001/edit",
                "/fairs/F24-001/papers",
                "/compare/pieces?pieces=V24-001,V24-002,V24-003",
                "/compare/pieces",
                "/pieces/new",
                "/pieces/V24-004",
                "/pieces/V24-002",
                "/pieces/V24-004/edit",
                "/acts?pieces=V24-004,V24-005",
                "/acts/consign?pieces=V24-004,V24-005",
                "/acts/photograph?pieces=V24-004",
                "/acts/correct?piece=V24-004",
                "/acts/correct?piece=V24-004&event=0",
                "/acts/sell/done?pieces=V24-004",
                "/acts/receipt?piece=V24-001&event=1",
                "/pieces/V24-004/photos/" + photo,
                "/pieces/V24-004/condition",
                "/pieces/V24-005/condition",
                "/pieces/V24-004/condition/new",
                "/examinations/" + second,
                "/examinations/" + second + "/edit",
                "/examinations/" + second + "/report",
                "/history/examination/" + second,
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
                "/documents?pieces=V24-013,V24-004&kind=loan-schedule&party=Museu+do+Sarelho",
                "/documents?pieces=V24-003&kind=provenance-certificate",
                "/documents?pieces=V24-003&kind=exhibition-text&text=%D7%A7",
                "/verify?code=0123456789abcdef",
                "/verify?code=odd",
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
                "/print?pieces=V24-003&kind=hang-tag&sheet=a4&arrangement=selvedge&bleed=2",
                "/print?tag=us:lacking",
                "/print",
                "/print/sheets",
                "/print/rules",
                "/print/sheets?name=Market+tags",
                "/print/issued/" + paper,
                "/pieces/V24-003",
                "/?tag=eu:lacking",
                "/studio",
                "/studio/devices",
                "/words",
                "/?q=lime%20sem%20nada%20hanging",
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

    /** Not among axe's usual rules: the name of a control holds the words that it shows (WCAG 2.5.3), so that it can be spoken. */
    private static final Map<String, Object> ALSO = Map.of("label-content-name-mismatch", Map.of("enabled", true));

    /** The rules whose outcome depends on colours, sizes or what a narrow screen hides; the others read the document alone. */
    private static final List<String> SEEN = List.of(
            "color-contrast", "target-size", "link-in-text-block", "scrollable-region-focusable", "meta-viewport");

    private static List<String> violations(Page page, String path, int width, ColorScheme scheme, String rules) {
        page.setViewportSize(width, 800);
        page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(scheme));
        List<String> found = new ArrayList<>();
        for (String violation : broken(page, rules)) {
            found.add("%s, %d wide, %s: %s".formatted(path, width, scheme, violation));
        }
        int wide = (Integer) page.evaluate("document.documentElement.scrollWidth");
        if (wide > width) {
            found.add("%s is %d pixels wide on a screen of %d".formatted(path, wide, width));
        }
        return found;
    }

    /**
     * Runs axe, which the page was given once: the builder of its library would read its half megabyte in before each run. Style
     * sheets are not fetched for it again: of all rules only the lock of a screen's orientation reads them, and no style sheet has one.
     */
    @SuppressWarnings("unchecked")
    private static List<String> broken(Page page, String rules) {
        return (List<String>) page.evaluate(
                "options => axe.run(document, options).then(found => found.violations.flatMap(one => one.nodes.map("
                        + "node => one.id + ': ' + node.target + ' ' + node.failureSummary)))",
                rules.isEmpty()
                        ? Map.of("resultTypes", List.of("violations"), "preload", false, "rules", ALSO)
                        : Map.of(
                                "resultTypes",
                                List.of("violations"),
                                "preload",
                                false,
                                "runOnly",
                                Map.of("type", "rule", "values", List.of(rules.split(",")))));
    }

    private static String axe() {
        try (var script = AxeBuilder.class.getResourceAsStream("/axe.min.js")) {
            return new String(script.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException("reading axe from its library", e);
        }
    }

    /** The same for pages of one template, of which one is enough on a phone in dark: its colours are those of the others. */
    private static String look(String path) {
        String page = path.replaceAll("\\?.*", "").replaceAll("[0-9a-f]{64}|[A-Z]\\d\\d-\\d{3}", "N");
        Matcher view = VIEW.matcher(path);
        return view.find() ? page + view.group() : page;
    }

    /** A reader of one language; what its browser complains of is noted. */
    private static BrowserContext context(String language, List<String> found) {
        BrowserContext context = Chromium.browser().newContext(new Browser.NewContextOptions().setLocale(language));
        context.onConsoleMessage(message -> {
            if (message.type().equals("error") && !message.text().contains("status of 4")) {
                found.add(message.text());
            }
        });
        context.onWebError(error -> found.add(error.error()));
        return context;
    }

    @Test
    void noPageBreaksARuleOnADeskInLightNorOnAPhoneInDark() {
        List<String> found = new ArrayList<>();
        try (FirstStartPage firstStart = FirstStartPage.show(
                        folder.resolve("nowhere"),
                        Message.of("first-start.gone", "folder", "nowhere"),
                        (typed, beginning) -> "http://127.0.0.1",
                        () -> {});
                BrowserContext english = context("en-GB", found);
                BrowserContext portuguese = context("pt-PT", found)) {
            List<Page> readers = List.of(english.newPage(), portuguese.newPage());
            String axe = axe();
            Set<String> looks = new HashSet<>();
            List<String> paths = new ArrayList<>(pages());
            paths.add(firstStart.address());
            for (int i = 0; i < paths.size(); i++) {
                String path = paths.get(i);
                boolean dark = looks.add(look(path)) && looks.size() % EACH == 0;
                for (Page page : EACH == 1 ? readers : readers.subList(i % 2, i % 2 + 1)) {
                    page.navigate(path.startsWith("http") ? path : studio.at(path));
                    page.evaluate(axe);
                    found.addAll(violations(page, path, 1280, ColorScheme.LIGHT, ""));
                    if (dark) {
                        found.addAll(violations(page, path, 360, ColorScheme.DARK, String.join(",", SEEN)));
                    }
                }
            }
        }
        assertThat(found).isEmpty();
    }

    @Test
    void aPageWithAFaultIsFound() {
        try (BrowserContext context = Chromium.browser().newContext()) {
            Page page = context.newPage();
            page.setContent("<html lang=en><title>x</title><main><h1>x</h1><img src='x.png'>"
                    + "<p style='color: #aaa; background: white'>pale</p></main></html>");
            page.evaluate(axe());
            assertThat(broken(page, "")).anyMatch(fault -> fault.startsWith("image-alt"));
            assertThat(broken(page, String.join(",", SEEN)))
                    .singleElement()
                    .asString()
                    .startsWith("color-contrast");
        }
    }
}

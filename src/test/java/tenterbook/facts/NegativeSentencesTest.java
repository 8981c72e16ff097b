package tenterbook.facts;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import tenterbook.words.Message;

/**
 * Every sentence that a document or label can print and that denies a record is one of {@link Denial}, or is listed here with the
 * reason why nothing can contradict it.
 */
class NegativeSentencesTest {
    /** Rooms whose words stand on paper. */
    private static final List<String> ROOMS = List.of("documents", "labelling", "facts");

    private static final Pattern KEY = Pattern.compile("\"([a-z]+(?:-[a-z]+)*\\.[a-z0-9.-]+)\"");

    /** Denies that something is on record or was there; 'do not iron' and 'no pins' deny nothing. */
    private static final Pattern DENIES = Pattern.compile(
            "(?i)\\bnot? (?:[\\p{L}-]+ ){0,3}(?:recorded|known|measured|compared|judged|noted|examined|entered|shown)"
                    + "|\\bnot in\\b|unknown|missing:|nobody|neither|\\bnone\\b|nothing of"
                    + "|\\bno (?:[\\p{L}-]+ ){0,4}(?:test|measurement|report|terms|fault|examination|value|piece)");

    /** Asked of the maker, or shown on a page where something is refused; never printed. */
    private static final Set<String> NOT_PRINTED = Set.of(
            "care.ask.",
            "care.practice.",
            "care.missing",
            "care.gap.",
            "care.symbols.",
            "care.misfit",
            "cost.share.",
            "cost.hour-share.",
            "dips.",
            "facts.lot-",
            "document.refused.",
            "document.schedule.lacks-",
            "document.schedule.no-agreement",
            "document.schedule.other-kind",
            "document.certificate.lacks",
            "document.price.lacks",
            "document.customs.lacks.",
            "document.checklist.lacks-",
            "document.condition.other-piece",
            "label.no-care",
            "label.standing.",
            "label.offer.",
            "label.evidence.",
            "label.refused.",
            "rules.");

    /** Chosen in one expression with the very field that it denies, so that nothing else can contradict it. */
    private static final Set<String> IN_PLACE_OF_ITS_FIELD = Set.of(
            "document.title-not-recorded",
            "document.size-not-recorded",
            "document.date-not-recorded",
            "document.no-measurement",
            "document.bench.layers-not-known",
            "document.bench.lot-not-recorded",
            "document.condition.no-photograph",
            "document.condition.no-day",
            "document.condition.no-earlier",
            "document.condition.not-measured",
            "document.condition.not-compared",
            "document.condition.taken-not-recorded",
            "document.condition.not-recorded",
            "document.condition.no-earlier-report",
            "document.exhibition.cloth",
            "document.object.no-measurement",
            "document.object.kind-not-recorded",
            "document.photograph-missing",
            "document.schedule.no-terms",
            "document.schedule.unknown",
            "document.goods.weight",
            "document.price.no-tax-statement",
            "document.insurance.unknown",
            "facts.status-from",
            "facts.status-differs",
            "facts.holder-returned",
            "facts.holder-differs",
            "facts.on-no-day",
            "facts.gone",
            "label.made.board-without-state",
            "label.made.further-lot",
            "label.title-not-recorded",
            "label.cloth-not-named",
            "label.size-not-recorded",
            "label.date-not-recorded",
            "label.length-alone",
            "label.width-alone",
            "label.light.not-in-table",
            "care.no-test",
            "care.no-judged-test",
            "care.test",
            "care.wash-untested",
            "measure.not-recorded");

    /** Says what the paper shows and what not, of no piece in particular. */
    private static final Set<String> ABOUT_THE_PAPER =
            Set.of("document.certificate.ask-for-a-copy", "document.condition.standard", "document.insurance.values");

    @Test
    void eachSentenceThatDeniesARecordIsListed() throws IOException {
        assertThat(denying())
                .containsExactlyInAnyOrderElementsOf(
                        Stream.concat(IN_PLACE_OF_ITS_FIELD.stream(), ABOUT_THE_PAPER.stream())
                                .toList());
    }

    @Test
    void eachDenialInTheBundleNamesWhatContradictsIt() {
        Set<String> given = new TreeSet<>();
        Denial.all().forEach(denial -> {
            given.add(denial.toString());
            assertThat(denial.contradictions()).as(denial.toString()).isNotEmpty();
        });
        assertThat(Message.keys("denial.").stream()
                        .map(key -> "denial “" + Message.of(key) + "”")
                        .filter(sentence -> !given.contains(sentence)))
                .isEmpty();
    }

    private static List<String> denying() throws IOException {
        Set<String> keys = new TreeSet<>();
        for (String room : ROOMS) {
            try (Stream<Path> files = Files.walk(Path.of("src/main/java/tenterbook", room))) {
                for (Path file :
                        files.filter(each -> each.toString().endsWith(".java")).toList()) {
                    Matcher found = KEY.matcher(Files.readString(file));
                    while (found.find()) {
                        keys.add(found.group(1));
                    }
                }
            }
        }
        List<String> denying = new ArrayList<>();
        for (String key : keys) {
            if (!key.startsWith("denial.")
                    && NOT_PRINTED.stream().noneMatch(key::startsWith)
                    && DENIES.matcher(inItsBundle(key)).find()) {
                denying.add(key);
            }
        }
        return denying;
    }

    /** With every variant. */
    private static String inItsBundle(String key) throws IOException {
        int dot = key.indexOf('.');
        Path bundle = Path.of("src/main/resources/words", key.substring(0, dot) + ".properties");
        if (!Files.exists(bundle)) {
            return "";
        }
        String name = key.substring(dot + 1) + "=";
        return Files.readAllLines(bundle).stream()
                .filter(line -> line.startsWith(name))
                .map(line -> line.substring(name.length()))
                .findFirst()
                .orElse("");
    }
}

package tenterbook.facts;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.lifecycle.AfterContainer;
import net.jqwik.api.lifecycle.BeforeContainer;
import tenterbook.documents.DocumentKind;
import tenterbook.documents.DocumentSettings;
import tenterbook.documents.kind.Composition;
import tenterbook.documents.kind.ConditionReport;
import tenterbook.labelling.LabelBlocked;
import tenterbook.labelling.LabelKind;
import tenterbook.labelling.LabelText;
import tenterbook.labelling.PrintSettings;
import tenterbook.labelling.Samples;
import tenterbook.labelling.rule.Market;
import tenterbook.ledger.Saved;
import tenterbook.piece.Piece;

/**
 * No paper denies what is recorded. The sentences and what contradicts each are written down here once more, from what a reader
 * takes them to mean, so that a mistake in the program's own list is found too.
 */
class DenialTest {
    private static final LocalDate TODAY = LocalDate.of(2025, 1, 10);

    /** What a reader takes for contradicted by any of these traits. */
    private static final Map<String, Set<Trait>> DENIED = Map.ofEntries(
            Map.entry("no fault (and no examination )?is recorded", EnumSet.of(Trait.FAULT, Trait.SEEN, Trait.DAMAGED)),
            Map.entry(
                    "no examination is recorded|never examined",
                    EnumSet.of(Trait.NOTED_EXAMINATION, Trait.REPORT, Trait.EARLIER_REPORT)),
            Map.entry("no report was made", EnumSet.of(Trait.REPORT, Trait.EARLIER_REPORT)),
            Map.entry("missing: distinguishing features", EnumSet.of(Trait.FAULT, Trait.SEEN)),
            Map.entry("nothing (was )?noted", EnumSet.of(Trait.SEEN, Trait.GONE, Trait.SUMMARY)),
            Map.entry("nothing is listed by itself", EnumSet.of(Trait.SEEN, Trait.GONE)),
            Map.entry("nothing was seen|no observation is listed", EnumSet.of(Trait.SEEN, Trait.GONE)),
            Map.entry("not judged", EnumSet.of(Trait.JUDGED)),
            Map.entry("missing: who examined it", EnumSet.of(Trait.EXAMINER)),
            Map.entry("no earlier examination", EnumSet.of(Trait.EARLIER_REPORT)),
            Map.entry("how it was made is not recorded|nothing to repeat yet|not told yet", EnumSet.of(Trait.CLAMPING)),
            Map.entry("no step is recorded", EnumSet.of(Trait.STEPS)),
            Map.entry("dips not recorded", EnumSet.of(Trait.DIPS_TYPED, Trait.DIPS_TIMED)),
            Map.entry("dyes not recorded", EnumSet.of(Trait.STEPS, Trait.DYE)),
            Map.entry("the dyes are not recorded", EnumSet.of(Trait.DYE)),
            Map.entry("boards that are not recorded", EnumSet.of(Trait.BOARD)),
            Map.entry("cloth not recorded", EnumSet.of(Trait.CLOTH)),
            Map.entry("fibres not recorded", EnumSet.of(Trait.FIBRES)),
            Map.entry("colours not recorded", EnumSet.of(Trait.NAMED_COLOUR)),
            Map.entry("no photograph is recorded", EnumSet.of(Trait.PHOTO_OF_STATE_ONE, Trait.PHOTO_OF_TODAY)),
            Map.entry(
                    "missing: a photograph of the piece|no photograph shows the piece",
                    EnumSet.of(Trait.PHOTO_OF_TODAY)),
            Map.entry(
                    "nothing is recorded after its making",
                    EnumSet.of(
                            Trait.NOTED_EXAMINATION,
                            Trait.REPORT,
                            Trait.EARLIER_REPORT,
                            Trait.WASHED,
                            Trait.DAMAGED,
                            Trait.SOLD,
                            Trait.LENT,
                            Trait.STATUS_SOLD,
                            Trait.HOLDER,
                            Trait.DYED_AGAIN)),
            Map.entry("nothing agreed is recorded", EnumSet.of(Trait.PRICE_OF_LOAN, Trait.VALUE_AGREED)),
            Map.entry("no other piece of the same clamping", EnumSet.of(Trait.KIN)));

    private static Path folder;
    private static RandomRecords records;

    @BeforeContainer
    static void begin() throws IOException {
        folder = Files.createTempDirectory("denials");
        records = new RandomRecords(folder);
    }

    @AfterContainer
    static void end() throws IOException {
        records.close();
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }

    @Property(tries = 60)
    void noPaperDeniesWhatIsRecorded(@ForAll Set<Trait> traits) {
        Saved<Piece> piece = records.piece(traits);
        List<String> texts = texts(piece, PieceReader.of(records.archive, piece.record()));

        assertThat(contradictions(texts, Trait.whole(traits))).isEmpty();
        assertThat(againstItself(texts, PieceReader.of(records.archive, piece.record())))
                .isEmpty();
    }

    /** The fault this room was made against: faults read from one record, examinations of another kind not looked for. */
    @Example
    void aReadingThatLooksAtOneRecordAloneIsFound() {
        Set<Trait> traits = Set.of(Trait.SEEN, Trait.REPORT, Trait.EARLIER_REPORT);
        Saved<Piece> piece = records.piece(traits);
        PieceFacts half = Samples.alone(records.archive.studio(), piece.record());

        assertThat(contradictions(facts(half), traits))
                .anyMatch(text -> text.contains("no examination is recorded") && text.contains("REPORT"));
        assertThat(contradictions(List.of("No fault is recorded. Examined 2024-12-06: in place."), traits))
                .anyMatch(text -> text.contains("SEEN"));
    }

    @Example
    void everySentenceOfTheListIsGivenWhereNothingContradictsIt() {
        Saved<Piece> bare = records.piece(Set.of());
        PieceFacts facts = PieceReader.of(records.archive, bare.record());
        String all = String.join("\n", texts(bare, facts)).toLowerCase(Locale.ROOT);

        assertThat(all)
                .contains(
                        "no fault and no examination is recorded",
                        "nothing is recorded after its making",
                        "how it was made is not recorded",
                        "cloth not recorded",
                        "no photograph is recorded",
                        "missing: distinguishing features");
        for (Denial<?> denial : Denial.all()) {
            if (denial.about() == PieceFacts.class) {
                assertThat(given(denial, facts)).as(denial.toString()).isTrue();
            }
        }
    }

    @SuppressWarnings("unchecked")
    private static boolean given(Denial<?> denial, PieceFacts facts) {
        return ((Denial<PieceFacts>) denial).of(facts).isPresent();
    }

    /** Each sentence stands in its bundle and nowhere else, and only {@link Denial} asks for it. */
    @Example
    void noPageAndNoPaperWritesSuchASentenceItself() throws IOException {
        List<String> elsewhere = new ArrayList<>();
        for (String root : List.of("src/main/java/tenterbook", "web/pages", "src/main/resources/words")) {
            try (Stream<Path> files = Files.walk(Path.of(root))) {
                for (Path file : files.filter(each -> each.toString().matches(".*\\.(java|jte|properties)"))
                        .filter(each -> !each.endsWith("denial.properties"))
                        .toList()) {
                    String text = Files.readString(file).replaceAll("(?s)/\\*.*?\\*/|//[^\n]*", "");
                    Denial.all().stream()
                            .filter(denial -> denial.longEnoughToTell() && denial.isIn(text))
                            .forEach(denial -> elsewhere.add(file + ": " + denial));
                    if (text.contains("\"denial.") && !file.endsWith("Denial.java")) {
                        elsewhere.add(file + ": a key of denial.properties");
                    }
                }
            }
        }
        assertThat(elsewhere).isEmpty();
    }

    // ---- composing and comparing

    private static List<String> texts(Saved<Piece> piece, PieceFacts facts) {
        List<String> texts = new ArrayList<>(facts(facts));
        for (DocumentKind kind : DocumentKind.OF_PIECES) {
            DocumentSettings request =
                    new DocumentSettings(kind, null, null, new DocumentSettings.Disclosure(true, true, false), "");
            Composition.of(records.archive, List.of(piece), request, TODAY)
                    .forEach(draft -> texts.addAll(draft.text().words()));
        }
        records.report(piece)
                .ifPresent(report -> texts.addAll(ConditionReport.of(
                                records.archive, report, piece, DocumentSettings.of(DocumentKind.CONDITION_REPORT))
                        .text()
                        .words()));
        for (LabelKind kind : LabelKind.values()) {
            try {
                LabelText.of(facts, PrintSettings.of(kind, Market.EU)).lines().forEach(line -> texts.add(line.text()));
            } catch (LabelBlocked held) {
                held.pieces().forEach(each -> each.refusals().forEach(refusal -> texts.add(refusal.toString())));
            }
        }
        return texts;
    }

    /** What pages and searches show of the facts themselves. */
    private static List<String> facts(PieceFacts facts) {
        Condition condition = facts.condition();
        List<String> texts =
                new ArrayList<>(List.of(condition.inWords(), facts.cloth().inWords()));
        condition.last().map(Condition::seenInBrief).ifPresent(texts::add);
        Stream.of(Denial.NEVER_EXAMINED, Denial.NO_REPORT)
                .forEach(denial -> denial.of(condition).ifPresent(texts::add));
        Denial.NOT_TOLD_YET.of(facts).ifPresent(texts::add);
        texts.add(Denial.orElse(facts.dips().dips(), Denial.NO_DIPS));
        return texts;
    }

    private static List<String> contradictions(List<String> texts, Set<Trait> traits) {
        List<String> found = new ArrayList<>();
        DENIED.forEach((sentence, contradicting) -> {
            Pattern pattern = Pattern.compile(sentence, Pattern.CASE_INSENSITIVE);
            Predicate<Trait> there = traits::contains;
            contradicting.stream()
                    .filter(there)
                    .forEach(trait -> texts.stream()
                            .filter(text -> pattern.matcher(text).find())
                            .forEach(text -> found.add(trait + " is recorded, but: " + text)));
        });
        return found;
    }

    /** By the program's own list, for what is said of the piece and of its condition. */
    private static List<String> againstItself(List<String> texts, PieceFacts facts) {
        List<String> found = new ArrayList<>();
        for (Denial<?> denial : Denial.all()) {
            List<String> facing = denial.about() == PieceFacts.class
                    ? contradicted(denial, facts)
                    : denial.about() == Condition.class ? contradicted(denial, facts.condition()) : List.of();
            if (!facing.isEmpty() && denial.longEnoughToTell()) {
                texts.stream().filter(denial::isIn).forEach(text -> found.add(facing + " is recorded, but: " + text));
            }
        }
        return found;
    }

    @SuppressWarnings("unchecked")
    private static <T> List<String> contradicted(Denial<?> denial, T subject) {
        return ((Denial<T>) denial).contradictedBy(subject);
    }
}

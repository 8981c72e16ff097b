package tenterbook.documents.kind;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Kinds;
import tenterbook.documents.DocumentKind;
import tenterbook.documents.DocumentSettings;
import tenterbook.facts.PieceReader;
import tenterbook.labelling.LabelBlocked;
import tenterbook.labelling.LabelKind;
import tenterbook.labelling.LabelText;
import tenterbook.labelling.PrintSettings;
import tenterbook.labelling.rule.Market;
import tenterbook.ledger.Saved;
import tenterbook.piece.Piece;
import tenterbook.piece.condition.Examination;

/** Percent, ranges, ratios and money have one form on every document and label of the sample studio. */
class OneFormTest {
    private static final String CURRENCY = "(?:EUR|USD|GBP|JPY|CAD)";

    /** Every other form. Days, numbers of pieces and index numbers have hyphens of their own. */
    private static final Map<String, Pattern> OTHER = new LinkedHashMap<>(Map.of(
            "a range with a hyphen",
            Pattern.compile("(?<![\\p{L}\\d./-])\\d{1,4}(?:\\.\\d+)?\\s?-\\s?\\d{1,4}(?:\\.\\d+)?(?![\\p{L}\\d-])"),
            "a range with spaces",
            Pattern.compile("\\d\\s–\\s\\d|\\d\\s–\\d|\\d–\\s\\d"),
            "a range in words before a unit",
            Pattern.compile("\\d\\sto\\s\\d+(?:\\.\\d+)?\\s?(?:min|h|g|kg|cm|mm|m|L|ml|°C|%)(?![\\p{L}\\d])"),
            "a ratio with spaces",
            Pattern.compile("\\d\\s:\\s?1\\b|\\d:\\s1\\b|\\d to 1\\b"),
            "a sign of money",
            Pattern.compile("[€$£¥]"),
            "money with its code before it",
            Pattern.compile(CURRENCY + "\\s?\\d"),
            "money with grouping",
            Pattern.compile("\\d[ ,.'’]\\d{3}(?:\\.\\d+)?\\s?" + CURRENCY),
            "money with other decimals than its currency has",
            Pattern.compile("\\d[.,]\\d(?:\\d{2,})?\\s(?:EUR|USD|GBP|CAD)|\\d\\.\\d+\\sJPY")));

    /** Its law or custom closes the sign up: common practice in these markets. */
    private static final Set<Market> CLOSED_UP = EnumSet.of(Market.US, Market.CA, Market.JP);

    /** What is typed at length stays as typed. */
    private static final Set<LabelText.Part> TYPED =
            EnumSet.of(LabelText.Part.ADVICE, LabelText.Part.CONDITION, LabelText.Part.WORDS);

    private static final Pattern SPACED_PERCENT = Pattern.compile("\\d\\s%");
    private static final Pattern CLOSED_UP_PERCENT = Pattern.compile("\\d%");

    @TempDir
    Path folder;

    private final List<String> found = new ArrayList<>();

    @Test
    void everyDocumentOfTheSampleWritesEachInOneForm() throws IOException {
        int texts = 0;
        try (SampleStudioDocuments studio = new SampleStudioDocuments(folder)) {
            String[] all = studio.archive.ledger().allIdsEverUsed(Kinds.PIECE).toArray(String[]::new);
            for (DocumentKind kind : DocumentKind.OF_PIECES) {
                for (var draft : Composition.of(
                        studio.archive,
                        studio.pieces(all),
                        SampleStudioDocuments.request(kind),
                        SampleStudioDocuments.TODAY)) {
                    draft.text().words().forEach(words -> looked(kind.code(), words, CLOSED_UP_PERCENT));
                    texts++;
                }
            }
            for (Saved<Examination> examination : studio.archive.ledger().all(Kinds.EXAMINATION)) {
                Saved<Piece> piece =
                        studio.pieces(examination.record().piece().value()).get(0);
                ConditionReport.of(
                                studio.archive, examination, piece, DocumentSettings.of(DocumentKind.CONDITION_REPORT))
                        .text()
                        .words()
                        .forEach(words -> looked("condition-report", words, CLOSED_UP_PERCENT));
                texts++;
            }
        }
        assertThat(texts).isGreaterThan(100);
        assertThat(found).isEmpty();
    }

    @Test
    void everyLabelOfTheSampleWritesEachInTheFormOfItsMarket() throws IOException {
        int texts = 0;
        try (SampleStudioDocuments studio = new SampleStudioDocuments(folder)) {
            for (Saved<Piece> piece : studio.archive.ledger().all(Kinds.PIECE)) {
                for (Market market : Market.values()) {
                    for (LabelKind kind : LabelKind.values()) {
                        try {
                            LabelText.of(
                                            PieceReader.of(studio.archive, piece.record()),
                                            PrintSettings.of(kind, market).withPrice())
                                    .lines()
                                    .forEach(line -> looked(
                                            market + " " + kind + " " + line.part(),
                                            line.text(),
                                            CLOSED_UP.contains(market) && !TYPED.contains(line.part())
                                                    ? SPACED_PERCENT
                                                    : CLOSED_UP_PERCENT));
                            texts++;
                        } catch (LabelBlocked heldBack) {
                            assertThat(heldBack.pieces()).isNotEmpty();
                        }
                    }
                }
            }
        }
        assertThat(texts).isGreaterThan(100);
        assertThat(found).isEmpty();
    }

    @Test
    void otherFormsAreFound() {
        for (String other : List.of(
                "60-65 °C", "6 – 8 min", "6 to 8 min", "30 : 1", "€180", "EUR 180", "1,200 EUR", "180.5 EUR", "61%")) {
            looked("other", other, CLOSED_UP_PERCENT);
        }
        assertThat(found).hasSizeGreaterThanOrEqualTo(9);
        found.clear();
        for (String one : List.of(
                "60–65 °C",
                "6–8 min",
                "30:1",
                "180 EUR",
                "180.50 EUR",
                "61\u00a0%",
                "2024-03-05",
                "V24-013",
                "011-005-00-2")) {
            looked("one", one, CLOSED_UP_PERCENT);
        }
        assertThat(found).isEmpty();
    }

    private void looked(String where, String words, Pattern otherPercent) {
        OTHER.forEach((form, pattern) -> matched(where + ": " + form, pattern, words));
        matched(where + ": the other percent", otherPercent, words);
    }

    private void matched(String form, Pattern pattern, String words) {
        Matcher matcher = pattern.matcher(words);
        if (matcher.find()) {
            found.add(form + ": “" + matcher.group() + "” in “" + words + "”");
        }
    }
}

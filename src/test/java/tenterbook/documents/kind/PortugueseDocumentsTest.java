package tenterbook.documents.kind;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tenterbook.archive.Kinds;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.documents.DocumentDraft;
import tenterbook.documents.DocumentKind;
import tenterbook.documents.DocumentLines;
import tenterbook.documents.DocumentSettings;
import tenterbook.documents.ReadBack;
import tenterbook.documents.issue.DocumentIssuer;
import tenterbook.documents.issue.PaperPdf;
import tenterbook.documents.layout.DocumentPaper;
import tenterbook.ledger.Saved;
import tenterbook.ledger.revision.Revision;
import tenterbook.material.Lot;
import tenterbook.piece.condition.Examination;
import tenterbook.recipe.Cautions;
import tenterbook.words.Language;
import tenterbook.words.Message;

/** Every document of the sample studio in Portuguese beside the same in English. */
class PortugueseDocumentsTest {
    /** Words of English sentences that no Portuguese sentence has. */
    private static final Pattern ENGLISH = Pattern.compile(
            "(?i)(?<!\\p{L})(the|of|and|not|is|are|with|from|recorded|length|width|this|that|was|has|piece|dyed|layers|vat|between)(?!\\p{L})");

    /** Of a certificate. */
    private static final Pattern CODE = Pattern.compile("[0-9a-f]{4}( [0-9a-f]{4}){3}");

    private static final Pattern NUMBER = Pattern.compile("\\d+(?:[.,]\\d+)?");

    /** Symbols, and words that are alike in both languages. */
    private static final Pattern ALIKE =
            Pattern.compile("(?i)(?<!\\p{L})(mm|cm|m|g|kg|l|ml|min|h|ph|wof|lux|eur|c)(?!\\p{L})");

    /** Choices of the records. They are stored by an English word, and no text of the maker's. */
    private static final List<String> CHOICES = List.of(
            "piece.status.",
            "piece.event.",
            "piece.category.",
            "piece.photo-role.",
            "condition.view.",
            "condition.severity.",
            "condition.stability.",
            "condition.overall.",
            "condition.reason.",
            "condition.standing.",
            "condition.seen.",
            "recipe.step.",
            "recipe.style.");

    @TempDir
    static Path folder;

    private static SampleStudioDocuments studio;

    /** What the maker wrote and what comes from a table of substances, which is in English only; longest first. */
    private static List<String> typed;

    @BeforeAll
    static void begin() throws Exception {
        studio = new SampleStudioDocuments(folder);
        Set<String> texts = new HashSet<>();
        ObjectMapper json = new ObjectMapper();
        for (Revision revision : studio.archive.ledger().after(0, 100_000)) {
            collect(json.readTree(revision.json()), texts);
        }
        CHOICES.forEach(beginning -> Message.keys(beginning)
                .forEach(key -> texts.remove(plain(Message.of(key).inEnglish()))));
        for (Saved<Examination> examination : studio.archive.ledger().all(Kinds.EXAMINATION)) {
            examination.record().zones().forEach(zone -> texts.add(plain(zone.zone())));
            examination.record().observations().forEach(seen -> texts.add(plain(seen.zone())));
        }
        for (DocumentKind kind : DocumentKind.OF_PIECES) {
            DocumentSettings asked = SampleStudioDocuments.request(kind);
            Stream.of(
                            asked.text(),
                            asked.agreement().terms(),
                            asked.agreement().from(),
                            asked.agreement().until(),
                            asked.agreement().insurer())
                    .flatMap(String::lines)
                    .forEach(line -> texts.add(plain(line)));
        }
        List<Lot> lots = studio.archive.ledger().all(Kinds.LOT).stream()
                .map(Saved::record)
                .toList();
        studio.archive.ledger().all(Kinds.CLAMPING).stream()
                .flatMap(clamping -> clamping.record().steps().stream())
                .flatMap(step -> Cautions.of(step, lots).stream())
                .filter(caution -> !(caution instanceof Message))
                .forEach(caution -> texts.add(plain(caution.inEnglish())));
        typed = texts.stream()
                .filter(text -> text.chars().anyMatch(Character::isLetter))
                .sorted(Comparator.comparingInt(String::length).reversed())
                .toList();
    }

    @AfterAll
    static void end() {
        studio.close();
    }

    private static void collect(JsonNode node, Collection<String> texts) {
        if (node.isTextual()) {
            node.textValue().lines().forEach(line -> texts.add(plain(line)));
        }
        node.forEach(each -> collect(each, texts));
    }

    /** Blanks and dashes as typed or as set, in lower case. */
    private static String plain(String text) {
        return text.toLowerCase(Locale.ROOT)
                .replaceAll("[\\s\u00a0]+", " ")
                .replaceAll("\\s*[–-]\\s*", "-")
                .replaceAll("(?<=\\d),(?=\\d)", ".")
                .replaceAll("\\s*:\\s*", ":")
                .strip();
    }

    /** The letters that nobody typed. */
    private static String composed(String line) {
        String left = CODE.matcher(plain(line)).replaceAll("");
        for (String text : typed) {
            if (left.contains(text)) {
                left = left.replaceAll("(?<!\\p{L})" + Pattern.quote(text) + "(?!\\p{L})", "|");
            }
        }
        return left;
    }

    private static List<String> numbers(String line) {
        return NUMBER.matcher(line.replaceAll("(?<=\\d)[,\u00a0](?=\\d{3}(?!\\d))", ""))
                .results()
                .map(MatchResult::group)
                .map(number -> number.replace(',', '.'))
                .sorted()
                .toList();
    }

    private static void compared(String document, List<String> english, List<String> portuguese) {
        assertThat(portuguese).as(document).hasSameSizeAs(english);
        Set<String> wrong = new TreeSet<>();
        for (int i = 0; i < english.size(); i++) {
            String there = portuguese.get(i);
            String nobodyTyped = composed(there);
            boolean same = there.equals(english.get(i))
                    && ALIKE.matcher(nobodyTyped).replaceAll("").chars().anyMatch(Character::isLetter);
            if (same || ENGLISH.matcher(nobodyTyped).find()) {
                wrong.add("English: " + there);
            }
            if (!numbers(there).equals(numbers(english.get(i)))) {
                wrong.add("other numbers: " + english.get(i) + " / " + there);
            }
        }
        assertThat(wrong).as(document).isEmpty();
    }

    private static List<DocumentDraft> drafts(DocumentKind kind, Language language) {
        String[] numbers = Stream.concat(Stream.of(SampleStudioDocuments.numbers(kind)), Stream.of("V24-012"))
                .distinct()
                .toArray(String[]::new);
        return Composition.of(
                studio.archive,
                studio.pieces(numbers),
                SampleStudioDocuments.request(kind).in(language),
                SampleStudioDocuments.TODAY);
    }

    @ParameterizedTest
    @EnumSource(value = DocumentKind.class, names = "CONDITION_REPORT", mode = EnumSource.Mode.EXCLUDE)
    void everyLineThatTheProgramWritesIsPortugueseWithTheSameFacts(DocumentKind kind) {
        List<DocumentDraft> english = drafts(kind, Language.ENGLISH);
        List<DocumentDraft> portuguese = drafts(kind, Language.PORTUGUESE);
        for (int i = 0; i < english.size(); i++) {
            assertThat(portuguese.get(i).pieces()).isEqualTo(english.get(i).pieces());
            compared(
                    kind.code(),
                    english.get(i).text().words(),
                    portuguese.get(i).text().words());
        }
        assertThat(portuguese.get(0).text().title()).isNotBlank();
    }

    @Test
    void aConditionReportIsPortugueseWithTheSameFacts() {
        DocumentSettings asked = DocumentSettings.of(DocumentKind.CONDITION_REPORT);
        List<Saved<Examination>> examinations = studio.archive.ledger().all(Kinds.EXAMINATION);
        assertThat(examinations).isNotEmpty();
        for (Saved<Examination> each : examinations.subList(0, Math.min(5, examinations.size()))) {
            var piece = studio.pieces(each.record().piece().value()).get(0);
            compared(
                    each.record().id().value(),
                    ConditionReport.of(studio.archive, each, piece, asked)
                            .text()
                            .words(),
                    ConditionReport.of(studio.archive, each, piece, asked.in(Language.PORTUGUESE))
                            .text()
                            .words());
        }
    }

    @Test
    void anIssuedPortugueseDocumentSaysItsLanguageAndReprintsUnchanged() throws Exception {
        DocumentSettings asked =
                SampleStudioDocuments.request(DocumentKind.OBJECT_ID).in(Language.PORTUGUESE);
        List<DocumentDraft> drafts =
                Composition.of(studio.archive, studio.pieces("V24-004"), asked, SampleStudioDocuments.TODAY);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Clock clock = SampleStudioDocuments.CLOCK;
        IssuedPaper paper = DocumentIssuer.print(studio.archive, drafts, "", studio.photographs, out, clock, "maker")
                .get(0);
        byte[] pdf = out.toByteArray();
        assertThat(paper.words()).extracting(IssuedPaper.Line::text).contains("Ficha Object ID");
        assertThat(DocumentSettings.of(paper).language()).isEqualTo(Language.PORTUGUESE);
        assertThat(PaperPdf.of(studio.archive, paper, studio.photographs)).isEqualTo(pdf);
        ByteArrayOutputStream again = new ByteArrayOutputStream();
        DocumentPaper.pdf(
                List.of(DocumentLines.read(paper)),
                DocumentSettings.of(paper),
                studio.photographs,
                again,
                Clock.fixed(paper.issuedAt(), ZoneOffset.UTC));
        assertThat(new ReadBack(again.toByteArray()).text()).isEqualTo(new ReadBack(pdf).text());
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertThat(document.getDocumentCatalog().getLanguage()).isEqualTo("pt-PT");
        }
        assertThat(new ReadBack(pdf).text().replace('\u00a0', ' ')).contains("página 1 de ", "10 de janeiro de 2026");
    }

    @Test
    void aPaperHasOneFormOfDatesAndStatesTheEditionInItsOwnLanguage() {
        for (DocumentKind kind : List.of(DocumentKind.PROVENANCE_CERTIFICATE, DocumentKind.LOAN_SCHEDULE)) {
            String words = String.join(
                            "\n",
                            Composition.of(
                                            studio.archive,
                                            studio.pieces("V24-017", "V24-003"),
                                            SampleStudioDocuments.request(kind).in(Language.PORTUGUESE),
                                            SampleStudioDocuments.TODAY)
                                    .stream()
                                    .flatMap(draft -> draft.text().words().stream())
                                    .toList())
                    .replace('\u00a0', ' ');
            assertThat(words).doesNotContainPattern("\\d{4}-\\d\\d-\\d\\d|2 of 9|January");
            assertThat(words)
                    .contains(
                            kind == DocumentKind.LOAN_SCHEDULE
                                    ? List.of("12 de janeiro de 2026", "2 de maio de 2024")
                                    : List.of("\n2 de 9\n", "19 de outubro de 2024", "2 de maio de 2024"));
        }
    }

    /** Where {@code -Ddocuments.write} names a folder, the documents are put there for somebody to look at. */
    @Test
    void aPortugueseDocumentTakesNoFurtherPage() throws Exception {
        for (DocumentKind kind : List.of(DocumentKind.PROVENANCE_CERTIFICATE, DocumentKind.LOAN_SCHEDULE)) {
            DocumentSettings asked = SampleStudioDocuments.request(kind).in(Language.PORTUGUESE);
            byte[] pdf = studio.pdf(
                    Composition.of(
                            studio.archive,
                            studio.pieces(SampleStudioDocuments.numbers(kind)),
                            asked,
                            SampleStudioDocuments.TODAY),
                    asked);
            if (System.getProperty("documents.write") != null) {
                Files.write(Path.of(System.getProperty("documents.write"), "pt-" + kind.code() + ".pdf"), pdf);
            }
            assertThat(new ReadBack(pdf).pages()).as(kind.code()).isEqualTo(new ReadBack(studio.pdf(kind)).pages());
        }
    }
}

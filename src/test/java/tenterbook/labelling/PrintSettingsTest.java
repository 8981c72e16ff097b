package tenterbook.labelling;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.InputStream;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.archive.record.IssuedPaperRecord;
import tenterbook.archive.record.LabelSheet;
import tenterbook.documents.DocumentKind;
import tenterbook.documents.DocumentOrigin;
import tenterbook.documents.DocumentSettings;
import tenterbook.documents.PageSize;
import tenterbook.labelling.rule.CodedChoice;
import tenterbook.labelling.rule.Market;
import tenterbook.ledger.revision.Canonical;
import tenterbook.words.Language;

class PrintSettingsTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final LabelSheet SHEET =
            new LabelSheet("Market tags", 210, 297, 3, 3, 55, 90, 10, 8, 5, 2, -1.5, 0.25, 5, 0);

    private static IssuedPaper old(Map<String, Object> members) throws Exception {
        Map<String, Object> paper = new java.util.TreeMap<>(members);
        paper.put("id", "paper-1");
        paper.put("issuedAt", "2024-03-05T10:15:00Z");
        return IssuedPaperRecord.ISSUED_PAPER.fromText(JSON.writeValueAsString(paper));
    }

    private static IssuedPaper kept(PrintSettings settings) throws Exception {
        IssuedPaper paper = new IssuedPaper(
                "paper-1",
                settings.kind().code(),
                settings.market().code(),
                "",
                List.of(),
                Instant.EPOCH,
                List.of(),
                settings.stored(),
                List.of(),
                "",
                null);
        return IssuedPaperRecord.ISSUED_PAPER.fromText(Canonical.json(IssuedPaperRecord.ISSUED_PAPER.toJson(paper)));
    }

    /** As the sample archive's ledger holds it, from before settings were an object. */
    @Test
    void aPaperOfTheSampleArchiveGivesTheSettingsItWasIssuedWith() throws Exception {
        try (InputStream in = PrintSettingsTest.class.getResourceAsStream("paper-20240320-091500-000.json")) {
            IssuedPaper paper = IssuedPaperRecord.ISSUED_PAPER.fromJson((ObjectNode) JSON.readTree(in));
            assertThat(PrintSettings.of(paper))
                    .contains(PrintSettings.of(LabelKind.HANG_TAG, Market.EU).arranged(Arrangement.SELVEDGE));
            assertThat(paper.pieces()).hasSize(2);
        }
    }

    /** Every name that the map of texts ever had, none at its usual value. */
    @Test
    void anOldMapOfTextsGivesEveryChoice() throws Exception {
        Map<String, String> setting = new java.util.TreeMap<>(Map.of(
                "widthMm",
                "55.0",
                "heightMm",
                "90.0",
                "arrangement",
                "hem",
                "priceShown",
                "true",
                "blackOnly",
                "true"));
        setting.putAll(Map.of(
                "fullContent", "false", "careSymbols", "true", "from", "5", "cutMarks", "false", "holeMark", "false"));
        setting.putAll(Map.of("bleedMm", "2.5", "rollMm", "80.0", "own.name", "Market tags", "own.rows", "3"));
        setting.putAll(Map.of("own.widthMm", "210.0", "own.heightMm", "297.0", "own.columns", "3"));
        setting.putAll(Map.of("own.labelWidthMm", "55.0", "own.labelHeightMm", "90.0", "own.leftMm", "10.0"));
        setting.putAll(Map.of("own.topMm", "8.0", "own.columnGapMm", "5.0", "own.rowGapMm", "2.0"));
        setting.putAll(Map.of("own.shiftRightMm", "-1.5", "own.shiftDownMm", "0.25"));
        setting.putAll(Map.of("own.acrossPerMille", "5.0", "own.downPerMille", "0.0"));
        IssuedPaper paper =
                old(Map.of("kind", "hang-tag", "market", "jp", "sheet", "own", "copies", 4, "setting", setting));
        assertThat(PrintSettings.of(paper))
                .contains(new PrintSettings(
                        LabelKind.HANG_TAG,
                        Market.JP,
                        new PrintSettings.Format(55, 90, Arrangement.HEM),
                        new PrintSettings.Content(true, false, true),
                        new PrintSettings.Placement(SheetSize.OWN, SHEET, 80, 5, 4),
                        new PrintSettings.Finish(true, false, false, 2.5)));
    }

    @Test
    void whatAnOldMapLeavesOutIsTheUsual() throws Exception {
        IssuedPaper paper = old(
                Map.of("kind", "care-label", "market", "us", "sheet", "a4", "setting", Map.of("priceShown", "false")));
        assertThat(PrintSettings.of(paper))
                .contains(PrintSettings.of(LabelKind.CARE_LABEL, Market.US).on(SheetSize.A4));
    }

    @Test
    void aPaperWithoutSettingsOrWithUnknownOnesHasNone() throws Exception {
        assertThat(PrintSettings.of(old(Map.of("kind", "hang-tag", "market", "us"))))
                .isEmpty();
        for (Map<String, String> setting : List.of(
                Map.of("widthMm", "wide", "heightMm", "90.0"),
                Map.of("widthMm", "55.0", "heightMm", "900"),
                Map.of("arrangement", "in a spiral", "widthMm", "55.0", "heightMm", "90.0"))) {
            assertThat(PrintSettings.of(
                            old(Map.of("kind", "hang-tag", "market", "us", "sheet", "a4", "setting", setting))))
                    .as(setting.toString())
                    .isEmpty();
        }
        assertThat(PrintSettings.of(
                        old(Map.of("kind", "hang-tag", "market", "mars", "setting", Map.of("priceShown", "true")))))
                .isEmpty();
    }

    @Test
    void everySettingComesBackFromThePaperThatKeepsIt() throws Exception {
        PrintSettings tag = PrintSettings.of(LabelKind.HANG_TAG, Market.CA);
        for (PrintSettings settings : List.of(
                tag,
                Samples.on(tag, SHEET).startingAt(4).times(7).withPrice().inBlack(),
                new PrintSettings(
                        LabelKind.HANG_TAG,
                        Market.CA,
                        null,
                        new PrintSettings.Content(false, false, true),
                        new PrintSettings.Placement(SheetSize.ROLL, null, 100.5, 1, 1),
                        new PrintSettings.Finish(true, false, true, 0)),
                new PrintSettings(
                        LabelKind.HANG_TAG,
                        Market.CA,
                        new PrintSettings.Format(60.25, 100, Arrangement.SELVEDGE),
                        null,
                        null,
                        new PrintSettings.Finish(false, true, true, 1.5)),
                PrintSettings.of(LabelKind.CARE_LABEL, Market.NI).withCareSymbols())) {
            assertThat(PrintSettings.of(kept(settings))).contains(settings);
        }
    }

    /** Papers hold these names for ever; no change of the program may change them. */
    @Test
    void theStoredNamesAreThese() throws Exception {
        assertThat(PrintSettings.of(LabelKind.EXHIBITION_LABEL, Market.UK)
                        .arranged(Arrangement.TWO_COLUMNS)
                        .stored())
                .isEqualTo(JSON.readTree("""
                        {"label": {"kind": "exhibition-label", "market": "uk",
                         "format": {"widthMm": 150.0, "heightMm": 100.0, "arrangement": "two-columns"},
                         "content": {"priceShown": false, "fullContent": true, "careSymbols": false},
                         "placement": {"sheet": "single", "rollMm": 62.0, "from": 1, "copies": 1},
                         "finish": {"blackOnly": false, "cutMarks": true, "holeMark": true, "bleedMm": 0.0}}}
                        """));
        assertThat(Samples.on(PrintSettings.of(LabelKind.HANG_TAG, Market.EU), SHEET)
                        .stored()
                        .at("/label/placement/own"))
                .isEqualTo(JSON.readTree("""
                        {"name": "Market tags", "widthMm": 210.0, "heightMm": 297.0, "columns": 3, "rows": 3,
                         "labelWidthMm": 55.0, "labelHeightMm": 90.0, "leftMm": 10.0, "topMm": 8.0, "columnGapMm": 5.0,
                         "rowGapMm": 2.0, "shiftRightMm": -1.5, "shiftDownMm": 0.25, "acrossPerMille": 5.0,
                         "downPerMille": 0.0}
                        """));
        assertThat(StoredSettings.json(new DocumentSettings(
                        DocumentKind.LOAN_SCHEDULE,
                        PageSize.LETTER,
                        new DocumentSettings.Agreement("Museu do Sarelho", true, "May", "June", "both", "kept", ""),
                        new DocumentSettings.Disclosure(true, true, false),
                        "words",
                        null,
                        Language.PORTUGUESE)))
                .isEqualTo(JSON.readTree("""
                        {"kind": "loan-schedule", "page": "letter", "text": "words", "language": "pt",
                         "agreement": {"party": "Museu do Sarelho", "contact": true, "from": "May", "until": "June",
                          "insurer": "both", "terms": "kept"},
                         "disclosure": {"values": true, "names": true, "buyers": false}}
                        """));
        assertThat(List.of(LabelKind.values()))
                .extracting(CodedChoice::code)
                .containsExactly(
                        "hang-tag",
                        "care-label",
                        "exhibition-label",
                        "condition-tag",
                        "condition-label",
                        "shelf-tag",
                        "tube-tag");
        assertThat(List.of(Market.values()))
                .extracting(CodedChoice::code)
                .containsExactly("us", "eu", "uk", "ni", "ca", "jp");
        assertThat(List.of(SheetSize.values()))
                .extracting(CodedChoice::code)
                .containsExactly("single", "a4", "letter", "roll", "own");
        assertThat(List.of(Arrangement.values()))
                .extracting(CodedChoice::code)
                .containsExactly("column", "hem", "selvedge", "two-columns", "rows");
    }

    @Test
    void anOldDocumentsMapGivesItsSettingsAndItsOrigin() throws Exception {
        IssuedPaper certificate = old(Map.of(
                "kind",
                "provenance-certificate",
                "sheet",
                "letter",
                "copies",
                1,
                "setting",
                Map.of(
                        "contact",
                        "false",
                        "valued",
                        "false",
                        "named",
                        "true",
                        "buyers",
                        "true",
                        "page",
                        "letter",
                        "dress",
                        "sheet",
                        "code",
                        "9f2c 41ab 77e0 13d5")));
        assertThat(DocumentSettings.of(certificate))
                .isEqualTo(new DocumentSettings(
                        DocumentKind.PROVENANCE_CERTIFICATE,
                        PageSize.LETTER,
                        null,
                        new DocumentSettings.Disclosure(false, true, true),
                        ""));
        assertThat(DocumentOrigin.of(certificate)).isEqualTo(new DocumentOrigin("9f2c 41ab 77e0 13d5", null, null));
        assertThat(PrintSettings.of(certificate)).isEmpty();
        IssuedPaper report = old(Map.of(
                "kind",
                "condition-report",
                "setting",
                Map.of("page", "a4", "dress", "sheet", "examination", "E24-082", "examinationVersion", "2")));
        assertThat(DocumentSettings.of(report)).isEqualTo(DocumentSettings.of(DocumentKind.CONDITION_REPORT));
        assertThat(DocumentOrigin.of(report)).isEqualTo(new DocumentOrigin(null, "E24-082", 2));
    }
}

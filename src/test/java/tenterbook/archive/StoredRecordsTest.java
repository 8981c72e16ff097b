package tenterbook.archive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.Currency;
import java.util.List;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.field.Faults;
import tenterbook.archive.field.Reading;
import tenterbook.archive.record.ClampingRecord;
import tenterbook.archive.record.ExaminationRecord;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.archive.record.IssuedPaperRecord;
import tenterbook.archive.record.MaterialRecords;
import tenterbook.archive.record.PieceRecord;
import tenterbook.archive.record.StudioRecords;
import tenterbook.board.BoardId;
import tenterbook.board.BoardPair;
import tenterbook.board.BoardState;
import tenterbook.colour.space.Lab;
import tenterbook.ledger.revision.Canonical;
import tenterbook.material.FibreShare;
import tenterbook.material.Lot;
import tenterbook.material.Source;
import tenterbook.measure.DateText;
import tenterbook.measure.Digest;
import tenterbook.measure.LengthUnits;
import tenterbook.measure.Money;
import tenterbook.measure.QuantityText;
import tenterbook.measure.Unit;
import tenterbook.piece.Category;
import tenterbook.piece.Layers;
import tenterbook.piece.MadeIn;
import tenterbook.piece.Piece;
import tenterbook.piece.PieceNumber;
import tenterbook.piece.PiecePhoto;
import tenterbook.piece.Status;
import tenterbook.piece.Studio;
import tenterbook.piece.condition.Examination;
import tenterbook.piece.label.ComponentKind;
import tenterbook.piece.label.LabelFacts;
import tenterbook.piece.label.PieceComponent;
import tenterbook.piece.label.RuleAnswer;
import tenterbook.piece.label.SellingFacts;
import tenterbook.recipe.BoardUse;
import tenterbook.recipe.Clamping;
import tenterbook.recipe.ClampingId;
import tenterbook.recipe.DipSeries;
import tenterbook.recipe.Fold;
import tenterbook.recipe.FoldScheme;
import tenterbook.recipe.Step;
import tenterbook.recipe.StepKind;

class StoredRecordsTest {
    @TempDir
    Path folder;

    @Test
    void recordsFromBeforeAFieldWasThereOpenAsNotRecorded() {
        Studio studio = StudioRecords.STUDIO.fromText("{\"name\": \"Oficina Valderim\", \"currency\": \"EUR\"}");
        assertThat(studio.names()).isEmpty();
        assertThat(studio.postalAddress()).isEmpty();
        assertThat(StudioRecords.STUDIO.toJson(studio).toString())
                .doesNotContain("names", "postalAddress", "rn", "responsible");
        Studio named = StudioRecords.STUDIO.fromText(
                "{\"rn\": \"RN 123\", \"names\": [{\"term\": \"silk\", \"language\": \"ja\", \"name\": \"絹\", \"enteredBy\": \"Inês\"}]}");
        assertThat(named.rn()).isEqualTo("123");
        assertThat(StudioRecords.STUDIO.fromJson(StudioRecords.STUDIO.toJson(named)))
                .isEqualTo(named);
        Piece tested = PieceRecord.PIECE.fromText(
                "{\"number\": \"V24-001\", \"tests\": [{\"kind\": \"rub\", \"method\": \"ISO 105-X12\"}]}");
        assertThat(tested.tests())
                .singleElement()
                .satisfies(test -> assertThat(test.standard()).isNull());
        assertThat(PieceRecord.PIECE.toJson(tested).toString())
                .doesNotContain("standard", "grade", "specimen", "followed");
    }

    @Test
    void partsSaleAndAnswersComeBackAndOlderRecordsHaveNone() {
        Piece old = PieceRecord.PIECE.fromText("{\"number\": \"V24-001\", \"trims\": \"fringe\"}");
        assertThat(old.label()).isEqualTo(LabelFacts.NONE);
        assertThat(PieceRecord.PIECE.toJson(old).toString())
                .doesNotContain("components", "soldIn", "madeToOrder", "answers");
        RuleAnswer answer = new RuleAnswer(
                "claim.handmade",
                "Which steps?",
                false,
                "machine hems",
                "Inês",
                Instant.parse("2024-05-12T10:00:00Z"),
                new Digest("a".repeat(64)));
        Piece piece = old.with(new LabelFacts(
                List.of(new PieceComponent(
                        "silk fringe",
                        ComponentKind.TRIMMING,
                        List.of(new FibreShare("silk", 100.0, "")),
                        QuantityText.read("forgot", Unit.PERCENT),
                        QuantityText.read("6 to 8", Unit.PERCENT))),
                "Germany",
                false,
                List.of(answer)));
        assertThat(PieceRecord.PIECE.fromJson(PieceRecord.PIECE.toJson(piece))).isEqualTo(piece);
        assertThat(PieceRecord.PIECE.personal()).contains("answers.*.words", "answers.*.by");
        Studio studio = StudioRecords.STUDIO
                .fromText("{\"name\": \"Oficina Valderim\"}")
                .with(new SellingFacts("Valderim Unipessoal", "Weir & Co", "Ireland", List.of(answer), null));
        assertThat(StudioRecords.STUDIO.fromJson(StudioRecords.STUDIO.toJson(studio)))
                .isEqualTo(studio);
    }

    @Test
    void aShareOfMoreThanTheWholeIsRefused() {
        Faults faults = new Faults();
        PieceRecord.PIECE.understood(
                PieceRecord.PIECE.toJson(PieceRecord.PIECE
                        .fromText("{\"number\": \"V24-001\"}")
                        .with(new LabelFacts(
                                List.of(new PieceComponent(
                                        "fringe", null, null, QuantityText.read("120", Unit.PERCENT), null)),
                                "",
                                null,
                                null))),
                new Reading(Currency.getInstance("EUR"), LengthUnits.CM_AND_MM),
                faults,
                "");
        assertThat(faults.inOneLine().inEnglish()).contains("at most 100 percent");
    }

    @Test
    void aRecordComesBackAsItWasAndUnrecordedFieldsAreLeftOut() {
        Piece piece = new Piece(
                new PieceNumber("V24-001"),
                "Maré",
                "",
                Category.SCARF,
                QuantityText.read("180 cm", Unit.CENTIMETRE),
                QuantityText.read("forgot", Unit.CENTIMETRE),
                null,
                DateText.read("spring 2024"),
                "2 of 9",
                List.of(new MadeIn(new ClampingId("C24-001"), Layers.read("1-4, 7"), "")),
                Status.SOLD,
                null,
                "",
                Money.read("180.50", Currency.getInstance("EUR")),
                "",
                null,
                null,
                null,
                null,
                null,
                null);
        var step = new Step(
                StepKind.DIPS,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                "Mare",
                null,
                new DipSeries(QuantityText.read("6-8", Unit.COUNT), null, null, null),
                "");
        Clamping clamping = new Clamping(
                new ClampingId("C24-001"),
                "",
                null,
                List.of(new BoardUse(new BoardId("B01"), "I")),
                new FoldScheme(List.of(new Fold(Fold.Axis.LENGTH, Fold.Style.ACCORDION, 8)), null, ""),
                null,
                List.of(step),
                null,
                "",
                "",
                "",
                "",
                null,
                null,
                null,
                null);
        BoardPair board = new BoardPair(
                new BoardId("B01"),
                "Fig and wasp",
                "pear",
                null,
                null,
                null,
                null,
                "",
                List.of(new BoardState("I", null, "", null, null, null)),
                "");

        try (Archive archive = Archive.open(folder, Clock.systemUTC())) {
            archive.ledger().write("test", act -> {
                act.create(Kinds.PIECE, piece);
                act.create(Kinds.CLAMPING, clamping);
                return act.create(Kinds.BOARD_PAIR, board);
            });

            assertThat(archive.piece("V24-001")).contains(piece);
            assertThat(archive.clamping("C24-001")).contains(clamping);
            assertThat(archive.board("B01")).contains(board);
            assertThat(archive.ledger()
                            .history(Kinds.PIECE.key("V24-001"))
                            .get(0)
                            .json())
                    .isEqualTo("""
                            {"category":"scarf","edition":"2 of 9","finished":{"entered":"spring 2024","from":"2024-03-01","to":"2024-05-31"},"length":{"entered":"180 cm","high":180,"low":180,"unit":"centimetre"},"made":[{"clamping":"C24-001","layers":{"entered":"1-4, 7","layers":[1,2,3,4,7]}}],"number":"V24-001","price":{"amount":"180.50","currency":"EUR"},"status":"sold","title":"Maré","width":{"entered":"forgot"}}""".strip());
            assertThat(archive.ledger().check().run(tenterbook.ledger.file.Progress.UNWATCHED))
                    .isEmpty();
        }
    }

    /** As the program of version 0.1 stored them. */
    @Test
    void whatOldLedgersCallNotSaidIsReadAsNotRecordedAndNeverWrittenAgain() throws IOException {
        Piece piece = PieceRecord.PIECE.fromJson(
                stored("{\"number\":\"V24-001\",\"category\":\"not said\",\"status\":\"not said\"}"));
        assertThat(piece.category()).isNull();
        assertThat(piece.status()).isNull();
        assertThat(PieceRecord.PIECE.toJson(piece)).isEqualTo(stored("{\"number\":\"V24-001\"}"));
        Examination examination = ExaminationRecord.EXAMINATION.fromJson(
                stored("{\"id\":\"E24-001\",\"piece\":\"V24-001\",\"reason\":\"not said\",\"overall\":\"not said\","
                        + "\"zones\":[{\"zone\":\"front\",\"seen\":\"not said\"}],\"observations\":[{\"number\":1,"
                        + "\"what\":\"stain\",\"severity\":\"not said\",\"stability\":\"not said\"}]}"));
        assertThat(examination.reason()).isNull();
        assertThat(examination.overall()).isNull();
        assertThat(examination.zones().get(0).seen()).isNull();
        assertThat(examination.observations().get(0).severity()).isNull();
        assertThat(examination.observations().get(0).stability()).isNull();
        assertThat(ExaminationRecord.EXAMINATION.toJson(examination).toString()).doesNotContain("not said");
    }

    private static ObjectNode stored(String json) throws IOException {
        return (ObjectNode) new ObjectMapper().readTree(json);
    }

    /** Someone looked and could not tell: that is an answer, and differs from none. */
    @Test
    void anUnknownSourceIsKeptAndNoneIsInvented() {
        String named = "{\"id\":\"woad-1\",\"role\":\"dye\",\"name\":\"woad\"";
        assertThat(MaterialRecords.LOT
                        .fromText(named + ",\"source\":\"unknown\"}")
                        .source())
                .isEqualTo(Source.UNKNOWN);
        Lot none = MaterialRecords.LOT.fromText(named + "}");
        assertThat(none.source()).isNull();
        assertThat(MaterialRecords.LOT.toJson(none).toString()).doesNotContain("source", "unknown");
    }

    @Test
    void aRowWithoutItsKindIsRefusedAndTheFieldNamed() {
        refused(
                () -> ClampingRecord.CLAMPING.fromText("{\"id\":\"C24-001\",\"steps\":[{\"vat\":\"Mare\"}]}"),
                "‘kind’");
        refused(
                () -> PieceRecord.PIECE.fromText("{\"number\":\"V24-001\",\"events\":[{\"note\":\"at the quay\"}]}"),
                "‘kind’");
        refused(
                () -> PieceRecord.PIECE.fromText("{\"number\":\"V24-001\",\"tests\":[{\"method\":\"by hand\"}]}"),
                "‘kind’");
        refused(
                () -> PieceRecord.PHOTO.fromText("{\"photo\":\"" + "ab".repeat(32)
                        + "\",\"regions\":[{\"colour\":{\"lightness\":34,\"a\":-2,\"b\":-25}}]}"),
                "‘role’");
        refused(() -> MaterialRecords.LOT.fromText("{\"id\":\"woad-1\",\"name\":\"woad\"}"), "‘role’");
    }

    @Test
    void anInputWithoutARoleThatMustBeKnownIsRefusedBesideThatField() throws IOException {
        Faults faults = new Faults();
        Reading euro = new Reading(Currency.getInstance("EUR"), LengthUnits.CM_AND_MM);
        MaterialRecords.LOT.understood(stored("{\"id\":\"woad-1\",\"name\":\"woad\"}"), euro, faults, "");
        PieceRecord.PHOTO.understood(
                stored("{\"photo\":\"" + "ab".repeat(32) + "\",\"regions\":[{\"colour\":\"34 -2 -25\"}]}"),
                euro,
                faults,
                "photo");
        assertThat(faults.all().keySet()).containsExactlyInAnyOrder("role", "photo.regions.0.role");
    }

    private static void refused(ThrowingCallable reading, String field) {
        assertThatThrownBy(reading).hasMessageContaining(field);
    }

    @Test
    void aPhotographOfWhichNobodySaidWhatItShowsHasNoRole() {
        String digest = "ab".repeat(32);
        PiecePhoto photo = PieceRecord.PHOTO.fromText("{\"photo\":\"" + digest + "\"}");
        assertThat(photo.role()).isNull();
        assertThat(photo.shows()).isEqualTo("photograph");
        assertThat(PieceRecord.PHOTO.toJson(photo).toString()).doesNotContain("role", "other", "shows");
    }

    @Test
    void paperOfTheFirstFormKeepsItsWordsAndPaperOfTheSecondAllOfIt() throws IOException {
        IssuedPaper first = IssuedPaperRecord.ISSUED_PAPER.fromText("""
                {"id": "paper-1", "kind": "hang-tag", "issuedAt": "2024-03-05T10:15:00Z",
                 "pieces": [{"piece": "V24-001", "version": 2, "lines": ["Maré", "100 % silk"]}]}
                """);
        assertThat(first.pieces().get(0).text()).containsExactly("Maré", "100 % silk");
        assertThat(first.settings()).isEmpty();

        assertThat(first.market()).isEmpty();

        IssuedPaper second = new IssuedPaper(
                "paper-2",
                "hang-tag",
                "eu",
                "tag 1",
                List.of("eu 2026-1"),
                Instant.parse("2026-11-25T10:00:00Z"),
                List.of(new IssuedPaper.Issued(
                        new PieceNumber("V24-001"),
                        3,
                        List.of(new IssuedPaper.Line("content", "100 % silk", "Art. 9(1)")),
                        "V24-001",
                        List.of(new IssuedPaper.Colour(new Lab(34, -2, -25), null, "blue")))),
                JsonNodeFactory.instance.objectNode().put("widthMm", 55.5),
                List.of(new IssuedPaper.Line("lender", "The studio", "")),
                "paper-1",
                new IssuedPaper.Pdf(Digest.of(new byte[] {1, 2}), 2));
        assertThat(IssuedPaperRecord.ISSUED_PAPER.fromText(
                        IssuedPaperRecord.ISSUED_PAPER.toJson(second).toString()))
                .isEqualTo(second);
    }

    @Test
    void aPaperFromBeforeThatGetsAPdfKeepsItsOwnNamesForAllElse() {
        String before = """
                {"copies":4,"id":"paper-1","issuedAt":"2024-03-05T10:15:00Z","kind":"hang-tag","market":"us",\
                "pieces":[{"lines":[{"part":"title","text":"Maré"}],"piece":"V24-001","version":2}],\
                "setting":{"blackOnly":"true"},"sheet":"a4"}""";
        IssuedPaper paper = IssuedPaperRecord.ISSUED_PAPER.fromText(before);
        assertThat(paper.settings().at("/label/finish/blackOnly").booleanValue())
                .isTrue();
        Digest digest = Digest.of(new byte[] {1, 2});
        ObjectNode after = IssuedPaperRecord.ISSUED_PAPER.toJson(paper.with(new IssuedPaper.Pdf(digest, 2)));
        assertThat(after.remove("pdf")).hasToString("{\"digest\":\"%s\",\"bytes\":2}".formatted(digest.hex()));
        assertThat(Canonical.json(after)).isEqualTo(before);
    }
}

package tenterbook.documents.kind;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Currency;
import java.util.List;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.archive.record.Changed;
import tenterbook.archive.record.StudioRecords;
import tenterbook.documents.Block;
import tenterbook.documents.DocumentDraft;
import tenterbook.documents.DocumentKind;
import tenterbook.documents.DocumentSettings;
import tenterbook.documents.VerificationCode;
import tenterbook.documents.issue.Verification;
import tenterbook.exchange.PieceProof;
import tenterbook.exchange.ProofCheck;
import tenterbook.labelling.Samples;
import tenterbook.ledger.Saved;
import tenterbook.ledger.file.Progress;
import tenterbook.measure.Basis;
import tenterbook.measure.Digest;
import tenterbook.measure.Money;
import tenterbook.measure.PartialDate;
import tenterbook.measure.Quantity;
import tenterbook.measure.Unit;
import tenterbook.piece.Category;
import tenterbook.piece.Event;
import tenterbook.piece.EventKind;
import tenterbook.piece.Fault;
import tenterbook.piece.Party;
import tenterbook.piece.PartyId;
import tenterbook.piece.PhotoRole;
import tenterbook.piece.Piece;
import tenterbook.piece.PieceNumber;
import tenterbook.piece.PiecePhoto;
import tenterbook.piece.Status;
import tenterbook.piece.Studio;

/** What documents say of records that tell much and of records that tell little. */
class CompositionTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 1, 10);
    private static final Digest PHOTO = new Digest("ab".repeat(32));

    @TempDir
    Path folder;

    private Archive archive;

    @BeforeEach
    void open() {
        archive = Archive.open(folder.resolve("archive"), SampleStudioDocuments.CLOCK);
        archive.ledger().write("maker", act -> {
            act.create(Kinds.STUDIO, Samples.STUDIO);
            act.create(Kinds.PARTY, new Party(new PartyId("sala"), "Sala Vermia", "gallery", "behind the weir", ""));
            return act.create(Kinds.PARTY, new Party(new PartyId("buyer-1"), "Brites Almorena", "buyer", "", ""));
        });
    }

    @AfterEach
    void close() {
        archive.close();
    }

    private static UnaryOperator<DocumentSettings> disclosing(boolean values, boolean names, boolean buyers) {
        return r ->
                new DocumentSettings(r.kind(), null, null, new DocumentSettings.Disclosure(values, names, buyers), "");
    }

    private static Quantity cm(double value) {
        return Quantity.between(value, value, Unit.CENTIMETRE, Basis.MEASURED);
    }

    /** A piece with everything an Object ID sheet asks for. */
    private static Piece whole(String number) {
        return new Piece(
                new PieceNumber(number),
                "Noite de figos",
                "",
                Category.SCARF,
                cm(122),
                cm(44),
                null,
                PartialDate.of(LocalDate.of(2024, 3, 16)),
                "",
                null,
                Status.SOLD,
                new PartyId("buyer-1"),
                "flat drawer 1",
                Money.read("320", Currency.getInstance("EUR")),
                "",
                List.of(new PiecePhoto(PHOTO, PhotoRole.FRONT, "the whole scarf", 1, List.of())),
                List.of(new Fault("leak", "at the beak", "")),
                null,
                List.of(new Event(
                        EventKind.SOLD,
                        PartialDate.of(LocalDate.of(2024, 5, 2)),
                        null,
                        new PartyId("buyer-1"),
                        Money.read("300", Currency.getInstance("EUR")),
                        "paid in two parts",
                        "",
                        false)),
                "bought silk with borrowed money",
                null);
    }

    private static Piece with(
            Piece piece, Quantity width, Money price, List<PiecePhoto> photos, List<Fault> faults, List<Event> events) {
        return new Piece(
                piece.number(),
                piece.title(),
                "",
                piece.category(),
                piece.length(),
                width,
                null,
                piece.finished(),
                "",
                null,
                piece.status(),
                piece.holder(),
                piece.place(),
                price,
                "",
                photos,
                faults,
                null,
                events,
                piece.notes(),
                null);
    }

    private Saved<Piece> saved(Piece piece) {
        archive.ledger().write("maker", act -> {
            if (act.find(Kinds.PHOTO, PHOTO.hex()).isEmpty() && !piece.photos().isEmpty()) {
                act.create(
                        Kinds.PHOTO,
                        new tenterbook.imaging.Photo(
                                PHOTO,
                                "a.jpg",
                                9,
                                "image/jpeg",
                                40,
                                30,
                                1,
                                null,
                                null,
                                null,
                                null,
                                false,
                                true,
                                List.of(),
                                List.of(),
                                "",
                                List.of()));
            }
            return act.create(Kinds.PIECE, piece);
        });
        return archive.ledger().find(Kinds.PIECE, piece.number().value()).orElseThrow();
    }

    @SafeVarargs
    @SuppressWarnings("varargs") // only read
    private String words(DocumentKind kind, UnaryOperator<DocumentSettings> how, Saved<Piece>... pieces) {
        return drafts(kind, how, pieces).stream()
                .flatMap(draft -> draft.text().words().stream())
                .collect(Collectors.joining("\n"))
                .replace('\u00a0', ' ');
    }

    @SafeVarargs
    @SuppressWarnings("varargs") // only read
    private List<DocumentDraft> drafts(DocumentKind kind, UnaryOperator<DocumentSettings> how, Saved<Piece>... pieces) {
        return Composition.of(archive, List.of(pieces), how.apply(DocumentSettings.of(kind)), TODAY);
    }

    private List<String> missing(Piece piece) {
        return drafts(DocumentKind.OBJECT_ID, request -> request, saved(piece)).get(0).text().parts().stream()
                .flatMap(part -> part.blocks().stream())
                .filter(block -> block instanceof Block.Note note && note.manner() == Block.Manner.MISSING)
                .map(block -> ((Block.Note) block).text())
                .toList();
    }

    /** Object ID (ICOM 1997): a sheet without photograph, measurement with unit, or distinguishing features fails. */
    @Test
    void anObjectIdSheetThatLacksAPhotographAMeasurementOrDistinguishingFeaturesSaysSo() {
        Piece all = whole("V24-001");
        assertThat(missing(all)).isEmpty();
        assertThat(missing(with(whole("V24-002"), cm(44), null, List.of(), all.faults(), null)))
                .singleElement()
                .asString()
                .contains("a photograph");
        Quantity forgot = new Quantity("forgot", null, null, null, Basis.UNKNOWN, false);
        assertThat(missing(with(whole("V24-003"), forgot, null, all.photos(), all.faults(), null)))
                .singleElement()
                .asString()
                .contains("measurement with its unit of the width");
        assertThat(missing(with(whole("V24-004"), cm(44), null, all.photos(), List.of(), null)))
                .singleElement()
                .asString()
                .contains("distinguishing features");
        assertThat(missing(new Piece(
                        new PieceNumber("V24-005"),
                        null,
                        null,
                        null,
                        null,
                        null,
                        null,
                        null,
                        null,
                        null,
                        null,
                        null,
                        null,
                        null,
                        null,
                        null,
                        null,
                        null,
                        null,
                        null,
                        null)))
                .hasSize(3);
    }

    /** The nine categories of Object ID (ICOM 1997), in its order. */
    @Test
    void anObjectIdSheetHasTheNineCategoriesInTheirOrder() {
        String words = words(DocumentKind.OBJECT_ID, request -> request, saved(whole("V24-001")));
        assertThat(words)
                .containsSubsequence(
                        "Type of object",
                        "Textile; scarf",
                        "Materials and techniques",
                        "Measurements",
                        "Length 122 cm, width 44 cm",
                        "Inscriptions and markings",
                        "not recorded",
                        "Distinguishing features",
                        "Leak, at the beak",
                        "Title",
                        "Subject",
                        "Date or period",
                        "Maker",
                        "Short description",
                        "Inventory number",
                        "V24-001");
        assertThat(words).doesNotContain("Brites", "drawer", "borrowed money", "€");
    }

    @Test
    void aDocumentIsDatedInTheOrderOfTheStudio() {
        Studio american = Changed.field(StudioRecords.STUDIO, archive.studio(), "dateOrder", "month-first");
        archive.ledger().write("maker", act -> act.save(Kinds.STUDIO, american, 1, ""));
        assertThat(words(DocumentKind.OBJECT_ID, request -> request, saved(whole("V24-001"))))
                .contains("January 10, 2026");
    }

    @Test
    void anUnknownValueIsInNoTotalAndNeverZero() {
        Piece dollars = with(
                whole("V24-002"), cm(44), Money.read("100 USD", Currency.getInstance("EUR")), List.of(), null, null);
        Piece unknown = with(whole("V24-003"), cm(44), null, List.of(), null, null);
        Piece more =
                with(whole("V24-004"), cm(44), Money.read("0.50", Currency.getInstance("EUR")), List.of(), null, null);
        String words = words(
                DocumentKind.INSURANCE_LIST,
                request -> request,
                saved(whole("V24-001")),
                saved(dollars),
                saved(unknown),
                saved(more));
        assertThat(words)
                .contains("Total in EUR\n320.50 EUR for 2 pieces")
                .contains("Total in USD\n100 USD for 1 piece")
                .contains("In no total\n1 piece, whose value is not recorded")
                .doesNotContain("\n0 EUR");
    }

    @Test
    void peopleAndPlacesAreNamedOnlyByChoiceAndBuyersByAFurtherOne() {
        Saved<Piece> piece = saved(whole("V24-001"));
        for (DocumentKind kind : DocumentKind.OF_PIECES) {
            assertThat(words(kind, request -> request, piece))
                    .as(kind.toString())
                    .doesNotContain(
                            "Brites", "flat drawer", "behind the weir", "two parts", "borrowed money", "300 EUR");
        }
        String named = words(DocumentKind.INSURANCE_LIST, disclosing(false, true, false), piece);
        assertThat(named).contains("flat drawer 1", "a private owner").doesNotContain("Brites");
        String certificate = words(DocumentKind.PROVENANCE_CERTIFICATE, disclosing(false, true, false), piece);
        assertThat(certificate).contains("Sold, a private owner").doesNotContain("Brites", "€");
        UnaryOperator<DocumentSettings> buyers = disclosing(false, true, true);
        assertThat(words(DocumentKind.PROVENANCE_CERTIFICATE, buyers, piece)).contains("Sold, Brites Almorena");
    }

    @Test
    void aPartysContactAndValuesStandInAScheduleOnlyByChoice() {
        Saved<Piece> piece = saved(whole("V24-001"));
        String bare = words(
                DocumentKind.LOAN_SCHEDULE,
                r -> new DocumentSettings(
                        r.kind(),
                        null,
                        new DocumentSettings.Agreement("sala", false, "May", "", "", "One line.\n\nAnother.", ""),
                        null,
                        ""),
                piece);
        assertThat(bare)
                .contains("Borrower\nSala Vermia", "From\nMay", "Until\nnot recorded", "One line.\nAnother.")
                .doesNotContain("behind the weir", "€");
        String full = words(
                DocumentKind.LOAN_SCHEDULE,
                r -> new DocumentSettings(
                        r.kind(),
                        null,
                        new DocumentSettings.Agreement("Sala Vermia", true, "", "", "", "", ""),
                        new DocumentSettings.Disclosure(true, false, false),
                        ""),
                piece);
        assertThat(full)
                .contains("Contact\nbehind the weir")
                .contains("320 EUR asked; nothing agreed is recorded")
                .contains("In no total\n1 piece has no agreed value recorded")
                .contains("No terms were entered.");
    }

    @Test
    void aRecordOfNothingGivesEveryDocumentWithoutInventingAnything() {
        Saved<Piece> bare = saved(new Piece(
                new PieceNumber("V24-009"),
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null));
        for (DocumentKind kind : DocumentKind.OF_PIECES) {
            String words = words(kind, disclosing(true, true, false), bare);
            assertThat(words).as(kind.toString()).contains("ot recorded").doesNotContain("null", " 0 ", "€");
        }
    }

    @Test
    void noPieceIsNoDocument() {
        assertThatThrownBy(() ->
                        Composition.of(archive, List.of(), DocumentSettings.of(DocumentKind.INSURANCE_LIST), TODAY))
                .hasMessageContaining("choose at least one");
    }

    /** The certificate points to a proof of its piece alone; what ‘verify’ shows of it begins with the certificate's code. */
    @Test
    void aCertificatesCodeIsFoundAgainInTheProofOfItsPiece() throws Exception {
        saved(with(whole("V24-008"), cm(10), null, List.of(), null, null));
        Saved<Piece> piece = saved(with(whole("V24-001"), cm(44), null, List.of(), null, null));
        String words = words(DocumentKind.PROVENANCE_CERTIFICATE, request -> request, piece);
        String code = words.lines()
                .filter(line -> line.matches("([0-9a-f]{4} ){3}[0-9a-f]{4}"))
                .findFirst()
                .orElseThrow();
        assertThat(words)
                .contains("writes with ‘prove’", "the data of nobody else")
                .contains("version 1 of piece V24-001 in revision " + piece.sequence())
                .doesNotContain("packed copy");
        Path file = folder.resolve("V24-001.json");
        new PieceProof(archive, Progress.UNWATCHED).write("V24-001", Set.of(), file);
        assertThat(ProofCheck.run(file).shows())
                .extracting(Object::toString)
                .anyMatch(line -> line.contains("in revision " + piece.sequence() + ", hash " + code.replace(" ", "")));
    }

    @Test
    void aCodeIsComparedWithTheRevisionItWasMadeFromAlsoWhenThereIsANewerOne() {
        Saved<Piece> first = saved(with(whole("V24-001"), cm(44), null, List.of(), null, null));
        VerificationCode code = VerificationCode.of(
                archive.ledger().history(Kinds.PIECE.key("V24-001")).get(0).hash());
        assertThat(Verification.of(archive, code)).singleElement().satisfies(found -> {
            assertThat(found.holds()).isTrue();
            assertThat(found.linked()).isTrue();
            assertThat(found.newest()).isEqualTo(1);
            assertThat(found.revision().sequence()).isEqualTo(first.sequence());
        });
        archive.ledger()
                .write(
                        "maker",
                        act -> act.save(
                                Kinds.PIECE, with(whole("V24-001"), cm(45), null, List.of(), null, null), 1, ""));
        assertThat(Verification.of(archive, code))
                .singleElement()
                .satisfies(found -> assertThat(found.newest()).isEqualTo(2));
        assertThat(Verification.of(archive, new VerificationCode("0123456789abcdef")))
                .isEmpty();
    }

    @Test
    void aCodeIsReadAsPeopleTypeIt() {
        assertThat(VerificationCode.read(" 9F2C-41ab 77e0\u00a013d5 ").toString())
                .isEqualTo("9f2c 41ab 77e0 13d5");
        for (String odd : List.of("", "9f2c", "9f2c 41ab 77e0 13dg", "9f2c41ab77e013d500")) {
            assertThatThrownBy(() -> VerificationCode.read(odd)).hasMessageContaining("16 digits");
        }
    }
}

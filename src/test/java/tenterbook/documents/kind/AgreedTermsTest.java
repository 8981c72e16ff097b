package tenterbook.documents.kind;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.documents.DocumentDraft;
import tenterbook.documents.DocumentKind;
import tenterbook.documents.DocumentSettings;
import tenterbook.documents.PhotoSource;
import tenterbook.documents.issue.DocumentIssuer;
import tenterbook.labelling.Samples;
import tenterbook.ledger.Saved;
import tenterbook.ledger.revision.Kind;
import tenterbook.piece.Piece;
import tenterbook.words.Written;

/** What a schedule states was agreed with its own party, and a schedule of nothing is not issued. */
class AgreedTermsTest {
    @TempDir
    Path folder;

    private Archive archive;

    @BeforeEach
    void open() {
        archive = Archive.open(folder.resolve("archive"), SampleStudioDocuments.CLOCK);
        archive.ledger().write("maker", act -> act.create(Kinds.STUDIO, Samples.STUDIO));
        create(Kinds.PARTY, "{'id': 'museu', 'name': 'Museu do Sarelho', 'kind': 'museum'}");
        create(Kinds.PARTY, "{'id': 'sala', 'name': 'Sala Vermia', 'kind': 'gallery'}");
        create(
                Kinds.PIECE,
                "{'number': 'V24-001', 'price': {'amount': '240', 'currency': 'EUR'}, 'events': ["
                        + "{'kind': 'lent', 'when': {'entered': 'May 2024', 'from': '2024-05-01', 'to': '2024-05-31'},"
                        + " 'until': {'entered': 'June 2024', 'from': '2024-06-01', 'to': '2024-06-30'},"
                        + " 'party': 'museu', 'price': {'amount': '900', 'currency': 'EUR'}}]}");
    }

    @AfterEach
    void close() {
        archive.close();
    }

    private <T> void create(Kind<T> kind, String json) {
        T record = kind.codec().fromText(json.replace('\'', '"'));
        archive.ledger().write("maker", act -> act.create(kind, record));
    }

    private void agreement(String more) {
        create(Kinds.AGREEMENT, "{'id': 'A24-001', 'kind': 'loan'" + more + "}");
    }

    private DocumentDraft schedule(DocumentKind kind, String party, String id) {
        DocumentSettings settings = new DocumentSettings(
                kind,
                null,
                new DocumentSettings.Agreement(party, false, "", "", "", "", id),
                new DocumentSettings.Disclosure(true, true, false),
                "");
        List<Saved<Piece>> pieces =
                List.of(archive.ledger().find(Kinds.PIECE, "V24-001").orElseThrow());
        return Composition.of(archive, pieces, settings, LocalDate.of(2026, 1, 10))
                .get(0);
    }

    private static String words(DocumentDraft draft) {
        return String.join("\n", draft.text().words()).replace('\u00a0', ' ');
    }

    @Test
    void aPreviewDoesNotDenyWhatAnAgreementWithAnotherPartyStates() {
        create(Kinds.PIECE, "{'number': 'V24-002', 'price': {'amount': '240', 'currency': 'EUR'}}");
        create(
                Kinds.AGREEMENT,
                "{'id': 'A24-009', 'kind': 'loan', 'party': 'museu', 'pieces': [{'piece': 'V24-002',"
                        + " 'value': {'amount': '900', 'currency': 'EUR'}}]}");
        DocumentSettings settings = new DocumentSettings(
                DocumentKind.CONSIGNMENT_SCHEDULE,
                null,
                new DocumentSettings.Agreement("Sala Vermia", false, "", "", "", "", ""),
                new DocumentSettings.Disclosure(true, true, false),
                "");
        String printed = words(Composition.of(
                        archive,
                        List.of(archive.ledger().find(Kinds.PIECE, "V24-002").orElseThrow()),
                        settings,
                        LocalDate.of(2026, 1, 10))
                .get(0));
        assertThat(printed)
                .contains("240 EUR asked; what was agreed is with another party")
                .doesNotContain("nothing agreed is recorded", "900");
    }

    @Test
    void aValueAgreedWithAMuseumIsNotPrintedForAGallery() {
        String words = words(schedule(DocumentKind.LOAN_SCHEDULE, "Sala Vermia", ""));
        assertThat(words).doesNotContain("900").contains("240 EUR asked");
    }

    @Test
    void aLentEventFillsBorrowerPeriodAndValue() {
        DocumentDraft draft = schedule(DocumentKind.LOAN_SCHEDULE, "", "");
        assertThat(words(draft))
                .contains("Borrower\nMuseu do Sarelho", "From\nMay 2024", "Until\nJune 2024", "Agreed value\n900 EUR");
        assertThat(draft.lacking()).isEmpty();
    }

    @Test
    void anAgreementOfTheArchiveStandsBeforeTheEventAndTypedWordsBeforeBoth() {
        agreement(", 'party': 'sala', 'from': {'entered': '2026-02-01', 'from': '2026-02-01', 'to': '2026-02-01'},"
                + " 'insurer': 'Segura', 'terms': 'Hang it high.', 'pieces': [{'piece': 'V24-001', 'theirNumber': 'L.7',"
                + " 'value': {'amount': '1000', 'currency': 'EUR'}}]");
        DocumentDraft draft = schedule(DocumentKind.LOAN_SCHEDULE, "", "A24-001");
        assertThat(words(draft))
                .contains("Borrower\nSala Vermia", "From\n1 February 2026", "Until\nnot recorded", "Insured by\nSegura")
                .contains("Hang it high.", "Number given by the other party\nL.7", "Agreed value\n1000 EUR")
                .doesNotContain("900", "June");
        assertThat(words(schedule(DocumentKind.LOAN_SCHEDULE, "Museu do Sarelho", "")))
                .contains("900 EUR")
                .doesNotContain("1000");
    }

    @Test
    void aConsignmentStatesCommissionAndLowestPriceAndALoanNothingOfTheKind() {
        String more = "'party': 'sala', 'commission': {'entered': '40', 'low': 40, 'high': 40, 'unit': 'percent'},"
                + " 'pieces': [{'piece': 'V24-001', 'value': {'amount': '240', 'currency': 'EUR'},"
                + " 'floor': {'amount': '200', 'currency': 'EUR'}}]}";
        create(Kinds.AGREEMENT, "{'id': 'A24-002', 'kind': 'consignment', " + more);
        create(Kinds.AGREEMENT, "{'id': 'A24-003', 'kind': 'loan', " + more);
        assertThat(words(schedule(DocumentKind.CONSIGNMENT_SCHEDULE, "", "A24-002")))
                .contains("Commission\n40 % of the price of each sale, kept by the gallery; the rest is the maker’s")
                .contains("Agreed price\n240 EUR\nLowest price\n200 EUR")
                .contains("the gallery’s own rules")
                .doesNotContain("borrower");
        assertThat(words(schedule(DocumentKind.LOAN_SCHEDULE, "", "A24-003")))
                .contains("the borrower’s own rules")
                .doesNotContain("Commission", "40 %", "Lowest", "200 EUR", "gallery’s");
    }

    @Test
    void aValueThatIsMissingInAnAgreementIsAskedForThere() {
        create(
                Kinds.AGREEMENT,
                "{'id': 'A24-002', 'kind': 'consignment', 'party': 'sala', 'pieces': [{'piece': 'V24-001'}],"
                        + " 'from': {'entered': '2026-02-01', 'from': '2026-02-01', 'to': '2026-02-01'}}");
        assertThat(schedule(DocumentKind.CONSIGNMENT_SCHEDULE, "", "A24-002").lacking().stream()
                        .map(Written::inEnglish))
                .containsExactly(
                        "No value is recorded for V24-001 in A24-002: record it there, or leave the values out.");
    }

    @Test
    void anAgreementThatIsNotThereOrOfTheOtherKindIsRefused() {
        agreement("");
        assertThatThrownBy(() -> schedule(DocumentKind.LOAN_SCHEDULE, "", "A24-009"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("There is no agreement “A24-009”");
        assertThatThrownBy(() -> schedule(DocumentKind.CONSIGNMENT_SCHEDULE, "", "A24-001"))
                .hasMessageContaining("A24-001 is a loan");
    }

    @Test
    void aScheduleWithoutPartyDatesAndValuesIsHeldBackWithEachThatIsMissing() {
        create(Kinds.PIECE, "{'number': 'V24-002'}");
        DocumentDraft draft = schedule(DocumentKind.CONSIGNMENT_SCHEDULE, "", "");
        assertThat(draft.lacking().stream().map(Written::inEnglish))
                .containsExactly(
                        "Nobody is named whom the pieces go to: choose or type a name, or choose the agreement.",
                        "The day on which it begins is missing.",
                        "Nothing is agreed for V24-001 with this party: record the value in a loan or consignment, or leave the values out.");
        assertThatThrownBy(() -> DocumentIssuer.print(
                        archive,
                        List.of(draft),
                        "",
                        PhotoSource.NONE,
                        new ByteArrayOutputStream(),
                        SampleStudioDocuments.CLOCK,
                        "maker"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("Nobody is named");
        assertThat(archive.ledger().count(Kinds.ISSUED_PAPER)).isZero();
    }

    @Test
    void aCertificateOfAPieceOfWhichNothingIsKnownIsHeldBack() {
        List<Saved<Piece>> pieces =
                List.of(archive.ledger().find(Kinds.PIECE, "V24-001").orElseThrow());
        DocumentDraft draft = Composition.of(
                        archive,
                        pieces,
                        DocumentSettings.of(DocumentKind.PROVENANCE_CERTIFICATE),
                        LocalDate.of(2026, 1, 10))
                .get(0);
        assertThat(draft.lacking()).hasSize(1);
    }
}

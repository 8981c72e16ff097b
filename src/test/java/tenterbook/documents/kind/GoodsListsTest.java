package tenterbook.documents.kind;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

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
import tenterbook.labelling.Samples;
import tenterbook.ledger.Saved;
import tenterbook.ledger.revision.Kind;
import tenterbook.piece.Piece;
import tenterbook.words.Language;
import tenterbook.words.Written;

/** Price list, packing list and customs list state what is recorded, and are held back where it is not. */
class GoodsListsTest {
    @TempDir
    Path folder;

    private Archive archive;

    @BeforeEach
    void open() {
        archive = Archive.open(folder.resolve("archive"), SampleStudioDocuments.CLOCK);
        archive.ledger().write("maker", act -> act.create(Kinds.STUDIO, Samples.STUDIO));
        create(
                Kinds.CLOTH,
                "{'id': 'SH', 'name': 'silk habotai', 'wovenIn': 'China',"
                        + " 'content': [{'fibre': 'silk', 'percent': 100}]}");
        create(Kinds.CLAMPING, "{'id': 'C24-001', 'cuts': [{'cloth': 'SH'}]}");
        create(
                Kinds.PIECE,
                "{'number': 'V24-001', 'title': 'Figueira', 'category': 'scarf', 'made': [{'clamping': 'C24-001'}],"
                        + " 'price': {'amount': '1104.55', 'currency': 'EUR'},"
                        + " 'mass': {'entered': '80 g', 'low': 80, 'high': 80, 'unit': 'gram'},"
                        + " 'packing': 'roll on a tube', 'hanging': 'from a rod', 'packedSize': '46 × 8 cm',"
                        + " 'commodityCode': 'as told by the office'}");
        create(Kinds.PIECE, "{'number': 'V24-002'}");
        create(
                Kinds.FAIR,
                "{'id': 'F24-001', 'kind': 'exhibition', 'name': 'Tides', 'priceStatement': 'No tax is charged.',"
                        + " 'pieces': [{'piece': 'V24-001', 'box': '7'}, {'piece': 'V24-002'}]}");
        create(
                Kinds.AGREEMENT,
                "{'id': 'A24-001', 'kind': 'consignment', 'pieces': ["
                        + "{'piece': 'V24-001', 'value': {'amount': '900', 'currency': 'JPY'}}]}");
    }

    @AfterEach
    void close() {
        archive.close();
    }

    private <T> void create(Kind<T> kind, String json) {
        T record = kind.codec().fromText(json.replace('\'', '"'));
        archive.ledger().write("maker", act -> act.create(kind, record));
    }

    private DocumentDraft list(DocumentKind kind, String agreement, String fair, String purpose) {
        List<Saved<Piece>> pieces = List.of(
                archive.ledger().find(Kinds.PIECE, "V24-001").orElseThrow(),
                archive.ledger().find(Kinds.PIECE, "V24-002").orElseThrow());
        DocumentSettings settings = new DocumentSettings(
                kind,
                null,
                new DocumentSettings.Agreement("", false, "", "", "", "", agreement),
                null,
                "",
                new DocumentSettings.Shipment(fair, purpose),
                Language.ENGLISH);
        return Composition.of(archive, pieces, settings, LocalDate.of(2026, 1, 10))
                .get(0);
    }

    private static String words(DocumentDraft draft) {
        return String.join("\n", draft.text().words()).replace('\u00a0', ' ');
    }

    private static List<String> lacking(DocumentDraft draft) {
        return draft.lacking().stream().map(Written::inEnglish).toList();
    }

    @Test
    void aPriceListHasTheRecordedPriceAndTheRecordedStatementAboutTax() {
        DocumentDraft fair = list(DocumentKind.PRICE_LIST, "", "F24-001", "");
        assertThat(words(fair))
                .contains("V24-001 Figueira", "Silk habotai", "1104.55 EUR", "No tax is charged.")
                .doesNotContain("Whether the prices include tax");
        assertThat(lacking(fair)).containsExactly("No price is recorded for V24-002.");
        assertThat(words(list(DocumentKind.PRICE_LIST, "A24-001", "", "")))
                .contains("900 JPY", "Whether the prices include tax is not recorded.")
                .doesNotContain("1104.55");
    }

    @Test
    void aPackingListCountsAnUnknownWeightAsUnknown() {
        assertThat(words(list(DocumentKind.PACKING_LIST, "", "F24-001", "")))
                .contains("packed: 46 × 8 cm", "Roll on a tube; from a rod", "Box 7\nV24-001; 80 g")
                .contains("In no box\nV24-002", "Weight of the pieces\n80 g, and 1 piece of unknown weight");
    }

    @Test
    void aCustomsListInventsNothingAndSaysWhatIsMissing() {
        DocumentDraft sent = list(DocumentKind.CUSTOMS_LIST, "", "", "temporary");
        assertThat(words(sent))
                .contains("Purpose\nTemporary exhibition and return")
                .contains("Dyed textile, scarf", "100 % silk", "dyed in: Portugal; cloth woven in: China")
                .contains("80 g", "1104.55 EUR", "as told by the office", "the customs office decides");
        assertThat(lacking(sent))
                .containsExactly(
                        "The fibres of V24-002 are not all recorded.",
                        "The weight of V24-002 is not recorded.",
                        "No value of V24-002 is recorded: neither agreed nor asked.");
        assertThat(lacking(list(DocumentKind.CUSTOMS_LIST, "", "", ""))).anyMatch(why -> why.contains("purpose"));
        // ISO 4217: the yen has no minor unit.
        assertThat(words(list(DocumentKind.CUSTOMS_LIST, "A24-001", "", "sale")))
                .contains("Total in JPY\n900 JPY");
    }

    @Test
    void aFairThatIsNotThereIsRefused() {
        assertThatThrownBy(() -> list(DocumentKind.PRICE_LIST, "", "F99-001", ""))
                .hasMessageContaining("There is no fair “F99-001”");
    }
}

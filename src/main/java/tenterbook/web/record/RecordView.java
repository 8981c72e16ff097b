package tenterbook.web.record;

import java.util.List;
import tenterbook.ledger.revision.RecordKey;
import tenterbook.web.Site;

/**
 * A plain record's page.
 *
 * @param called what a person calls one
 * @param path of the page; its form is at {@code path + "/edit"}
 * @param kind and {@code id} name it in the ledger
 * @param search address of the pieces that have to do with it
 * @param referencedBy records that name it
 */
public record RecordView(
        String called,
        String title,
        String path,
        String kind,
        String id,
        List<FactLine> facts,
        String search,
        List<RecordKey> referencedBy) {
    /** Records that name it are shown up to so many. */
    private static final int MOST_REFERENCES = 60;

    public static RecordView of(
            Site site, RecordKey key, String called, String title, List<FactLine> facts, String search) {
        return new RecordView(
                called,
                title,
                pathOf(key),
                key.kind(),
                key.id(),
                facts,
                search,
                site.ledger().referencedBy(key).stream().limit(MOST_REFERENCES).toList());
    }

    /** The address of a record's page. */
    public static String pathOf(RecordKey key) {
        return switch (key.kind()) {
            case "board-pair" -> "/boards/" + key.id();
            case "cloth" -> "/cloths/" + key.id();
            case "lot" -> "/lots/" + key.id();
            case "party" -> "/people/" + key.id();
            case "clamping" -> "/clampings/" + key.id();
            case "piece" -> "/pieces/" + key.id();
            case "agreement" -> "/agreements/" + key.id();
            case "fair" -> "/fairs/" + key.id();
            case "examination" -> "/examinations/" + key.id();
            case "studio" -> "/studio";
            default -> "/history/" + key.kind() + "/" + key.id();
        };
    }
}

package tenterbook.web.record;

import java.util.List;
import java.util.function.Function;
import tenterbook.archive.Kinds;
import tenterbook.archive.field.Part;
import tenterbook.archive.record.AgreementRecord;
import tenterbook.archive.record.BoardPairRecord;
import tenterbook.archive.record.ClampingRecord;
import tenterbook.archive.record.ExaminationRecord;
import tenterbook.archive.record.FairRecord;
import tenterbook.archive.record.MaterialRecords;
import tenterbook.archive.record.PieceRecord;
import tenterbook.archive.record.StudioRecords;
import tenterbook.ledger.revision.Kind;
import tenterbook.piece.NumberScheme;
import tenterbook.web.Site;

/**
 * The routes to the records of a kind in the API.
 *
 * @param base path of the list, as in {@code /api/boards}
 * @param member name of the field of an answer that holds a record, as in {@code board}
 * @param special which of its routes are made elsewhere
 */
public record RecordPath<T>(Kind<T> kind, Part<T> part, String base, String member, Special special) {
    /** What differs from a plain kind. */
    enum Special {
        NONE,
        /** There is one record, without a list. */
        SINGLE,
        /** The list is the search, and one is read with its recipe. */
        SEARCHED,
        /** Listed and created with their piece. */
        WITH_PIECE
    }

    static final List<RecordPath<?>> ALL = List.of(
            new RecordPath<>(Kinds.PIECE, PieceRecord.PIECE, "/api/pieces", "piece", Special.SEARCHED),
            new RecordPath<>(Kinds.CLAMPING, ClampingRecord.CLAMPING, "/api/clampings", "clamping", Special.NONE),
            new RecordPath<>(Kinds.BOARD_PAIR, BoardPairRecord.BOARD_PAIR, "/api/boards", "boardPair", Special.NONE),
            new RecordPath<>(Kinds.CLOTH, MaterialRecords.CLOTH, "/api/cloths", "cloth", Special.NONE),
            new RecordPath<>(Kinds.LOT, MaterialRecords.LOT, "/api/lots", "lot", Special.NONE),
            new RecordPath<>(Kinds.PARTY, StudioRecords.PARTY, "/api/people", "party", Special.NONE),
            new RecordPath<>(Kinds.AGREEMENT, AgreementRecord.AGREEMENT, "/api/agreements", "agreement", Special.NONE),
            new RecordPath<>(Kinds.FAIR, FairRecord.FAIR, "/api/fairs", "fair", Special.NONE),
            new RecordPath<>(
                    Kinds.EXAMINATION,
                    ExaminationRecord.EXAMINATION,
                    "/api/examinations",
                    "examination",
                    Special.WITH_PIECE),
            new RecordPath<>(Kinds.STUDIO, StudioRecords.STUDIO, "/api/studio", "studio", Special.SINGLE));

    boolean single() {
        return special == Special.SINGLE;
    }

    boolean listed() {
        return special != Special.SEARCHED && !single();
    }

    boolean created() {
        return special == Special.NONE || special == Special.SEARCHED;
    }

    boolean read() {
        return special != Special.SEARCHED;
    }

    /** Name of the parameter in the path of one record. */
    String parameter() {
        return part.key().isEmpty() ? "id" : part.key();
    }

    /** Path of one record, as in {@code /api/boards/{id}}. */
    String one() {
        return single() ? base : base + "/{" + parameter() + "}";
    }

    String onlyId() {
        return Kinds.THE_STUDIO;
    }

    /** The next free number; empty where a name is chosen and not counted. */
    String next(Site site, Function<String, List<String>> used) {
        NumberScheme scheme;
        if (kind.equals(Kinds.PIECE)) {
            scheme = site.archive().studio().numbers();
        } else if (kind.equals(Kinds.CLAMPING)) {
            scheme = Kinds.CLAMPING_NUMBERS;
        } else if (kind.equals(Kinds.AGREEMENT)) {
            scheme = Kinds.AGREEMENT_NUMBERS;
        } else if (kind.equals(Kinds.FAIR)) {
            scheme = Kinds.FAIR_NUMBERS;
        } else {
            return "";
        }
        return scheme.next(used, site.year()).value();
    }
}

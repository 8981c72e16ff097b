package tenterbook.archive;

import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tenterbook.board.BoardPair;
import tenterbook.ledger.Kind;
import tenterbook.ledger.MappedCodec;
import tenterbook.ledger.Privacy;
import tenterbook.ledger.RecordKey;
import tenterbook.material.Cloth;
import tenterbook.material.Lot;
import tenterbook.photo.Photo;
import tenterbook.photo.PhotoCalibration;
import tenterbook.piece.Party;
import tenterbook.piece.Piece;
import tenterbook.piece.Studio;
import tenterbook.piece.condition.Examination;
import tenterbook.recipe.Clamping;

/** Every kind of record, and which others each names. The names stand in the ledger for ever. */
public final class Kinds {
    /** The identifier of the one studio record. */
    public static final String THE_STUDIO = "studio";

    public static final Kind<Studio> STUDIO =
            kind("studio", "studio", Studio.class, studio -> THE_STUDIO, studio -> List.of(), KindPrivacy.STUDIO);
    public static final Kind<BoardPair> BOARD_PAIR = kind(
            "board-pair", "board pair", BoardPair.class, board -> board.id().value(), board -> List.of(), Privacy.NONE);
    public static final Kind<Cloth> CLOTH = kind(
            "cloth", "bolt of cloth", Cloth.class, cloth -> cloth.id().value(), cloth -> List.of(), KindPrivacy.CLOTH);
    public static final Kind<Lot> LOT =
            kind("lot", "lot", Lot.class, lot -> lot.id().value(), lot -> List.of(), KindPrivacy.LOT);
    public static final Kind<Party> PARTY =
            kind("party", "party", Party.class, party -> party.id().value(), party -> List.of(), KindPrivacy.PARTY);
    public static final Kind<Photo> PHOTO = kind(
            "photo", "photograph", Photo.class, photo -> photo.digest().hex(), photo -> List.of(), KindPrivacy.PHOTO);
    public static final Kind<Clamping> CLAMPING = kind(
            "clamping",
            "clamping",
            Clamping.class,
            clamping -> clamping.id().value(),
            Kinds::namedByClamping,
            Privacy.NONE);
    public static final Kind<Piece> PIECE = kind(
            "piece", "piece", Piece.class, piece -> piece.number().value(), Kinds::namedByPiece, KindPrivacy.PIECE);
    /** Named by its photograph: one calibration each, and calibrating again makes a new revision of it. */
    public static final Kind<PhotoCalibration> CALIBRATION = kind(
            "calibration",
            "calibration",
            PhotoCalibration.class,
            calibration -> calibration.photo().hex(),
            calibration -> List.of(PHOTO.key(calibration.photo().hex())),
            KindPrivacy.CALIBRATION);

    public static final Kind<IssuedPaper> ISSUED_PAPER = kind(
            "issued-paper",
            "issued paper",
            IssuedPaper.class,
            IssuedPaper::id,
            Kinds::namedByPaper,
            KindPrivacy.ISSUED_PAPER);

    /** A sheet of labels by its name. */
    public static final Kind<LabelSheet> LABEL_SHEET = kind(
            "label-sheet", "sheet of labels", LabelSheet.class, LabelSheet::name, sheet -> List.of(), Privacy.NONE);

    public static final Kind<Examination> EXAMINATION = kind(
            "examination",
            "examination",
            Examination.class,
            examination -> examination.id().value(),
            Kinds::namedByExamination,
            KindPrivacy.EXAMINATION);

    public static final List<Kind<?>> ALL = List.of(
            STUDIO,
            BOARD_PAIR,
            CLOTH,
            LOT,
            PARTY,
            PHOTO,
            CLAMPING,
            PIECE,
            EXAMINATION,
            ISSUED_PAPER,
            CALIBRATION,
            LABEL_SHEET);

    private Kinds() {}

    private static <T> Kind<T> kind(
            String name,
            String called,
            Class<T> type,
            Function<T, String> id,
            Function<T, Collection<RecordKey>> references,
            Privacy privacy) {
        return new Kind<>(name, called, type, new MappedCodec<>(RecordJson.mapper(), type), id, references, privacy);
    }

    private static List<RecordKey> namedByClamping(Clamping clamping) {
        return Stream.of(
                        clamping.boards().stream()
                                .map(use -> BOARD_PAIR.key(use.board().value())),
                        clamping.cuts().stream()
                                .map(cut -> cut.cloth())
                                .filter(Objects::nonNull)
                                .map(cloth -> CLOTH.key(cloth.value())),
                        clamping.lots().filter(Objects::nonNull).map(lot -> LOT.key(lot.value())),
                        Stream.ofNullable(clamping.copiedFrom()).map(other -> CLAMPING.key(other.value())))
                .flatMap(keys -> keys)
                .distinct()
                .collect(Collectors.toList());
    }

    private static List<RecordKey> namedByPiece(Piece piece) {
        return Stream.of(
                        piece.made().stream()
                                .map(made -> CLAMPING.key(made.clamping().value())),
                        piece.photos().stream()
                                .map(photo -> PHOTO.key(photo.photo().hex())),
                        piece.events().stream()
                                .map(event -> event.party())
                                .filter(Objects::nonNull)
                                .map(party -> PARTY.key(party.value())),
                        Stream.ofNullable(piece.holder()).map(party -> PARTY.key(party.value())))
                .flatMap(keys -> keys)
                .distinct()
                .collect(Collectors.toList());
    }

    private static List<RecordKey> namedByExamination(Examination examination) {
        return Stream.of(
                        Stream.of(PIECE.key(examination.piece().value())),
                        examination.photos().stream()
                                .map(photo -> PHOTO.key(photo.photo().hex())),
                        Stream.of(
                                        examination.party(),
                                        examination.handedOver().party(),
                                        examination.received().party())
                                .filter(Objects::nonNull)
                                .map(party -> PARTY.key(party.value())),
                        Stream.ofNullable(examination.earlier())
                                .map(other -> new RecordKey("examination", other.value())))
                .flatMap(keys -> keys)
                .distinct()
                .collect(Collectors.toList());
    }

    private static List<RecordKey> namedByPaper(IssuedPaper paper) {
        return paper.pieces().stream()
                .map(issued -> PIECE.key(issued.piece().value()))
                .distinct()
                .toList();
    }
}

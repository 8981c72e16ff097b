package tenterbook.archive;

import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tenterbook.archive.record.AgreementRecord;
import tenterbook.archive.record.BoardPairRecord;
import tenterbook.archive.record.ClampingRecord;
import tenterbook.archive.record.ExaminationRecord;
import tenterbook.archive.record.FairRecord;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.archive.record.IssuedPaperRecord;
import tenterbook.archive.record.LabelSheet;
import tenterbook.archive.record.MaterialRecords;
import tenterbook.archive.record.PhotoRecords;
import tenterbook.archive.record.PieceRecord;
import tenterbook.archive.record.StudioRecords;
import tenterbook.board.BoardPair;
import tenterbook.board.BoardState;
import tenterbook.imaging.Photo;
import tenterbook.imaging.PhotoCalibration;
import tenterbook.ledger.revision.Kind;
import tenterbook.ledger.revision.NamedParts;
import tenterbook.ledger.revision.RecordKey;
import tenterbook.material.Cloth;
import tenterbook.material.Lot;
import tenterbook.piece.NumberScheme;
import tenterbook.piece.Party;
import tenterbook.piece.Piece;
import tenterbook.piece.PieceNumber;
import tenterbook.piece.Studio;
import tenterbook.piece.agreement.Agreement;
import tenterbook.piece.condition.Examination;
import tenterbook.piece.fair.Fair;
import tenterbook.recipe.Clamping;
import tenterbook.words.Message;

/** Every kind of record and its references. The stored names never change. */
public final class Kinds {
    /** The identifier of the one studio record. */
    public static final String THE_STUDIO = "studio";

    /** How clampings are numbered, and agreements and fairs; pieces are as the studio chose. */
    public static final NumberScheme CLAMPING_NUMBERS = new NumberScheme("C");

    public static final NumberScheme AGREEMENT_NUMBERS = new NumberScheme("A");

    public static final NumberScheme FAIR_NUMBERS = new NumberScheme("F");

    public static final Kind<Studio> STUDIO = new Kind<>(
                    "studio",
                    Message.of("kind.studio"),
                    StudioRecords.STUDIO,
                    studio -> THE_STUDIO,
                    studio -> List.of())
            .withPrivacy(KindPrivacy.STUDIO);
    public static final Kind<BoardPair> BOARD_PAIR = new Kind<>(
                    "board-pair",
                    Message.of("kind.board-pair"),
                    BoardPairRecord.BOARD_PAIR,
                    board -> board.id().value(),
                    board -> List.of())
            .withParts(new NamedParts<>(
                    board -> board.states().stream().map(BoardState::name).toList(), board -> List.of()));
    public static final Kind<Cloth> CLOTH = new Kind<>(
                    "cloth",
                    Message.of("kind.cloth"),
                    MaterialRecords.CLOTH,
                    cloth -> cloth.id().value(),
                    cloth -> List.of())
            .withPrivacy(KindPrivacy.CLOTH);
    public static final Kind<Lot> LOT = new Kind<>(
                    "lot",
                    Message.of("kind.lot"),
                    MaterialRecords.LOT,
                    lot -> lot.id().value(),
                    lot -> List.of())
            .withPrivacy(KindPrivacy.LOT);
    public static final Kind<Party> PARTY = new Kind<>(
                    "party",
                    Message.of("kind.party"),
                    StudioRecords.PARTY,
                    party -> party.id().value(),
                    party -> List.of())
            .withPrivacy(KindPrivacy.PARTY);
    public static final Kind<Photo> PHOTO = new Kind<>(
                    "photo",
                    Message.of("kind.photo"),
                    PhotoRecords.PHOTO,
                    photo -> photo.digest().hex(),
                    photo -> List.of())
            .withPrivacy(KindPrivacy.PHOTO);
    public static final Kind<Clamping> CLAMPING = new Kind<>(
                    "clamping",
                    Message.of("kind.clamping"),
                    ClampingRecord.CLAMPING,
                    clamping -> clamping.id().value(),
                    Kinds::namedByClamping)
            .withParts(new NamedParts<>(clamping -> List.of(), Kinds::statesUsed))
            .withPrivacy(KindPrivacy.CLAMPING);
    public static final Kind<Piece> PIECE = new Kind<>(
                    "piece",
                    Message.of("kind.piece"),
                    PieceRecord.PIECE,
                    piece -> piece.number().value(),
                    Kinds::namedByPiece)
            .withLaterNames(piece -> piece.particulars().laterNumbers().stream()
                    .map(PieceNumber::value)
                    .toList())
            .withPrivacy(KindPrivacy.PIECE);
    /** Identified by its photograph: one calibration each, and calibrating again makes a new revision of it. */
    public static final Kind<PhotoCalibration> CALIBRATION = new Kind<>(
                    "calibration",
                    Message.of("kind.calibration"),
                    PhotoRecords.CALIBRATION,
                    calibration -> calibration.photo().hex(),
                    calibration -> Stream.of(calibration.photo(), calibration.profile())
                            .filter(Objects::nonNull)
                            .map(photo -> PHOTO.key(photo.hex()))
                            .toList())
            .withPrivacy(KindPrivacy.CALIBRATION);

    public static final Kind<IssuedPaper> ISSUED_PAPER = new Kind<>(
                    "issued-paper",
                    Message.of("kind.issued-paper"),
                    IssuedPaperRecord.ISSUED_PAPER,
                    IssuedPaper::id,
                    Kinds::namedByPaper)
            .withPrivacy(KindPrivacy.ISSUED_PAPER);

    /** Identified by the name of the sheet. */
    public static final Kind<LabelSheet> LABEL_SHEET = new Kind<>(
            "label-sheet",
            Message.of("kind.label-sheet"),
            StudioRecords.LABEL_SHEET,
            LabelSheet::name,
            sheet -> List.of());

    public static final Kind<Examination> EXAMINATION = new Kind<>(
                    "examination",
                    Message.of("kind.examination"),
                    ExaminationRecord.EXAMINATION,
                    examination -> examination.id().value(),
                    Kinds::namedByExamination)
            .withPrivacy(KindPrivacy.EXAMINATION);

    public static final Kind<Agreement> AGREEMENT = new Kind<>(
                    "agreement",
                    Message.of("kind.agreement"),
                    AgreementRecord.AGREEMENT,
                    agreement -> agreement.id().value(),
                    Kinds::namedByAgreement)
            .withPrivacy(KindPrivacy.AGREEMENT);

    public static final Kind<Fair> FAIR = new Kind<>(
                    "fair",
                    Message.of("kind.fair"),
                    FairRecord.FAIR,
                    fair -> fair.id().value(),
                    Kinds::namedByFair)
            .withPrivacy(KindPrivacy.FAIR);

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
            AGREEMENT,
            FAIR,
            ISSUED_PAPER,
            CALIBRATION,
            LABEL_SHEET);

    private Kinds() {}

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

    private static List<NamedParts.Use> statesUsed(Clamping clamping) {
        return clamping.boards().stream()
                .filter(use -> !use.state().isEmpty())
                .map(use -> new NamedParts.Use(BOARD_PAIR.key(use.board().value()), use.state()))
                .distinct()
                .toList();
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

    private static List<RecordKey> namedByAgreement(Agreement agreement) {
        return Stream.concat(
                        agreement.pieces().stream()
                                .map(each -> PIECE.key(each.piece().value())),
                        Stream.ofNullable(agreement.party()).map(party -> PARTY.key(party.value())))
                .distinct()
                .toList();
    }

    private static List<RecordKey> namedByFair(Fair fair) {
        return fair.pieces().stream()
                .map(each -> PIECE.key(each.piece().value()))
                .toList();
    }

    private static List<RecordKey> namedByPaper(IssuedPaper paper) {
        return paper.pieces().stream()
                .map(issued -> PIECE.key(issued.piece().value()))
                .distinct()
                .toList();
    }
}

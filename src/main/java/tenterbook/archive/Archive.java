package tenterbook.archive;

import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import tenterbook.board.BoardPair;
import tenterbook.colour.palette.Region;
import tenterbook.imaging.ClothTable;
import tenterbook.ledger.Ledger;
import tenterbook.ledger.Saved;
import tenterbook.ledger.Unreadable;
import tenterbook.ledger.file.ArchiveFolder;
import tenterbook.ledger.revision.RecordKey;
import tenterbook.material.Cloth;
import tenterbook.material.Lot;
import tenterbook.measure.Digest;
import tenterbook.piece.Party;
import tenterbook.piece.Piece;
import tenterbook.piece.PieceNumber;
import tenterbook.piece.Studio;
import tenterbook.piece.agreement.Agreement;
import tenterbook.piece.condition.Examination;
import tenterbook.piece.fair.Fair;
import tenterbook.recipe.Clamping;
import tenterbook.words.Conventions;

/** An open archive: the folder held, its ledger and its records by kind. */
public final class Archive implements AutoCloseable {
    private final ArchiveFolder folder;
    private final Ledger ledger;
    private final PaperFiles papers;
    private final ClothTable cloths;

    private Archive(ArchiveFolder folder, Ledger ledger) {
        this.folder = folder;
        this.ledger = ledger;
        this.papers = new PaperFiles(folder.papers());
        this.cloths = new ClothTable(folder, this::cards);
    }

    /**
     * Opens the archive in {@code root}, making an empty one where there is none.
     *
     * @throws tenterbook.ledger.file.ArchiveProblem if it is in use, damaged, or cannot be written
     */
    public static Archive open(Path root, Clock clock) {
        return in(ArchiveFolder.hold(root), clock);
    }

    /** As {@link #open}, of a folder just made of a bag or another archive: an older ledger need not be kept aside. */
    public static Archive openMade(Path root, Clock clock) {
        return in(ArchiveFolder.holdMade(root), clock);
    }

    /**
     * Opens the archive in {@code root} for reading. Nothing in the folder is changed, and nothing can be saved.
     *
     * @throws tenterbook.ledger.file.ArchiveProblem if there is none, or it is in use, damaged, or cannot be read
     */
    public static Archive look(Path root, Clock clock) {
        return in(ArchiveFolder.look(root), clock);
    }

    /** As {@link #look}, with what is derived: the index, outlines of cloths and the like, as copies. */
    public static Archive lookThrough(Path root, Clock clock) {
        return in(ArchiveFolder.lookThrough(root), clock);
    }

    /** As {@link #look}, also while a program has the archive open; the records are those of one moment. */
    public static Archive beside(Path root, Clock clock) {
        return in(ArchiveFolder.beside(root), clock);
    }

    private static Archive in(ArchiveFolder folder, Clock clock) {
        try {
            return new Archive(folder, Ledger.open(folder, clock, Kinds.ALL));
        } catch (RuntimeException e) {
            folder.close();
            throw e;
        }
    }

    public ArchiveFolder folder() {
        return folder;
    }

    public Ledger ledger() {
        return ledger;
    }

    /** The stored files of issued papers. */
    public PaperFiles papers() {
        return papers;
    }

    /** Where the cloth is on each photograph. */
    public ClothTable cloths() {
        return cloths;
    }

    /** Where a person marked cards on a photograph. */
    private List<Region> cards(Digest photo) {
        return ledger.find(Kinds.CALIBRATION, photo.hex()).stream()
                .flatMap(saved -> saved.record().cards().stream())
                .map(card -> new Region(card.corners()))
                .toList();
    }

    public Studio studio() {
        return ledger.find(Kinds.STUDIO, Kinds.THE_STUDIO).map(Saved::record).orElse(Studio.UNNAMED);
    }

    /** {@link #studio}, or empty where its record cannot be read. */
    public Optional<Studio> readableStudio() {
        try {
            return Optional.of(studio());
        } catch (Unreadable e) {
            return Optional.empty();
        }
    }

    /** The author of what this thread saves: the maker, or the paired device whose request it answers. */
    public String author() {
        String named = Author.named();
        if (named != null) {
            return named;
        }
        return readableStudio()
                .map(Studio::maker)
                .filter(maker -> !maker.isEmpty())
                .orElse("maker");
    }

    /** How numbers, dates and instants are written here. */
    public Conventions conventions() {
        return readableStudio().orElse(Studio.UNNAMED).conventions();
    }

    public Optional<Piece> piece(String number) {
        return ledger.find(Kinds.PIECE, number).map(Saved::record);
    }

    public Optional<Clamping> clamping(String id) {
        return ledger.find(Kinds.CLAMPING, id).map(Saved::record);
    }

    public Optional<BoardPair> board(String id) {
        return ledger.find(Kinds.BOARD_PAIR, id).map(Saved::record);
    }

    public Optional<Cloth> cloth(String id) {
        return ledger.find(Kinds.CLOTH, id).map(Saved::record);
    }

    public Optional<Lot> lot(String id) {
        return ledger.find(Kinds.LOT, id).map(Saved::record);
    }

    public Optional<Party> party(String id) {
        return ledger.find(Kinds.PARTY, id).map(Saved::record);
    }

    /** Everybody of this name, in any case of its letters. */
    public List<Party> partiesCalled(String name) {
        return ledger.all(Kinds.PARTY).stream()
                .map(Saved::record)
                .filter(party -> party.name().equalsIgnoreCase(name.strip()))
                .toList();
    }

    /** The clampings a piece passed through, in order; one that cannot be found is left out. */
    public List<Clamping> clampingsOf(Piece piece) {
        return piece.made().stream()
                .map(made -> clamping(made.clamping().value()))
                .flatMap(Optional::stream)
                .toList();
    }

    /** The examinations of a piece, earliest first. */
    public List<Examination> examinationsOf(PieceNumber piece) {
        List<String> ids = ledger.referencedBy(Kinds.PIECE.key(piece.value())).stream()
                .filter(key -> key.kind().equals(Kinds.EXAMINATION.name()))
                .map(RecordKey::id)
                .toList();
        return ledger.records(Kinds.EXAMINATION, ids).values().stream()
                .sorted(Examination.IN_TIME)
                .toList();
    }

    /** The loans and consignments of a piece, earliest first. */
    public List<Agreement> agreementsOf(PieceNumber piece) {
        List<String> ids = ledger.referencedBy(Kinds.PIECE.key(piece.value())).stream()
                .filter(key -> key.kind().equals(Kinds.AGREEMENT.name()))
                .map(RecordKey::id)
                .toList();
        return ledger.records(Kinds.AGREEMENT, ids).values().stream()
                .sorted(Agreement.IN_TIME)
                .toList();
    }

    /** The pieces of an agreement that are in use, in its order. */
    public List<Piece> piecesOf(Agreement agreement) {
        return agreement.pieces().stream()
                .flatMap(each -> piece(each.piece().value()).stream())
                .toList();
    }

    /** The pieces chosen for a fair that are in use, in its order. */
    public List<Piece> piecesOf(Fair fair) {
        return fair.pieces().stream()
                .flatMap(each -> piece(each.piece().value()).stream())
                .toList();
    }

    /** The numbers of the pieces that came out of a clamping. */
    public List<PieceNumber> piecesOf(Clamping clamping) {
        return ledger.referencedBy(Kinds.CLAMPING.key(clamping.id().value())).stream()
                .filter(key -> key.kind().equals(Kinds.PIECE.name()))
                .map(RecordKey::id)
                .map(PieceNumber::new)
                .toList();
    }

    @Override
    public void close() {
        cloths.close();
        ledger.close();
        folder.close();
    }
}

package tenterbook.facts;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tenterbook.board.BoardId;
import tenterbook.board.BoardPair;
import tenterbook.imaging.Photo;
import tenterbook.imaging.SeenCloth;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.material.Cloth;
import tenterbook.material.ClothId;
import tenterbook.material.Lot;
import tenterbook.material.LotId;
import tenterbook.material.Role;
import tenterbook.measure.Digest;
import tenterbook.piece.Party;
import tenterbook.piece.PartyId;
import tenterbook.piece.PhotoRole;
import tenterbook.piece.Piece;
import tenterbook.piece.PiecePhoto;
import tenterbook.piece.Studio;
import tenterbook.piece.agreement.AgreedPiece;
import tenterbook.piece.agreement.Agreement;
import tenterbook.piece.condition.Examination;
import tenterbook.piece.label.PieceComponent;
import tenterbook.recipe.BoardUse;
import tenterbook.recipe.Clamping;
import tenterbook.recipe.dip.DipTally;
import tenterbook.words.Joined;
import tenterbook.words.Message;
import tenterbook.words.Written;

/**
 * A piece with all records about it, and the facts derived from them. Missing records are left out. Facts are computed when
 * asked for.
 *
 * @param studio null where its record cannot be read
 * @param clampings those it passed through, in order
 * @param seen the cloth on the photographs whose colours count; looked for when it is asked for
 * @param examinations earliest first
 * @param agreements that name it, earliest first; read when they are asked for
 * @param recorded when its first revision was written; null where not read, because it has a date of its own
 */
public record PieceFacts(
        @Nullable Studio studio,
        Piece piece,
        List<Clamping> clampings,
        Map<BoardId, BoardPair> boards,
        Map<ClothId, Cloth> cloths,
        Map<LotId, Lot> lots,
        Map<PartyId, Party> parties,
        Map<Digest, Photo> photos,
        Supplier<Map<Digest, SeenCloth>> seen,
        List<Examination> examinations,
        Supplier<List<Agreement>> agreements,
        @Nullable Instant recorded) {
    /** Views of the piece itself, best first. */
    private static final List<PhotoRole> OF_THE_PIECE = List.of(
            PhotoRole.FRONT, PhotoRole.BACK, PhotoRole.DETAIL, PhotoRole.FAULT, PhotoRole.LAYER, PhotoRole.OTHER);

    public PieceFacts {
        clampings = List.copyOf(clampings);
        examinations = examinations.stream().sorted(Examination.IN_TIME).toList();
    }

    /** @throws ArchiveProblem where its record cannot be read */
    @Override
    public Studio studio() {
        if (studio == null) {
            throw new ArchiveProblem(Message.of("page.studio-needed").inEnglish());
        }
        return studio;
    }

    // ---- facts

    /** What is on the piece besides its cloth, with fibres where they are known; empty where nothing is recorded. */
    public String besidesCloth() {
        List<PieceComponent> parts = piece.label().components();
        boolean named = parts.stream().anyMatch(part -> part.name().equalsIgnoreCase(piece.trims()));
        String described = new Joined(", ", parts).onPaper();
        return Stream.of(described, named ? "" : piece.trims())
                .filter(words -> !words.isEmpty())
                .collect(Collectors.joining(", "));
    }

    /** All its dips, over every clamping. */
    public DipTally dips() {
        return clampings.stream().map(Clamping::dips).reduce(DipTally.NONE, DipTally::plus);
    }

    public Condition condition() {
        return Condition.of(piece, examinations);
    }

    /** Distinguishing features: those recorded, its faults, and what the last report saw; empty where there are none. */
    public String features() {
        String recorded = piece.particulars().features();
        String seen = condition().features();
        if (recorded.isEmpty() || seen.isEmpty()) {
            return recorded + seen;
        }
        return recorded.matches("(?s).*[.!?]") ? recorded + " " + Written.capital(seen) : recorded + "; " + seen;
    }

    /** Whether a loan or consignment states a value for it, with whomever. */
    public boolean valueAgreed() {
        return agreements.get().stream()
                .flatMap(agreement -> agreement.piece(piece.number()).stream())
                .map(AgreedPiece::value)
                .anyMatch(Objects::nonNull);
    }

    public Whereabouts whereabouts() {
        return Whereabouts.of(piece);
    }

    public Origin origin() {
        return Origin.of(studio(), piece, clampings);
    }

    /** The same; empty where the studio's record cannot be read. */
    public Optional<Origin> readableOrigin() {
        return studio == null ? Optional.empty() : Optional.of(origin());
    }

    public Cloths cloth() {
        return Cloths.of(clampings, cloths);
    }

    public Colours colours() {
        return Colours.of(piece, photos, seen.get());
    }

    /** The same as far as a person named them; nobody looks for the cloth on a photograph. */
    public Colours namedColours() {
        return Colours.of(piece, photos, Map.of());
    }

    /** Whether any of its clampings is known. */
    public boolean dyed() {
        return !clampings.isEmpty();
    }

    // ---- what it was made with

    /** Board states used, each once, in order. */
    public List<BoardUse> boardUses() {
        return boardUses(clampings.size());
    }

    /** Those used until it was in this state, from 1. */
    public List<BoardUse> boardUses(int state) {
        return clampings.stream()
                .limit(state)
                .flatMap(clamping -> clamping.boards().stream())
                .distinct()
                .toList();
    }

    public Optional<BoardPair> board(BoardId id) {
        return Optional.ofNullable(boards.get(id));
    }

    /** As in 'B02 Heron weir'; the identifier where the ledger lacks the board. */
    public String boardTitle(BoardId id) {
        return board(id).map(BoardPair::title).orElse(id.value());
    }

    /** The boards used, each once, in order. */
    public List<BoardPair> boardsUsed() {
        return boardUses().stream()
                .map(BoardUse::board)
                .distinct()
                .flatMap(id -> board(id).stream())
                .toList();
    }

    public Optional<Lot> lot(@Nullable LotId id) {
        return id == null ? Optional.empty() : Optional.ofNullable(lots.get(id));
    }

    /** The lots put into any bath, each once, in order. */
    public Stream<Lot> lotsUsed() {
        return clampings.stream()
                .flatMap(Clamping::lots)
                .filter(Objects::nonNull)
                .distinct()
                .map(lots::get)
                .filter(Objects::nonNull);
    }

    public Stream<Lot> lotsUsed(Role role) {
        return lotsUsed().filter(lot -> lot.role() == role);
    }

    // ---- people and pictures

    public Optional<Party> party(@Nullable PartyId id) {
        return id == null ? Optional.empty() : Optional.ofNullable(parties.get(id));
    }

    /** Its holder, where recorded as a party. */
    public Optional<Party> holder() {
        return whereabouts().holder().flatMap(this::party);
    }

    /**
     * Photographs of the piece in its present state: one of each role, the best role first, then the others. Those of work,
     * paper and places are left out.
     */
    public List<PiecePhoto> pictures() {
        List<PiecePhoto> first = new ArrayList<>();
        List<PiecePhoto> others = new ArrayList<>();
        for (PhotoRole role : OF_THE_PIECE) {
            List<PiecePhoto> ofRole = piece.photos().stream()
                    .filter(photo -> photo.state() == piece.state() && rank(photo) == role)
                    .toList();
            ofRole.stream().limit(1).forEach(first::add);
            ofRole.stream().skip(1).forEach(others::add);
        }
        first.addAll(others);
        return first;
    }

    /** Whether it shows the piece itself; one without a role does. */
    public static boolean ofThePiece(PiecePhoto photo) {
        return OF_THE_PIECE.contains(rank(photo));
    }

    /** A photograph without a role ranks with the last. */
    private static PhotoRole rank(PiecePhoto photo) {
        return photo.role() == null ? PhotoRole.OTHER : photo.role();
    }
}

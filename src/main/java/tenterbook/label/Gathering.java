package tenterbook.label;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import tenterbook.archive.Archive;
import tenterbook.board.BoardPair;
import tenterbook.colour.ColourWords;
import tenterbook.material.Cloth;
import tenterbook.material.Lot;
import tenterbook.piece.ColourRegion;
import tenterbook.piece.Piece;
import tenterbook.piece.PiecePhoto;
import tenterbook.piece.Studio;
import tenterbook.recipe.Clamping;

/** Gathers from an archive what a label may say of a piece. What is not recorded is left out, never filled in. */
public final class Gathering {
    private Gathering() {}

    public static LabelFacts of(Archive archive, Piece piece) {
        return all(archive, List.of(piece)).get(0);
    }

    /** Of several pieces; what they share is read once. */
    public static List<LabelFacts> all(Archive archive, List<Piece> pieces) {
        Studio studio = archive.studio();
        Function<String, Optional<Clamping>> clampings = once(archive::clamping);
        Function<String, Optional<Cloth>> cloths = once(archive::cloth);
        Function<String, Optional<Lot>> lots = once(archive::lot);
        Function<String, Optional<BoardPair>> boards = once(archive::board);
        return pieces.stream()
                .map(piece -> coloured(bare(
                        studio,
                        piece,
                        piece.made().stream()
                                .map(made -> clampings.apply(made.clamping().value()))
                                .flatMap(Optional::stream)
                                .toList(),
                        cloths,
                        lots,
                        boards)))
                .toList();
    }

    private static <T> Function<String, Optional<T>> once(Function<String, Optional<T>> reading) {
        Map<String, Optional<T>> read = new HashMap<>();
        return id -> read.computeIfAbsent(id, reading);
    }

    /** The same with the colours a person named. */
    static LabelFacts coloured(LabelFacts bare) {
        return new LabelFacts(
                bare.studio(),
                bare.piece(),
                bare.cloths(),
                bare.lots(),
                bare.boards(),
                bare.clampings(),
                palette(bare.piece()));
    }

    /**
     * From records that were read already, without the colours, whose names take time to find.
     *
     * @param clampings those the piece passed through, in order of time
     */
    static LabelFacts bare(
            Studio studio,
            Piece piece,
            List<Clamping> clampings,
            Function<String, Optional<Cloth>> clothOf,
            Function<String, Optional<Lot>> lotOf,
            Function<String, Optional<BoardPair>> boardOf) {
        Map<String, Cloth> cloths = new LinkedHashMap<>();
        // A piece that is dyed again stays the cloth it was cut from, so the first clamping tells the cloth.
        clampings.stream()
                .limit(1)
                .flatMap(clamping -> clamping.cuts().stream())
                .map(cut -> cut.cloth())
                .filter(Objects::nonNull)
                .forEach(id -> clothOf.apply(id.value()).ifPresent(cloth -> cloths.put(id.value(), cloth)));
        return new LabelFacts(
                studio,
                piece,
                cloths.values().stream()
                        .map(cloth -> new LabelFacts.ClothPart(cloth, ""))
                        .toList(),
                clampings.stream()
                        .flatMap(Clamping::lots)
                        .filter(Objects::nonNull)
                        .distinct()
                        .map(id -> lotOf.apply(id.value()))
                        .flatMap(Optional::stream)
                        .toList(),
                clampings.stream()
                        .flatMap(clamping -> clamping.boards().stream())
                        .map(use -> use.board())
                        .distinct()
                        .map(id -> boardOf.apply(id.value()))
                        .flatMap(Optional::stream)
                        .toList(),
                clampings,
                List.of());
    }

    /** Characters that stand beside a colour on the narrowest tag. */
    private static final int LONGEST_NAME = 19;

    /** The maker's name where it is short enough to stand beside its colour, else its first phrase, else plain words. */
    private static String shortName(ColourRegion region) {
        String first = region.name().split("[,;(:]", 2)[0].strip();
        String name = region.name().length() <= LONGEST_NAME ? region.name() : first;
        return name.isEmpty() || name.length() > LONGEST_NAME ? ColourWords.of(region.colour()) : name;
    }

    /** The colours a person named on photographs of the piece as it now is, each once. */
    private static List<PaletteColour> palette(Piece piece) {
        Map<String, PaletteColour> named = new LinkedHashMap<>();
        List<PiecePhoto> photos = new ArrayList<>(piece.photos());
        photos.removeIf(photo -> photo.state() != piece.state());
        for (PiecePhoto photo : photos) {
            for (ColourRegion region : photo.regions()) {
                String name = shortName(region);
                named.putIfAbsent(
                        region.role() + "/" + region.name(), new PaletteColour(region.colour(), region.share(), name));
            }
        }
        return named.values().stream()
                .sorted(java.util.Comparator.comparingDouble(
                        (PaletteColour colour) -> colour.share() == null ? 0 : -colour.share()))
                .toList();
    }
}

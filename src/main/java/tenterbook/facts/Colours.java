package tenterbook.facts;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tenterbook.colour.palette.PaletteColour;
import tenterbook.imaging.Photo;
import tenterbook.imaging.SeenCloth;
import tenterbook.imaging.cloth.ClothOutline.Edge;
import tenterbook.measure.Digest;
import tenterbook.piece.ColourRegion;
import tenterbook.piece.ColourRole;
import tenterbook.piece.PhotoRole;
import tenterbook.piece.Piece;
import tenterbook.piece.PiecePhoto;

/**
 * The colours of a piece and where they come from: those a person named on photographs of the newest state that has any
 * colour, else those of the cloth on that state's front photographs (on any of its photographs where no front one can be shown).
 * Only cloth counts: where its edge was not found, the photograph gives no colours.
 *
 * @param named each as it stands on its photograph
 * @param cloth main colours within the outlines of the cloth; shares averaged where there are several photographs, so that they
 *     never add up to more than the piece; greatest share first within each photograph
 * @param picture the same of the whole photographs, with all that lies around the cloth
 * @param doubt the first of these photographs on which the edge of the cloth was not found; null where it was found on each
 * @param closeView whether {@link #cloth} is that of close views, since no photograph of the whole piece shows its cloth's edge
 * @param state which state of the piece they show, from 1
 * @param now whether that is the state the piece is in; if not, it was dyed again since and no photograph shows it
 * @param calibrated whether every one of {@link #shown} comes from a calibrated photograph; false where there is none
 */
public record Colours(
        List<PieceColour> named,
        List<PieceColour> cloth,
        List<PieceColour> picture,
        @Nullable Doubt doubt,
        boolean closeView,
        int state,
        boolean now,
        boolean calibrated) {
    /** Least share of an entry that counts; smaller ones are dust or a seam. */
    public static final double LEAST_SHARE = 0.02;

    /** A photograph that gives no colours, and why the edge of its cloth was not found. */
    public record Doubt(Edge why, Digest photo) {}

    /** The source of the colours. */
    public enum From {
        /** A person named them on a photograph. */
        NAMED,
        /** The colours within the outline of the cloth on a photograph. */
        CLOTH,
        NOTHING
    }

    public Colours {
        named = List.copyOf(named);
        cloth = List.copyOf(cloth);
        picture = List.copyOf(picture);
    }

    /** @param seen the cloth on each photograph that {@link #look} looks at */
    static Colours of(Piece piece, Map<Digest, Photo> photos, Map<Digest, SeenCloth> seen) {
        List<PiecePhoto> newest = newest(piece, photos);
        int state = newest.stream().mapToInt(PiecePhoto::state).max().orElse(piece.state());
        List<ColourRegion> regions =
                newest.stream().flatMap(photo -> photo.regions().stream()).toList();
        List<Photo> counted = counted(piece, photos);
        List<Photo> whole = coloured(counted, seen);
        List<Photo> coloured = whole.isEmpty() ? coloured(closeViews(piece, photos), seen) : whole;
        List<PieceColour> cloth = new ArrayList<>();
        coloured.forEach(photo -> add(cloth, seen(seen, photo).palette(), coloured.size()));
        List<PieceColour> picture = new ArrayList<>();
        counted.forEach(photo -> add(picture, photo.palette(), counted.size()));
        boolean calibrated = regions.isEmpty()
                ? !coloured.isEmpty()
                        && coloured.stream()
                                .noneMatch(photo -> photo.calibration().equals(Photo.UNCALIBRATED))
                : regions.stream().allMatch(ColourRegion::calibrated);
        return new Colours(
                regions.stream()
                        .map(region -> new PieceColour(region.colour(), region.share(), region.name(), region.role()))
                        .toList(),
                cloth,
                picture,
                counted.stream()
                        .map(photo -> new Doubt(seen(seen, photo).outline().edge(), photo.digest()))
                        .filter(doubt -> !doubt.why().found() && doubt.why() != Edge.NOT_YET)
                        .findFirst()
                        .orElse(null),
                whole.isEmpty() && !coloured.isEmpty(),
                state,
                state == piece.state(),
                calibrated);
    }

    private static List<Photo> coloured(List<Photo> photos, Map<Digest, SeenCloth> seen) {
        return photos.stream()
                .filter(photo -> !seen(seen, photo).palette().isEmpty())
                .toList();
    }

    /**
     * The cloth on the photographs whose colours count; on close views only where the others are known to give none.
     *
     * @param known as {@link tenterbook.imaging.ClothTable#known}
     */
    static Map<Digest, SeenCloth> look(
            Piece piece, Map<Digest, Photo> photos, Function<Collection<Photo>, Map<Digest, SeenCloth>> known) {
        List<Photo> counted = counted(piece, photos);
        Map<Digest, SeenCloth> seen = new HashMap<>(known.apply(counted));
        boolean none = counted.stream()
                .map(photo -> seen(seen, photo))
                .allMatch(each -> each.palette().isEmpty() && each.outline().edge() != Edge.NOT_YET);
        if (none) {
            seen.putAll(known.apply(closeViews(piece, photos)));
        }
        return seen;
    }

    /** Details of the state whose colours count. */
    private static List<Photo> closeViews(Piece piece, Map<Digest, Photo> photos) {
        return newest(piece, photos).stream()
                .filter(photo -> photo.role() == PhotoRole.DETAIL && pictured(photos, photo))
                .map(photo -> photos.get(photo.photo()))
                .distinct()
                .toList();
    }

    private static SeenCloth seen(Map<Digest, SeenCloth> seen, Photo photo) {
        return seen.getOrDefault(photo.digest(), SeenCloth.NONE);
    }

    private static void add(List<PieceColour> colours, List<PaletteColour> palette, int photos) {
        for (PaletteColour entry : palette) {
            if (entry.share() >= LEAST_SHARE) {
                colours.add(new PieceColour(entry.colour(), Math.min(1, entry.share()) / photos, ""));
            }
        }
    }

    /** The photographs of the newest state of which any has a colour. */
    private static List<PiecePhoto> newest(Piece piece, Map<Digest, Photo> photos) {
        List<PiecePhoto> coloured = piece.photos().stream()
                .filter(photo -> !photo.regions().isEmpty() || pictured(photos, photo))
                .toList();
        int state = coloured.stream().mapToInt(PiecePhoto::state).max().orElse(piece.state());
        return coloured.stream().filter(photo -> photo.state() == state).toList();
    }

    /** The photographs whose colours count, each once. */
    private static List<Photo> counted(Piece piece, Map<Digest, Photo> photos) {
        List<PiecePhoto> pictured = newest(piece, photos).stream()
                .filter(photo -> pictured(photos, photo))
                .toList();
        List<PiecePhoto> front = pictured.stream()
                .filter(photo -> photo.role() == PhotoRole.FRONT)
                .toList();
        return (front.isEmpty() ? pictured : front)
                .stream().map(photo -> photos.get(photo.photo())).distinct().toList();
    }

    private static boolean pictured(Map<Digest, Photo> photos, PiecePhoto photo) {
        Photo found = photos.get(photo.photo());
        return found != null && !found.palette().isEmpty();
    }

    /** Of one photograph alone, by name of nobody. */
    public static List<PieceColour> ofPalette(List<PaletteColour> palette) {
        return palette.stream()
                .map(entry -> new PieceColour(entry.colour(), Math.min(1, entry.share()), ""))
                .toList();
    }

    public From from() {
        if (!named.isEmpty()) {
            return From.NAMED;
        }
        return cloth.isEmpty() ? From.NOTHING : From.CLOTH;
    }

    /** The colours that a page shows: the named ones, else those of the cloth. */
    public List<PieceColour> shown() {
        return named.isEmpty() ? cloth : named;
    }

    /**
     * Mean L* of {@link #shown}, by share; where any of them has none, each counts alike. Null where no colour is known.
     */
    public @Nullable Double lightness() {
        boolean measured = shown().stream().allMatch(colour -> colour.share() != null && colour.share() > 0);
        double sum = 0;
        double weights = 0;
        for (PieceColour colour : shown()) {
            double weight = measured ? colour.share() : 1;
            sum += weight * colour.colour().lightness();
            weights += weight;
        }
        return weights == 0 ? null : sum / weights;
    }

    /**
     * Greatest difference of L* between two of its colours: of the named ones, or of those of the cloth where fewer than two are
     * named. 0 for a cloth of one colour; null where only one colour was named and the cloth is not known, or nothing is.
     */
    public @Nullable Double contrast() {
        List<PieceColour> counted = named.size() > 1 ? named : cloth;
        return counted.isEmpty()
                ? null
                : counted.stream()
                                .mapToDouble(each -> each.colour().lightness())
                                .max()
                                .orElseThrow()
                        - counted.stream()
                                .mapToDouble(each -> each.colour().lightness())
                                .min()
                                .orElseThrow();
    }

    /** The one that stands for the piece where only one can: the named ground, else the greatest share; empty where none is known. */
    public Optional<PieceColour> main() {
        return named.stream()
                .filter(colour -> colour.role() == ColourRole.GROUND)
                .findFirst()
                .or(() -> shown().stream()
                        .filter(colour -> colour.role() != ColourRole.RESIST)
                        .max(Comparator.comparingDouble(colour -> colour.share() == null ? 0 : colour.share())));
    }

    /** The named colours for paper, each role and name once, the greatest share first. None where they show an earlier state. */
    public List<PieceColour> ofToday() {
        Map<String, PieceColour> once = new LinkedHashMap<>();
        if (now) {
            named.forEach(colour -> once.putIfAbsent(colour.role() + "/" + colour.name(), colour));
        }
        return once.values().stream()
                .sorted(Comparator.comparingDouble(colour -> colour.share() == null ? 0 : -colour.share()))
                .toList();
    }

    /**
     * Named colours and those of the cloth together, for finding pieces by colour. A named colour has a share only where nothing
     * else has, since its area would be counted twice.
     */
    public List<PieceColour> all() {
        return with(cloth);
    }

    /** The same with everything that is in the photographs, the cloth or not. */
    public List<PieceColour> anything() {
        return with(picture);
    }

    private List<PieceColour> with(List<PieceColour> palette) {
        List<PieceColour> all = new ArrayList<>();
        named.forEach(colour -> all.add(new PieceColour(
                colour.colour(), palette.isEmpty() ? colour.share() : null, colour.name(), colour.role())));
        all.addAll(palette);
        return all;
    }
}

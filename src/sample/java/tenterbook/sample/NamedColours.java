package tenterbook.sample;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import tenterbook.colour.palette.Region;
import tenterbook.colour.palette.RegionColour;
import tenterbook.colour.space.Ciede2000;
import tenterbook.colour.space.Lab;
import tenterbook.piece.ColourRegion;
import tenterbook.piece.ColourRole;

/**
 * Marks ground, resist and local colour on a photograph of a whole cloth and measures them there. Where each lies is known
 * because the cloth was drawn; what colour it has is read from the picture's own pixels.
 */
final class NamedColours {
    /** mm from a channel's edge from which a place is surely ground or surely resist. */
    private static final double SURE_MM = 0.9;

    private static final int CANDIDATES = 40;
    private static final double LEAST_PIXELS = 1.2;
    /** How much smaller than the roomiest a place may be. */
    private static final double ROOMY = 0.8;

    /** Part of the room that is measured, away from blurred edges. */
    private static final double MARGIN = 0.8;

    private final ClothPhotograph cloth;
    private final int[] argb;
    private final int width;
    private final int height;

    /** @param argb the upright picture as the archive shows it, of the photograph's own size */
    NamedColours(ClothPhotograph cloth, int[] argb) {
        this.cloth = cloth;
        this.argb = argb;
        this.width = cloth.picture.width;
        this.height = cloth.picture.height;
    }

    /** @param names the maker's own name for each part that is to be marked */
    List<ColourRegion> marked(Map<ColourRole, String> names) {
        List<ColourRegion> marked = new ArrayList<>();
        names.forEach((role, name) -> {
            Disc disc = typical(role);
            marked.add(new ColourRegion(role, name, rounded(disc.colour.mean()), share(role), disc.corners(), false));
        });
        return marked;
    }

    /** Whether a pixel of the cloth belongs to that part, by at least so many mm. */
    private boolean belongs(int i, ColourRole role, double mm) {
        float channel = cloth.channel[i];
        return switch (role) {
            case GROUND -> channel > mm;
            case RESIST -> channel <= -mm;
            case LOCAL -> Float.isNaN(channel);
            case OTHER -> false;
        };
    }

    /** Of the cloth as it is seen, hem included; what the props hide is counted too. */
    private double share(ColourRole role) {
        IntPredicate onCloth = i -> cloth.cover[i] >= 0.5;
        long all = IntStream.range(0, argb.length).filter(onCloth).count();
        long part = IntStream.range(0, argb.length)
                .filter(onCloth)
                .filter(i -> belongs(i, role, 0))
                .count();
        return Math.round(1000.0 * part / all) / 1000.0;
    }

    /** A disc that lies wholly in one part, in pixels, with the colour measured there. */
    private record Disc(double x, double y, double radius, int width, int height, RegionColour colour) {
        static Disc measured(double x, double y, double radius, int[] argb, int width, int height) {
            List<Region.Corner> corners = ring(x, y, radius, width, height).stream()
                    .map(c -> new Region.Corner(c.across(), c.down()))
                    .toList();
            return new Disc(x, y, radius, width, height, RegionColour.of(argb, width, height, new Region(corners)));
        }

        List<ColourRegion.Corner> corners() {
            return ring(x, y, radius, width, height);
        }

        private static List<ColourRegion.Corner> ring(double x, double y, double radius, int width, int height) {
            return IntStream.range(0, 8)
                    .mapToDouble(k -> Math.PI * (2 * k + 1) / 8)
                    .mapToObj(angle -> new ColourRegion.Corner(
                            fraction((x + radius * Math.cos(angle)) / width),
                            fraction((y + radius * Math.sin(angle)) / height)))
                    .toList();
        }

        private static double fraction(double part) {
            return Math.round(Math.max(0, Math.min(1, part)) * 1e5) / 1e5;
        }
    }

    /** Among the roomiest places of that part, the one whose colour differs least from all the others'. */
    private Disc typical(ColourRole role) {
        Field room = room(role);
        List<Disc> candidates = new ArrayList<>();
        double roomiest = 0;
        while (candidates.size() < CANDIDATES) {
            int best = IntStream.range(0, room.values.length)
                    .reduce((a, b) -> room.values[b] > room.values[a] ? b : a)
                    .orElseThrow();
            double radius = room.values[best];
            roomiest = Math.max(roomiest, radius);
            if (radius < LEAST_PIXELS || radius < ROOMY * roomiest) {
                break;
            }
            double x = best % width + 0.5;
            double y = best / width + 0.5;
            candidates.add(Disc.measured(x, y, MARGIN * radius, argb, width, height));
            clear(room, x, y, 2 * radius + 6);
        }
        return candidates.stream()
                .min(Comparator.comparingDouble(one -> candidates.stream()
                        .mapToDouble(other -> Ciede2000.difference(one.colour.mean(), other.colour.mean()))
                        .sum()))
                .orElseThrow(() -> new IllegalStateException(
                        "No place of the sample's " + role + " is large enough to be measured"));
    }

    /** Pixels from each pixel to the nearest one that is not surely of that part; below 0 outside. */
    private Field room(ColourRole role) {
        Field sure = new Field(width, height);
        for (int i = 0; i < sure.values.length; i++) {
            boolean inside = cloth.cover[i] >= 1 && !cloth.hiddenOrHem(i) && belongs(i, role, SURE_MM);
            sure.values[i] = inside ? 1 : 0;
        }
        Field outwards = sure.signedDistance();
        for (int i = 0; i < outwards.values.length; i++) {
            outwards.values[i] = -outwards.values[i];
        }
        return outwards;
    }

    private void clear(Field room, double x, double y, double radius) {
        for (int py = (int) Math.max(0, y - radius); py < Math.min(height, y + radius); py++) {
            for (int px = (int) Math.max(0, x - radius); px < Math.min(width, x + radius); px++) {
                room.values[py * width + px] = 0;
            }
        }
    }

    private static Lab rounded(Lab lab) {
        return new Lab(hundredths(lab.lightness()), hundredths(lab.a()), hundredths(lab.b()));
    }

    private static double hundredths(double value) {
        return Math.round(value * 100) / 100.0;
    }
}

package tenterbook.bench;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.colour.palette.PaletteColour;
import tenterbook.colour.space.Ciede2000;
import tenterbook.colour.space.Lab;
import tenterbook.piece.ColourRole;
import tenterbook.piece.Piece;
import tenterbook.search.PieceIndex;
import tenterbook.search.find.SearchResult;
import tenterbook.search.query.ColourChoice;
import tenterbook.search.query.Order;
import tenterbook.search.query.PieceQuery;

/**
 * Colour search beside a scan that compares every colour of every piece by the plain formula, query by query in turn, so that both
 * meet the same load. The scan holds bare numbers in memory, counts and does nothing else; the search also orders, counts all facets
 * and reads a page of cards.
 */
final class ColourBench {
    /** Queries of each form whose pieces are compared one by one with the scan's, besides the counts of all. */
    private static final int SCANNED_OF_ALIKE = 10;

    private static final int COMPARED_WHOLE = 3;

    private final Random random = new Random(19);
    private final PieceIndex index;
    private final int runs;
    private final List<Packed> pieces = new ArrayList<>();

    /**
     * @param palette L, a, b, share of each colour
     * @param ground L, a, b
     */
    private record Packed(String number, double[] palette, double[] ground) {}

    ColourBench(Archive archive, PieceIndex index, int runs) {
        this.index = index;
        this.runs = runs;
        for (String number : archive.ledger().allIdsEverUsed(Kinds.PIECE)) {
            archive.piece(number).ifPresent(piece -> pieces.add(packed(archive, piece)));
        }
    }

    private static Packed packed(Archive archive, Piece piece) {
        List<PaletteColour> palette = archive.ledger()
                .find(Kinds.PHOTO, piece.photos().get(0).photo().hex())
                .orElseThrow()
                .record()
                .palette();
        double[] packed = new double[4 * palette.size()];
        for (int i = 0; i < palette.size(); i++) {
            Lab lab = palette.get(i).colour();
            packed[4 * i] = lab.lightness();
            packed[4 * i + 1] = lab.a();
            packed[4 * i + 2] = lab.b();
            packed[4 * i + 3] = palette.get(i).share();
        }
        Lab ground = piece.photos().get(0).regions().get(0).colour();
        return new Packed(piece.number().value(), packed, new double[] {ground.lightness(), ground.a(), ground.b()});
    }

    void run() {
        for (double within : new double[] {5, 10, 20}) {
            compare("colour within %.0f".formatted(within), within, 0, false);
        }
        compare("colour within 10 on at least 30 %", 10, 0.3, false);
        compare("ground within 10", 10, 0, true);
        compare("colour, tolerance 3 to 20", 0, 0, false);
        others();
    }

    /** A colour as someone would ask for: most near a dye of the archive, some anywhere. */
    private Lab colour() {
        return new Lab(15 + random.nextDouble() * 75, random.nextGaussian() * 18, random.nextGaussian() * 20 - 4);
    }

    private PieceQuery query(double within, double share, boolean ground) {
        double limit = within > 0 ? within : 3 + random.nextInt(18);
        return PieceQuery.EVERYTHING.withColours(
                ground
                        ? new ColourChoice(List.of(), Map.of(ColourRole.GROUND, colour()), "", limit, 0)
                        : new ColourChoice(List.of(colour()), Map.of(), "", limit, share));
    }

    private void compare(String name, double within, double share, boolean ground) {
        for (int i = 0; i < Math.min(300, 3 * runs); i++) {
            index.search(query(within, share, ground));
        }
        for (int i = 0; i < 10; i++) {
            scan(query(within, share, ground), null);
        }
        Timings scan = new Timings("  scanning with the plain formula", runs);
        Timings ours = new Timings(name, runs);
        long found = 0;
        long wrong = 0;
        for (int i = 0; i < runs; i++) {
            PieceQuery query = query(within, share, ground);
            long[] counts = new long[2];
            scan.run(() -> counts[0] = scan(query, null));
            ours.run(() -> counts[1] = index.search(query).total());
            found += counts[0];
            wrong += counts[0] == counts[1] ? 0 : 1;
        }
        ours.print();
        scan.print();
        int missed = 0;
        int added = 0;
        int compared = 0;
        for (int i = 0; i < COMPARED_WHOLE; i++) {
            PieceQuery query = query(within, share, ground);
            Set<String> expected = new HashSet<>();
            scan(query, expected);
            Set<String> got = everyNumber(query);
            compared += expected.size();
            added += (int)
                    got.stream().filter(number -> !expected.contains(number)).count();
            missed += (int)
                    expected.stream().filter(number -> !got.contains(number)).count();
        }
        System.out.printf(
                "    %.1f times as fast at p50, %.1f at p95 (by the clock); %,d pieces on average; counts differ in %d of %d queries;"
                        + " of %,d pieces compared one by one %d missed, %d too many%n",
                scan.clockMillis(0.5) / ours.clockMillis(0.5),
                scan.clockMillis(0.95) / ours.clockMillis(0.95),
                found / runs,
                wrong,
                runs,
                compared,
                missed,
                added);
    }

    private Set<String> everyNumber(PieceQuery query) {
        Set<String> numbers = new HashSet<>();
        PieceQuery paged = query.withSort(Order.NUMBER).withSize(PieceQuery.MOST_SIZE);
        for (int page = 1; ; page++) {
            SearchResult result = index.search(paged.withPage(page));
            result.hits().forEach(hit -> numbers.add(hit.card().number()));
            if (result.hits().isEmpty() || (long) page * PieceQuery.MOST_SIZE >= result.total()) {
                return numbers;
            }
        }
    }

    /** @param numbers takes those of the pieces found; null where the count is enough */
    private long scan(PieceQuery query, Set<String> numbers) {
        Lab ground = query.colours().regions().get(ColourRole.GROUND);
        Lab wanted = ground == null ? query.colour() : ground;
        long found = 0;
        for (Packed piece : pieces) {
            double[] colours = ground == null ? piece.palette : piece.ground;
            int step = ground == null ? 4 : 3;
            boolean any = false;
            double sum = 0;
            for (int i = 0; i < colours.length; i += step) {
                boolean near = Ciede2000.difference(
                                wanted.lightness(), wanted.a(), wanted.b(), colours[i], colours[i + 1], colours[i + 2])
                        <= query.within();
                any |= near;
                sum += near && step == 4 ? colours[i + 3] : 0;
            }
            if (any && (query.share() == 0 || sum >= query.share() - 1e-6)) {
                found++;
                if (numbers != null) {
                    numbers.add(piece.number);
                }
            }
        }
        return found;
    }

    private void others() {
        time(
                "two colours within 10",
                () -> PieceQuery.EVERYTHING.withColours(
                        new ColourChoice(List.of(colour(), colour()), Map.of(), "", 10.0, 0)));
        time(
                "colour within 10 in a text search",
                () -> PieceQuery.EVERYTHING
                        .withText("heron")
                        .withColours(new ColourChoice(List.of(colour()), Map.of(), "", 10.0, 0)));
    }

    /** Pieces like one, in turn with a scan that compares every pair of colours of every two palettes by the plain formula. */
    void alike() {
        for (int i = 0; i < Math.min(500, 4 * runs); i++) {
            index.search(like(any()));
        }
        Timings scan = new Timings("  scanning with the plain formula", runs);
        Timings ours = new Timings("like a piece, whole palettes", runs);
        int wrong = 0;
        int compared = 0;
        for (int i = 0; i < runs; i++) {
            Packed asked = any();
            double[][] all = new double[1][];
            SearchResult[] got = new SearchResult[1];
            ours.run(() -> got[0] = index.search(like(asked)));
            if (i % SCANNED_OF_ALIKE == 0) {
                scan.run(() -> all[0] = pieces.stream()
                        .filter(piece -> piece != asked)
                        .mapToDouble(piece -> distance(asked.palette, piece.palette))
                        .sorted()
                        .limit(got[0].hits().size())
                        .toArray());
                for (int rank = 0; rank < all[0].length; rank++) {
                    compared++;
                    wrong += Math.abs(all[0][rank] - got[0].hits().get(rank).distance()) < 1e-9 ? 0 : 1;
                }
            }
        }
        ours.print();
        scan.print();
        System.out.printf(
                "    %.1f times as fast at p50, %.1f at p95 (by the clock); of %,d places on first pages %d are held by a piece of another distance%n",
                scan.clockMillis(0.5) / ours.clockMillis(0.5),
                scan.clockMillis(0.95) / ours.clockMillis(0.95),
                compared,
                wrong);
        alikeWithin();
    }

    private void alikeWithin() {
        time(
                "like a piece, within 8",
                () -> PieceQuery.EVERYTHING.withColours(new ColourChoice(List.of(), Map.of(), any().number, 8.0, 0)));
    }

    private Packed any() {
        return pieces.get(random.nextInt(pieces.size()));
    }

    private static PieceQuery like(Packed piece) {
        return PieceQuery.EVERYTHING.withColours(new ColourChoice(List.of(), Map.of(), piece.number, null, 0));
    }

    /** The measure as it is described, each pair by the plain formula. */
    private static double distance(double[] one, double[] other) {
        return (oneWay(one, other) + oneWay(other, one)) / 2;
    }

    private static double oneWay(double[] from, double[] to) {
        double sum = 0;
        double shares = 0;
        for (int i = 0; i < from.length; i += 4) {
            double best = Double.POSITIVE_INFINITY;
            for (int j = 0; j < to.length; j += 4) {
                best = Math.min(
                        best, Ciede2000.difference(from[i], from[i + 1], from[i + 2], to[j], to[j + 1], to[j + 2]));
            }
            sum += from[i + 3] * best;
            shares += from[i + 3];
        }
        return sum / shares;
    }

    private void time(String name, java.util.function.Supplier<PieceQuery> queries) {
        Timings timings = new Timings(name, runs);
        for (int i = 0; i < Math.min(100, runs); i++) {
            index.search(queries.get());
        }
        for (int i = 0; i < runs; i++) {
            PieceQuery query = queries.get();
            timings.run(() -> index.search(query));
        }
        timings.print();
    }
}

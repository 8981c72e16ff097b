package tenterbook.search.index;

import java.nio.ByteBuffer;
import java.time.LocalDate;
import java.util.List;
import org.apache.lucene.util.BytesRef;
import tenterbook.facts.PieceColour;
import tenterbook.measure.PartialDate;
import tenterbook.measure.Quantity;
import tenterbook.measure.Unit;
import tenterbook.piece.Piece;
import tenterbook.recipe.dip.DipTally;

/**
 * Everything about a piece that is a number, as it lies in one field of the index. Ranges are a lower and an upper end;
 * NaN for both where nothing is known, infinite where that end is open.
 *
 * @param ranges by {@link #DIPS}, {@link #LENGTH} (cm), {@link #WIDTH} (cm), {@link #PRICE} (amount), {@link #DAYS} (days
 *     since 1970-01-01), {@link #MASS} (g): lower end at twice the index, upper end after it
 * @param colours L, a, b, share and role of each colour; the share NaN where unknown, the role as the ordinal of {@link
 *     tenterbook.piece.ColourRole}, {@link #CLOTH} and {@link #PICTURE} for what nobody named
 */
public record PieceNumbers(double[] ranges, double[] colours) {
    public static final int DIPS = 0;
    public static final int LENGTH = 1;
    public static final int WIDTH = 2;
    public static final int PRICE = 3;
    public static final int DAYS = 4;
    public static final int MASS = 5;
    public static final int RANGES = 6;
    /** A colour of the cloth, and one of the whole photograph. */
    public static final int CLOTH = -1;

    public static final int PICTURE = -2;
    /** Numbers for each colour. */
    public static final int COLOUR = 5;

    /** @param pictures colours of the whole photographs, that of the cloth among them */
    static PieceNumbers of(Piece piece, DipTally dips, List<PieceColour> colours, List<PieceColour> pictures) {
        double[] ranges = new double[2 * RANGES];
        put(ranges, DIPS, dips.known() ? dips.low() : Double.NaN, dips.known() ? dips.high() : Double.NaN);
        put(ranges, LENGTH, piece.length().in(Unit.CENTIMETRE));
        put(ranges, WIDTH, piece.width().in(Unit.CENTIMETRE));
        put(ranges, MASS, piece.mass().in(Unit.GRAM));
        double price =
                piece.price() == null ? Double.NaN : piece.price().amount().doubleValue();
        put(ranges, PRICE, price, price);
        PartialDate when = piece.finished();
        put(
                ranges,
                DAYS,
                !when.known() ? Double.NaN : day(when.from(), Double.NEGATIVE_INFINITY),
                !when.known() ? Double.NaN : day(when.to(), Double.POSITIVE_INFINITY));
        double[] packed = new double[COLOUR * (colours.size() + pictures.size())];
        for (int i = 0; i < packed.length / COLOUR; i++) {
            boolean picture = i >= colours.size();
            PieceColour colour = picture ? pictures.get(i - colours.size()) : colours.get(i);
            packed[COLOUR * i] = colour.colour().lightness();
            packed[COLOUR * i + 1] = colour.colour().a();
            packed[COLOUR * i + 2] = colour.colour().b();
            packed[COLOUR * i + 3] = colour.share() == null ? Double.NaN : colour.share();
            packed[COLOUR * i + 4] = picture
                    ? PICTURE
                    : colour.role() == null ? CLOTH : colour.role().ordinal();
        }
        return new PieceNumbers(ranges, packed);
    }

    private static void put(double[] ranges, int which, double low, double high) {
        ranges[2 * which] = low;
        ranges[2 * which + 1] = high;
    }

    private static void put(double[] ranges, int which, Quantity quantity) {
        put(
                ranges,
                which,
                quantity.known() ? end(quantity.low(), Double.NEGATIVE_INFINITY) : Double.NaN,
                quantity.known() ? end(quantity.high(), Double.POSITIVE_INFINITY) : Double.NaN);
    }

    private static double end(Double end, double open) {
        return end == null ? open : end;
    }

    private static double day(LocalDate day, double open) {
        return day == null ? open : day.toEpochDay();
    }

    double low(int which) {
        return ranges[2 * which];
    }

    double high(int which) {
        return ranges[2 * which + 1];
    }

    /** The middle for sorting; NaN where an end is missing. */
    double middle(int which) {
        double middle = (low(which) + high(which)) / 2;
        return Double.isInfinite(middle) ? Double.NaN : middle;
    }

    BytesRef packed() {
        ByteBuffer bytes = ByteBuffer.allocate(8 * (ranges.length + colours.length));
        bytes.asDoubleBuffer().put(ranges).put(colours);
        return new BytesRef(bytes.array());
    }

    public static PieceNumbers unpacked(BytesRef packed) {
        var doubles = ByteBuffer.wrap(packed.bytes, packed.offset, packed.length)
                .slice()
                .asDoubleBuffer();
        double[] ranges = new double[2 * RANGES];
        double[] colours = new double[doubles.remaining() - ranges.length];
        doubles.get(ranges).get(colours);
        return new PieceNumbers(ranges, colours);
    }
}

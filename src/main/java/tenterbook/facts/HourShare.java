package tenterbook.facts;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Archive;
import tenterbook.measure.Basis;
import tenterbook.measure.Quantity;
import tenterbook.measure.Unit;
import tenterbook.piece.Piece;
import tenterbook.recipe.Clamping;
import tenterbook.words.Listing;
import tenterbook.words.Message;

/**
 * The hours of work on a piece: as typed with it; else its share of the hours of its clampings, which are split among their pieces by area after what is typed
 * with single pieces is taken away. Shares are in whole minutes and add up to the whole ({@link AreaShares}); a range is split at both ends.
 *
 * @param hours {@link Quantity#UNRECORDED} where they are not recorded or cannot be computed
 * @param how of a computed share, in a sentence; null otherwise
 * @param missing why there is no share although a clamping has hours, in a sentence; null otherwise
 */
public record HourShare(
        Quantity hours, @Nullable Message how, @Nullable Message missing) {
    private static final BigDecimal MINUTES = BigDecimal.valueOf(60);

    /** Whole minutes from least to most. */
    private record Minutes(BigInteger low, BigInteger high) {
        static final Minutes NONE = new Minutes(BigInteger.ZERO, BigInteger.ZERO);

        /** To the nearest minute, halves up (common practice). */
        static Minutes of(Quantity duration) {
            Quantity hours = duration.in(Unit.HOUR);
            return new Minutes(whole(hours.low()), whole(hours.high()));
        }

        private static BigInteger whole(double hours) {
            return BigDecimal.valueOf(hours)
                    .multiply(MINUTES)
                    .setScale(0, RoundingMode.HALF_UP)
                    .toBigInteger();
        }

        Minutes plus(Minutes other) {
            return new Minutes(low.add(other.low), high.add(other.high));
        }

        /** What is left at least and at most. */
        Minutes minus(Minutes other) {
            return new Minutes(low.subtract(other.high), high.subtract(other.low));
        }
    }

    /** Reads the clampings of the piece and the other pieces that came out of them. */
    public static HourShare of(Archive archive, Piece piece) {
        return of(
                piece,
                archive.clampingsOf(piece),
                clamping -> archive.piecesOf(clamping).stream()
                        .flatMap(number -> archive.piece(number.value()).stream())
                        .toList());
    }

    /**
     * @param clampings of the piece
     * @param pieces all that came out of a clamping, this one among them
     */
    static HourShare of(Piece piece, List<Clamping> clampings, Function<Clamping, List<Piece>> pieces) {
        Quantity typed = typed(piece);
        if (typed.recorded()
                || clampings.stream().noneMatch(each -> each.hours().recorded())) {
            return new HourShare(typed, null, null);
        }
        Minutes sum = Minutes.NONE;
        boolean about = false;
        for (Clamping clamping : clampings) {
            if (!inHours(clamping.hours())) {
                return missing(Message.of("cost.hour-share.no-hours", "clamping", clamping.id()));
            }
            List<Piece> all = pieces.apply(clamping);
            Message why = unlike(clamping, all);
            Minutes rest = why == null ? rest(clamping, all) : Minutes.NONE;
            if (why != null) {
                return missing(why);
            }
            if (rest.low().signum() < 0) {
                return missing(Message.of("cost.hour-share.by-hand-more", "clamping", clamping.id()));
            }
            AreaShares shares = AreaShares.of(
                    clamping,
                    all.stream().filter(each -> !typed(each).recorded()).toList());
            if (shares.missing() != null) {
                return missing(shares.missing());
            }
            about |= clamping.hours().about()
                    || all.stream().anyMatch(each -> typed(each).about());
            sum = sum.plus(new Minutes(
                    shares.split(rest.low()).get(piece.number()),
                    shares.split(rest.high()).get(piece.number())));
        }
        List<Object> ids = new ArrayList<>();
        clampings.forEach(clamping -> ids.add(clamping.id()));
        return new HourShare(hours(sum, about), Message.of("cost.share.of", "clampings", Listing.and(ids)), null);
    }

    /** A night has no fixed length. */
    private static boolean inHours(Quantity duration) {
        return duration.in(Unit.HOUR).bounded();
    }

    private static Quantity typed(Piece piece) {
        return piece.particulars().cost().hours();
    }

    /** Why what is typed with a piece cannot be taken away; null where it can. */
    private static @Nullable Message unlike(Clamping clamping, List<Piece> all) {
        return all.stream()
                .filter(each -> typed(each).recorded())
                .filter(each -> !inHours(typed(each)) || each.made().size() > 1)
                .findFirst()
                .map(each ->
                        Message.of("cost.hour-share.by-hand-unlike", "piece", each.number(), "clamping", clamping.id()))
                .orElse(null);
    }

    private static Minutes rest(Clamping clamping, List<Piece> all) {
        Minutes byHand = all.stream()
                .map(HourShare::typed)
                .filter(Quantity::recorded)
                .map(Minutes::of)
                .reduce(Minutes.NONE, Minutes::plus);
        return Minutes.of(clamping.hours()).minus(byHand);
    }

    /** In hours where they are whole, else in minutes. */
    private static Quantity hours(Minutes minutes, boolean about) {
        BigInteger hour = MINUTES.toBigInteger();
        boolean whole = minutes.low().mod(hour).signum() == 0
                && minutes.high().mod(hour).signum() == 0;
        BigInteger unit = whole ? hour : BigInteger.ONE;
        Quantity share = Quantity.between(
                minutes.low().divide(unit).doubleValue(),
                minutes.high().divide(unit).doubleValue(),
                whole ? Unit.HOUR : Unit.MINUTE,
                Basis.UNKNOWN);
        return about ? share.approximately() : share;
    }

    private static HourShare missing(Message why) {
        return new HourShare(Quantity.UNRECORDED, null, why);
    }
}

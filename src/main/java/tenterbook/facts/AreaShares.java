package tenterbook.facts;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import tenterbook.measure.Quantity;
import tenterbook.measure.Unit;
import tenterbook.piece.Piece;
import tenterbook.piece.PieceNumber;
import tenterbook.recipe.Clamping;
import tenterbook.words.Listing;
import tenterbook.words.Message;

/**
 * How what a clamping took is split among its pieces: by area, in whole units that add up to the whole. What cannot be divided evenly goes to the largest
 * remainders (largest remainder method, common practice).
 *
 * @param areas in square millimetres, by number; 1 for a piece that is alone
 * @param missing whose length or width is needed, in a sentence; null where all are known
 */
record AreaShares(
        Map<PieceNumber, BigDecimal> areas, @Nullable Message missing) {
    /** @param pieces among which it is split */
    static AreaShares of(Clamping clamping, List<Piece> pieces) {
        Map<PieceNumber, BigDecimal> areas = byNumber();
        List<PieceNumber> unknown = new ArrayList<>();
        for (Piece each : pieces) {
            BigDecimal area = pieces.size() == 1 ? BigDecimal.ONE : area(each);
            if (area == null) {
                unknown.add(each.number());
            } else {
                areas.put(each.number(), area);
            }
        }
        Message missing = unknown.isEmpty()
                ? null
                : Message.of(
                        "cost.share.no-area", "clamping", clamping.id(), "pieces", Listing.and(List.copyOf(unknown)));
        return new AreaShares(areas, missing);
    }

    private static <V> Map<PieceNumber, V> byNumber() {
        return new TreeMap<>(Comparator.comparing(PieceNumber::value));
    }

    /** Null where a side is not known as one number above 0. */
    private static @Nullable BigDecimal area(Piece piece) {
        Quantity length = piece.length().in(Unit.MILLIMETRE);
        Quantity width = piece.width().in(Unit.MILLIMETRE);
        boolean known = length.bounded()
                && width.bounded()
                && !length.isRange()
                && !width.isRange()
                && length.low() > 0
                && width.low() > 0;
        return known ? BigDecimal.valueOf(length.low()).multiply(BigDecimal.valueOf(width.low())) : null;
    }

    /** What is left over goes one by one to the largest remainders, the earlier number first. */
    Map<PieceNumber, BigInteger> split(BigInteger units) {
        BigDecimal all = areas.values().stream().reduce(BigDecimal.ZERO, BigDecimal::add);
        Map<PieceNumber, BigInteger> shares = byNumber();
        Map<PieceNumber, BigDecimal> remainders = byNumber();
        BigInteger left = units;
        for (Map.Entry<PieceNumber, BigDecimal> each : areas.entrySet()) {
            BigDecimal[] parts = new BigDecimal(units).multiply(each.getValue()).divideAndRemainder(all);
            BigInteger whole = parts[0].toBigInteger();
            shares.put(each.getKey(), whole);
            remainders.put(each.getKey(), parts[1]);
            left = left.subtract(whole);
        }
        remainders.entrySet().stream()
                .sorted(Map.Entry.<PieceNumber, BigDecimal>comparingByValue().reversed())
                .limit(left.longValueExact())
                .forEach(each -> shares.merge(each.getKey(), BigInteger.ONE, BigInteger::add));
        return shares;
    }
}

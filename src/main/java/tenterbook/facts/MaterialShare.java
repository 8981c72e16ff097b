package tenterbook.facts;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Archive;
import tenterbook.measure.Money;
import tenterbook.piece.Piece;
import tenterbook.recipe.Clamping;
import tenterbook.words.Listing;
import tenterbook.words.Message;

/**
 * What the materials of a piece cost: as typed with the piece; else its share of the materials of its clampings, which are split
 * among their pieces by area after what is typed with single pieces is taken away. Shares are exact to the currency's smallest
 * unit and add up to the whole ({@link AreaShares}).
 *
 * @param amount null where it is not recorded or cannot be computed
 * @param how of a computed share, in a sentence; null otherwise
 * @param missing why there is no share although a clamping has a cost, in a sentence; null otherwise
 */
public record MaterialShare(
        @Nullable Money amount,
        @Nullable Message how,
        @Nullable Message missing) {
    private static final MaterialShare UNRECORDED = new MaterialShare(null, null, null);

    /** Reads the clampings of the piece and the other pieces that came out of them. */
    public static MaterialShare of(Archive archive, Piece piece) {
        if (piece.particulars().cost().materials() != null) {
            return new MaterialShare(piece.particulars().cost().materials(), null, null);
        }
        List<Clamping> clampings = piece.made().stream()
                .flatMap(made -> archive.clamping(made.clamping().value()).stream())
                .toList();
        return of(
                piece,
                clampings,
                clamping -> archive.piecesOf(clamping).stream()
                        .flatMap(number -> archive.piece(number.value()).stream())
                        .toList());
    }

    /**
     * @param clampings of the piece
     * @param pieces all that came out of a clamping, this one among them
     */
    static MaterialShare of(Piece piece, List<Clamping> clampings, Function<Clamping, List<Piece>> pieces) {
        if (clampings.stream().map(Clamping::materials).allMatch(Objects::isNull)) {
            return UNRECORDED;
        }
        Money sum = null;
        for (Clamping clamping : clampings) {
            if (clamping.materials() == null) {
                return missing(Message.of("cost.share.no-materials", "clamping", clamping.id()));
            }
            MaterialShare one = share(piece, clamping, pieces.apply(clamping));
            Money part = one.amount();
            if (part == null) {
                return one;
            }
            if (sum != null && !sum.currency().equals(part.currency())) {
                return missing(Message.of("cost.share.currencies", "clamping", clamping.id()));
            }
            sum = sum == null ? part : new Money(sum.amount().add(part.amount()), sum.currency());
        }
        return new MaterialShare(
                sum,
                Message.of(
                        "cost.share.of",
                        "clampings",
                        Listing.and(clampings.stream().map(Clamping::id).toList())),
                null);
    }

    /** Of one clamping. */
    private static MaterialShare share(Piece piece, Clamping clamping, List<Piece> all) {
        Money whole = clamping.materials();
        BigDecimal rest = whole.amount();
        List<Piece> open = new ArrayList<>();
        for (Piece each : all) {
            Money typed = each.particulars().cost().materials();
            if (typed == null) {
                open.add(each);
            } else if (!typed.currency().equals(whole.currency()) || each.made().size() > 1) {
                return missing(
                        Message.of("cost.share.by-hand-unlike", "piece", each.number(), "clamping", clamping.id()));
            } else {
                rest = rest.subtract(typed.amount());
            }
        }
        if (rest.signum() < 0) {
            return missing(Message.of("cost.share.by-hand-more", "clamping", clamping.id(), "whole", whole));
        }
        AreaShares shares = AreaShares.of(clamping, open);
        if (shares.missing() != null) {
            return missing(shares.missing());
        }
        int decimals = whole.amount().scale();
        BigInteger units = rest.movePointRight(decimals).toBigIntegerExact();
        BigInteger mine = shares.split(units).get(piece.number());
        return new MaterialShare(new Money(new BigDecimal(mine, decimals), whole.currency()), null, null);
    }

    private static MaterialShare missing(Message why) {
        return new MaterialShare(null, null, why);
    }
}

package tenterbook.search.query;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import tenterbook.colour.space.Lab;
import tenterbook.piece.ColourRole;

/**
 * What a search asks of the colours of pieces: some colours anywhere, some in a named part, or a whole palette like another
 * piece's. Colours are CIELAB, D65, 2°, rounded to two decimals.
 *
 * @param anywhere colours a piece must all have, each once, in order; at most {@value #MOST}
 * @param regions colour that a named region of that role must have, see also {@link #pair}; {@code OTHER} cannot be asked for
 * @param like number of the piece whose palette the others are compared with; empty for none
 * @param within greatest ΔE00 of each colour, or of the palette; null for the usual, which is 10 for colours and no limit for a
 *     palette
 * @param share least share of the piece within that difference of each colour of {@code anywhere}, 0 to 1; pieces without
 *     measured shares match only 0
 * @param picture whether a colour of {@code anywhere} may be that of anything in the photographs; else only the cloth counts
 */
public record ColourChoice(
        List<Lab> anywhere, Map<ColourRole, Lab> regions, String like, Double within, double share, boolean picture) {
    public static final int MOST = 6;
    /** The roles that can be asked for, by the name of the parameter. */
    static final Map<String, ColourRole> ROLES =
            Map.of("ground", ColourRole.GROUND, "local", ColourRole.LOCAL, "resist", ColourRole.RESIST);

    public static final ColourChoice NONE = new ColourChoice(List.of(), Map.of(), "", null, 0);

    /** Of the cloth alone. */
    public ColourChoice(List<Lab> anywhere, Map<ColourRole, Lab> regions, String like, Double within, double share) {
        this(anywhere, regions, like, within, share, false);
    }

    /** @throws IllegalArgumentException naming the parameter, what was expected and what was found */
    public ColourChoice {
        anywhere = anywhere.stream().map(ColourChoice::rounded).distinct().toList();
        QueryParameters.check(anywhere.size() <= MOST, "colour", "colours", anywhere.size());
        Map<ColourRole, Lab> named = new EnumMap<>(ColourRole.class);
        regions.forEach((role, colour) -> {
            QueryParameters.check(role != ColourRole.OTHER, "region", "role", role);
            named.put(role, rounded(colour));
        });
        regions = Collections.unmodifiableMap(named);
        like = like == null ? "" : like.strip();
        QueryParameters.check(like.length() <= 100, "like", "piece", like);
        QueryParameters.check(like.isEmpty() || anywhere.isEmpty() && regions.isEmpty(), "like", "alone", like);
        QueryParameters.check(
                within == null || within > 0 && within <= PieceQuery.MOST_WITHIN,
                "within",
                "within",
                within == null ? "" : Span.plain(within));
        QueryParameters.check(share >= 0 && share <= 1, "share", "share", Span.plain(share));
        boolean colours = !anywhere.isEmpty() || !regions.isEmpty();
        within = colours && within != null && within == PieceQuery.USUAL_WITHIN || !colours && like.isEmpty()
                ? null
                : within;
        share = anywhere.isEmpty() ? 0 : share;
        picture &= !anywhere.isEmpty();
    }

    private static Lab rounded(Lab colour) {
        return new Lab(rounded(colour.lightness()), rounded(colour.a()), rounded(colour.b()));
    }

    private static double rounded(double value) {
        return BigDecimal.valueOf(value).setScale(2, RoundingMode.HALF_UP).doubleValue() + 0.0;
    }

    /** Whether anything is asked. */
    public boolean any() {
        return asksColours() || !like.isEmpty();
    }

    boolean asksColours() {
        return !anywhere.isEmpty() || !regions.isEmpty();
    }

    /** The tolerance used; infinite for a palette without one. */
    public double limit() {
        if (within != null) {
            return within;
        }
        return like.isEmpty() ? PieceQuery.USUAL_WITHIN : Double.POSITIVE_INFINITY;
    }

    /**
     * Whether it asks for a ground beside a resist. Pieces of which nobody named that part then have to show the colour anywhere on
     * their cloth; a ground or a resist alone cannot be told from the rest of the cloth, so those must be named.
     */
    public boolean pair() {
        return regions.containsKey(ColourRole.GROUND) && regions.containsKey(ColourRole.RESIST);
    }

    /**
     * One colour that must be there.
     *
     * @param role of the region it must be in; null for anywhere
     * @param orCloth whether it may be anywhere on the cloth of a piece that has no named region of that role
     */
    public record Ask(Lab colour, ColourRole role, boolean orCloth) {}

    public List<Ask> asks() {
        List<Ask> asks = new ArrayList<>();
        anywhere.forEach(colour -> asks.add(new Ask(colour, null, false)));
        regions.forEach((role, colour) -> asks.add(new Ask(colour, role, pair() && role != ColourRole.LOCAL)));
        return asks;
    }
}

package tenterbook.labelling.care;

import java.util.Optional;
import java.util.stream.Stream;
import tenterbook.labelling.care.CareLine.About;

/**
 * A care symbol by its meaning, after published tables of ISO 3758 and in the standard's order.
 *
 * <p>The words are stored with a label instead of the symbol, so that an old label can be set again.
 */
public enum CareSymbol {
    WASH_95(About.WASHING, "symbol: wash at most 95 °C"),
    WASH_70(About.WASHING, "symbol: wash at most 70 °C"),
    WASH_60(About.WASHING, "symbol: wash at most 60 °C"),
    WASH_50(About.WASHING, "symbol: wash at most 50 °C"),
    WASH_40(About.WASHING, "symbol: wash at most 40 °C"),
    WASH_40_MILD(About.WASHING, "symbol: wash at most 40 °C, mild"),
    WASH_40_VERY_MILD(About.WASHING, "symbol: wash at most 40 °C, very mild"),
    WASH_30(About.WASHING, "symbol: wash at most 30 °C"),
    WASH_30_MILD(About.WASHING, "symbol: wash at most 30 °C, mild"),
    WASH_30_VERY_MILD(About.WASHING, "symbol: wash at most 30 °C, very mild"),
    HAND_WASH(About.WASHING, "symbol: wash by hand, at most 40 °C"),
    NO_WASH(About.WASHING, "symbol: do not wash"),
    BLEACH(About.BLEACHING, "symbol: any bleach"),
    OXYGEN_BLEACH(About.BLEACHING, "symbol: only oxygen or non-chlorine bleach"),
    NO_BLEACH(About.BLEACHING, "symbol: do not bleach"),
    TUMBLE_DRY(About.DRYING, "symbol: tumble dry, normal"),
    TUMBLE_DRY_LOW(About.DRYING, "symbol: tumble dry, lower temperature"),
    NO_TUMBLE_DRY(About.DRYING, "symbol: do not tumble dry"),
    LINE_DRY(About.DRYING, "symbol: line dry"),
    FLAT_DRY(About.DRYING, "symbol: dry flat"),
    IRON_200(About.IRONING, "symbol: iron at most 200 °C"),
    IRON_150(About.IRONING, "symbol: iron at most 150 °C"),
    IRON_110(About.IRONING, "symbol: iron at most 110 °C, no steam"),
    NO_IRON(About.IRONING, "symbol: do not iron"),
    DRY_CLEAN_P(About.PROFESSIONAL_CARE, "symbol: dry clean in perchloroethylene or hydrocarbon"),
    DRY_CLEAN_F(About.PROFESSIONAL_CARE, "symbol: dry clean in hydrocarbon"),
    NO_DRY_CLEAN(About.PROFESSIONAL_CARE, "symbol: do not dry clean");

    private final About about;
    private final String words;

    CareSymbol(About about, String words) {
        this.about = about;
        this.words = words;
    }

    public About about() {
        return about;
    }

    public String words() {
        return words;
    }

    /** The symbol with these words. */
    public static Optional<CareSymbol> of(String words) {
        return Stream.of(values()).filter(s -> s.words.equals(words)).findFirst();
    }
}

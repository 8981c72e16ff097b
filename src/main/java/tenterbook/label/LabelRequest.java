package tenterbook.label;

import java.util.Objects;
import tenterbook.label.rule.Market;

/**
 * Which label, for where, on what.
 *
 * @param widthMm width of the label, 20 to 200 mm; for a care label the width of the tape
 * @param heightMm height of the label, 30 to 200 mm
 * @param priceShown whether a hang tag carries the asking price, where one is recorded
 * @param blackOnly whether everything is black, for a one-colour printer or tape
 * @param fullContent whether a hang tag states the whole fibre content; otherwise it is not the required label, and says so
 *     where the market asks
 * @param careSymbols whether care is shown in drawn symbols too, as far as the evidence carries them
 */
public record LabelRequest(
        LabelKind kind,
        Market market,
        SheetSize sheet,
        double widthMm,
        double heightMm,
        boolean priceShown,
        boolean blackOnly,
        boolean fullContent,
        boolean careSymbols) {
    public LabelRequest {
        Objects.requireNonNull(kind, "A label request names the kind of label");
        Objects.requireNonNull(market, "A label request names the market");
        sheet = sheet == null ? SheetSize.SINGLE : sheet;
        if (!(widthMm >= 20 && widthMm <= 200 && heightMm >= 30 && heightMm <= 200)) {
            throw new IllegalArgumentException(
                    "A label is 20 to 200 mm wide and 30 to 200 mm high; found %s by %s".formatted(widthMm, heightMm));
        }
    }

    /** A label of the usual size on its own page, in colour, without a price. */
    public static LabelRequest of(LabelKind kind, Market market) {
        return new LabelRequest(
                kind, market, SheetSize.SINGLE, kind.widthMm(), kind.heightMm(), false, false, true, false);
    }

    public LabelRequest on(SheetSize other) {
        return new LabelRequest(
                kind, market, other, widthMm, heightMm, priceShown, blackOnly, fullContent, careSymbols);
    }

    public LabelRequest sized(double width, double height) {
        return new LabelRequest(kind, market, sheet, width, height, priceShown, blackOnly, fullContent, careSymbols);
    }

    public LabelRequest withPrice() {
        return new LabelRequest(kind, market, sheet, widthMm, heightMm, true, blackOnly, fullContent, careSymbols);
    }

    public LabelRequest inBlack() {
        return new LabelRequest(kind, market, sheet, widthMm, heightMm, priceShown, true, fullContent, careSymbols);
    }

    public LabelRequest withoutContent() {
        return new LabelRequest(kind, market, sheet, widthMm, heightMm, priceShown, blackOnly, false, careSymbols);
    }

    public LabelRequest withCareSymbols() {
        return new LabelRequest(kind, market, sheet, widthMm, heightMm, priceShown, blackOnly, fullContent, true);
    }
}

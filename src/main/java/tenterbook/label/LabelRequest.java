package tenterbook.label;

import java.util.Objects;
import tenterbook.archive.LabelSheet;
import tenterbook.label.rule.Market;
import tenterbook.words.Listing;
import tenterbook.words.Refusal;

/**
 * Which label, for where, on what.
 *
 * @param widthMm width of the label; for a care label the width of the tape. Each kind has its limits.
 * @param heightMm height of the label
 * @param priceShown whether a hang tag carries the asking price, where one is recorded
 * @param blackOnly whether everything is black, for a one-colour printer or tape
 * @param fullContent whether a hang tag states the whole fibre content; otherwise it is not the required label, and says so
 *     where the market asks
 * @param careSymbols whether care is shown in drawn symbols too, as far as the evidence carries them
 * @param arrangement one of the kind's own; the usual one where null
 * @param laying how labels lie on the paper; the usual way where null
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
        boolean careSymbols,
        Arrangement arrangement,
        Laying laying) {
    public LabelRequest {
        Objects.requireNonNull(kind, "A label request names the kind of label");
        Objects.requireNonNull(market, "A label request names the market");
        sheet = sheet == null ? SheetSize.SINGLE : sheet;
        arrangement = arrangement == null ? kind.arrangements().get(0) : arrangement;
        laying = laying == null ? Laying.USUAL : laying;
        kind.check(widthMm, heightMm);
        if (!kind.arrangements().contains(arrangement)) {
            throw Refusal.of(
                    "label.refused.arrangement",
                    "kind",
                    kind,
                    "arrangement",
                    arrangement,
                    "arrangements",
                    Listing.or(kind.arrangements()));
        }
        if (sheet == SheetSize.OWN && laying.own() == null) {
            throw Refusal.of("label.refused.no-sheet");
        }
    }

    /** A label of the usual size on its own page, in colour, without a price. */
    public static LabelRequest of(LabelKind kind, Market market) {
        return new LabelRequest(
                kind, market, SheetSize.SINGLE, kind.widthMm(), kind.heightMm(), false, false, true, false, null, null);
    }

    /** On other paper. A roll's printer knows black alone, so the label turns black. */
    public LabelRequest on(SheetSize other) {
        return new LabelRequest(
                kind,
                market,
                other,
                widthMm,
                heightMm,
                priceShown,
                blackOnly || other == SheetSize.ROLL,
                fullContent,
                careSymbols,
                arrangement,
                laying);
    }

    /** On a kept sheet, with labels of its size. */
    public LabelRequest on(LabelSheet own) {
        return laid(laying.on(own))
                .sized(own.labelWidthMm(), own.labelHeightMm())
                .on(SheetSize.OWN);
    }

    public LabelRequest laid(Laying other) {
        return with(widthMm, heightMm, priceShown, blackOnly, fullContent, careSymbols, arrangement, other);
    }

    public LabelRequest arranged(Arrangement other) {
        return with(widthMm, heightMm, priceShown, blackOnly, fullContent, careSymbols, other, laying);
    }

    public LabelRequest sized(double width, double height) {
        return with(width, height, priceShown, blackOnly, fullContent, careSymbols, arrangement, laying);
    }

    public LabelRequest withPrice() {
        return with(widthMm, heightMm, true, blackOnly, fullContent, careSymbols, arrangement, laying);
    }

    public LabelRequest inBlack() {
        return with(widthMm, heightMm, priceShown, true, fullContent, careSymbols, arrangement, laying);
    }

    public LabelRequest withoutContent() {
        return with(widthMm, heightMm, priceShown, blackOnly, false, careSymbols, arrangement, laying);
    }

    public LabelRequest withCareSymbols() {
        return with(widthMm, heightMm, priceShown, blackOnly, fullContent, true, arrangement, laying);
    }

    private LabelRequest with(
            double width,
            double height,
            boolean price,
            boolean black,
            boolean content,
            boolean symbols,
            Arrangement arranged,
            Laying laid) {
        return new LabelRequest(kind, market, sheet, width, height, price, black, content, symbols, arranged, laid);
    }
}

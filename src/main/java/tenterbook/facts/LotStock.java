package tenterbook.facts;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.ledger.revision.RecordKey;
import tenterbook.material.Cloth;
import tenterbook.material.ClothId;
import tenterbook.material.Lot;
import tenterbook.measure.Basis;
import tenterbook.measure.Quantity;
import tenterbook.measure.QuantityWords;
import tenterbook.measure.Unit;
import tenterbook.recipe.Clamping;
import tenterbook.recipe.Figure;
import tenterbook.recipe.RecipeFigures;
import tenterbook.words.Joined;
import tenterbook.words.Message;
import tenterbook.words.Written;

/**
 * What is left of a lot: what was bought less what clampings record as used. A range stays a range, and what is about an amount
 * stays so. Where the bought amount or
 * one use is not known, nothing is computed.
 *
 * @param left in grams, not negative; not recorded where it cannot be known
 * @param unknown why it cannot be known, in sentences; empty where it is known
 */
public record LotStock(Lot lot, Quantity left, List<Written> unknown) {
    /** Reads the clampings that name the lot, and their cloths. */
    public static LotStock of(Archive archive, Lot lot) {
        List<String> ids = archive.ledger().referencedBy(Kinds.LOT.key(lot.id().value())).stream()
                .filter(key -> key.kind().equals(Kinds.CLAMPING.name()))
                .map(RecordKey::id)
                .sorted()
                .toList();
        List<Clamping> clampings =
                List.copyOf(archive.ledger().records(Kinds.CLAMPING, ids).values());
        Map<ClothId, Cloth> cloths = new HashMap<>();
        clampings.stream()
                .flatMap(clamping -> clamping.cuts().stream())
                .map(cut -> cut.cloth())
                .filter(Objects::nonNull)
                .distinct()
                .forEach(id -> archive.cloth(id.value()).ifPresent(cloth -> cloths.put(id, cloth)));
        return of(lot, clampings, cloths);
    }

    /** @param clampings that name the lot */
    static LotStock of(Lot lot, List<Clamping> clampings, Map<ClothId, Cloth> cloths) {
        List<Written> unknown = new ArrayList<>();
        Quantity bought = lot.bought().in(Unit.GRAM);
        if (!bought.bounded()) {
            unknown.add(Message.of("facts.lot-bought"));
        }
        boolean about = bought.about();
        double least = 0;
        double most = 0;
        for (Clamping clamping : clampings) {
            for (RecipeFigures.StepFigures step :
                    RecipeFigures.of(clamping, cloths).steps()) {
                for (RecipeFigures.ChargeFigures charge : step.charges()) {
                    if (lot.id().equals(charge.lot())) {
                        Figure grams = charge.grams();
                        Quantity used = grams.value().in(Unit.GRAM);
                        if (used.bounded()) {
                            least += used.low();
                            most += used.high();
                            about |= used.about();
                        } else {
                            unknown.add(Message.of("facts.lot-use", "clamping", clamping.id(), "why", grams.refusal()));
                        }
                    }
                }
            }
        }
        if (unknown.isEmpty() && bought.high() < least) {
            unknown.add(Message.of("facts.lot-overused"));
        }
        Quantity left = unknown.isEmpty()
                ? new Quantity(
                        "", Math.max(0, bought.low() - most), bought.high() - least, Unit.GRAM, Basis.COMPUTED, about)
                : Quantity.UNRECORDED;
        return new LotStock(lot, left, List.copyOf(unknown));
    }

    public boolean known() {
        return unknown.isEmpty();
    }

    /** Whether less than the limit of the lot may be left; no where there is no limit or it is not known. */
    public boolean low() {
        Quantity limit = lot.warnBelow().in(Unit.GRAM);
        return known() && limit.bounded() && left.low() < limit.high();
    }

    /** What is left in words, or that and why it cannot be known. */
    public Written words() {
        return known()
                ? QuantityWords.understood(left)
                : Message.of("facts.lot-unknown", "why", new Joined(" ", unknown));
    }
}

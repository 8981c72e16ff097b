package tenterbook.facts;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import tenterbook.material.Cloth;
import tenterbook.material.ClothId;
import tenterbook.material.FibreShare;
import tenterbook.recipe.Clamping;
import tenterbook.recipe.Cut;
import tenterbook.words.Joined;
import tenterbook.words.Listing;
import tenterbook.words.Message;

/**
 * The cloth a piece is of, over all cuts of all clampings it passed through.
 *
 * <p>A piece that is dyed again stays of the cloth it was cut from, and a clamping may have cuts for other pieces. So its
 * cloths are those common to all its clampings that name any. Where no cloth is common to them, all are given with the
 * disagreement.
 *
 * @param cloths in the order of the work, each once; one that a cut names and the ledger lacks is left out
 * @param disagreement in a sentence; empty where there is none
 */
public record Cloths(List<Cloth> cloths, Optional<Message> disagreement) {
    public Cloths {
        cloths = List.copyOf(cloths);
    }

    static Cloths of(List<Clamping> clampings, Map<ClothId, Cloth> found) {
        Set<ClothId> any = new LinkedHashSet<>();
        Set<ClothId> common = null;
        List<Message> named = new ArrayList<>();
        for (Clamping clamping : clampings) {
            Set<ClothId> cut = clamping.cuts().stream()
                    .map(Cut::cloth)
                    .filter(Objects::nonNull)
                    .collect(Collectors.toCollection(LinkedHashSet::new));
            if (cut.isEmpty()) {
                continue;
            }
            any.addAll(cut);
            if (common == null) {
                common = new LinkedHashSet<>(cut);
            } else {
                common.retainAll(cut);
            }
            named.add(Message.of(
                    "facts.clamping-names", "clamping", clamping.id(), "cloths", Listing.and(List.copyOf(cut))));
        }
        boolean disagree = common != null && common.isEmpty();
        return new Cloths(
                (common == null || disagree ? any : common)
                        .stream().map(found::get).filter(Objects::nonNull).toList(),
                disagree
                        ? Optional.of(Message.of("facts.cloths-differ", "clampings", new Joined("; ", named)))
                        : Optional.empty());
    }

    /** Names of the cloths, each once; those without a name left out. */
    public List<String> names() {
        return cloths.stream()
                .map(Cloth::name)
                .filter(name -> !name.isEmpty())
                .distinct()
                .toList();
    }

    /** By name with their fibres, as in 'silk habotai (100 % silk)'; empty where no cloth is known. */
    public String inWords() {
        return cloths.stream().map(Cloths::inWords).distinct().collect(Collectors.joining("; "));
    }

    /** One cloth by name with its fibres. */
    private static String inWords(Cloth cloth) {
        String name = cloth.name().isEmpty()
                ? Message.of("facts.cloth", "id", cloth.id()).onPaper()
                : cloth.name();
        return name + " (" + Denial.NO_FIBRES.unless(cloth, () -> fibres(cloth)) + ")";
    }

    private static String fibres(Cloth cloth) {
        return new Joined(", ", cloth.content()).onPaper();
    }

    /** The evidence of each cloth's content, as in 'silk habotai: supplier’s invoice'; a cloth without such evidence says so. */
    public String evidence() {
        return cloths.stream()
                .filter(cloth -> !cloth.content().isEmpty())
                .map(cloth -> (cloth.name().isEmpty() ? cloth.id().value() : cloth.name())
                        + ": "
                        + Denial.NO_EVIDENCE_OF_FIBRES.unless(cloth, cloth::contentEvidence))
                .distinct()
                .collect(Collectors.joining("; "));
    }

    /** Every fibre by name, in order, with repetitions. */
    public List<String> fibres() {
        return cloths.stream()
                .flatMap(cloth -> cloth.content().stream())
                .map(FibreShare::fibre)
                .toList();
    }
}

package tenterbook.labelling.care;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tenterbook.measure.PartialDate;
import tenterbook.piece.CareTest;
import tenterbook.piece.Category;

/**
 * The facts that affect the care of a piece.
 *
 * @param materials what it consists of and was treated with, where recorded
 * @param lastDyed when it was last dyed; an older test is no evidence for the last dye
 */
public record CareCase(
        @Nullable Category category, List<CareTest> tests, List<Material> materials, PartialDate lastDyed) {
    /** The role of a material in the piece. */
    public enum Of {
        FIBRE,
        DYE,
        MORDANT,
        FINISH,
        CONSTRUCTION,
        TRIM
    }

    /** A material, by the maker's own words. */
    public record Material(Of of, String name) {}

    public CareCase {
        tests = tests == null ? List.of() : List.copyOf(tests);
        materials = materials == null ? List.of() : List.copyOf(materials);
        lastDyed = lastDyed == null ? PartialDate.UNRECORDED : lastDyed;
    }

    static CareCase of(List<CareTest> tests) {
        return new CareCase(null, tests, null, null);
    }

    /** The same case with materials added; blank names are ignored. */
    public CareCase with(Of of, List<String> names) {
        List<Material> all = new ArrayList<>(materials);
        names.stream()
                .filter(name -> !name.isBlank())
                .map(name -> new Material(of, name))
                .forEach(all::add);
        return new CareCase(category, tests, all, lastDyed);
    }
}

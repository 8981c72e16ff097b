package tenterbook.recipe;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static tenterbook.recipe.Recipes.bath;
import static tenterbook.recipe.Recipes.bolts;
import static tenterbook.recipe.Recipes.charge;
import static tenterbook.recipe.Recipes.clamping;
import static tenterbook.recipe.Recipes.cloth;
import static tenterbook.recipe.Recipes.cut;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tenterbook.material.Cloth;
import tenterbook.material.ClothId;
import tenterbook.measure.Basis;

class ScaledChargeTest {
    private static final Map<ClothId, Cloth> SILK = bolts(cloth("SH", "silk", "8 momme"));

    private static Clamping of(String mass, Charge... charges) {
        return clamping(null, List.of(cut("SH", "", "", mass, "")), bath(StepKind.BATH, "", "", "", "", charges));
    }

    private static List<ScaledCharge> scaled(Clamping copy, Clamping copied) {
        return ScaledCharge.of(
                copy,
                RecipeFigures.of(copy, SILK).clothMass(),
                copied,
                RecipeFigures.of(copied, SILK).clothMass());
    }

    @Test
    void anAmountFollowsItsPercentOfTheNewCloth() {
        // By hand: 40 % of 172 g is 68.8 g; the recipe had 34 g for 85 g.
        var found = scaled(of("172 g", charge("weld", "40", "34 g")), of("85 g", charge("weld", "40", "34 g")));

        assertThat(found).singleElement().satisfies(each -> {
            assertThat(each.copied().entered()).isEqualTo("34 g");
            assertThat(each.scaled().low()).isCloseTo(68.8, within(1e-9));
            assertThat(each.scaled().basis()).isEqualTo(Basis.COMPUTED);
        });
    }

    @Test
    void withoutAPercentAnAmountFollowsTheMassOfTheCloth() {
        // By hand: 34 g × 172 g / 85 g = 68.8 g.
        var found = scaled(of("172 g", charge("weld", "", "34 g")), of("85 g", charge("weld", "", "34 g")));

        assertThat(found)
                .singleElement()
                .satisfies(each -> assertThat(each.scaled().low()).isCloseTo(68.8, within(1e-9)));
    }

    @Test
    void nothingIsOfferedForTheSameClothForUnknownClothOrForWhatWasWeighedSince() {
        Clamping copied = of("85 g", charge("weld", "40", "34 g"));

        assertThat(scaled(copied, copied)).isEmpty();
        assertThat(scaled(of("forgot", charge("weld", "40", "34 g")), copied)).isEmpty();
        assertThat(scaled(of("172 g", charge("weld", "40", "70 g")), copied)).isEmpty();
        assertThat(scaled(of("172 g", charge("alum", "40", "34 g")), copied)).isEmpty();
    }
}

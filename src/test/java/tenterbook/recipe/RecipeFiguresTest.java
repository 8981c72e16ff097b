package tenterbook.recipe;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static tenterbook.recipe.Recipes.bath;
import static tenterbook.recipe.Recipes.bolts;
import static tenterbook.recipe.Recipes.charge;
import static tenterbook.recipe.Recipes.clamping;
import static tenterbook.recipe.Recipes.cloth;
import static tenterbook.recipe.Recipes.cut;
import static tenterbook.recipe.Recipes.dips;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import tenterbook.material.Cloth;
import tenterbook.material.ClothId;
import tenterbook.measure.Basis;
import tenterbook.measure.Quantity;
import tenterbook.measure.QuantityText;
import tenterbook.measure.QuantityWords;
import tenterbook.measure.Unit;

class RecipeFiguresTest {
    private static final Map<ClothId, Cloth> SILK = bolts(cloth("SH", "silk", "8 momme"));

    private static RecipeFigures with(Cut cut, Step... steps) {
        return RecipeFigures.of(clamping(null, List.of(cut), steps), SILK);
    }

    @Test
    void massIsAreaTimesArealWeight() {
        // By hand: 8 momme × 4.340 = 34.72 g/m² (common practice); 0.9 m × 1.8 m = 1.62 m²; 34.72 × 1.62 = 56.2464 g.
        Figure mass = with(cut("SH", "1.8 m", "90 cm", "", "")).clothMass();

        assertThat(mass.value().low()).isCloseTo(56.2464, within(1e-9));
        assertThat(mass.value().basis()).isEqualTo(Basis.COMPUTED);
        assertThat(QuantityWords.value(mass.value())).isEqualTo("56.2\u00a0g");
        assertThat(mass.formula().inEnglish()).isEqualTo("length × width × areal weight × number of cuts");
        assertThat(mass.inputs())
                .extracting(
                        input -> input.name().inEnglish() + ": " + input.text().inEnglish())
                .containsExactly(
                        "length of cut 1: 1.8 m",
                        "width of cut 1: 90 cm",
                        "number of cut 1: 1 (not recorded, counts as one)",
                        "areal weight of SH: 8 momme");
        assertThat(mass.disagreement().inEnglish() + mass.refusal().inEnglish()).isEmpty();
    }

    @Test
    void massOfAYardOfClothInUsMeasure() {
        // By hand: 1 yd × 1 yd of 4 oz/yd² is 4 oz = 4 × 28.349523125 g = 113.3980925 g (NIST Handbook 44, appendix C).
        var figures = RecipeFigures.of(
                clamping(null, List.of(cut("CL", "1 yd", "36 in", "", ""))), bolts(cloth("CL", "cotton", "4 oz/yd2")));

        assertThat(figures.clothMass().value().low()).isCloseTo(113.3980925, within(1e-9));
    }

    @Test
    void rangesStayRangesAndAboutCarriesOver() {
        // By hand: 40 to 50 g/m² × 2 m × 1 m × 3 cuts = 240 to 300 g; 10 to 20 % of that = 24 to 60 g.
        var figures = RecipeFigures.of(
                clamping(
                        null,
                        List.of(cut("SO", "about 2 m", "1 m", "", "3")),
                        bath(StepKind.MORDANTING, "", "", "", "", charge("alum", "10-20", ""))),
                bolts(cloth("SO", "silk", "40-50")));

        assertThat(figures.clothMass().value().low()).isCloseTo(240, within(1e-9));
        assertThat(figures.clothMass().value().high()).isCloseTo(300, within(1e-9));
        assertThat(figures.clothMass().value().about()).isTrue();
        Quantity grams = figures.steps().get(0).charges().get(0).grams().value();
        assertThat(QuantityWords.value(grams)).isEqualTo("about 24–60\u00a0g");
    }

    @Test
    void anOpenRangeStaysOpen() {
        Figure mass = with(cut("SH", "at least 100", "100", "", "")).clothMass();

        assertThat(mass.value().low()).isCloseTo(34.72, within(1e-9));
        assertThat(mass.value().high()).isNull();
    }

    @Test
    void rangesOpenOnOppositeSidesAreRefused() {
        assertThat(with(cut("SH", "at least 100", "up to 100", "", ""))
                        .clothMass()
                        .refusal()
                        .inEnglish())
                .isEqualTo("Not worked out: the ranges are open on both sides once put together.");
    }

    @Test
    void aRefusalNamesEverythingThatIsMissingAndGivesNoValue() {
        Figure mass = with(cut("LV", "forgot", "", "", "?")).clothMass();

        assertThat(mass.value()).isEqualTo(Quantity.UNRECORDED);
        assertThat(mass.refusal().inEnglish())
                .isEqualTo("Not worked out: length of cut 1 is not known; width of cut 1 is not recorded; "
                        + "number of cut 1 is not known; the bolt LV is not in the archive.");
        assertThat(RecipeFigures.of(clamping(null, List.of()), SILK)
                        .clothMass()
                        .refusal()
                        .inEnglish())
                .isEqualTo("Not worked out: no cut of cloth is recorded.");
    }

    @Test
    void weighedClothWinsAndADifferenceBeyondATenthIsStated() {
        Figure near = with(cut("SH", "180", "90", "60 g", "")).clothMass();
        assertThat(near.value().low()).isEqualTo(60);
        assertThat(near.disagreement().inEnglish()).isEmpty();

        // 56.2464 g worked out against 70 g weighed: a fifth apart.
        Figure far = with(cut("SH", "180", "90", "70 g weighed", "")).clothMass();
        assertThat(far.value().basis()).isEqualTo(Basis.MEASURED);
        assertThat(far.value().low()).isEqualTo(70);
        assertThat(far.disagreement().inEnglish())
                .isEqualTo("mass of cut 1 as weighed is 70\u00a0g, but length × width × areal weight × number of cuts "
                        + "gives 56.2\u00a0g. The one that was weighed is used; one of the inputs may be wrong.");

        Figure weighedOnly = with(cut("LV", "", "", "95 g", "")).clothMass();
        assertThat(weighedOnly.value().low()).isEqualTo(95);
        assertThat(weighedOnly.refusal().inEnglish()).isEmpty();
    }

    @Test
    void cutsAreSummedAndOneUnknownCutRefusesTheSum() {
        // By hand: 34.72 g/m² × 1 m² + 100 g weighed = 134.72 g.
        var both =
                clamping(null, List.of(cut("SH", "100", "100", "", ""), cut("SH", "", "", "100 g", "")), new Step[0]);
        assertThat(RecipeFigures.of(both, SILK).clothMass().value().low()).isCloseTo(134.72, within(1e-9));

        var one = clamping(null, List.of(cut("SH", "100", "100", "", ""), cut("SH", "100", "", "", "")));
        assertThat(RecipeFigures.of(one, SILK).clothMass().refusal().inEnglish())
                .isEqualTo("Not worked out: mass of cut 2 is not known: width of cut 2 is not recorded.");
    }

    @Test
    void gramsFollowFromPercentOfTheWeightOfFibre() {
        // By hand: 15 % of 56.2464 g = 8.43696 g.
        var figures = with(
                cut("SH", "180", "90", "", ""), bath(StepKind.MORDANTING, "", "", "", "", charge("alum", "15%", "")));
        var alum = figures.steps().get(0).charges().get(0);

        assertThat(alum.grams().value().low()).isCloseTo(8.43696, within(1e-9));
        assertThat(alum.wof().value().low()).isEqualTo(15);
        assertThat(alum.wof().formula().inEnglish()).isEqualTo("as entered");
    }

    @Test
    void percentFollowsFromWeighedGramsAndADisagreementIsStatedOnBoth() {
        // By hand: 8.5 g / 56.2464 g = 15.112 %.
        var figures = with(
                cut("SH", "180", "90", "", ""),
                bath(
                        StepKind.MORDANTING,
                        "",
                        "",
                        "",
                        "",
                        charge("alum", "", "8.5 g"),
                        charge("weld", "40", "8.5 g"),
                        charge("lac", "", "")));
        var charges = figures.steps().get(0).charges();

        assertThat(charges.get(0).wof().value().low()).isCloseTo(15.112, within(0.001));
        assertThat(charges.get(0).grams().disagreement().inEnglish()).isEmpty();
        // 40 % would be 22.5 g.
        assertThat(charges.get(1).grams().value().low()).isEqualTo(8.5);
        assertThat(charges.get(1).grams().disagreement().inEnglish())
                .contains("22.5")
                .contains("8.5");
        assertThat(charges.get(1).wof().value().low()).isCloseTo(15.112, within(0.001));
        assertThat(charges.get(1).wof().disagreement().inEnglish()).isNotEmpty();
        assertThat(charges.get(2).grams().refusal().inEnglish())
                .isEqualTo("Not worked out: % WOF of lac is not recorded.");
        assertThat(charges.get(2).wof().refusal().inEnglish())
                .isEqualTo("Not worked out: grams of lac is not recorded.");
    }

    @Test
    void gramsAreRefusedWithTheReasonTheMassIsNotKnown() {
        var figures =
                with(cut("SH", "", "90", "", ""), bath(StepKind.BATH, "", "30:1", "", "", charge("weld", "40", "")));
        var step = figures.steps().get(0);

        assertThat(step.charges().get(0).grams().refusal().inEnglish())
                .isEqualTo("Not worked out: mass of the cloth is not known: length of cut 1 is not recorded.");
        assertThat(step.charges().get(0).wof().value().low()).isEqualTo(40);
        assertThat(step.liquor().refusal().inEnglish()).contains("length of cut 1");
    }

    @Test
    void liquorIsRatioTimesMass() {
        // By hand: 30 L/kg × 0.0562464 kg = 1.687392 L; 20 to 40 L/kg = 1.124928 to 2.249856 L.
        Cut cut = cut("SH", "180", "90", "", "");
        assertThat(with(cut, bath(StepKind.BATH, "", "30:1", "", ""))
                        .steps()
                        .get(0)
                        .liquor()
                        .value()
                        .low())
                .isCloseTo(1.687392, within(1e-9));
        Quantity range = with(cut, bath(StepKind.BATH, "", "20:1 to 40:1", "", ""))
                .steps()
                .get(0)
                .liquor()
                .value();
        assertThat(range.low()).isCloseTo(1.124928, within(1e-9));
        assertThat(range.high()).isCloseTo(2.249856, within(1e-9));
        Figure measured = with(cut, bath(StepKind.BATH, "4 L", "30:1", "", ""))
                .steps()
                .get(0)
                .liquor();
        assertThat(measured.value().low()).isEqualTo(4);
        assertThat(measured.disagreement().inEnglish()).contains("1.69");
    }

    @Test
    void contactIsCountTimesEachAndAiringLiesBetweenTheDips() {
        // By hand: 6 to 8 dips × 10 min = 60 to 80 min; 5 to 7 airings × 20 min = 100 to 140 min.
        var figures = with(cut("SH", "", "", "", ""), dips("6-8", "10 min", "20 min"));

        assertThat(figures.contact().value().low()).isEqualTo(60);
        assertThat(figures.contact().value().high()).isEqualTo(80);
        assertThat(figures.airing().value().low()).isEqualTo(100);
        assertThat(figures.airing().value().high()).isEqualTo(140);
    }

    @Test
    void dipsAreCountedOverAllDipSteps() {
        var figures = with(cut("SH", "", "", "", ""), dips("4", "10", "5"), dips("2-3", "1 h", "5"));

        assertThat(QuantityWords.value(figures.dips().value())).isEqualTo("6–7");
        // By hand: 4 × 10 + (2 to 3) × 60 = 160 to 220 min.
        assertThat(QuantityWords.value(figures.contact().value())).isEqualTo("160–220\u00a0min");
        assertThat(with(cut("SH", "", "", "", "")).dips().refusal().inEnglish())
                .isEqualTo("Not worked out: no dip series is recorded.");
        assertThat(with(cut("SH", "", "", "", ""), dips("4", "", ""), dips("", "", ""))
                        .dips()
                        .refusal()
                        .inEnglish())
                .contains("number of dips is not recorded");
    }

    private static Dip dip(String in, String out) {
        return new Dip(
                in.isEmpty() ? null : LocalDateTime.parse("2024-05-04T" + in),
                out.isEmpty() ? null : LocalDateTime.parse("2024-05-04T" + out));
    }

    @Test
    void timedDipsAreSummedAndWinOverWhatWasSaid() {
        // By hand: 12 + 10.5 + 9 = 31.5 min in the vat; 18 + 19.5 = 37.5 min between.
        var figures = with(
                cut("SH", "", "", "", ""),
                dips("4", "10", "20", dip("10:00", "10:12"), dip("10:30", "10:40:30"), dip("11:00", "11:09")));

        assertThat(figures.dips().value().low()).isEqualTo(3);
        assertThat(figures.dips().disagreement().inEnglish()).startsWith("3 dips are timed, but 4");
        assertThat(figures.contact().value().low()).isEqualTo(31.5);
        assertThat(figures.contact().disagreement().inEnglish()).contains("40").contains("31.5");
        assertThat(figures.airing().value().low()).isEqualTo(37.5);
    }

    @Test
    void dipsThatLackATimeOrOverlapAreRefusedByNumber() {
        assertThat(with(cut("SH", "", "", "", ""), dips("", "", "", dip("10:00", "10:05"), dip("10:10", "")))
                        .contact()
                        .refusal()
                        .inEnglish())
                .contains("dip 2 lacks the time it went out");
        assertThat(with(cut("SH", "", "", "", ""), dips("", "", "", dip("10:00", "10:05"), dip("10:04", "10:06")))
                        .contact()
                        .refusal()
                        .inEnglish())
                .contains("dip 2 begins before dip 1 is out");
    }

    @Test
    void nightsAreNotSummed() {
        assertThat(with(cut("SH", "", "", "", ""), dips("2", "overnight", "5"))
                        .contact()
                        .refusal()
                        .inEnglish())
                .contains("time of each dip is given in nights, and a night has no fixed length");
    }

    @Test
    void layersFollowFromTheFolds() {
        var fold = new FoldScheme(
                List.of(
                        new Fold(Fold.Axis.LENGTH, Fold.Style.ACCORDION, 4),
                        new Fold(Fold.Axis.WIDTH, Fold.Style.HALVING, 2)),
                null,
                "");
        assertThat(layers(fold).value().low()).isEqualTo(8);
        assertThat(layers(FoldScheme.UNRECORDED).refusal().inEnglish())
                .isEqualTo("Not worked out: the folds are not recorded; nobody counted the layers at the clamp.");
    }

    @Test
    void aCountAtTheClampWinsAndADifferenceIsStated() {
        List<Fold> folds = List.of(new Fold(Fold.Axis.LENGTH, Fold.Style.ACCORDION, 8));
        Figure differs = layers(new FoldScheme(folds, QuantityText.read("7", Unit.COUNT), ""));
        assertThat(differs.value().low()).isEqualTo(7);
        assertThat(differs.disagreement().inEnglish()).startsWith("7 layers were counted, but these folds make 8.");

        assertThat(layers(new FoldScheme(folds, QuantityText.read("7-8", Unit.COUNT), ""))
                        .disagreement()
                        .inEnglish())
                .isEmpty();
        assertThat(layers(new FoldScheme(List.of(), QuantityText.read("6", Unit.COUNT), ""))
                        .value()
                        .low())
                .isEqualTo(6);
        assertThat(layers(new FoldScheme(folds, QuantityText.read("forgot", Unit.COUNT), ""))
                        .value()
                        .low())
                .isEqualTo(8);
    }

    private static Figure layers(FoldScheme fold) {
        return RecipeFigures.of(clamping(fold, List.of()), Map.of()).layers();
    }

    @Property
    boolean everyPointOfTheInputRangesLiesInTheComputedRange(
            @ForAll @DoubleRange(min = 0.1, max = 500) double length,
            @ForAll @DoubleRange(min = 0, max = 100) double more,
            @ForAll @DoubleRange(min = 1, max = 300) double weight,
            @ForAll @DoubleRange(min = 0, max = 1) double at) {
        Cut cut = new Cut(
                new ClothId("SH"),
                Quantity.between(length, length + more, Unit.CENTIMETRE, Basis.ESTIMATED),
                Quantity.between(100, 100, Unit.CENTIMETRE, Basis.MEASURED),
                null,
                null);
        Cloth cloth = cloth("SH", "silk", "%.4f".formatted(weight));
        Quantity mass = RecipeFigures.of(clamping(null, List.of(cut)), bolts(cloth))
                .clothMass()
                .value();
        double point = (length + at * more) / 100 * cloth.arealWeight().low();
        return mass.low() <= point + 1e-9 && point <= mass.high() + 1e-9;
    }
}

package tenterbook.labelling.rule;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tenterbook.labelling.Samples;
import tenterbook.material.FibreShare;
import tenterbook.piece.Category;

class FibreStatementTest {
    private static final List<String> PARTS = List.of("panel", "back");

    record Case(String market, String fibres, String expect, String source) {}

    static Stream<Case> cases() {
        return new BufferedReader(new InputStreamReader(
                        FibreStatementTest.class.getResourceAsStream("/label/fibre_cases.csv"), StandardCharsets.UTF_8))
                .lines()
                .filter(line -> !line.startsWith("#") && !line.startsWith("market;"))
                .map(line -> line.split(";"))
                .map(c -> new Case(c[0], c[1], c[2], c[3]));
    }

    @ParameterizedTest
    @MethodSource("cases")
    void aWorkedCaseComesOutInTheMarketsOwnWords(Case worked) {
        FibreStatement statement =
                of(Market.valueOf(worked.market), Category.SCARF, components(worked.fibres), "Portugal", "");
        if (worked.expect.startsWith("REFUSED:")) {
            assertThat(statement.lines(FibreLine.Kind.CONTENT)).isEmpty();
            assertThat(statement.refusals())
                    .isNotEmpty()
                    .allSatisfy(r -> assertThat(r.rule().citation()).isNotBlank());
            assertThat(statement.refusals().toString()).containsIgnoringCase(worked.expect.substring(8));
        } else {
            assertThat(statement.refusals()).isEmpty();
            assertThat(statement.lines(FibreLine.Kind.CONTENT).stream()
                            .map(FibreLine::text)
                            .collect(Collectors.joining("|")))
                    .isEqualTo(worked.expect);
            assertThat(statement.lines())
                    .allSatisfy(l -> assertThat(l.rule().citation()).isNotBlank());
        }
        assertThat(statement.notice()).contains("no legal advice");
    }

    private static FibreStatement of(
            Market market, Category category, List<Component> components, String dyedIn, String trims) {
        return FibreStatement.of(market, new Article(category, components, dyedIn, trims, Samples.PARTICULAR, ""));
    }

    private static List<Component> components(String cell) {
        String[] cloths = cell.split("/");
        List<Component> components = new ArrayList<>();
        for (int i = 0; i < cloths.length; i++) {
            components.add(new Component(cloths.length > 1 ? PARTS.get(i) : "", "cloth", shares(cloths[i]), "India"));
        }
        return components;
    }

    static List<FibreShare> shares(String cell) {
        if (cell.isBlank()) {
            return List.of();
        }
        return Stream.of(cell.split("\\+"))
                .map(one -> {
                    Matcher form =
                            Pattern.compile("(.+?) ([\\d.]+|\\?)(?: (.+))?").matcher(one);
                    assertThat(form.matches()).as(one).isTrue();
                    Double percent = form.group(2).equals("?") ? null : Double.valueOf(form.group(2));
                    return new FibreShare(form.group(1), percent, form.group(3));
                })
                .toList();
    }

    @Test
    void noClothAtAllBlocksWithTheReason() {
        assertThat(of(Market.EU, Category.SCARF, List.of(), "", "").refusals())
                .singleElement()
                .satisfies(r -> assertThat(r.toString()).contains("Fibre content not recorded", "Name the cloth"));
    }

    /** Source: Reg. (EU) 1007/2011 Art. 12, whose words are exact. */
    @Test
    void aHornToggleIsStatedInTheUnionAndNotInTheStates() {
        List<Component> silk = components("silk 100");
        assertThat(texts(of(Market.EU, Category.SHAWL, silk, "", "horn toggle"), FibreLine.Kind.ANIMAL_PARTS))
                .containsExactly("Contains non-textile parts of animal origin.");
        assertThat(texts(of(Market.EU, Category.SHAWL, silk, "", "wooden toggle"), FibreLine.Kind.ANIMAL_PARTS))
                .isEmpty();
        assertThat(texts(of(Market.EU, Category.SHAWL, silk, "", "thorn stitch"), FibreLine.Kind.ANIMAL_PARTS))
                .isEmpty();
        assertThat(texts(of(Market.US, Category.SHAWL, silk, "", "horn toggle"), FibreLine.Kind.ANIMAL_PARTS))
                .isEmpty();
    }

    /** Source: 16 CFR 303.33; worked case of hemp cloth from China dyed and hemmed in Ohio. */
    @Test
    void importedClothDyedInTheStatesSaysSoInOneStatement() {
        List<Component> hemp = List.of(new Component("", "hemp gauze", shares("hemp 100"), "China"));
        assertThat(texts(of(Market.US, Category.SCARF, hemp, "Ohio, USA", ""), FibreLine.Kind.ORIGIN))
                .containsExactly("Made in U.S.A. of imported fabric.");
        List<Component> home = List.of(new Component("", "cotton lawn", shares("cotton 100"), "United States"));
        assertThat(texts(of(Market.US, Category.SCARF, home, "U.S.A.", ""), FibreLine.Kind.ORIGIN))
                .containsExactly("Made in U.S.A.");
    }

    /** Sources: the origin is always disclosed, 16 CFR 303.15(b) and 303.33. */
    @Test
    void otherOriginStandsAsFactsAndWhatIsUnknownIsAsked() {
        assertThat(texts(of(Market.EU, Category.SCARF, components("silk 100"), "Portugal", ""), FibreLine.Kind.ORIGIN))
                .containsExactly("Dyed in Portugal. Cloth woven in India.");
        List<Component> unknown = List.of(new Component("", "silk", shares("silk 100"), ""));
        FibreStatement american = of(Market.US, Category.SCARF, unknown, "USA", "");
        assertThat(texts(american, FibreLine.Kind.ORIGIN)).isEmpty();
        assertThat(american.refusals().toString()).contains("where its cloth was woven is not recorded");
        assertThat(of(Market.US, Category.SCARF, unknown, "", "").refusals().toString())
                .contains("The country in which it was dyed is not recorded");
        FibreStatement nothing = of(Market.EU, Category.SCARF, unknown, "", "");
        assertThat(texts(nothing, FibreLine.Kind.ORIGIN)).isEmpty();
        assertThat(nothing.questions().stream()
                        .filter(q -> q.rule().equals(Market.EU.rules().rule("origin"))))
                .hasSize(2);
    }

    @Test
    void componentsWithoutANameAreLabelledByTheirClothAndAskedAbout() {
        FibreStatement statement = of(
                Market.EU,
                Category.CUSHION,
                List.of(
                        new Component("", "silk organza", shares("silk 100"), "India"),
                        new Component("", "hemp gauze", shares("hemp 100"), "India")),
                "Portugal",
                "");
        assertThat(texts(statement, FibreLine.Kind.CONTENT))
                .containsExactly("Silk organza: 100 % silk", "Hemp gauze: 100 % true hemp");
        assertThat(statement.questions().toString()).contains("Which part of the piece is the cloth “silk organza”");
    }

    @Test
    void aNameKnownOnlyFromMemoryIsPutAsAQuestion() {
        assertThat(of(Market.US, Category.SCARF, components("hemp 100"), "", "")
                        .questions()
                        .toString())
                .contains("is from memory");
        assertThat(of(Market.US, Category.SCARF, components("silk 100"), "", "")
                        .questions()
                        .toString())
                .doesNotContain("is from memory");
    }

    /** Source: 16 CFR 303.17(b), the sentence is the rule's own. */
    @Test
    void aTagNamingOneFibreOfABlendPointsToTheLabelInTheStates() {
        List<LabelRefusal> refusals = new ArrayList<>();
        List<Component> blend = components("silk 80+cotton 20");
        assertThat(PartialTag.sentence(Market.US, blend, "Silk habotai", refusals)
                        .map(FibreLine::text))
                .contains("See label for the product's full fiber content.");
        assertThat(PartialTag.sentence(Market.US, components("silk 100"), "Silk habotai", refusals))
                .isEmpty();
        assertThat(PartialTag.sentence(Market.US, blend, "Heron weir", refusals))
                .isEmpty();
        assertThat(PartialTag.sentence(Market.EU, blend, "Silk habotai", refusals))
                .isEmpty();
        assertThat(refusals).isEmpty();
        PartialTag.sentence(Market.US, components(""), "Silk habotai", refusals);
        assertThat(refusals).hasSize(1);
    }

    /** Source: Reg. (EU) 1007/2011 Art. 5; 16 CFR 303.18. */
    @Test
    void aTitleNamingAFibreThatIsNotThereIsAskedAbout() {
        List<Component> linen = components("linen 100");
        assertThat(FibreMentions.questions(Market.EU, linen, "Silk river").toString())
                .contains("names silk");
        assertThat(FibreMentions.questions(Market.EU, linen, "Flax river")).isEmpty();
        assertThat(FibreMentions.questions(Market.EU, linen, "Heron weir")).isEmpty();
    }

    @Test
    void aMordantSaltIsNoFibre() {
        assertThat(PartialTag.sentence(
                        Market.US, components("silk 80+cotton 20"), "aluminium acetate mordant", new ArrayList<>()))
                .isEmpty();
        assertThat(PartialTag.sentence(Market.US, components("silk 80+cotton 20"), "acetate satin", new ArrayList<>()))
                .isPresent();
    }

    private static List<String> texts(FibreStatement statement, FibreLine.Kind kind) {
        return statement.lines(kind).stream().map(FibreLine::text).toList();
    }
}

package tenterbook.labelling.rule;

import static org.assertj.core.api.Assertions.assertThat;
import static tenterbook.labelling.Samples.name;
import static tenterbook.labelling.Samples.share;

import java.util.Arrays;
import java.util.Currency;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tenterbook.labelling.Samples;
import tenterbook.material.FibreShare;
import tenterbook.measure.Quantity;
import tenterbook.measure.QuantityText;
import tenterbook.measure.Unit;
import tenterbook.piece.Category;
import tenterbook.piece.NumberScheme;
import tenterbook.piece.Studio;
import tenterbook.piece.label.ComponentKind;
import tenterbook.piece.label.LabelFacts;
import tenterbook.piece.label.PieceComponent;

/** Lining, embroidery, elastic and trims in the statement of fibres; the sources stand in the table of rules. */
class PartsBesideClothTest {
    private static final Studio FRENCH = new Studio(
            "Oficina Valderim",
            "",
            "",
            "",
            "",
            "",
            new NumberScheme("V"),
            Currency.getInstance("EUR"),
            "",
            "Porto Sarelho\nPortugal",
            "",
            "",
            "",
            "",
            "",
            null,
            null,
            List.of(name("silk", "fr-CA", "soie"), name("cotton", "fr-CA", "coton")),
            List.of(),
            null,
            null);

    private static Quantity percent(String text) {
        return QuantityText.read(text == null ? "" : text, Unit.PERCENT);
    }

    private static PieceComponent part(
            String name, ComponentKind kind, String weight, String area, FibreShare... fibres) {
        return new PieceComponent(name, kind, List.of(fibres), percent(weight), percent(area));
    }

    private static FibreStatement of(Market market, String trims, PieceComponent... parts) {
        return of(market, trims, "", parts);
    }

    private static FibreStatement of(Market market, String trims, String words, PieceComponent... parts) {
        Component silk = new Component("", "habotai", List.of(share("silk", 100.0)), "China");
        return FibreStatement.of(
                market,
                new Article(
                        Category.SCARF,
                        List.of(silk),
                        "Portugal",
                        trims,
                        market == Market.CA ? FRENCH : Samples.PARTICULAR,
                        words,
                        new LabelFacts(List.of(parts), "", null, List.of())));
    }

    private static String content(FibreStatement statement) {
        return statement.lines(FibreLine.Kind.CONTENT).stream()
                .map(FibreLine::text)
                .collect(Collectors.joining("|"));
    }

    private static List<Question> about(FibreStatement statement, String part) {
        return statement.questions().stream()
                .filter(question -> question.asks().inEnglish().contains("“" + part + "”"))
                .toList();
    }

    /**
     * Thresholds: Reg. (EU) 1007/2011 Art. 10(1), 11(2), Annex IV no. 5, Annex VII (a)(i); 16 CFR 303.12(a), (b); 15 USC 70b(b)(2);
     * C.R.C., c. 1551, s. 36.
     */
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            nullValues = "-",
            value = {
                "EU; EMBROIDERY; -; 9; 100 % silk",
                "EU; EMBROIDERY; -; 10; Body: 100 % silk|Hem: 100 % cotton",
                "EU; EMBROIDERY; -; 6 to 8; 100 % silk",
                "EU; DECORATION; 7; -; 100 % silk",
                "EU; DECORATION; 7.5; -; Body: 100 % silk|Hem: 100 % cotton",
                "EU; SECTION; 29; -; 100 % silk",
                "EU; SECTION; 30; -; Body: 100 % silk|Hem: 100 % cotton",
                "EU; LINING; 4; 0; Body: 100 % silk|Hem: 100 % cotton",
                "EU; TRIMMING; -; -; 100 % silk",
                "EU; ELASTIC; -; -; 100 % silk",
                "US; EMBROIDERY; -; 15; 100% Silk Exclusive of Decoration",
                "US; EMBROIDERY; 6; 16; Body: 100% Silk|Hem: 100% Cotton",
                "US; DECORATION; 5; 40; 100% Silk Exclusive of Decoration",
                "US; ELASTIC; -; 20; 100% Silk Exclusive of Elastic",
                "US; ELASTIC; -; 21; Body: 100% Silk|Hem: 100% Cotton",
                "US; TRIMMING; -; 50; 100% Silk",
                "CA; TRIMMING; -; 15; 100% Silk/Soie Exclusive of Trimming/à l’exclusion de la garniture",
                "CA; TRIMMING; -; 16; Body: 100% Silk/Soie|Hem: 100% Cotton/Coton"
            })
    void aShareThatIsKnownSettlesWhetherAPartIsStated(
            Market market, ComponentKind kind, String weight, String area, String content) {
        FibreStatement statement = of(market, "", part("hem", kind, weight, area, share("cotton", 100.0)));
        assertThat(statement.refusals()).isEmpty();
        assertThat(content(statement)).isEqualTo(content);
        assertThat(about(statement, "hem")).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            nullValues = "-",
            value = {"-", "forgot", "about 3", "8 to 12", "at least 5"})
    void aShareThatDoesNotTellIsAskedForAndThePartIsStatedMeanwhile(String area) {
        FibreStatement statement =
                of(Market.EU, "", part("crane", ComponentKind.EMBROIDERY, null, area, share("cotton", 100.0)));
        assertThat(content(statement)).isEqualTo("Body: 100 % silk|Crane: 100 % cotton");
        assertThat(about(statement, "crane")).singleElement().satisfies(question -> {
            assertThat(question.rule().id()).isEqualTo("embroidered");
            assertThat(question.asks().inEnglish())
                    .contains("under 10 percent", area == null ? "not recorded" : area.replace(" to ", "–"));
        });
        FibreStatement unknown = of(Market.EU, "", part("crane", ComponentKind.EMBROIDERY, null, area));
        assertThat(content(unknown)).isEqualTo("100 % silk");
        assertThat(about(unknown, "crane").toString()).contains("nothing is said of it");
    }

    @Test
    void aPartThatMustBeStatedAndHasNoFibresIsRefused() {
        FibreStatement statement = of(Market.EU, "", part("lining", ComponentKind.LINING, null, null));
        assertThat(content(statement)).isEmpty();
        assertThat(statement.refusals()).singleElement().satisfies(refusal -> {
            assertThat(refusal.toString()).contains("“lining” are not recorded", "Art. 11");
            assertThat(refusal.mend()).isEqualTo(LabelRefusal.Mend.PIECE);
        });
    }

    @Test
    void aPartOfNoRecordedKindOrWithoutARuleThatWasReadIsAsked() {
        PieceComponent part = part("sash", null, "2", "2", share("silk", 100.0));
        assertThat(about(of(Market.US, "", part), "sash").toString()).contains("kind is not recorded");
        PieceComponent lining = part("lining", ComponentKind.LINING, "2", "2", share("silk", 100.0));
        assertThat(about(of(Market.US, "", lining), "lining").toString()).contains("No rule for such a part was read");
        assertThat(content(of(Market.US, "", lining)))
                .as("the same fibres need no names of parts")
                .isEqualTo("100% Silk");
    }

    /** Source: 16 CFR 303.12(a): decoration is left out only where nothing is said of its fibre. */
    @Test
    void aPartWhoseFibreTheWordsNameIsStated() {
        PieceComponent crane = part("crane", ComponentKind.EMBROIDERY, null, "9", share("cotton", 100.0));
        assertThat(content(of(Market.US, "", "Silk scarf with a cotton crane", crane)))
                .isEqualTo("Body: 100% Silk|Crane: 100% Cotton");
        assertThat(content(of(Market.US, "", "Silk scarf with a crane", crane)))
                .isEqualTo("100% Silk Exclusive of Decoration");
    }

    /** A wool fringe brings the rule for wool with it: 15 USC 68b, whose ornamentation is measured by weight. */
    @Test
    void aWoolPartBringsTheRuleForWool() {
        PieceComponent tassel = part("tassel", ComponentKind.DECORATION, "4", "1", share("wool", 100.0));
        assertThat(content(of(Market.US, "", tassel))).isEqualTo("100% Silk Exclusive of Ornamentation");
    }

    @Test
    void trimsAreAskedAboutOnlyWhereNoPartIsRecordedForThem() {
        PieceComponent elastic = part("elastic edge", ComponentKind.ELASTIC, null, null, share("elastane", 100.0));
        assertThat(trimQuestions(of(Market.EU, "elastic edge"))).containsExactly("elastic");
        assertThat(trimQuestions(of(Market.EU, "elastic edge", elastic))).isEmpty();
        assertThat(trimQuestions(of(Market.EU, "elastic edge, lace", elastic))).containsExactly("lace");
    }

    private static List<String> trimQuestions(FibreStatement statement) {
        return statement.questions().stream()
                .filter(question -> question.rule().id().equals("trim"))
                .map(question ->
                        Arrays.asList(question.asks().inEnglish().split("[“”]")).get(1))
                .toList();
    }
}

package tenterbook.labelling.rule;

import static org.assertj.core.api.Assertions.assertThat;
import static tenterbook.labelling.Samples.name;
import static tenterbook.labelling.Samples.share;

import java.util.Currency;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tenterbook.piece.Category;
import tenterbook.piece.LocalName;
import tenterbook.piece.NumberScheme;
import tenterbook.piece.Studio;
import tenterbook.piece.label.LabelFacts;
import tenterbook.piece.label.SellingFacts;

/** Country of sale, made to order, registered name and importer: recorded once, then no more asked for. */
class SaleQuestionsTest {
    private static Studio studio(SellingFacts selling, LocalName... names) {
        return new Studio(
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
                "oficina@valderim.example",
                "",
                "",
                "",
                "",
                null,
                null,
                List.of(names),
                List.of(),
                selling,
                null);
    }

    private static FibreStatement of(
            Market market, Studio studio, String soldIn, @Nullable Boolean toOrder, String words) {
        Component silk = new Component("", "habotai", List.of(share("silk", 100.0)), "China");
        return FibreStatement.of(
                market,
                new Article(
                        Category.SCARF,
                        List.of(silk),
                        "Portugal",
                        "",
                        studio,
                        words,
                        new LabelFacts(List.of(), soldIn, toOrder, List.of())));
    }

    private static List<Question> asked(FibreStatement statement, String rule) {
        return statement.questions().stream()
                .filter(question -> question.rule().id().equals(rule))
                .toList();
    }

    /** Source: Reg. (EU) 1007/2011 Art. 16(3). */
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "Germany; German",
                "Hamburg, Germany; German",
                "Belgium; Dutch, French and German",
                "Ireland; ",
                "Malta; "
            })
    void theCountryOfSaleSaysWhichLanguageTheLabelLacks(String country, String languages) {
        List<Question> asked = asked(of(Market.EU, studio(SellingFacts.NONE), country, null, ""), "language");
        if (languages == null) {
            assertThat(asked).isEmpty();
        } else {
            assertThat(asked)
                    .singleElement()
                    .satisfies(question -> assertThat(question.asks().inEnglish())
                            .contains("sold in " + country, "speak " + languages + "?"));
        }
    }

    @Test
    void aLanguageWhoseWordsAreEnteredIsNotAskedFor() {
        Studio german = studio(SellingFacts.NONE, name("silk", "de", "Seide"));
        assertThat(asked(of(Market.EU, german, "Austria", null, ""), "language"))
                .isEmpty();
        assertThat(asked(of(Market.EU, german, "", null, ""), "language").toString())
                .contains("No country of sale is recorded");
        assertThat(of(Market.EU, german, "Japan", null, "").questions().toString())
                .contains("The country of sale is Japan");
    }

    /** Sources: Reg. (EU) 1007/2011 Art. 2(3), (4); C.R.C., c. 1551, s. 7. */
    @Test
    void madeToOrderIsAskedOfTheRecordAndOfTheWordsUnlessItIsRecordedAsNot() {
        for (Market market : List.of(Market.EU, Market.CA)) {
            String rule = market == Market.EU ? "ownOrder" : "bill";
            Studio studio = studio(SellingFacts.NONE, name("silk", "fr-CA", "soie"));
            assertThat(asked(of(market, studio, "", true, ""), rule)).hasSize(1);
            assertThat(asked(of(market, studio, "", null, ""), rule)).isEmpty();
            assertThat(asked(of(market, studio, "", null, "bespoke"), rule)).hasSize(1);
            assertThat(asked(of(market, studio, "", true, "bespoke"), rule)).hasSize(1);
            assertThat(asked(of(market, studio, "", false, "bespoke"), rule)).isEmpty();
        }
    }

    /** Source: Reg. (EU) 2023/988 Art. 9(6). */
    @Test
    void aRegisteredNameThatIsRecordedStandsBesideTheTradingName() {
        Studio trading = studio(new SellingFacts("Inês Valderim Unipessoal", "", "", List.of(), null));
        FibreStatement statement = of(Market.EU, trading, "Ireland", null, "");
        assertThat(asked(statement, "contact")).isEmpty();
        assertThat(particulars(statement)).startsWith("Inês Valderim Unipessoal|");
        Studio same = studio(new SellingFacts("Oficina Valderim", "", "", List.of(), null));
        assertThat(particulars(of(Market.EU, same, "Ireland", null, ""))).doesNotContain("Oficina Valderim|");
        assertThat(asked(of(Market.EU, studio(SellingFacts.NONE), "Ireland", null, ""), "contact"))
                .singleElement()
                .satisfies(question -> assertThat(question.mend()).isEqualTo(LabelRefusal.Mend.STUDIO));
    }

    @Test
    void anImporterIsPrintedInGreatBritainForWhatIsMadeOutside() {
        Studio studio = studio(new SellingFacts("", "Weir & Co\nLeeds\nweir@co.example", "", List.of(), null));
        FibreStatement statement = of(Market.UK, studio, "England", null, "");
        assertThat(particulars(statement)).contains("Weir & Co, Leeds, weir@co.example");
        assertThat(asked(statement, "importer")).isEmpty();
        assertThat(asked(of(Market.UK, studio(SellingFacts.NONE), "England", null, ""), "importer"))
                .singleElement()
                .satisfies(question -> assertThat(question.mend()).isEqualTo(LabelRefusal.Mend.STUDIO));
        assertThat(particulars(of(Market.EU, studio, "Ireland", null, ""))).doesNotContain("Weir");
    }

    private static String particulars(FibreStatement statement) {
        return statement.lines(FibreLine.Kind.PARTICULARS).stream()
                .map(FibreLine::text)
                .collect(Collectors.joining("|"));
    }
}

package tenterbook.labelling.rule;

import static org.assertj.core.api.Assertions.assertThat;
import static tenterbook.labelling.Samples.name;

import java.util.Currency;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import tenterbook.labelling.Samples;
import tenterbook.material.FibreShare;
import tenterbook.piece.Category;
import tenterbook.piece.LocalName;
import tenterbook.piece.NumberScheme;
import tenterbook.piece.Studio;

/** What each market asks besides the content. Citations stand beside the cases; the notes they are from are in the rule tables. */
class MarketTest {
    private static Studio studio(
            String address, String online, String phone, String rn, String ca, String responsible, LocalName... names) {
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
                address,
                online,
                phone,
                rn,
                ca,
                responsible,
                null,
                null,
                List.of(names),
                List.of(),
                null,
                null);
    }

    private static Studio plain(LocalName... names) {
        return studio("", "", "", "", "", "", names);
    }

    private static FibreStatement of(Market market, Studio studio, String dyedIn, String trims, String words) {
        Component cotton = new Component("", "lawn", List.of(new FibreShare("cotton", 100.0, "")), "India");
        return FibreStatement.of(market, new Article(Category.SCARF, List.of(cotton), dyedIn, trims, studio, words));
    }

    private static List<String> texts(FibreStatement statement, FibreLine.Kind kind) {
        return statement.lines(kind).stream().map(FibreLine::text).toList();
    }

    @ParameterizedTest
    @EnumSource(Market.class)
    void everyTableIsReadAndSaysThatItIsNoLegalAdvice(Market market) {
        RuleTable rules = market.rules();
        assertThat(rules.market()).isEqualTo(market);
        assertThat(rules.notice()).contains("no legal advice");
        assertThat(rules.version()).isNotBlank();
        assertThat(rules.rules().values())
                .allSatisfy(rule -> assertThat(rule.status()).isIn("read", "read second hand", "from memory: verify"))
                .allSatisfy(rule -> assertThat(rule.status().startsWith("read"))
                        .as(rule + " is read where a passage stands beside it, and only there")
                        .isEqualTo(!rule.passage().isEmpty()))
                .allSatisfy(rule -> assertThat(rule.citation()).isNotBlank());
        assertThat(rules.rule(rules.maker().rule()).says()).isNotBlank();
    }

    /** Every rule that code asks for is there in every market, so that no label fails on a missing citation. */
    @ParameterizedTest
    @EnumSource(Market.class)
    void everyRuleThatCodeAsksForIsThere(Market market) {
        RuleTable rules = market.rules();
        for (String id : List.of(
                "name",
                "order",
                "small",
                "wool",
                "whole",
                "decoration",
                "sum",
                "abbreviation",
                "misuse",
                "missing",
                "components",
                "origin",
                "care",
                "careWords",
                "carePermanent",
                "careSymbols",
                "careSymbolShapes",
                "careSymbolMarks",
                "careMethod",
                "practice")) {
            assertThat(rules.rule(id)).as(market + " " + id).isNotNull();
        }
        assertThat(rules.animalPhrase().isEmpty() || rules.rules().containsKey("animal"))
                .isTrue();
        assertThat(rules.partialTagPhrase().isEmpty() || rules.rules().containsKey("tag"))
                .isTrue();
        assertThat(rules.otherUse() == Language.Use.NONE || rules.rules().containsKey("language"))
                .isTrue();
        assertThat(rules.careNeeds().categories().isEmpty() || rules.rules().containsKey("careNeeded"))
                .isTrue();
    }

    /** Source: 16 CFR 303.19, the name under which business is done, or an RN. */
    @Test
    void theStatesTakeANameOrARegisteredNumber() {
        assertThat(of(Market.US, Studio.UNNAMED, "USA", "", "").refusals())
                .singleElement()
                .satisfies(r -> assertThat(r.toString()).contains("303.19", "Enter the studio's name"));
        FibreStatement named = of(Market.US, studio("", "", "", "RN 12345", "", ""), "USA", "", "");
        assertThat(named.refusals()).isEmpty();
        assertThat(texts(named, FibreLine.Kind.MAKER)).containsExactly("Oficina Valderim");
        assertThat(texts(named, FibreLine.Kind.PARTICULARS)).containsExactly("RN 12345");
    }

    /** Source: C.R.C., c. 1551, s. 11(1)(b): the dealer's name and postal address, or a CA number. */
    @Test
    void canadaTakesAnAddressOrACaNumber() {
        assertThat(of(Market.CA, plain(), "Portugal", "", "").refusals())
                .singleElement()
                .satisfies(r ->
                        assertThat(r.toString()).contains("C.R.C., c. 1551, s. 11(1)(b)", "postal address", "(CA)"));
        assertThat(texts(
                        of(Market.CA, studio("Porto Sarelho\nPortugal", "", "", "", "", ""), "Portugal", "", ""),
                        FibreLine.Kind.PARTICULARS))
                .containsExactly("Porto Sarelho, Portugal");
        assertThat(texts(
                        of(Market.CA, studio("Porto Sarelho", "", "", "", "CA 54321", ""), "", "", ""),
                        FibreLine.Kind.PARTICULARS))
                .containsExactly("CA 54321");
    }

    /** Source: C.R.C., c. 1551, s. 11(1)(c): origin only where the article is said to be imported. */
    @Test
    void canadaHearsOfOriginOnlyWhereItIsSaidToBeImported() {
        Studio studio = studio("", "", "", "", "54321", "");
        assertThat(texts(of(Market.CA, studio, "Portugal", "", "Figueira"), FibreLine.Kind.ORIGIN))
                .isEmpty();
        assertThat(texts(of(Market.CA, studio, "Portugal", "", "Imported scarf"), FibreLine.Kind.ORIGIN))
                .containsExactly("Dyed in Portugal. Cloth woven in India.");
        assertThat(of(Market.CA, studio, "", "", "Imported scarf").refusals().toString())
                .contains("imported", "Record where it was dyed");
    }

    /** Source: guidance on Japan: the labeller's name with address or phone; names in Japanese terms. */
    @Test
    void japanTakesAnAddressOrATelephoneAndTheMakersTerms() {
        LocalName cotton = name("cotton", "ja", "綿");
        FibreStatement nothing = of(Market.JP, plain(), "Portugal", "", "");
        assertThat(nothing.refusals().toString()).contains("Japanese of cotton", "telephone number");
        FibreStatement phone = of(Market.JP, studio("", "", "+351 0", "", "", "", cotton), "Portugal", "", "");
        assertThat(phone.refusals()).isEmpty();
        assertThat(phone.lines(FibreLine.Kind.CONTENT)).singleElement().satisfies(line -> {
            assertThat(line.text()).isEqualTo("綿 100%");
            assertThat(line.basis()).contains("Japanese for cotton entered by Inês Valderim");
        });
        assertThat(texts(phone, FibreLine.Kind.PARTICULARS)).containsExactly("+351 0");
    }

    /** Source: Competition Bureau Canada; the one French name whose source was read needs no entry, and says where it is from. */
    @Test
    void aNameInAnotherLanguageSaysWhoAnswersForIt() {
        FibreStatement canada = of(Market.CA, studio("", "", "", "", "54321", ""), "", "", "");
        assertThat(canada.lines(FibreLine.Kind.CONTENT)).singleElement().satisfies(line -> {
            assertThat(line.text()).isEqualTo("100% Cotton/Coton");
            assertThat(line.basis()).contains("French (Canada) for cotton read in Competition Bureau Canada");
        });
    }

    /** Source: Reg. (EU) 1007/2011 Art. 16(3): the language of the member state. */
    @Test
    void theUnionTakesALineInEachLanguageThatIsWhollyEntered() {
        FibreStatement portuguese = of(Market.EU, plain(name("cotton", "pt", "algodão")), "Portugal", "", "");
        assertThat(texts(portuguese, FibreLine.Kind.CONTENT)).containsExactly("100 % cotton", "100 % algodão");
        FibreStatement partly = of(Market.EU, plain(name("silk", "pt", "seda")), "Portugal", "", "");
        assertThat(texts(partly, FibreLine.Kind.CONTENT)).containsExactly("100 % cotton");
        assertThat(partly.questions().toString()).contains("What is cotton in Portuguese?");
        FibreStatement horn = of(
                Market.EU,
                plain(
                        name("cotton", "pt", "algodão"),
                        name("Contains non-textile parts of animal origin.", "pt", "Palavras da oficina")),
                "Portugal",
                "horn toggle",
                "");
        assertThat(texts(horn, FibreLine.Kind.ANIMAL_PARTS))
                .containsExactly("Contains non-textile parts of animal origin.", "Palavras da oficina");
    }

    /** Source: Reg. (EU) 2023/988 Art. 9(6) and 16: contact details, and a responsible person where the maker is outside. */
    @Test
    void theUnionAsksForContactAndForAResponsiblePersonWhereTheMakerIsOutside() {
        FibreStatement inside = of(
                Market.EU, studio("Porto Sarelho, Portugal", "a@valderim.example", "", "", "", ""), "Portugal", "", "");
        assertThat(texts(inside, FibreLine.Kind.PARTICULARS))
                .containsExactly("Porto Sarelho, Portugal", "a@valderim.example");
        assertThat(inside.questions().toString()).doesNotContain("responsible person", "with the piece");
        FibreStatement outside = of(Market.EU, plain(), "Ohio, USA", "", "");
        assertThat(outside.refusals())
                .as("they may stand on the packing, so asked and not refused")
                .isEmpty();
        assertThat(outside.questions().toString()).contains("2023/988 Art. 9", "responsible person");
        assertThat(of(Market.UK, plain(), "Ohio, USA", "", "").questions().toString())
                .doesNotContain("responsible person");
    }

    /** Source: Reg. (EU) 1007/2011 Art. 12. Shell and the like are from memory and are asked about. */
    @ParameterizedTest
    @CsvSource({
        "EU, bone button, true, ''",
        "EU, leather tag and two beads, true, ''",
        "EU, shell button, true, from memory",
        "EU, imitation horn, false, imitation",
        "EU, faux leather, false, faux",
        "EU, small toggle, false, do not say",
        "EU, wooden toggle, false, ''",
        "UK, horn toggle, true, ''",
        "NI, horn toggle, true, ''",
        "US, horn toggle, false, ''",
        "CA, horn toggle, false, ''"
    })
    void partsOfAnimalsAreStatedWhereTheyAreAndAskedAboutWhereThatIsOpen(
            Market market, String trims, boolean stated, String asked) {
        FibreStatement statement = of(market, plain(), "Portugal", trims, "");
        assertThat(texts(statement, FibreLine.Kind.ANIMAL_PARTS))
                .isEqualTo(stated ? List.of("Contains non-textile parts of animal origin.") : List.of());
        List<String> asks = statement.questions().stream()
                .map(question -> question.asks().inEnglish())
                .filter(q -> q.contains(trims))
                .toList();
        assertThat(asks.toString()).contains(asked);
        assertThat(asks.isEmpty()).isEqualTo(asked.isEmpty());
    }

    /** Source: eu_uk notes: the text was read as the Union's; that it holds in Great Britain and Northern Ireland is memory. */
    @Test
    void whatHoldsInBritainIsToldAsRememberedAndAskedAbout() {
        FibreStatement britain = of(Market.UK, Samples.PARTICULAR, "Portugal", "", "");
        assertThat(britain.lines(FibreLine.Kind.CONTENT))
                .singleElement()
                .satisfies(l -> assertThat(l.rule().status()).contains("memory"));
        assertThat(britain.questions().toString()).contains("retained");
        assertThat(of(Market.NI, Samples.PARTICULAR, "Portugal", "", "")
                        .questions()
                        .toString())
                .contains("Northern Ireland");
        assertThat(of(Market.EU, Samples.PARTICULAR, "Portugal", "", "").lines(FibreLine.Kind.CONTENT))
                .first()
                .satisfies(l -> assertThat(l.rule().status()).isEqualTo("read"));
    }

    /** Sources beside the rows: 16 CFR 303.43 (from memory), 15 USC 68b(a)(2)(A), Reg. (EU) 1007/2011 Art. 20(3), C.R.C., c. 1551, s. 30. */
    @Test
    void theFiguresOfTheTablesAreThoseOfTheSources() {
        assertThat(Market.US.rules().rule("tolerance").figure(0)).isEqualTo(3);
        assertThat(RuleTable.named("us-wool").rule("tolerance").figure(0)).isZero();
        assertThat(Market.EU.rules().rule("tolerance").figure(0)).isEqualTo(3);
        assertThat(Market.CA.rules().rule("tolerance").figure(0)).isEqualTo(5);
        assertThat(Market.CA.rules().rule("trim").figure(0)).isEqualTo(15);
        assertThat(Market.EU.rules().rule("components").figure(0)).isEqualTo(30);
    }

    @Test
    void whatGreatBritainKeepsIsCitedSoAndCountsAsFromMemory() {
        RuleTable britain = Market.UK.rules();
        assertThat(britain.rule("order").citation())
                .isEqualTo("Reg. (EU) 1007/2011 as retained in Great Britain Art. 9(1)");
        assertThat(britain.rule("order").status()).isEqualTo(Rule.FROM_MEMORY);
        assertThat(britain.rules()).doesNotContainKeys("responsible", "offer", "identifier");
        assertThat(britain.rule("claim.vegan")).isEqualTo(Market.CA.rules().rule("claim.vegan"));
    }
}

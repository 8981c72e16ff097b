package tenterbook.search.question;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tenterbook.search.facet.FacetTerms;
import tenterbook.search.index.PieceFacets;
import tenterbook.search.query.Constraint;
import tenterbook.search.query.Days;
import tenterbook.search.query.Facet;
import tenterbook.search.query.FacetValues;
import tenterbook.search.query.Measured;
import tenterbook.search.query.Order;
import tenterbook.search.query.Span;
import tenterbook.search.query.UserText;

/** Questions as somebody puts them who does not know the program. The day is 28 November 2026. */
class NewcomerQuestionsTest {
    private static final QuestionReader READER = new QuestionReader(
            new Lexicon(new FacetTerms.Term[] {
                term(Facet.BOARD, "B01", "Fig and wasp"),
                term(Facet.BOARD, "B06", "Net and floats"),
                term(Facet.BOARD, "B06/II", "Net and floats, state II"),
                term(Facet.FIBRE, "linen", "linen"),
                term(Facet.FIBRE, "silk", "silk"),
                term(Facet.DYE, "weld", "weld"),
                term(Facet.DYE, "madder", "madder"),
                term(Facet.DYE, "woad", "woad"),
                term(Facet.FAULT, "leak", "leak"),
                term(Facet.WOOD, "lime", "lime"),
                term(Facet.STEP, "temperature/38.0/42.0", "t"),
                term(Facet.STEP, "duration/180.0/180.0", "d"),
                term(Facet.STEP, "ph/10.7/10.8", "p"),
                term(Facet.EVENT, "lent/2024-09-12/2024-09-12", "Casa Ondrel (gallery)"),
                term(Facet.EVENT, "lent/2024-10-04/2024-10-04", "Museu do Sarelho (museum)"),
                term(Facet.EVENT, "washed/2024-06-13/2024-06-13", "washed/2024-06-13/2024-06-13"),
            }),
            new QuestionReader.Pieces() {
                @Override
                public List<String> numbered(String plain) {
                    return plain.equals("7") || plain.equals("v 24 7") ? List.of("V24-007") : List.of();
                }

                @Override
                public boolean beginning(String plain) {
                    return false;
                }
            },
            new QuestionReader.Background(
                    () -> LocalDate.of(2026, 11, 28),
                    Map.of(
                            "moongate",
                            "B06 state II",
                            "first blush",
                            "madder linen",
                            "old chest",
                            "flat drawer",
                            "silk road",
                            "madder",
                            "night blue",
                            "woad more than ten dips",
                            "weld",
                            "woad")));

    private static FacetTerms.Term term(Facet facet, String value, String label) {
        return new FacetTerms.Term(facet, new PieceFacets.Value(value, label), FacetValues.folded(value));
    }

    private static Reading read(String typed) {
        return READER.read(typed);
    }

    private static List<String> labels(String typed) {
        return read(typed).facts().stream()
                .map(fact -> fact.label().inEnglish())
                .toList();
    }

    private static List<String> offers(String typed) {
        return read(typed).offers().stream()
                .map(offer -> offer.label().inEnglish() + " | " + offer.question())
                .toList();
    }

    private static List<String> remarks(String typed) {
        return read(typed).remarks().stream().map(remark -> remark.inEnglish()).toList();
    }

    private static Constraint facet(Facet facet, boolean not, String... values) {
        return new Constraint.OfFacet(facet, Set.of(values), not);
    }

    @Test
    void aFaultIsAskedForInPortugueseToo() {
        assertThat(read("com falhas").constraints()).containsExactly(facet(Facet.FAULT, false, "leak"));
        assertThat(read("sem falhas").constraints()).containsExactly(facet(Facet.FAULT, true, "leak"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "never rinsed",
                "without any rinsed",
                "sem rinsed",
                "not made with rinsed",
                "-rinsed",
                "lacking rinsed"
            })
    void aDeniedWordThatIsNoFactIsLookedForDeniedAndSaid(String typed) {
        assertThat(read(typed).words().parts())
                .containsExactly(new UserText.Term(List.of("rinsed"), false, true, false));
        assertThat(labels(typed)).containsExactly("Without the word ‘rinsed’");
        assertThat(read(typed).facts().get(0).without()).isEmpty();
        assertThat(read(typed).facts().get(0).asWords()).isEmpty();
    }

    @Test
    void whatIsDeniedMayBeFurtherOff() {
        assertThat(read("not dyed with woad").constraints()).containsExactly(facet(Facet.DYE, true, "woad"));
        assertThat(read("not silk or linen").constraints())
                .containsExactly(facet(Facet.FIBRE, true, "silk"), facet(Facet.FIBRE, true, "linen"));
    }

    @Test
    void noBesidePortugueseWordsIsNoDenial() {
        assertThat(read("a peça no caderno").words().parts())
                .containsExactly(new UserText.Term(List.of("caderno"), false, false, true));
        assertThat(offers("no caderno")).containsExactly("the words ‘caderno’ | \"caderno\"");
    }

    @ParameterizedTest
    @CsvSource({
        "before june,,2026-05-31,before June 2026",
        "antes de junho,,2026-05-31,before June 2026",
        "after spring,2026-06-01,,after spring 2026",
        "since december,2025-12-01,,since December 2025",
        "until march,,2026-03-31,until March 2026",
        "after november,2025-12-01,,after November 2025",
        "last june,2026-06-01,2026-06-30,June 2026",
        "last autumn,2025-09-01,2025-11-30,autumn 2025",
        "by may 2024,,2024-05-31,up to 2024-05"
    })
    void aMonthWithoutAYearIsTheLatestThatIsPastWhereSomethingIsBeforeOrAfterIt(
            String typed, LocalDate from, LocalDate to, String said) {
        assertThat(read(typed).constraints()).containsExactly(new Constraint.OfDays(new Days(from, to), false));
        assertThat(labels(typed)).containsExactly("Finished: " + said);
    }

    @Test
    void monthsOfWhateverYearAreOfferedBesideOrRead() {
        assertThat(offers("before june"))
                .containsExactly("Finished: January, February, March, April, May | between January and May");
        assertThat(read("between march and may").constraints())
                .containsExactly(new Constraint.OfMonth(Set.of(3, 4, 5), false));
        assertThat(read("de novembro a fevereiro").constraints())
                .containsExactly(new Constraint.OfMonth(Set.of(11, 12, 1, 2), false));
    }

    @Test
    void aTimeIsNamedByWhatHappened() {
        assertThat(labels("before the museum loan"))
                .containsExactly("Finished: before 2024-10-04 (lent, Museu do Sarelho (museum))");
        assertThat(read("before the museum loan").constraints())
                .containsExactly(new Constraint.OfDays(new Days(null, LocalDate.of(2024, 10, 3)), false));
        assertThat(offers("before the loan")).containsExactly("Finished: up to 2024-09-11 | before 2024-09-12");
        assertThat(read("depois da lavagem").constraints())
                .containsExactly(new Constraint.OfDays(new Days(LocalDate.of(2024, 6, 14), null), false));
        assertThat(labels("after the repair"))
                .containsExactly("Finished: after something ‘mended’, of which none is recorded");
        assertThat(read("bled after washing").constraints())
                .as("no article and nobody named")
                .noneMatch(Constraint.OfDays.class::isInstance);
    }

    @Test
    void aListIsAnyOfItWithOrAndAllOfItWithAnd() {
        assertThat(labels("boards B01 and B06")).containsExactly("Board: B01", "and Board: B06");
        assertThat(offers("boards B01 and B06")).containsExactly("Board: B01 or Board: B06 | boards B01 or B06");
        assertThat(labels("woad, weld and madder")).containsExactly("Dye: woad", "and Dye: weld", "and Dye: madder");
        assertThat(read("woad, weld or madder").constraints())
                .containsExactly(facet(Facet.DYE, false, "woad", "weld", "madder"));
        assertThat(read("woad, weld or madder silk").facts().get(0).without()).isEqualTo("silk");
    }

    @Test
    void factsOfDifferentKindsAreAlternativesWithOr() {
        assertThat(read("woad or silk").constraints())
                .containsExactly(new Constraint.AnyOf(
                        List.of(facet(Facet.DYE, false, "woad"), facet(Facet.FIBRE, false, "silk")), false));
        assertThat(labels("woad or silk")).containsExactly("Dye: woad or Fibre: silk");
        assertThat(read("woad silk").constraints()).hasSize(2);
    }

    @Test
    void whatHasNoWordsIsSaid() {
        assertThat(remarks("?")).containsExactly("No word was found in ‘?’ to look for, so nothing is narrowed by it.");
        assertThat(remarks("🧵")).hasSize(1);
        assertThat(remarks("silk 🧵")).containsExactly("🧵 is no word and was passed over.");
        assertThat(remarks("quais peças")).hasSize(1);
        assertThat(remarks("silk")).isEmpty();
    }

    @Test
    void japaneseIsCutIntoTheWordsOfTheTrade() {
        assertThat(read("絹の夾纈").constraints())
                .containsExactly(facet(Facet.FIBRE, false, "silk"), facet(Facet.LACKING, true, "board"));
        assertThat(read("絹の夾纈").words().empty()).isTrue();
    }

    @ParameterizedTest
    @CsvSource({
        "shorter than a metre,LENGTH,,99.99",
        "longer than 65 cm,LENGTH,65.01,",
        "wider than 60 cm,WIDTH,60.01,",
        "mais largo que 60 cm,WIDTH,60.01,",
        "half a metre,SIDE,45,55",
        "metre and a half,SIDE,145,155",
        "a metre and a half,SIDE,145,155",
        "metro e meio,SIDE,145,155",
        "over 2½ m,SIDE,250.01,",
        "square,RATIO,1,1.02"
    })
    void aSizeIsReadAsPeopleSayIt(String typed, Measured what, Double from, Double to) {
        assertThat(read(typed).constraints())
                .containsExactly(new Constraint.OfNumber(Map.of(what, new Span(from, to)), false));
    }

    @ParameterizedTest
    @CsvSource({
        "3 hours,duration/180.0/180.0",
        "três horas,duration/180.0/180.0",
        "40 °C,temperature/38.0/42.0",
        "over 40 degrees,temperature/38.0/42.0",
        "40 graus,temperature/38.0/42.0",
        "pH 10.7,ph/10.7/10.8"
    })
    void whatAStepMeasuredIsAFact(String typed, String value) {
        assertThat(read(typed).constraints()).containsExactly(facet(Facet.STEP, false, value));
    }

    @Test
    void aStepThatNobodyRecordedFindsNothing() {
        assertThat(read("pH 9").constraints()).containsExactly(facet(Facet.STEP, false));
    }

    @Test
    void aMisspeltWordOfAFactIsCorrectedAndSaid() {
        QuestionReader.Corrected corrected =
                READER.corrected("linnen six dips", word -> false).orElseThrow();
        assertThat(corrected.remark().inEnglish())
                .isEqualTo("Nothing was found as typed; ‘linnen’ was read as ‘linen’.");
        assertThat(corrected.reading().constraints()).hasSize(2).contains(facet(Facet.FIBRE, false, "linen"));
        assertThat(READER.corrected("linnen", word -> true))
                .as("a word that some piece has")
                .isEmpty();
        assertThat(READER.corrected("zeppelin", word -> false)).isEmpty();
    }

    @Test
    void whatCanBeSoldIsReadAndWhatIsConsignedIsOffered() {
        assertThat(read("which pieces can I sell").constraints())
                .containsExactly(facet(Facet.STATUS, false, "in-stock", "second"));
        assertThat(read("which pieces can I sell").words().empty()).isTrue();
        assertThat(offers("show me silk for sale"))
                .containsExactly(
                        "Status: in stock or seconds quality or Status: consigned | show me silk for sale or consigned");
    }

    @Test
    void anOrderStandsAmongWhatWasUnderstood() {
        Reading reading = read("small silk");
        assertThat(reading.order()).isEqualTo(Order.SMALLEST);
        assertThat(labels("small silk")).containsExactly("Order: smallest first", "Fibre: silk");
        assertThat(reading.facts().get(0).without()).isEqualTo("silk");
        assertThat(read(reading.facts().get(0).asWords()).order()).isNull();
        assertThat(read("big").order()).isEqualTo(Order.SIZE);
        assertThat(read("cheap").order()).isEqualTo(Order.PRICE);
        assertThat(read("peças caras").order()).isEqualTo(Order.DEAREST);
    }

    @Test
    void whatIsRecordedIsTheOppositeOfWhatIsLacking() {
        assertThat(read("with a price").constraints()).containsExactly(facet(Facet.LACKING, true, "price"));
        assertThat(labels("with a price")).containsExactly("With a price");
        assertThat(read("com fotografia").constraints()).containsExactly(facet(Facet.LACKING, true, "photograph"));
        assertThat(read("without a title").constraints()).containsExactly(facet(Facet.LACKING, false, "title"));
    }

    @Test
    void aHangingIsAPieceAndHangingAStatusWithTheOtherOffered() {
        assertThat(read("a hanging").constraints()).containsExactly(facet(Facet.CATEGORY, false, "wall-hanging"));
        assertThat(offers("a hanging")).containsExactly("Status: hanging | hanging now");
        assertThat(read("hanging").constraints()).containsExactly(facet(Facet.STATUS, false, "hanging"));
        assertThat(offers("hanging")).containsExactly("Kind of piece: wall hanging | wall hanging");
    }

    @Test
    void aCurrencyTypedComparesPricesInItAlone() {
        assertThat(read("over 500 £").constraints())
                .containsExactly(
                        new Constraint.OfNumber(Map.of(Measured.PRICE, new Span(500.01, null)), Set.of("GBP"), false));
        assertThat(labels("over 500 £")).containsExactly("Price in GBP alone: over 500");
        assertThat(((Constraint.OfNumber) read("under $80").constraints().get(0)).currencies())
                .contains("USD", "CAD", "AUD");
        assertThat(labels("price over 80")).containsExactly("Price, in any currency: over 80");
    }

    @Test
    void aFactInQuotesIsOfferedWithoutThem() {
        assertThat(offers("\"sold\"")).containsExactly("Status: sold | sold");
    }

    @Test
    void aNumberIsShownAsTheArchiveWritesItAndOneAloneOffersItsReadings() {
        assertThat(labels("v24-7")).containsExactly("Number: V24-007");
        assertThat(offers("180")).containsExactly("A side: 180 cm | 180 cm", "Price, in any currency: 180 | price 180");
        assertThat(offers("7")).contains("Dips: 7 | 7 dips");
        assertThat(offers("2024")).isEmpty();
    }

    @Test
    void limeIsOfferedAsWhatIsSlakedAndAsWood() {
        assertThat(offers("lime"))
                .containsExactly("the words ‘slaked lime’ | \"slaked lime\"", "Wood of the boards: lime | lime wood");
        assertThat(read("lime wood").constraints()).containsExactly(facet(Facet.WOOD, false, "lime"));
    }

    @Test
    void theMakersOwnWordsAreReadAfterTheTradesOwn() {
        assertThat(read("moongate").constraints()).containsExactly(facet(Facet.BOARD, false, "b06/ii"));
        assertThat(labels("moongate")).containsExactly("Board: B06, state II (your word ‘moongate’)");
        assertThat(read("not moongate").constraints()).containsExactly(facet(Facet.BOARD, true, "b06/ii"));
        assertThat(read("first blush").constraints())
                .containsExactly(facet(Facet.DYE, false, "madder"), facet(Facet.FIBRE, false, "linen"));
        assertThat(read("old chest").words().parts())
                .extracting(part -> part.words().get(0))
                .containsExactly("flat", "drawer");
        assertThat(labels("old chest")).containsExactly("the words ‘flat drawer’ (your word ‘old chest’)");
        assertThat(read("silk road").constraints())
                .as("longer than the word of the trade")
                .containsExactly(facet(Facet.DYE, false, "madder"));
        assertThat(read("weld").constraints())
                .as("a word of the trade keeps its meaning")
                .containsExactly(facet(Facet.DYE, false, "weld"));
    }

    @Test
    void theMakersWordAfterNotDeniesAllThatItStandsFor() {
        Constraint dips = new Constraint.OfNumber(Map.of(Measured.DIPS, new Span(11.0, null)), true);
        assertThat(read("not night blue").constraints())
                .containsExactly(new Constraint.AnyOf(List.of(facet(Facet.DYE, true, "woad"), dips), false));
        assertThat(labels("not night blue"))
                .containsExactly("not all of these: Dye: woad, Dips: over 10 (your word ‘night blue’)");
        assertThat(read("silk not night blue").facts().get(1).without()).isEqualTo("silk");
        assertThat(read("-moongate").constraints()).containsExactly(facet(Facet.BOARD, true, "b06/ii"));
        assertThat(read("not old chest").words().parts())
                .containsExactly(
                        new UserText.Term(List.of("flat"), false, true, false),
                        new UserText.Term(List.of("drawer"), false, true, false));
        assertThat(labels("not old chest"))
                .containsExactly(
                        "Without the word ‘flat’ (your word ‘old chest’)",
                        "Without the word ‘drawer’ (your word ‘old chest’)");
    }

    @ParameterizedTest
    @CsvSource({
        "dips not recorded,dips",
        "price not recorded,price",
        "price unknown,price",
        "pieces with dips unknown,dips",
        "photograph missing,photograph",
        "preço desconhecido,price",
        "peso não registado,mass"
    })
    void whatIsNotRecordedMayBeNamedBeforeThat(String typed, String lacking) {
        assertThat(read(typed).constraints()).containsExactly(facet(Facet.LACKING, false, lacking));
        assertThat(read(typed).words().parts()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "what did I lend in October,Happened: lent, October",
        "emprestei em outubro,Happened: lent, October",
        "loans in October,Happened: lent, October"
    })
    void whatIDidInAMonthIsNoDateOfFinishing(String typed, String event, String month) {
        assertThat(labels(typed)).containsExactly(event + ", " + month);
        assertThat(read(typed).constraints()).containsExactly(facet(Facet.EVENT, false, "lent/2024-10-04/2024-10-04"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "what did I sell in October",
                "what did we sell in October",
                "sales in October",
                "vendas de outubro",
                "vendi em outubro"
            })
    void sellingInAMonthIsNoDateOfFinishing(String typed) {
        assertThat(labels(typed)).containsExactly("Happened: sold, October");
    }

    @Test
    void notExaminedSinceADayIsOnePart() {
        assertThat(labels("not examined since March 2025")).containsExactly("not Happened: examined, from 2025-03 on");
        assertThat(labels("not washed in 2024")).containsExactly("not Happened: washed, 2024");
        assertThat(labels("not examined")).containsExactly("Examined: never");
    }

    @Test
    void theSameDyeFromAnotherPlantIsOfferedAndNotTaken() {
        assertThat(read("indigo").constraints()).containsExactly(new Constraint.OfFacet(Facet.DYE, Set.of(), false));
        assertThat(offers("anil on silk"))
                .containsExactly("Dye: woad, which gives the same dye from another plant | woad on silk");
        assertThat(offers("silk without indigo"))
                .containsExactly("not Dye: woad, which gives the same dye from another plant | silk without woad");
        assertThat(offers("woad")).isEmpty();
        assertThat(offers("cochineal")).isEmpty();
    }

    @Test
    void oneMonthIsNotShownAsFromItselfToItself() {
        assertThat(labels("made in June 2024")).containsExactly("Finished: 2024-06");
        assertThat(labels("made between march 2024 and may 2024")).containsExactly("Finished: 2024-03 to 2024-05");
    }
}

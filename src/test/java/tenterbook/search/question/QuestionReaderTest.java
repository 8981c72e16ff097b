package tenterbook.search.question;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tenterbook.search.facet.FacetTerms;
import tenterbook.search.index.PieceFacets;
import tenterbook.search.query.Constraint;
import tenterbook.search.query.Days;
import tenterbook.search.query.Facet;
import tenterbook.search.query.FacetValues;
import tenterbook.search.query.Measured;
import tenterbook.search.query.Order;
import tenterbook.search.query.Span;
import tenterbook.words.Message;

/** What a question is read as, over the names of a small archive. The day is 28 November 2026. */
class QuestionReaderTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 11, 28);

    private static final QuestionReader READER = new QuestionReader(
            new Lexicon(terms(
                    Map.entry(Facet.BOARD, "B01=Fig and wasp"),
                    Map.entry(Facet.BOARD, "B02=Heron weir"),
                    Map.entry(Facet.BOARD, "B02/I=Heron weir, state I"),
                    Map.entry(Facet.BOARD, "B02/II=Heron weir, state II"),
                    Map.entry(Facet.FIBRE, "silk=silk"),
                    Map.entry(Facet.FIBRE, "linen=linen"),
                    Map.entry(Facet.CLOTH, "lv=linen voile"),
                    Map.entry(Facet.DYE, "woad=woad"),
                    Map.entry(Facet.DYE, "walnut hull=walnut hull"),
                    Map.entry(Facet.MORDANT, "aluminium acetate=aluminium acetate"),
                    Map.entry(Facet.FAULT, "leak=leak"),
                    Map.entry(Facet.FAULT, "pale inner layers=pale inner layers"),
                    Map.entry(Facet.HOLDER, "sala-vermia=Sala Vermia"),
                    Map.entry(Facet.COLOUR, "deep blue=deep blue"),
                    Map.entry(Facet.COLOUR, "light blue=light blue"),
                    Map.entry(Facet.COLOUR, "undyed linen=undyed linen"),
                    Map.entry(Facet.EVENT, "sold/2024-10-11/2024-10-11=sold"),
                    Map.entry(Facet.EVENT, "sold/2024-02-21/2024-02-21=sold"),
                    Map.entry(Facet.EVENT, "washed/2025-01-01/2025-12-31=washed"))),
            new QuestionReader.Pieces() {
                @Override
                public List<String> numbered(String plain) {
                    return plain.endsWith("24 12")
                            ? List.of("V24-012")
                            : plain.endsWith("7") ? List.of("V24-007") : List.of();
                }

                @Override
                public boolean beginning(String plain) {
                    return "v 24 ".startsWith(plain);
                }
            },
            new QuestionReader.Background(() -> TODAY, Map.of("moongate", "B02 state II", "first blush", "madder")));

    @SafeVarargs
    private static FacetTerms.Term[] terms(Map.Entry<Facet, String>... values) {
        List<FacetTerms.Term> terms = new ArrayList<>();
        for (Map.Entry<Facet, String> each : values) {
            String[] parts = each.getValue().split("=");
            terms.add(new FacetTerms.Term(
                    each.getKey(), new PieceFacets.Value(parts[0], parts[1]), FacetValues.folded(parts[0])));
        }
        return terms.toArray(new FacetTerms.Term[0]);
    }

    private static Constraint only(String typed) {
        Reading reading = READER.read(typed);
        assertThat(reading.words().parts()).as("words left of '%s'", typed).isEmpty();
        assertThat(reading.constraints()).as("facts of '%s'", typed).hasSize(1);
        return reading.constraints().get(0);
    }

    private static Constraint facet(Facet facet, boolean not, String... values) {
        return new Constraint.OfFacet(facet, Set.of(values), not);
    }

    @Test
    void statusIsReadInBothLanguages() {
        assertThat(only("sold")).isEqualTo(facet(Facet.STATUS, false, "sold"));
        assertThat(only("Vendidas")).isEqualTo(facet(Facet.STATUS, false, "sold"));
        assertThat(only("not sold")).isEqualTo(facet(Facet.STATUS, true, "sold"));
        assertThat(only("unsold")).isEqualTo(facet(Facet.STATUS, true, "sold"));
        assertThat(only("em consignação")).isEqualTo(facet(Facet.STATUS, false, "consigned"));
    }

    @ParameterizedTest
    @CsvSource({"forgotten dips", "dips forgotten", "dips unknown", "banhos esquecidos"})
    void dipsThatNobodyRemembersAreNotRecorded(String typed) {
        assertThat(only(typed)).isEqualTo(only("never dipped"));
    }

    @Test
    void aHolderIsNamedWholeOrAfterAWordOfPlace() {
        assertThat(only("at Sala Vermia")).isEqualTo(facet(Facet.HOLDER, false, "sala-vermia"));
        assertThat(only("with vermia")).isEqualTo(facet(Facet.HOLDER, false, "sala-vermia"));
        assertThat(READER.read("vermia").facts()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"V24-7,v 24 7", "v24-007,v 24 7", "24-007,24 7", "7,7", "piece 7,7", "v24 12,v 24 12", "V24-88,v 24 88"
    })
    void aNumberIsReadInAnyWriting(String typed, String plain) {
        assertThat(only(typed)).isEqualTo(new Constraint.OfPieceNumber(plain, false));
    }

    @ParameterizedTest
    @CsvSource({
        "B02,b02",
        "b2,b02",
        "B02 state II,b02/ii",
        "B02-II,b02/ii",
        "b2 I,b02/i",
        "board 2 second state,b02/ii",
        "heron weir state 2,b02/ii",
        "heron weir,b02",
        "fig and wasp board,b01",
        "board of herons,b02"
    })
    void aBoardAndItsStateAreReadInAnyWriting(String typed, String value) {
        assertThat(only(typed)).isEqualTo(facet(Facet.BOARD, false, value));
    }

    @ParameterizedTest
    @CsvSource({
        "six dips,6,6",
        "zero dips,0,0",
        "6 dips,6,6",
        "dips 6,6,6",
        "more than ten dips,11,",
        "6-8,6,8",
        "about 6,5,7",
        "under 4 dips,,3",
        "at least 4 dips,4,",
        "four or more dips,4,",
        "between 4 and 6 dips,4,6",
        "doze banhos,12,12",
        "9x dipped,9,9",
        "3 dips or less,,3"
    })
    void dipsAreReadAsPeopleSayThem(String typed, Double from, Double to) {
        assertThat(((Constraint.OfNumber) only(typed)).spans()).isEqualTo(Map.of(Measured.DIPS, new Span(from, to)));
    }

    /** One inch is 25.4 mm exactly (international yard and pound, 1959). */
    @Test
    void aSizeMeansAnySideToHalfOfItsLastDigit() {
        assertThat(((Constraint.OfNumber) only("60 in")).spans())
                .isEqualTo(Map.of(Measured.SIDE, new Span(59.5 * 25.4 / 10, 60.5 * 25.4 / 10)));
        assertThat(((Constraint.OfNumber) only("over 2 m")).spans())
                .isEqualTo(Map.of(Measured.SIDE, new Span(200.01, null)));
        assertThat(((Constraint.OfNumber) only("116 x 98")).spans())
                .isEqualTo(Map.of(Measured.LENGTH, new Span(115.5, 116.5), Measured.WIDTH, new Span(97.5, 98.5)));
        assertThat(((Constraint.OfNumber) only("120 cm x 60 cm")).spans())
                .containsOnlyKeys(Measured.LENGTH, Measured.WIDTH);
        assertThat(((Constraint.OfNumber) only("40 cm wide")).spans()).containsOnlyKeys(Measured.WIDTH);
        assertThat(((Constraint.OfNumber) only("under 30 g")).spans())
                .isEqualTo(Map.of(Measured.MASS, new Span(null, 29.99)));
    }

    @ParameterizedTest
    @CsvSource({
        "over 500 euro,500.01,", "under 100 €,,99.99", "€300+,300,", "150-200 eur,150,200",
                "menos de 200 euros,,199.99",
        "for 290,290,290", "max 300 eur,,300", "two hundred euros,200,200", "300 eur or less,,300", "300ish eur,270,330"
    })
    void aPriceIsRead(String typed, Double from, Double to) {
        assertThat(((Constraint.OfNumber) only(typed)).spans()).isEqualTo(Map.of(Measured.PRICE, new Span(from, to)));
    }

    @ParameterizedTest
    @CsvSource({
        "may 2024,2024-05-01,2024-05-31", "2024-09,2024-09-01,2024-09-30", "spring 2024,2024-03-01,2024-05-31",
        "last year,2025-01-01,2025-12-31", "ano passado,2025-01-01,2025-12-31", "before 2023,,2022-12-31",
        "since june 2024,2024-06-01,", "after 10 nov 2024,2024-11-11,", "dezembro de 2024,2024-12-01,2024-12-31",
        "march to may 2024,2024-03-01,2024-05-31", "2 years ago,2024-01-01,2024-12-31", "2024,2024-01-01,2024-12-31"
    })
    void aTimeIsRead(String typed, LocalDate from, LocalDate to) {
        assertThat(only(typed)).isEqualTo(new Constraint.OfDays(new Days(from, to), false));
    }

    @Test
    void aMonthWithoutAYearIsThatMonthOfAnyYear() {
        assertThat(only("october")).isEqualTo(new Constraint.OfMonth(Set.of(10), false));
        assertThat(only("in may")).isEqualTo(new Constraint.OfMonth(Set.of(5), false));
        assertThat(READER.read("may").facts()).as("it may be the verb").isEmpty();
    }

    @Test
    void whatHappenedIsReadWithItsTime() {
        assertThat(only("sold in october")).isEqualTo(facet(Facet.EVENT, false, "sold/2024-10-11/2024-10-11"));
        assertThat(only("vendida em fevereiro de 2024"))
                .isEqualTo(facet(Facet.EVENT, false, "sold/2024-02-21/2024-02-21"));
        assertThat(only("washed last year")).isEqualTo(facet(Facet.EVENT, false, "washed/2025-01-01/2025-12-31"));
        assertThat(only("never washed")).isEqualTo(facet(Facet.EVENT, true, "washed/2025-01-01/2025-12-31"));
    }

    @Test
    void materialsFaultsAndColoursAreReadInOtherWordsToo() {
        assertThat(only("linho")).isEqualTo(facet(Facet.FIBRE, false, "linen"));
        assertThat(only("linen voile")).isEqualTo(facet(Facet.CLOTH, false, "lv"));
        assertThat(only("isatis tinctoria")).isEqualTo(facet(Facet.DYE, false, "woad"));
        assertThat(only("cochineal")).as("a dye that no piece has").isEqualTo(facet(Facet.DYE, false));
        assertThat(only("acetato de alumínio")).isEqualTo(facet(Facet.MORDANT, false, "aluminium acetate"));
        assertThat(only("leaked")).isEqualTo(facet(Facet.FAULT, false, "leak"));
        assertThat(only("inner layers too pale")).isEqualTo(facet(Facet.FAULT, false, "pale inner layers"));
        assertThat(only("deep blue")).isEqualTo(facet(Facet.COLOUR, false, "deep blue"));
        assertThat(only("azul escuro")).isEqualTo(facet(Facet.COLOUR, false, "deep blue"));
        assertThat(only("blue")).isEqualTo(facet(Facet.COLOUR, false, "deep blue", "light blue"));
        assertThat(only("undyed linen")).isEqualTo(facet(Facet.COLOUR, false, "undyed linen"));
    }

    @Test
    void whatIsMissingIsRead() {
        assertThat(only("without a photograph")).isEqualTo(facet(Facet.LACKING, false, "photograph"));
        assertThat(only("sem preço")).isEqualTo(facet(Facet.LACKING, false, "price"));
        assertThat(only("missing photographs")).isEqualTo(facet(Facet.LACKING, false, "photograph"));
        assertThat(only("missing")).as("no noun after it").isEqualTo(facet(Facet.STATUS, false, "lost"));
        assertThat(only("never examined")).isEqualTo(facet(Facet.EXAMINED, false, "never"));
    }

    @Test
    void severalFactsStandTogetherAndAMinusTurnsOneRound() {
        assertThat(READER.read("woad not silk").constraints())
                .containsExactly(facet(Facet.DYE, false, "woad"), facet(Facet.FIBRE, true, "silk"));
        assertThat(READER.read("silk -leak").constraints())
                .containsExactly(facet(Facet.FIBRE, false, "silk"), facet(Facet.FAULT, true, "leak"));
        assertThat(READER.read("linen six dips").constraints()).hasSize(2);
    }

    @ParameterizedTest
    @CsvSource({
        "not not silk,not silk", "never without silk,without silk", "não sem seda,sem seda",
        "nunca sem seda,sem seda", "not a piece without silk,without silk", "not -silk,-silk"
    })
    void twoDenialsTogetherCancelEachOtherAndThePageSaysSo(String typed, String other) {
        assertThat(only(typed)).isEqualTo(facet(Facet.FIBRE, false, "silk"));
        Reading reading = READER.read(typed);
        assertThat(reading.remarks())
                .extracting(Message::inEnglish)
                .singleElement()
                .asString()
                .contains("‘" + typed + "’", "each was taken to turn the next one round");
        assertThat(reading.offers()).extracting(Offer::question).contains(other);
    }

    @Test
    void anOddNumberOfDenialsDeniesAndWhatIsSaidTwiceIsNoContrary() {
        assertThat(only("not not not silk")).isEqualTo(facet(Facet.FIBRE, true, "silk"));
        assertThat(READER.read("not not not silk").offers())
                .extracting(Offer::question)
                .contains("silk");
        assertThat(only("no, not silk")).isEqualTo(facet(Facet.FIBRE, true, "silk"));
        assertThat(READER.read("not silk").remarks()).isEmpty();
        assertThat(READER.read("woad not silk nor linen").constraints())
                .containsExactly(
                        facet(Facet.DYE, false, "woad"),
                        facet(Facet.FIBRE, true, "silk"),
                        facet(Facet.FIBRE, true, "linen"));
    }

    /** 'No' is Portuguese for 'in the' too, and an idle word there. */
    @ParameterizedTest
    @CsvSource({
        "no leak",
        "no-leak",
        "no leaks",
        "without leak",
        "not - leak",
        "não - leak",
        "no - leak",
        "not + leak",
        "nem leak"
    })
    void aDenialBeforeAFaultIsNeverPartOfItsName(String typed) {
        assertThat(only(typed)).isEqualTo(facet(Facet.FAULT, true, "leak"));
        assertThat(READER.read(typed).remarks()).isEmpty();
    }

    @Test
    void aDenialBeforeABoardIsNoPartOfItsName() {
        assertThat(only("no fig board")).isEqualTo(facet(Facet.BOARD, true, "b01"));
        Reading rain = READER.read("not - rain");
        assertThat(rain.facts())
                .extracting(each -> each.label().inEnglish())
                .containsExactly("Without the word ‘rain’");
    }

    @ParameterizedTest
    @CsvSource({"- - silk", "- silk"})
    void aDashThatDeniesNothingIsSaid(String typed) {
        assertThat(only(typed)).isEqualTo(facet(Facet.FIBRE, false, "silk"));
        assertThat(READER.read(typed).remarks())
                .extracting(Message::inEnglish)
                .singleElement()
                .asString()
                .contains("A dash", "‘-silk’");
    }

    @ParameterizedTest
    @CsvSource({"não seda nem linho", "nem seda nem linho", "não tem nem seda nem linho", "sem seda nem linho"})
    void nemDeniesAndTurnsNothingRound(String typed) {
        Reading reading = READER.read(typed);
        assertThat(reading.constraints())
                .containsExactly(facet(Facet.FIBRE, true, "silk"), facet(Facet.FIBRE, true, "linen"));
        assertThat(reading.words().empty()).isTrue();
        assertThat(reading.remarks()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {"no, not silk", "never, not silk", "not; not silk", "no - not silk"})
    void aDenialSaidAgainIsOneAndTheRemarkSaysSo(String typed) {
        assertThat(only(typed)).isEqualTo(facet(Facet.FIBRE, true, "silk"));
        assertThat(READER.read(typed).remarks())
                .extracting(Message::inEnglish)
                .singleElement()
                .asString()
                .contains("‘" + typed + "’", "read as one denial")
                .doesNotContain("round");
        assertThat(READER.read(typed).offers()).isEmpty();
    }

    @Test
    void denialsOfWhichSomeAreSaidAgainAreSaidToBeBoth() {
        assertThat(only("no, not not silk")).isEqualTo(facet(Facet.FIBRE, false, "silk"));
        assertThat(READER.read("no, not not silk").remarks())
                .extracting(Message::inEnglish)
                .singleElement()
                .asString()
                .contains("said again", "elsewhere each was taken to turn the next one round");
    }

    private static Constraint any(Constraint... any) {
        return new Constraint.AnyOf(List.of(any), false);
    }

    @Test
    void orBeforeADeniedFactIsAnAlternative() {
        Constraint silk = facet(Facet.FIBRE, false, "silk");
        Constraint linen = facet(Facet.FIBRE, false, "linen");
        assertThat(only("silk or not silk")).isEqualTo(any(silk, silk.negated()));
        assertThat(only("silk or not linen")).isEqualTo(any(silk, linen.negated()));
        assertThat(only("linho ou não seda")).isEqualTo(any(linen, silk.negated()));
        assertThat(only("linen or without woad")).isEqualTo(any(linen, facet(Facet.DYE, true, "woad")));
        assertThat(only("silk, linen or not wool"))
                .isEqualTo(any(facet(Facet.FIBRE, false, "silk", "linen"), facet(Facet.FIBRE, true)));
        assertThat(only("not silk or not linen")).isEqualTo(any(silk.negated(), linen.negated()));
        assertThat(READER.read("not silk or not linen").offers())
                .extracting(Offer::question)
                .containsExactly("not silk not linen");
        assertThat(READER.read("silk or not linen").offers()).isEmpty();
        assertThat(READER.read("silk or not linen").remarks()).isEmpty();
        assertThat(READER.read("silk or not linen").facts().get(0).label().inEnglish())
                .isEqualTo("Fibre: silk or not Fibre: linen");
        assertThat(READER.read("not silk or linen").constraints())
                .as("one denial for both")
                .containsExactly(silk.negated(), linen.negated());
        assertThat(only("with a price or without a photograph"))
                .isEqualTo(any(facet(Facet.LACKING, true, "price"), facet(Facet.LACKING, false, "photograph")));
        assertThat(only("without a price or silk")).isEqualTo(any(facet(Facet.LACKING, false, "price"), silk));
    }

    @ParameterizedTest
    @CsvSource({
        "not silk or woad,woad",
        "rain or without a price,without a price",
        "silk or not rain,not rain",
        "rain or not silk,not silk",
        "silk or not V24-7,not V24-7",
        "seda ou sem chuva,sem chuva"
    })
    void orBeforeADenialThatIsNoAlternativeIsSaidToBeAnd(String typed, String denied) {
        Reading reading = READER.read(typed);
        assertThat(reading.remarks())
                .extracting(Message::inEnglish)
                .containsExactly("‘Or’ before ‘" + denied + "’ was read as ‘and’.");
        assertThat(reading.offers()).isEmpty();
    }

    @Test
    void wordsBeyondThoseLookedForAreSaid() {
        String most = "rain1 ".repeat(31) + "last";
        assertThat(READER.read(most).remarks()).isEmpty();
        assertThat(READER.read(most + " over more").remarks())
                .extracting(Message::inEnglish)
                .containsExactly("Only the first 32 words are looked for: ‘over’ and what follows were passed over.");
    }

    @Test
    void anOfferNamesDeniedWordsPlainly() {
        assertThat(READER.read("not not not rain").offers())
                .extracting(offer -> offer.label().inEnglish())
                .containsExactly("the words ‘rain’");
        assertThat(READER.read("not without rain").offers())
                .extracting(offer -> offer.label().inEnglish())
                .containsExactly("Without the word ‘rain’");
        assertThat(READER.meaning("silk -rain snow"))
                .extracting(Message::inEnglish)
                .containsExactly("Fibre: silk", "Without the word ‘rain’", "the words ‘snow’");
    }

    @Test
    void aWordDeniedTwiceIsLookedForThoughElsewhereItSaysNothing() {
        Reading reading = READER.read("not without any dye");
        assertThat(reading.words().parts())
                .singleElement()
                .satisfies(part -> assertThat(part.words()).containsExactly("dye"));
        assertThat(reading.remarks())
                .extracting(Message::inEnglish)
                .singleElement()
                .asString()
                .contains("each was taken to turn the next one round");
    }

    @Test
    void whatMustNotBeLackingIsRecorded() {
        for (String typed : List.of(
                "never without a photograph",
                "not lacking photographs",
                "não sem fotografia",
                "not missing photographs")) {
            assertThat(only(typed)).as(typed).isEqualTo(facet(Facet.LACKING, true, "photograph"));
        }
        assertThat(only("not never examined")).isEqualTo(facet(Facet.EXAMINED, true, "never"));
    }

    @Test
    void aWordDeniedTwiceIsLookedFor() {
        Reading reading = READER.read("never without rain");
        assertThat(reading.facts()).isEmpty();
        assertThat(reading.words().parts()).singleElement().satisfies(part -> {
            assertThat(part.words()).containsExactly("rain");
            assertThat(part.without()).isFalse();
        });
        assertThat(reading.remarks()).hasSize(1);
        assertThat(READER.read("first blush not not first blush").remarks()).hasSize(1);
    }

    /** The cloth 'linen voile' has no recorded fibre, 'silk satin' is recorded as something else and so no cloth of this facet. */
    @Test
    void aFibreIsReadFromTheNameOfAClothAloneWhereNoneIsRecorded() {
        QuestionReader reader = new QuestionReader(
                new Lexicon(terms(
                        Map.entry(Facet.FIBRE, "silk=silk"),
                        Map.entry(Facet.FIBRE, "linen=linen"),
                        Map.entry(Facet.FIBRE_OR_NAME, "silk=silk"),
                        Map.entry(Facet.FIBRE_OR_NAME, "linen=linen"),
                        Map.entry(Facet.FIBRE_OR_NAME, "cloth/LV=linen voile"),
                        Map.entry(Facet.FIBRE_OR_NAME, "cloth/HD=hand towel"),
                        Map.entry(Facet.FIBRE_OR_NAME, "cloth/WC=wool crepe"),
                        Map.entry(Facet.CLOTH, "LV=LV linen voile"),
                        Map.entry(Facet.CLOTH, "SS=silk satin"))),
                new QuestionReader.Pieces() {
                    @Override
                    public List<String> numbered(String plain) {
                        return List.of();
                    }

                    @Override
                    public boolean beginning(String plain) {
                        return false;
                    }
                },
                new QuestionReader.Background(() -> TODAY, Map.of()));
        for (String typed : List.of("linen", "linho")) {
            Understood linen = reader.read(typed).facts().get(0);
            assertThat(linen.constraint()).isEqualTo(facet(Facet.FIBRE_OR_NAME, false, "linen", "cloth/lv"));
            assertThat(linen.label().inEnglish()).isEqualTo("Fibre: linen, or by its name alone: linen voile");
        }
        Understood silk = reader.read("silk").facts().get(0);
        assertThat(silk.constraint()).isEqualTo(facet(Facet.FIBRE_OR_NAME, false, "silk"));
        assertThat(silk.label().inEnglish()).isEqualTo("Fibre: silk");
        assertThat(reader.read("wool").facts().get(0).label().inEnglish())
                .isEqualTo("Fibre: wool, or by its name alone: wool crepe");
        assertThat(reader.read("not silk or linen").constraints())
                .as("both are denied")
                .containsExactly(
                        facet(Facet.FIBRE_OR_NAME, true, "silk"),
                        facet(Facet.FIBRE_OR_NAME, true, "linen", "cloth/lv"));
        assertThat(reader.read("linen voile").constraints()).containsExactly(facet(Facet.CLOTH, false, "lv"));
        assertThat(reader.read("not linen voile").constraints()).containsExactly(facet(Facet.CLOTH, true, "lv"));
        assertThat(reader.read("not linen silk").constraints())
                .as("two fibres are no cloth")
                .containsExactly(
                        facet(Facet.FIBRE_OR_NAME, true, "linen", "cloth/lv"),
                        facet(Facet.FIBRE_OR_NAME, false, "silk"));
    }

    @Test
    void alternativesAreReadAsOneFact() {
        assertThat(only("B01 or B02")).isEqualTo(facet(Facet.BOARD, false, "b01", "b02"));
        assertThat(only("sold, given")).isEqualTo(facet(Facet.STATUS, false, "sold", "given"));
        assertThat(only("silk or linen")).isEqualTo(facet(Facet.FIBRE, false, "silk", "linen"));
        assertThat(READER.read("silk linen").constraints())
                .as("both fibres in one cloth")
                .hasSize(2);
    }

    @Test
    void whatIsNoFactStaysAWordAndAFactInQuotesIsOne() {
        Reading reading = READER.read("where is the sold heron from the rain");
        assertThat(reading.constraints()).containsExactly(facet(Facet.STATUS, false, "sold"));
        assertThat(reading.words().parts())
                .extracting(part -> part.words().get(0))
                .containsExactly("heron", "rain");
        assertThat(READER.read("\"sold\"").facts()).isEmpty();
        assertThat(READER.read("\"sold\"").words().parts()).hasSize(1);
    }

    @Test
    void eachFactCanBeTakenOutOrTurnedBackIntoWords() {
        Understood sold = READER.read("heron sold in the rain").facts().get(0);
        assertThat(sold.label().inEnglish()).isEqualTo("Status: sold");
        assertThat(sold.without()).isEqualTo("heron in the rain");
        assertThat(sold.asWords()).isEqualTo("heron \"sold\" in the rain");
        assertThat(READER.read(sold.asWords()).facts()).isEmpty();
    }

    @Test
    void aNumberOfTooManyDigitsIsAWordAndNoReasonToRefuse() {
        assertThat(READER.read("99999999999999999999 dips").facts()).isEmpty();
        assertThat(READER.read("over 99999999999999999999 km").facts()).isEmpty();
    }

    @Test
    void theLargestIsAnOrder() {
        Reading reading = READER.read("largest silk piece");
        assertThat(reading.order()).isEqualTo(Order.SIZE);
        assertThat(reading.constraints()).containsExactly(facet(Facet.FIBRE, false, "silk"));
        assertThat(reading.words().empty()).isTrue();
    }
}

package tenterbook.search.query;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tenterbook.colour.space.Lab;
import tenterbook.piece.ColourRole;

class PieceQueryTest {
    @Property(tries = 2000)
    void theAddressHoldsTheWholeSearch(@ForAll("queries") PieceQuery query) {
        Map<String, List<String>> parameters = query.toParameters();
        assertThat(PieceQuery.of(parameters)).isEqualTo(query);
        assertThat(PieceQuery.of(parameters).toParameters()).isEqualTo(parameters);
    }

    @Provide
    Arbitrary<PieceQuery> queries() {
        Arbitrary<Span> spans = Combinators.combine(
                        Arbitraries.doubles().between(0, 900).ofScale(3).injectNull(0.3),
                        Arbitraries.doubles().between(900, 5000).ofScale(2).injectNull(0.3))
                .as((from, to) -> from == null && to == null ? null : new Span(from, to));
        Arbitrary<LocalDate> day = Arbitraries.integers().between(0, 20_000).map(LocalDate::ofEpochDay);
        Arbitrary<Days> days = Combinators.combine(
                        day.injectNull(0.3),
                        Arbitraries.integers().between(0, 800).injectNull(0.3))
                .as((from, length) ->
                        from == null ? null : new Days(from, length == null ? null : from.plusDays(length)));
        Arbitrary<Lab> colours = Combinators.combine(
                        Arbitraries.doubles().between(0, 100),
                        Arbitraries.doubles().between(-128, 127),
                        Arbitraries.doubles().between(-128, 127))
                .as(Lab::new);
        Arbitrary<Map<Facet, List<String>>> chosen = Arbitraries.maps(
                Arbitraries.of(Facet.BOARD, Facet.CLOTH, Facet.DYE, Facet.FAULT),
                Arbitraries.strings()
                        .withChars("aé板 /B&=%+")
                        .ofMaxLength(8)
                        .list()
                        .ofMaxSize(3));
        return Combinators.combine(
                        Arbitraries.strings().ofMaxLength(20),
                        chosen,
                        spans.injectNull(0.3),
                        spans.injectNull(0.3),
                        days.injectNull(0.3),
                        colours.injectNull(0.3),
                        Arbitraries.of(Order.values()).injectNull(0.3),
                        Arbitraries.integers().between(1, 200))
                .as((text, values, dips, price, finished, colour, order, page) -> new PieceQuery(
                        text,
                        values,
                        dips,
                        null,
                        dips,
                        price,
                        finished,
                        colour == null
                                ? ColourChoice.NONE
                                : switch (page % 4) {
                                    case 0 -> new ColourChoice(List.of(), Map.of(), "V24-" + page, null, 0);
                                    case 1 ->
                                        new ColourChoice(
                                                List.of(),
                                                Map.of(ColourRole.GROUND, colour, ColourRole.LOCAL, colour),
                                                "",
                                                3.0,
                                                0);
                                    case 2 ->
                                        new ColourChoice(
                                                List.of(colour, new Lab(50, 0, 0)),
                                                Map.of(ColourRole.RESIST, colour),
                                                "",
                                                null,
                                                0.3);
                                    default ->
                                        new ColourChoice(
                                                List.of(colour),
                                                Map.of(),
                                                "",
                                                0.5 + page % 39,
                                                page / 200.0,
                                                page % 8 == 3);
                                },
                        order,
                        page,
                        page));
    }

    @Test
    void nothingAskedIsNothingInTheAddress() {
        assertThat(PieceQuery.EVERYTHING.toParameters()).isEmpty();
        assertThat(PieceQuery.of(Map.of("dips", List.of(""), "unknown", List.of("x"))))
                .isEqualTo(PieceQuery.EVERYTHING);
        assertThat(PieceQuery.EVERYTHING.narrows()).isFalse();
        assertThat(PieceQuery.EVERYTHING.withText("heron").narrows()).isTrue();
    }

    @Test
    void anEmptyColourTakesItsOrderWithIt() {
        PieceQuery query = PieceQuery.of(Map.of("sort", List.of("colour")));
        assertThat(query.order()).isEqualTo(Order.NEWEST);
        assertThat(PieceQuery.EVERYTHING
                        .withColours(new ColourChoice(List.of(new Lab(34, -2, -25)), Map.of(), "", 10.0, 0))
                        .order())
                .isEqualTo(Order.COLOUR);
        assertThat(PieceQuery.EVERYTHING.withText("x").order()).isEqualTo(Order.RELEVANCE);
    }

    @Test
    void aDecimalCommaAndAScreenColourWithoutItsHashAreReadAsTheyAreMeant() {
        PieceQuery typed = PieceQuery.of(Map.of("colour", List.of("2f4f7f"), "within", List.of("2,5")));
        assertThat(typed).isEqualTo(PieceQuery.of(Map.of("colour", List.of("#2f4f7f"), "within", List.of("2.5"))));
        assertThat(typed.toParameters()).containsEntry("within", List.of("2.5"));
    }

    @Test
    void aScreenColourIsTakenAndWrittenAsLab() {
        assertThat(PieceQuery.of(Map.of("colour", List.of("#ffffff"))).toParameters())
                .containsEntry("colour", List.of("100,0,0"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "dips|8..4",
                "dips|many",
                "dips|-1",
                "length|1e9",
                "price|..",
                "finished|2024-13",
                "finished|2024-02-30",
                "finished|soon",
                "colour|34,-2",
                "colour|#12345",
                "within|0",
                "within|41",
                "within|NaN",
                "share|1.1",
                "sort|best",
                "page|0",
                "page|-1",
                "size|201",
                "size|ten",
                "status|vanished",
                "year|24",
                "category|hat"
            })
    void aBadValueIsRefusedWithParameterExpectedAndFound(String parameter, String value) {
        Map<String, List<String>> parameters = new HashMap<>(Map.of("colour", List.of("50,0,0")));
        parameters.put(parameter, List.of(value));
        assertThatThrownBy(() -> PieceQuery.of(parameters))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("“" + parameter + "”")
                .hasMessageContaining("should be")
                .hasMessageContaining(value);
    }
}

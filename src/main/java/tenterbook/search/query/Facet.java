package tenterbook.search.query;

import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import tenterbook.piece.Category;
import tenterbook.piece.Status;
import tenterbook.words.Message;
import tenterbook.words.Written;

/**
 * What pieces can be narrowed by; each is also a parameter of the address. The order is that in which the page shows them. Two
 * are equal whose parameters are.
 */
public final class Facet implements Comparable<Facet> {
    /** A board pair by its name, as in {@code B02}, or one state of it, as in {@code B02/II}. */
    public static final Facet BOARD = new Facet("board", Message.of("search.facet.board"), 10, List.of());

    public static final Facet CLOTH = new Facet("cloth", Message.of("search.facet.cloth"), 20, List.of());
    public static final Facet FIBRE = new Facet("fibre", Message.of("search.facet.fibre"), 30, List.of());
    public static final Facet DYE = new Facet("dye", Message.of("search.facet.dye"), 40, List.of());
    public static final Facet MORDANT = new Facet("mordant", Message.of("search.facet.mordant"), 50, List.of());
    public static final Facet STATUS =
            new Facet("status", Message.of("search.facet.status"), 60, words(Status.values()));
    public static final Facet CATEGORY =
            new Facet("category", Message.of("search.facet.category"), 70, words(Category.values()));
    public static final Facet HOLDER = new Facet("holder", Message.of("search.facet.holder"), 80, List.of());
    public static final Facet YEAR = new Facet("year", Message.of("search.facet.year"), 90, List.of());
    public static final Facet FAULT = new Facet("fault", Message.of("search.facet.fault"), 100, List.of());
    /** The names of its colours, the program's and those that a person gave. */
    public static final Facet COLOUR = new Facet("colours", Message.of("search.facet.colours"), 105, List.of());
    /** What its record lacks, as in {@code price}. */
    public static final Facet LACKING = new Facet(
            "lacking",
            Message.of("search.facet.lacking"),
            115,
            Stream.of(Lacking.values()).map(Lacking::code).toList());
    /** The year of the latest examination, as in {@code 2024}, or {@code never}. */
    public static final Facet EXAMINED = new Facet("examined", Message.of("search.facet.examined"), 110, List.of());

    /**
     * What happened to it and when, as in {@code sold/2024-10-11/2024-10-11}: kind, first and last possible day. For questions alone: nobody
     * chooses among so many.
     */
    public static final Facet EVENT = new Facet("event", Message.of("search.facet.event"), 120, List.of());

    /**
     * What its steps measured, as in {@code temperature/38/42}: what, lower and upper end in °C, minutes or pH, each empty where that is
     * open. For questions alone, as the next two.
     */
    public static final Facet STEP = new Facet("step", Message.of("search.facet.step"), 130, List.of());
    /** Of its price, as in {@code EUR}. */
    public static final Facet CURRENCY = new Facet("currency", Message.of("search.facet.currency"), 140, List.of());
    /** Of its boards. */
    public static final Facet WOOD = new Facet("wood", Message.of("search.facet.wood"), 150, List.of());

    /** The fibres of its cloths as recorded, and of each cloth whose fibres are not, its name, as in {@code cloth/LV}. For questions alone. */
    public static final Facet FIBRE_OR_NAME =
            new Facet("fibre-or-name", Message.of("search.facet.fibre"), 160, List.of());

    private static final Set<Facet> FOR_QUESTIONS = Set.of(EVENT, STEP, CURRENCY, WOOD, FIBRE_OR_NAME);

    /** Those whose values the index finds by itself, in order. */
    public static final List<Facet> OWN = List.of(
            BOARD,
            CLOTH,
            FIBRE,
            DYE,
            MORDANT,
            STATUS,
            CATEGORY,
            HOLDER,
            YEAR,
            FAULT,
            COLOUR,
            EXAMINED,
            LACKING,
            EVENT,
            STEP,
            CURRENCY,
            WOOD,
            FIBRE_OR_NAME);

    private final String parameter;
    private final Written label;
    private final int place;
    private final List<String> choices;

    private Facet(String parameter, Written label, int place, List<String> choices) {
        this.parameter = parameter;
        this.label = label;
        this.place = place;
        this.choices = List.copyOf(choices);
    }

    /**
     * A facet whose values other rooms give.
     *
     * @param after which of {@link #OWN} it is shown after
     * @param choices every value it can have; empty where that is open
     */
    public static Facet outside(String parameter, Written label, Facet after, List<String> choices) {
        return new Facet(parameter, label, after.place + 1, choices);
    }

    /** Of a choice that may be unrecorded, with the value that finds those. */
    private static List<String> words(Enum<?>[] choices) {
        return Stream.concat(Stream.of(choices).map(FacetValues::word), Stream.of(FacetValues.word(null)))
                .toList();
    }

    /** The name of the parameter, as in {@code board}. */
    public String parameter() {
        return parameter;
    }

    /** For people, as in 'Kind of piece'. */
    public Written label() {
        return label;
    }

    /** Whether its values are offered to narrow a search by. */
    public boolean offered() {
        return !FOR_QUESTIONS.contains(this);
    }

    /** Every value it can have; empty where that is open. */
    List<String> choices() {
        return choices;
    }

    /** The doc-values field that holds the facet's terms. */
    public String field() {
        return "facet." + parameter;
    }

    @Override
    public int compareTo(Facet other) {
        int order = Integer.compare(place, other.place);
        return order == 0 ? parameter.compareTo(other.parameter) : order;
    }

    @Override
    public boolean equals(Object other) {
        return this == other || other instanceof Facet facet && parameter.equals(facet.parameter);
    }

    @Override
    public int hashCode() {
        return parameter.hashCode();
    }

    @Override
    public String toString() {
        return parameter;
    }
}

package tenterbook.search;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** What pieces can be narrowed by, in the order the page shows it; each is also a parameter of the address. */
public enum Facet {
    /** A board pair by its name, as in {@code B02}, or one state of it, as in {@code B02/II}. */
    BOARD("Board"),
    CLOTH("Cloth"),
    FIBRE("Fibre"),
    DYE("Dye"),
    MORDANT("Mordant"),
    STATUS("Status"),
    /**
     * The hang tag by market, as in {@code us:current}, {@code us:out-of-date}, {@code us:none-printed} and
     * {@code us:cannot-be-made}; {@code us:lacking} is all but the first.
     */
    TAG("Hang tag"),
    CATEGORY("Kind of piece"),
    HOLDER("Holder"),
    YEAR("Year"),
    FAULT("Fault"),
    /** The year of the latest examination, as in {@code 2024}, or {@code never}. */
    EXAMINED("Last examined");

    private final String label;

    Facet(String label) {
        this.label = label;
    }

    /** The name of the parameter, as in {@code board}. */
    public String parameter() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** For people, as in 'Kind of piece'. */
    public String label() {
        return label;
    }

    static Optional<Facet> named(String parameter) {
        return Stream.of(values())
                .filter(facet -> facet.parameter().equals(parameter))
                .findFirst();
    }

    /** The doc-values field that holds the facet's terms. */
    String field() {
        return "facet." + parameter();
    }
}

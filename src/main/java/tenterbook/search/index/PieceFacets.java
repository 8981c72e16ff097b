package tenterbook.search.index;

import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import tenterbook.colour.space.ColourWords;
import tenterbook.facts.Condition;
import tenterbook.facts.Denial;
import tenterbook.facts.PieceFacts;
import tenterbook.material.FibreShare;
import tenterbook.material.Lot;
import tenterbook.material.Role;
import tenterbook.measure.Money;
import tenterbook.measure.PartialDate;
import tenterbook.measure.Quantity;
import tenterbook.measure.Unit;
import tenterbook.piece.ColourRole;
import tenterbook.piece.Event;
import tenterbook.piece.EventKind;
import tenterbook.piece.Fault;
import tenterbook.piece.Party;
import tenterbook.piece.Piece;
import tenterbook.piece.Status;
import tenterbook.recipe.BoardUse;
import tenterbook.recipe.Clamping;
import tenterbook.recipe.Step;
import tenterbook.search.query.Facet;
import tenterbook.search.query.FacetValues;
import tenterbook.search.query.Lacking;
import tenterbook.search.query.Measured;
import tenterbook.words.Message;

/** The values of each facet that a piece has. */
public final class PieceFacets {
    private static final char BETWEEN = '\u001f';
    /** What a value of {@link Facet#FIBRE_OR_NAME} begins with that is a cloth. */
    public static final String CLOTH = "cloth/";

    private PieceFacets() {}

    /** A value of a facet, as for the address and as for people. */
    public record Value(String value, String label) {
        /** As in the index. */
        String term() {
            return value + BETWEEN + label;
        }

        public static Value of(String term) {
            int between = term.indexOf(BETWEEN);
            return new Value(term.substring(0, between), term.substring(between + 1));
        }
    }

    static Map<Facet, Set<Value>> of(PieceFacts facts, List<OutsideFacets.Given> given) {
        Map<Facet, Set<Value>> values = new TreeMap<>();
        Piece piece = facts.piece();
        for (BoardUse use : facts.boardUses()) {
            String title = facts.boardTitle(use.board());
            put(values, Facet.BOARD, use.board().value(), title);
            if (!use.state().isEmpty()) {
                put(
                        values,
                        Facet.BOARD,
                        use.board() + "/" + use.state(),
                        Message.of("search.board-state", "board", title, "state", use.state())
                                .inEnglish());
            }
        }
        facts.cloth().cloths().forEach(cloth -> {
            put(values, Facet.CLOTH, cloth.id().value(), cloth.title());
            cloth.content().stream().map(FibreShare::fibre).forEach(fibre -> name(values, Facet.FIBRE, fibre));
        });
        facts.lotsUsed(Role.DYE).forEach(lot -> name(values, Facet.DYE, nameOf(lot)));
        facts.lotsUsed(Role.MORDANT).forEach(lot -> name(values, Facet.MORDANT, nameOf(lot)));
        Status status = facts.whereabouts().status();
        put(values, Facet.STATUS, FacetValues.word(status), FacetValues.label(status));
        given.forEach(each -> put(values, each.facet(), each.value(), each.label()));
        put(values, Facet.CATEGORY, FacetValues.word(piece.category()), FacetValues.label(piece.category()));
        facts.holder().ifPresent(holder -> put(values, Facet.HOLDER, holder.id().value(), holder.title()));
        if (piece.finished().year() != null) {
            String year = String.format(Locale.ROOT, "%04d", piece.finished().year());
            put(values, Facet.YEAR, year, year);
        }
        Condition condition = facts.condition();
        Fault.kinds(condition.faults()).forEach(kind -> name(values, Facet.FAULT, kind));
        facts.colours().shown().forEach(colour -> {
            // What the boards kept is undyed, or the colour of the bath before: a name that a person gave it says
            // which.
            if (colour.role() != ColourRole.RESIST) {
                name(values, Facet.COLOUR, ColourWords.of(colour.colour()));
            }
            name(values, Facet.COLOUR, colour.name());
        });
        for (Event event : piece.events()) {
            String when = event.when().known()
                    ? event.when().from() + "/" + event.when().to()
                    : "/";
            String value = FacetValues.word(event.kind()) + "/" + when.replace("null", "");
            put(
                    values,
                    Facet.EVENT,
                    value,
                    facts.party(event.party())
                            .filter(party -> named(event))
                            .map(PieceFacets::party)
                            .orElse(value));
        }
        forQuestions(facts, values);
        lacking(facts).forEach(lack -> put(values, Facet.LACKING, lack.code(), lack.inEnglish()));
        String examined = Denial.NEVER.unless(
                condition, () -> condition.lastLooked().map(PieceFacets::year).orElseThrow());
        put(values, Facet.EXAMINED, examined.replace(' ', '-'), examined);
        return values;
    }

    /** What nobody chooses by, but asks for. */
    private static void forQuestions(PieceFacts facts, Map<Facet, Set<Value>> values) {
        Money price = facts.piece().price();
        if (price != null) {
            put(
                    values,
                    Facet.CURRENCY,
                    price.currency().getCurrencyCode(),
                    price.currency().getCurrencyCode());
        }
        facts.boardUses().stream()
                .flatMap(use -> facts.board(use.board()).stream())
                .forEach(board -> name(values, Facet.WOOD, board.wood()));
        facts.cloth().cloths().forEach(cloth -> {
            cloth.content().stream().map(FibreShare::fibre).forEach(fibre -> name(values, Facet.FIBRE_OR_NAME, fibre));
            if (cloth.content().isEmpty()) {
                put(values, Facet.FIBRE_OR_NAME, CLOTH + cloth.id().value(), cloth.title());
            }
        });
        for (Clamping clamping : facts.clampings()) {
            for (Step step : clamping.steps()) {
                step(values, Measured.TEMPERATURE, step.temperature(), Unit.CELSIUS);
                step(values, Measured.PH, step.ph(), Unit.PH);
                step(values, Measured.DURATION, step.duration(), Unit.MINUTE);
            }
        }
    }

    /** A quantity of another kind, which an older record may hold, is passed over, so that the piece is found by all else. */
    private static void step(Map<Facet, Set<Value>> values, Measured what, Quantity recorded, Unit unit) {
        if (!recorded.known() || recorded.unit() == null || recorded.unit().dimension() != unit.dimension()) {
            return;
        }
        Quantity quantity = recorded.in(unit);
        if (quantity.known()) {
            String value =
                    what.name().toLowerCase(Locale.ROOT) + "/" + text(quantity.low()) + "/" + text(quantity.high());
            put(values, Facet.STEP, value, value);
        }
    }

    private static String text(@Nullable Double end) {
        return end == null ? "" : Double.toString(end);
    }

    /** Whether people date other work by it, naming who was concerned; sales are too many. */
    private static boolean named(Event event) {
        return event.kind() == EventKind.LENT || event.kind() == EventKind.SHOWN || event.kind() == EventKind.CONSIGNED;
    }

    private static String party(Party party) {
        return party.kind().isEmpty() ? party.title() : party.title() + " (" + party.kind() + ")";
    }

    private static Set<Lacking> lacking(PieceFacts facts) {
        Piece piece = facts.piece();
        Set<Lacking> lacks = EnumSet.noneOf(Lacking.class);
        add(lacks, Lacking.TITLE, piece.title().isEmpty());
        add(lacks, Lacking.PHOTOGRAPH, piece.photos().isEmpty());
        add(lacks, Lacking.PRICE, piece.price() == null);
        add(lacks, Lacking.SIZE, !piece.length().known() && !piece.width().known());
        add(lacks, Lacking.MASS, !piece.mass().known());
        add(lacks, Lacking.DATE, !piece.finished().known());
        add(lacks, Lacking.DIPS, !facts.dips().known());
        add(lacks, Lacking.CLOTH, facts.cloth().cloths().isEmpty());
        add(lacks, Lacking.BOARD, facts.boardUses().isEmpty());
        return lacks;
    }

    private static void add(Set<Lacking> lacks, Lacking lack, boolean lacking) {
        if (lacking) {
            lacks.add(lack);
        }
    }

    private static String year(PartialDate when) {
        return when.year() == null
                ? Message.of("search.year-not-known").inEnglish()
                : String.format(Locale.ROOT, "%04d", when.year());
    }

    static String nameOf(Lot lot) {
        return lot.name().isEmpty() ? lot.id().value() : lot.name();
    }

    private static void name(Map<Facet, Set<Value>> values, Facet facet, String name) {
        if (!name.isBlank()) {
            put(values, facet, name.toLowerCase(Locale.ROOT), name);
        }
    }

    private static void put(Map<Facet, Set<Value>> values, Facet facet, String value, String label) {
        values.computeIfAbsent(facet, of -> new LinkedHashSet<>()).add(new Value(clear(value), clear(label)));
    }

    private static String clear(String text) {
        String plain = text.replace(BETWEEN, ' ');
        return plain.length() > 200 ? plain.substring(0, 200) : plain;
    }
}

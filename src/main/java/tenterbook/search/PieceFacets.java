package tenterbook.search;

import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import tenterbook.label.TagStanding;
import tenterbook.material.FibreShare;
import tenterbook.material.Lot;
import tenterbook.material.Role;
import tenterbook.piece.Fault;
import tenterbook.piece.Piece;
import tenterbook.piece.condition.Examination;
import tenterbook.recipe.BoardUse;

/** Under which values of each facet a piece stands. */
final class PieceFacets {
    private static final char BETWEEN = '\u001f';

    private PieceFacets() {}

    /** A value of a facet, as for the address and as for people. */
    record Value(String value, String label) {
        /** As it stands in the index. */
        String term() {
            return value + BETWEEN + label;
        }

        static Value of(String term) {
            int between = term.indexOf(BETWEEN);
            return new Value(term.substring(0, between), term.substring(between + 1));
        }
    }

    static Map<Facet, Set<Value>> of(PieceFacts facts) {
        Map<Facet, Set<Value>> values = new EnumMap<>(Facet.class);
        for (Facet facet : Facet.values()) {
            values.put(facet, new LinkedHashSet<>());
        }
        Piece piece = facts.piece();
        for (BoardUse use : facts.boardUses()) {
            String title = facts.boardTitle(use.board());
            put(values, Facet.BOARD, use.board().value(), title);
            if (!use.state().isEmpty()) {
                put(values, Facet.BOARD, use.board() + "/" + use.state(), title + ", state " + use.state());
            }
        }
        facts.clothsUsed().forEach(cloth -> {
            put(values, Facet.CLOTH, cloth.id().value(), cloth.title());
            cloth.content().stream().map(FibreShare::fibre).forEach(fibre -> name(values, Facet.FIBRE, fibre));
        });
        facts.lotsUsed(Role.DYE).forEach(lot -> name(values, Facet.DYE, nameOf(lot)));
        facts.lotsUsed(Role.MORDANT).forEach(lot -> name(values, Facet.MORDANT, nameOf(lot)));
        put(values, Facet.STATUS, FacetValues.word(piece.status()), FacetValues.label(piece.status()));
        for (TagStanding.Standing tag : facts.tags()) {
            String market = FacetValues.word(tag.market());
            String name = tag.market().name() + ", ";
            put(values, Facet.TAG, market + ":" + FacetValues.tag(tag.state()), name + tag.state());
            if (tag.state() != TagStanding.State.CURRENT) {
                put(values, Facet.TAG, market + ":" + FacetValues.LACKING, name + FacetValues.LACKING);
            }
        }
        put(values, Facet.CATEGORY, FacetValues.word(piece.category()), FacetValues.label(piece.category()));
        if (facts.holder() != null) {
            put(
                    values,
                    Facet.HOLDER,
                    facts.holder().id().value(),
                    facts.holder().title());
        }
        if (piece.finished().year() != null) {
            String year = String.format(Locale.ROOT, "%04d", piece.finished().year());
            put(values, Facet.YEAR, year, year);
        }
        piece.faults().stream().map(Fault::kind).forEach(kind -> name(values, Facet.FAULT, kind));
        String examined = facts.examined().map(PieceFacets::year).orElse("never");
        put(values, Facet.EXAMINED, examined.replace(' ', '-'), examined);
        return values;
    }

    private static String year(Examination examination) {
        Integer year = examination.when().year();
        return year == null ? "year not known" : String.format(Locale.ROOT, "%04d", year);
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
        values.get(facet).add(new Value(clear(value), clear(label)));
    }

    private static String clear(String text) {
        String plain = text.replace(BETWEEN, ' ');
        return plain.length() > 200 ? plain.substring(0, 200) : plain;
    }
}

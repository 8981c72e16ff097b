package tenterbook.web.piece;

import static tenterbook.web.page.Words.w;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import tenterbook.colour.space.ColourRegion;
import tenterbook.colour.space.Lab;
import tenterbook.facts.PieceColour;
import tenterbook.search.find.Hit;
import tenterbook.search.query.Constraint;
import tenterbook.search.query.Facet;
import tenterbook.search.query.FacetValues;
import tenterbook.search.query.PieceQuery;
import tenterbook.search.question.Understood;
import tenterbook.web.Site;
import tenterbook.web.colour.ColourBand;

/**
 * What a name of a colour that was asked for stands for in CIELAB: the limits by which the program gives the name, or, of a name that
 * the studio gave, how the colours so named were measured.
 *
 * @param name as it was asked for
 * @param swatch of its middle
 * @param text its limits in words
 */
public record ColourMeaning(String name, ColourBand.Swatch swatch, String text) {
    /** Of a studio's name so many pieces are looked at, at most. */
    private static final int MOST_PIECES = PieceQuery.MOST_SIZE;

    static List<ColourMeaning> of(Site site, PieceQuery query, List<Understood> understood) {
        Set<String> names = new LinkedHashSet<>();
        query.chosen(Facet.COLOUR).forEach(value -> names.add(FacetValues.folded(value)));
        understood.forEach(each -> names(each.constraint(), names));
        Map<String, Map.Entry<String, ColourRegion>> regions = new HashMap<>();
        if (!names.isEmpty()) {
            ColourRegion.byName()
                    .forEach((name, region) -> regions.put(FacetValues.folded(name), Map.entry(name, region)));
        }
        List<ColourMeaning> meanings = new ArrayList<>();
        for (String name : names) {
            Map.Entry<String, ColourRegion> region = regions.get(name);
            ColourMeaning meaning =
                    region == null ? ofStudio(site, name) : ofProgram(region.getKey(), region.getValue());
            if (meaning != null) {
                meanings.add(meaning);
            }
        }
        return meanings;
    }

    private static void names(@Nullable Constraint asked, Set<String> names) {
        if (asked instanceof Constraint.OfFacet facet && facet.facet().equals(Facet.COLOUR)) {
            facet.values().stream().sorted().forEach(names::add);
        } else if (asked instanceof Constraint.AnyOf several) {
            several.any().forEach(each -> names(each, names));
        }
    }

    private static ColourMeaning ofProgram(String name, ColourRegion region) {
        return new ColourMeaning(
                name,
                ColourBand.swatch(region.centre(), name, 1, 0),
                w(
                        "pieces.colour-limits",
                        "light",
                        region.lightness().from(),
                        "lightest",
                        region.lightness().to(),
                        "chroma",
                        region.chroma().from(),
                        "strongest",
                        region.chroma().to(),
                        "open",
                        region.chroma().to() == ColourRegion.OPEN,
                        "everyHue",
                        region.everyHue(),
                        "hue",
                        region.hue().from(),
                        "last",
                        region.hue().to(),
                        "whole",
                        region.whole()));
    }

    /** Null where no colour of that name is kept with a piece that shows it. */
    private static @Nullable ColourMeaning ofStudio(Site site, String folded) {
        PieceQuery named = PieceQuery.EVERYTHING.with(Facet.COLOUR, folded).withSize(MOST_PIECES);
        List<PieceColour> colours = site.index().search(named).hits().stream()
                .map(Hit::card)
                .flatMap(card -> card.band().stream())
                .filter(colour -> FacetValues.folded(colour.name()).equals(folded))
                .toList();
        if (colours.isEmpty()) {
            return null;
        }
        String name = colours.get(0).name();
        Lab middle = new Lab(mean(colours, Lab::lightness), mean(colours, Lab::a), mean(colours, Lab::b));
        return new ColourMeaning(
                name,
                ColourBand.swatch(middle, name, 1, 0),
                w(
                        "pieces.colour-measured",
                        "count",
                        colours.size(),
                        "light",
                        range(colours, Lab::lightness),
                        "a",
                        range(colours, Lab::a),
                        "b",
                        range(colours, Lab::b)));
    }

    private static double mean(List<PieceColour> colours, ToDoubleFunction<Lab> of) {
        return colours.stream()
                .mapToDouble(each -> of.applyAsDouble(each.colour()))
                .average()
                .orElseThrow();
    }

    private static String range(List<PieceColour> colours, ToDoubleFunction<Lab> of) {
        long least = Math.round(colours.stream()
                .mapToDouble(each -> of.applyAsDouble(each.colour()))
                .min()
                .orElseThrow());
        long greatest = Math.round(colours.stream()
                .mapToDouble(each -> of.applyAsDouble(each.colour()))
                .max()
                .orElseThrow());
        return least == greatest ? minus(least) : w("pieces.colour-range", "from", minus(least), "to", minus(greatest));
    }

    private static String minus(long number) {
        return Long.toString(number).replace('-', '\u2212');
    }
}

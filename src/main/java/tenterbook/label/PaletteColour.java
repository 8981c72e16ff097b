package tenterbook.label;

import tenterbook.colour.Lab;

/**
 * A colour of the piece as measured.
 *
 * @param colour CIELAB, D65, 2° observer
 * @param share of the piece's area, above 0 and at most 1; null where not measured
 * @param name the maker's own; empty where not named
 */
public record PaletteColour(Lab colour, Double share, String name) {
    public PaletteColour {
        name = name == null ? "" : name.strip();
        if (share != null && !(share > 0 && share <= 1)) {
            throw new IllegalArgumentException("A share of area is above 0 and at most 1; found " + share);
        }
    }
}

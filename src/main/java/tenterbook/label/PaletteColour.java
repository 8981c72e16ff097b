package tenterbook.label;

import tenterbook.colour.Lab;

/**
 * A colour of the piece as measured.
 *
 * @param colour CIELAB, D65, 2° observer
 * @param share of the piece's area, 0 to 1; null where not measured
 * @param name the maker's own; empty where not named
 */
public record PaletteColour(Lab colour, Double share, String name) {
    public PaletteColour {
        name = name == null ? "" : name.strip();
        if (share != null && !(share >= 0 && share <= 1)) {
            throw new IllegalArgumentException("A share of area lies between 0 and 1; found " + share);
        }
    }
}

package tenterbook.colour;

public record PaletteColour(Lab colour, double share) {}

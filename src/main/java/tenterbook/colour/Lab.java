package tenterbook.colour;

public record Lab(double lightness, double a, double b) {}

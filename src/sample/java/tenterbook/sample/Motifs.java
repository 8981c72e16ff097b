package tenterbook.sample;

import java.util.List;

/** The sample studio's six boards in all their states. */
final class Motifs {
    static final List<String> STATES = List.of("B01", "B02-I", "B02-II", "B03", "B04", "B05", "B06-I", "B06-II");

    private Motifs() {}

    /** @throws IllegalArgumentException if no board state has that name; the message lists those there are */
    static Motif of(String boardState) {
        return switch (boardState) {
            case "B01" -> FigAndWasp.carve();
            case "B02-I" -> HeronWeir.carve(false);
            case "B02-II" -> HeronWeir.carve(true);
            case "B03" -> NineSwifts.carve();
            case "B04" -> SaltPans.carve();
            case "B05" -> AlmondTerrace.carve();
            case "B06-I" -> NetAndFloats.carve(false);
            case "B06-II" -> NetAndFloats.carve(true);
            default ->
                throw new IllegalArgumentException(
                        "Drawing a sample board needs one of " + STATES + "; found: " + boardState);
        };
    }
}

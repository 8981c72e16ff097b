package tenterbook.sample;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Currency;
import java.util.function.Function;
import tenterbook.archive.field.Faults;
import tenterbook.archive.field.Part;
import tenterbook.archive.field.Reading;
import tenterbook.archive.record.PieceRecord;
import tenterbook.measure.Digest;
import tenterbook.measure.LengthUnits;
import tenterbook.piece.PiecePhoto;

/**
 * Records of the sample studio, read as the API reads them: quantities, dates and prices are text, and a field that no record has is
 * refused. Photographs are named by their files, the holes of a board by its carving.
 */
final class SampleRecords {
    private static final Reading EURO = new Reading(Currency.getInstance("EUR"), LengthUnits.CM_AND_MM);

    private SampleRecords() {}

    /** @throws IllegalStateException with all that is wrong */
    static <T> T read(Part<T> part, ObjectNode entered) {
        Faults faults = new Faults();
        ObjectNode stored = part.understood(entered, EURO, faults, "");
        T record = faults.isEmpty() ? part.read(stored, faults, "") : null;
        if (!faults.isEmpty()) {
            throw new IllegalStateException(
                    "The sample's %s %s: %s".formatted(part.name(), entered, faults.inOneLine()));
        }
        return record;
    }

    /** The carving's own holes, numbered as the photographs' local colour counts them. */
    static ObjectNode withHoles(ObjectNode board) {
        for (JsonNode state : board.path("states")) {
            Motif motif = Motifs.of(((ObjectNode) state).remove("carving").textValue());
            ArrayNode holes = ((ObjectNode) state).putArray("holes");
            for (Motif.Hole hole : motif.holes()) {
                String bore = "%s mm bore".formatted(rounded(2 * hole.radiusMm()));
                holes.addObject()
                        .put("name", Integer.toString(holes.size()))
                        .put("acrossMm", rounded(hole.x()))
                        .put("downMm", rounded(hole.y()))
                        .put("note", bore.replace(".0 mm", " mm"));
            }
        }
        return board;
    }

    private static double rounded(double mm) {
        return Math.round(mm * 10) / 10.0;
    }

    /** @param taken finds or takes the photograph that a row asks for */
    static ObjectNode withPhotographs(ObjectNode piece, Function<ObjectNode, PiecePhoto> taken) {
        if (piece.get("photos") instanceof ArrayNode photos) {
            for (int i = 0; i < photos.size(); i++) {
                photos.set(i, PieceRecord.PHOTO.write(taken.apply((ObjectNode) photos.get(i))));
            }
        }
        return piece;
    }

    /**
     * Photographs and marks of an examination; two parts of the picture's width and height make a point, four an area.
     *
     * @param photo finds a photograph by the name of its file
     */
    static ObjectNode withMarks(ObjectNode examination, Function<String, Digest> photo) {
        examination.path("photos").forEach(row -> name((ObjectNode) row, photo));
        for (JsonNode observation : examination.path("observations")) {
            for (JsonNode row : observation.path("marks")) {
                ObjectNode mark = (ObjectNode) row;
                name(mark, photo);
                JsonNode at = mark.remove("at");
                String[] sides = {"left", "top", "right", "bottom"};
                for (int i = 0; i < at.size(); i++) {
                    mark.set(sides[i], at.get(i));
                }
            }
        }
        return examination;
    }

    private static void name(ObjectNode row, Function<String, Digest> photo) {
        row.put("photo", photo.apply(row.remove("file").textValue()).hex());
    }
}

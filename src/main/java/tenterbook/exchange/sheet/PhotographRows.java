package tenterbook.exchange.sheet;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Archive;
import tenterbook.archive.field.Faults;
import tenterbook.archive.record.PieceRecord;
import tenterbook.measure.Digest;
import tenterbook.piece.Piece;
import tenterbook.piece.PiecePhoto;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/**
 * Rows that give photographs of the archive to a piece. A cell names one or, divided by semicolons or line breaks, several, by the name
 * that the file had when it came in, or by digest. One that the piece has already gets what the row says of it.
 */
final class PhotographRows extends PieceRows {
    static final String PHOTO = "photo";

    private final PhotoNames names;

    PhotographRows(Archive archive, ImportChoices choices) {
        super(archive, SheetKind.PHOTOGRAPHS, choices);
        names = PhotoNames.of(archive);
    }

    @Override
    JudgedRow<Piece> judge(int row, Piece piece, int version, Map<String, String> texts) {
        String id = piece.number().value();
        List<Digest> photos = photos(texts.getOrDefault(PHOTO, ""));
        Map<String, String> of = new HashMap<>(texts);
        of.remove(PHOTO);
        List<PiecePhoto> after = new ArrayList<>(piece.photos());
        boolean changesOne = false;
        for (Digest photo : photos) {
            int at = at(after, photo);
            Faults faults = new Faults();
            PiecePhoto made = made(photo, at < 0 ? null : after.get(at), of, faults);
            if (made == null) {
                return JudgedRow.refused(row, id, sentences(faults));
            }
            // Of a piece that was dyed again only the maker knows which it was.
            boolean stated = at >= 0 || of.containsKey("state");
            Optional<Message> refusal = piece.stateRefused(stated ? made.state() : null);
            if (refusal.isPresent()) {
                return JudgedRow.refused(row, id, List.of(refusal.get()));
            }
            if (at < 0) {
                after.add(made);
            } else {
                changesOne |= !made.equals(after.get(at));
                after.set(at, made);
            }
        }
        if (after.equals(piece.photos())) {
            return JudgedRow.still(row, Verdict.UNCHANGED, id);
        }
        return changesOne && !update
                ? JudgedRow.still(row, Verdict.LEFT, id)
                : judged(row, piece, piece.withPhotos(after), version);
    }

    private List<Digest> photos(String cell) {
        if (cell.isEmpty()) {
            throw nothingIn(PHOTO);
        }
        List<String> parts = Arrays.stream(cell.split("[;\\r\\n]+"))
                .map(String::strip)
                .filter(name -> !name.isEmpty())
                .toList();
        // The name of a file may hold a semicolon.
        boolean one = parts.stream().anyMatch(name -> names.called(name).isEmpty())
                && !names.called(cell).isEmpty();
        List<String> called = one ? List.of(cell) : parts;
        return called.stream().map(this::photo).distinct().toList();
    }

    private Digest photo(String name) {
        List<Digest> called = names.called(name);
        if (called.size() != 1) {
            throw Refusal.of("import.photograph", "count", called.size(), "name", name);
        }
        return called.get(0);
    }

    private static int at(List<PiecePhoto> photos, Digest photo) {
        return IntStream.range(0, photos.size())
                .filter(i -> photos.get(i).photo().equals(photo))
                .findFirst()
                .orElse(-1);
    }

    private @Nullable PiecePhoto made(
            Digest photo, @Nullable PiecePhoto before, Map<String, String> texts, Faults faults) {
        ObjectNode json = before == null ? JsonNodeFactory.instance.objectNode() : PieceRecord.PHOTO.write(before);
        json.put(PHOTO, photo.hex());
        put(texts, json, faults);
        return faults.isEmpty() ? understood(PieceRecord.PHOTO, json, faults) : null;
    }
}

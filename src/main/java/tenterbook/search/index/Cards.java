package tenterbook.search.index;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.ObjectReader;
import com.fasterxml.jackson.databind.ObjectWriter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Comparator;
import java.util.List;
import org.apache.lucene.index.BinaryDocValues;
import org.apache.lucene.index.DocValues;
import org.apache.lucene.index.IndexReader;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.index.ReaderUtil;
import org.apache.lucene.util.BytesRef;
import tenterbook.facts.Colours;
import tenterbook.facts.PieceColour;
import tenterbook.facts.PieceFacts;
import tenterbook.material.Cloth;
import tenterbook.measure.Quantity;
import tenterbook.measure.QuantityWords;
import tenterbook.piece.Fault;
import tenterbook.piece.PhotoRole;
import tenterbook.piece.Piece;
import tenterbook.piece.PiecePhoto;
import tenterbook.recipe.dip.DipTally;

/** Makes the cards of pieces and reads them from the index; keeps passages as bytes. */
public final class Cards {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final ObjectReader PASSAGES = JSON.readerForListOf(PieceTexts.Passage.class);
    private static final ObjectWriter WRITER = JSON.writer();

    private Cards() {}

    public static PieceCard of(PieceFacts facts, DipTally dips, Colours colours) {
        Piece piece = facts.piece();
        PiecePhoto shown = piece.photos().stream()
                .filter(photo -> photo.role() == PhotoRole.FRONT)
                .reduce((earlier, later) -> later.state() > earlier.state() ? later : earlier)
                .orElse(piece.photos().isEmpty() ? null : piece.photos().get(0));
        return new PieceCard(
                piece.number().value(),
                piece.shown().value(),
                piece.title(),
                piece.otherTitle(),
                facts.whereabouts().status(),
                piece.category(),
                size(piece),
                dips.text(),
                piece.finished().year(),
                facts.boardUses().stream()
                        .map(use ->
                                new PieceCard.Board(use.board().value(), facts.boardTitle(use.board()), use.state()))
                        .toList(),
                facts.cloth().cloths().stream().map(Cloth::title).toList(),
                Fault.kinds(piece.faults()),
                shown == null ? null : shown.photo(),
                shown == null ? "" : shown.caption(),
                band(colours));
    }

    /** By share, those without one first, at most twelve. */
    private static List<PieceColour> band(Colours colours) {
        return colours.shown().stream()
                .sorted(Comparator.comparingDouble(colour -> colour.share() == null ? -2 : -colour.share()))
                .limit(12)
                .toList();
    }

    private static String size(Piece piece) {
        Quantity length = piece.length();
        Quantity width = piece.width();
        if (length.known() && width.known()) {
            return text(length) + " × " + text(width);
        }
        if (length.known()) {
            return text(length) + " long";
        }
        return width.known() ? text(width) + " wide" : "";
    }

    /** As entered, but with its unit where only a number was typed. */
    private static String text(Quantity quantity) {
        return quantity.entered().codePoints().anyMatch(Character::isLetter)
                ? quantity.entered()
                : QuantityWords.value(quantity);
    }

    public static byte[] written(Object value) {
        try {
            return WRITER.writeValueAsBytes(value);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("Passages cannot be written: " + e.getOriginalMessage(), e);
        }
    }

    /** Of a document of the whole index. */
    public static PieceCard read(IndexReader index, int doc) throws IOException {
        List<LeafReaderContext> leaves = index.leaves();
        LeafReaderContext leaf = leaves.get(ReaderUtil.subIndex(doc, leaves));
        BinaryDocValues cards = DocValues.getBinary(leaf.reader(), PieceDocument.CARD);
        if (!cards.advanceExact(doc - leaf.docBase)) {
            throw new IOException("no card");
        }
        return CardBytes.read(cards.binaryValue());
    }

    public static List<PieceTexts.Passage> passages(BytesRef bytes) {
        return read(PASSAGES, bytes);
    }

    private static <T> T read(ObjectReader reader, BytesRef bytes) {
        try {
            return reader.readValue(bytes.bytes, bytes.offset, bytes.length);
        } catch (IOException e) {
            throw new UncheckedIOException("An entry of the search index cannot be read; rebuild it with ‘reindex’", e);
        }
    }
}

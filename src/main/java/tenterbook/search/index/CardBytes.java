package tenterbook.search.index;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.apache.lucene.util.BytesRef;
import org.jspecify.annotations.Nullable;
import tenterbook.colour.space.Lab;
import tenterbook.facts.PieceColour;
import tenterbook.measure.Digest;
import tenterbook.piece.Category;
import tenterbook.piece.ColourRole;
import tenterbook.piece.Status;

/**
 * A card as bytes in the index: its parts in order, each text with its length before it. A page of results reads many, and this is
 * an order of magnitude quicker than JSON. Change anything here and {@link PieceDocument#FORMAT} must change too.
 */
final class CardBytes {
    private CardBytes() {}

    static byte[] written(PieceCard card) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(400);
        try (DataOutputStream out = new DataOutputStream(bytes)) {
            text(out, card.number());
            text(out, card.shown());
            text(out, card.title());
            text(out, card.otherTitle());
            choice(out, card.status());
            choice(out, card.category());
            text(out, card.size());
            text(out, card.dips());
            out.writeInt(card.year() == null ? Integer.MIN_VALUE : card.year());
            out.writeInt(card.boards().size());
            for (PieceCard.Board board : card.boards()) {
                text(out, board.id());
                text(out, board.title());
                text(out, board.state());
            }
            texts(out, card.cloths());
            texts(out, card.faults());
            text(out, card.photo() == null ? "" : card.photo().hex());
            text(out, card.caption());
            out.writeInt(card.band().size());
            for (PieceColour band : card.band()) {
                out.writeDouble(band.colour().lightness());
                out.writeDouble(band.colour().a());
                out.writeDouble(band.colour().b());
                out.writeDouble(band.share() == null ? Double.NaN : band.share());
                text(out, band.role() == null ? "" : band.role().name());
                text(out, band.name());
            }
        } catch (IOException e) {
            throw new UncheckedIOException("A card could not be written into memory", e);
        }
        return bytes.toByteArray();
    }

    private static void text(DataOutputStream out, String text) throws IOException {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        out.writeInt(bytes.length);
        out.write(bytes);
    }

    private static void choice(DataOutputStream out, @Nullable Enum<?> choice) throws IOException {
        text(out, choice == null ? "" : choice.name());
    }

    private static void texts(DataOutputStream out, List<String> texts) throws IOException {
        out.writeInt(texts.size());
        for (String text : texts) {
            text(out, text);
        }
    }

    static PieceCard read(BytesRef bytes) {
        try (DataInputStream in =
                new DataInputStream(new ByteArrayInputStream(bytes.bytes, bytes.offset, bytes.length))) {
            String number = text(in);
            String shown = text(in);
            String title = text(in);
            String otherTitle = text(in);
            Status status = choice(in, Status.class);
            Category category = choice(in, Category.class);
            String size = text(in);
            String dips = text(in);
            int year = in.readInt();
            List<PieceCard.Board> boards = new ArrayList<>();
            for (int left = in.readInt(); left > 0; left--) {
                boards.add(new PieceCard.Board(text(in), text(in), text(in)));
            }
            List<String> cloths = texts(in);
            List<String> faults = texts(in);
            String photo = text(in);
            String caption = text(in);
            List<PieceColour> band = new ArrayList<>();
            for (int left = in.readInt(); left > 0; left--) {
                Lab colour = new Lab(in.readDouble(), in.readDouble(), in.readDouble());
                double share = in.readDouble();
                String role = text(in);
                band.add(new PieceColour(
                        colour,
                        Double.isNaN(share) ? null : share,
                        text(in),
                        role.isEmpty() ? null : ColourRole.valueOf(role)));
            }
            return new PieceCard(
                    number,
                    shown,
                    title,
                    otherTitle,
                    status,
                    category,
                    size,
                    dips,
                    year == Integer.MIN_VALUE ? null : year,
                    boards,
                    cloths,
                    faults,
                    photo.isEmpty() ? null : new Digest(photo),
                    caption,
                    band);
        } catch (IOException | IllegalArgumentException e) {
            throw new UncheckedIOException(
                    "An entry of the search index cannot be read; rebuild it with ‘reindex’",
                    e instanceof IOException broken ? broken : new IOException(e));
        }
    }

    private static String text(DataInputStream in) throws IOException {
        return new String(in.readNBytes(in.readInt()), StandardCharsets.UTF_8);
    }

    private static <E extends Enum<E>> @Nullable E choice(DataInputStream in, Class<E> type) throws IOException {
        String name = text(in);
        return name.isEmpty() ? null : Enum.valueOf(type, name);
    }

    private static List<String> texts(DataInputStream in) throws IOException {
        List<String> texts = new ArrayList<>();
        for (int left = in.readInt(); left > 0; left--) {
            texts.add(text(in));
        }
        return texts;
    }
}

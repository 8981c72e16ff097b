package tenterbook.typeset;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.function.Supplier;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/**
 * A set of loaded fonts for one job at a time. Loading is slow, so a closed set is reused by the next job. Not thread-safe;
 * each thread takes its own.
 */
public final class Typefaces implements AutoCloseable {
    private static final Queue<Map<Typeface, Read>> WAITING = new ConcurrentLinkedQueue<>();

    record Read(TrueTypeFont font, CmapLookup glyphs, Kerning kerning, double unitsPerEm) {
        /** 0 where the face has no such character. */
        int glyph(int codePoint) {
            return glyphs.getGlyphId(codePoint);
        }

        /** In parts of the size of type. */
        double advance(int glyph) {
            try {
                return font.getAdvanceWidth(glyph) / unitsPerEm;
            } catch (IOException e) {
                throw new UncheckedIOException("The width of a glyph cannot be read from its font", e);
            }
        }
    }

    /** Several times as many texts as one label has. */
    private static final int KEPT = 400;

    private record Key(String text, Typeface face, double tracking) {}

    private final Map<Typeface, Read> read;
    private final Map<Key, MeasuredText> measured = new LinkedHashMap<>(64, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Key, MeasuredText> eldest) {
            return size() > KEPT;
        }
    };

    private Typefaces(Map<Typeface, Read> read) {
        this.read = read;
    }

    public static Typefaces open() {
        Map<Typeface, Read> waiting = WAITING.poll();
        return new Typefaces(waiting == null ? new EnumMap<>(Typeface.class) : waiting);
    }

    Read get(Typeface face) {
        return read.computeIfAbsent(face, Typefaces::read);
    }

    /** A text as measured before, or measured now. */
    MeasuredText measured(String text, TextStyle style, Supplier<MeasuredText> measuring) {
        Key key = new Key(text, style.face(), style.tracking());
        MeasuredText known = measured.get(key);
        if (known == null) {
            known = measuring.get();
            measured.put(key, known);
        }
        return known;
    }

    private static Read read(Typeface face) {
        try (InputStream in = Typefaces.class.getResourceAsStream(face.resource())) {
            TrueTypeFont font = new TTFParser().parse(new RandomAccessReadBuffer(in));
            // Substitution is by the face's one feature alone, so that what is measured is what is set.
            font.setEnableGsub(false);
            if (!face.feature().isEmpty()) {
                font.enableGsubFeature(face.feature());
            }
            return new Read(font, font.getUnicodeCmapLookup(), Kerning.of(font), font.getUnitsPerEm());
        } catch (IOException e) {
            throw new UncheckedIOException("The font %s cannot be read".formatted(face.resource()), e);
        }
    }

    @Override
    public void close() {
        WAITING.add(read);
    }
}

package tenterbook.typeset;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.EnumMap;
import java.util.Map;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/** The faces embedded in one document; only those used, and of those only the letters used. */
final class EmbeddedTypefaces {
    private final PDDocument document;
    private final Typefaces faces;
    private final Map<Typeface, PDFont> embedded = new EnumMap<>(Typeface.class);

    EmbeddedTypefaces(PDDocument document, Typefaces faces) {
        this.document = document;
        this.faces = faces;
    }

    LineBreaker setter() {
        return new LineBreaker(faces);
    }

    PDFont font(Typeface face) {
        return embedded.computeIfAbsent(face, f -> {
            try {
                return PDType0Font.load(document, faces.get(f).font(), true);
            } catch (IOException e) {
                throw new UncheckedIOException("The font %s cannot be embedded".formatted(f.resource()), e);
            }
        });
    }
}

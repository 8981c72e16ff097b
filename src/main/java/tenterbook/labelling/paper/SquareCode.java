package tenterbook.labelling.paper;

import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import tenterbook.measure.NumberWords;
import tenterbook.typeset.PdfCanvas;
import tenterbook.typeset.PrintColour;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/** A QR code (ISO/IEC 18004) as vector squares. Its content is plain text, so that it is read without a network. */
public final class SquareCode {
    /** Modules that must stay blank all round, by the standard. */
    static final int QUIET = 4;

    /** A module smaller than this prints badly at 300 dpi (four dots). */
    private static final double SMALLEST_MODULE_MM = 0.33;

    private final ByteMatrix modules;

    public SquareCode(String text) {
        try {
            Map<EncodeHintType, Object> hints = new EnumMap<>(EncodeHintType.class);
            if (!StandardCharsets.US_ASCII.newEncoder().canEncode(text)) {
                hints.put(EncodeHintType.CHARACTER_SET, "UTF-8");
            }
            modules = Encoder.encode(text, ErrorCorrectionLevel.M, hints).getMatrix();
        } catch (WriterException e) {
            throw new Refusal(Message.of("label.refused.code-text", "text", text), e);
        }
    }

    /** Draws the modules in a square of {@code side} mm. The blank zone lies outside it: {@link #quietMm}. */
    public void draw(PdfCanvas ink, double x, double y, double side) {
        double module = side / modules.getWidth();
        if (module < SMALLEST_MODULE_MM) {
            throw Refusal.of(
                    "label.refused.code-size",
                    "modules",
                    modules.getWidth(),
                    "needed",
                    NumberWords.decimals(modules.getWidth() * SMALLEST_MODULE_MM, 1),
                    "found",
                    NumberWords.decimals(side, 1));
        }
        List<int[]> dark = new ArrayList<>();
        for (int row = 0; row < modules.getHeight(); row++) {
            for (int column = 0; column < modules.getWidth(); column++) {
                int start = column;
                while (column < modules.getWidth() && modules.get(column, row) == 1) {
                    column++;
                }
                if (column > start) {
                    dark.add(new int[] {start, modules.getHeight() - 1 - row, column - start});
                }
            }
        }
        ink.cells(x, y + side, module, dark, PrintColour.BLACK);
    }

    /** Modules across, with the blank ones on both sides. */
    public int modulesWithMargin() {
        return modules.getWidth() + 2 * QUIET;
    }

    /** The dark modules as the path of an SVG whose unit is a module. */
    public String path() {
        StringBuilder path = new StringBuilder();
        for (int row = 0; row < modules.getHeight(); row++) {
            for (int column = 0; column < modules.getWidth(); column++) {
                if (modules.get(column, row) == 1) {
                    path.append('M')
                            .append(column + QUIET)
                            .append(' ')
                            .append(row + QUIET)
                            .append("h1v1h-1z");
                }
            }
        }
        return path.toString();
    }

    public double quietMm(double side) {
        return QUIET * side / modules.getWidth();
    }
}

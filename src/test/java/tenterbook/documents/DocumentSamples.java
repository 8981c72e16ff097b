package tenterbook.documents;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import tenterbook.colour.space.Lab;
import tenterbook.facts.PieceColour;
import tenterbook.measure.Digest;
import tenterbook.piece.PieceNumber;

/** A document with every block, and photographs drawn for it. */
public final class DocumentSamples {
    public static final Digest UPRIGHT = new Digest("ab".repeat(32));
    public static final Digest ACROSS = new Digest("cd".repeat(32));

    /** Two pictures of cloth, one upright and one across; no others. */
    public static final PhotoSource PHOTOGRAPHS = (digest, size) -> digest.equals(UPRIGHT)
            ? Optional.of(picture(600, 800))
            : digest.equals(ACROSS) ? Optional.of(picture(900, 600)) : Optional.empty();

    private DocumentSamples() {}

    private static byte[] picture(int width, int height) throws IOException {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        graphics.setColor(new Color(0x2f, 0x4a, 0x6b));
        graphics.fillRect(0, 0, width, height);
        graphics.setColor(new Color(0xe8, 0xe2, 0xd2));
        for (int i = 0; i < 6; i++) {
            graphics.fillOval(40 + i * width / 7, 60 + i * height / 8, width / 9, height / 12);
        }
        graphics.dispose();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        ImageIO.write(image, "jpg", bytes);
        return bytes.toByteArray();
    }

    public static DocumentText everyBlock() {
        return new DocumentText(
                "trial",
                "trial 1",
                "Every block there is",
                "V24-003 Noite de figos",
                "Oficina Valderim, Porto Sarelho",
                List.of(
                        new DocumentText.DocumentSection(
                                null,
                                List.of(
                                        new Block.Heading(1, "Night of figs"),
                                        new Block.Paragraph(
                                                "A scarf of silk habotai, folded in eight layers and dyed with woad between carved boards."),
                                        new Block.Heading(2, "What is known"),
                                        new Block.Facts(List.of(
                                                new Block.Fact("Size", "122 × 44 cm"),
                                                new Block.Fact("Distinguishing features", "not recorded"))))),
                        new DocumentText.DocumentSection(
                                new PieceNumber("V24-003"),
                                List.of(
                                        new Block.Photograph(
                                                UPRIGHT,
                                                Block.Extent.WHOLE,
                                                "The front of the scarf",
                                                "Front, with a grey card",
                                                List.of(
                                                        new Block.Mark(
                                                                1, 0.2, 0.25, "a small leak at the beak", null, null),
                                                        new Block.Mark(
                                                                2, 0.7, 0.8, "hem slightly frayed", null, null))),
                                        new Block.Photograph(
                                                ACROSS,
                                                Block.Extent.LARGE,
                                                "Whole",
                                                "Whole, with a scale",
                                                List.of(),
                                                new Block.ScaleBar(0.25, "20\u00a0cm")),
                                        new Block.Photograph(ACROSS, Block.Extent.HALF, "Back", "Back", List.of()),
                                        new Block.Photograph(UPRIGHT, Block.Extent.HALF, "Detail", "", List.of()),
                                        new Block.Palette(List.of(
                                                new PieceColour(new Lab(34, -2, -25), 0.61, "night blue"),
                                                new PieceColour(new Lab(88, -3, 12), 0.27, "reserved silk"),
                                                new PieceColour(new Lab(44, 39, 4), 0.12, "lac"))))),
                        new DocumentText.DocumentSection(
                                null,
                                List.of(
                                        new Block.NewPage(),
                                        new Block.Heading(2, "Pieces"),
                                        new Block.Table(
                                                List.of(
                                                        new Block.Column("Piece", 3, false),
                                                        new Block.Column("Value", 1, true)),
                                                List.of(
                                                        new Block.TableRow(
                                                                UPRIGHT, List.of("V24-003 Noite de figos", "€320")),
                                                        new Block.TableRow(null, List.of("V24-004", "not recorded")))),
                                        new Block.Entry(
                                                ACROSS,
                                                "The weir",
                                                "V24-004 Garça ao açude",
                                                List.of(
                                                        new Block.Fact("Size", "104 × 86 cm"),
                                                        new Block.Fact("Agreed value", "€450"))),
                                        new Block.Items(true, List.of("Fold.", "Clamp.", "Dip three times.")),
                                        new Block.Items(false, List.of("no pins")),
                                        new Block.Note(Block.Manner.NOTE, "A quiet remark."),
                                        new Block.Note(Block.Manner.CAUTION, "Caution: lime burns eyes and skin."),
                                        new Block.Note(Block.Manner.MISSING, "Missing: no photograph is recorded."),
                                        new Block.Heading(3, "To write"),
                                        new Block.Blank("Seen", 3),
                                        new Block.Code("V24-003\n9f2c", "9f2c 41ab", "Compare it with the ledger."),
                                        new Block.Signatures(List.of("Lender", "Borrower", "Witness"))))));
    }
}

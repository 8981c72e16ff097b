package tenterbook.archive.record;

import static tenterbook.archive.record.Measures.LAB;

import tenterbook.archive.field.Kept;
import tenterbook.archive.field.Numeric;
import tenterbook.archive.field.Part;
import tenterbook.archive.field.Plain;
import tenterbook.piece.PieceNumber;

/**
 * A paper as printed; never typed. The digest and length of the PDF could confirm a guess of erased words, so they are personal
 * like the words.
 */
public final class IssuedPaperRecord {
    private static final Part<IssuedPaper.Line> LINE = Part.<IssuedPaper.Line>of("printed-line")
            .text("part", IssuedPaper.Line::part)
            .text("text", IssuedPaper.Line::text)
            .text("basis", IssuedPaper.Line::basis)
            .onceText(text -> new IssuedPaper.Line("", text, ""))
            .built(v -> new IssuedPaper.Line(v.get("part"), v.get("text"), v.get("basis")));

    private static final Part<IssuedPaper.Colour> COLOUR = Part.<IssuedPaper.Colour>of("printed-colour")
            .field("colour", LAB, IssuedPaper.Colour::colour)
            .required()
            .field("share", Numeric.DECIMAL, IssuedPaper.Colour::share)
            .text("name", IssuedPaper.Colour::name)
            .built(v -> new IssuedPaper.Colour(v.get("colour"), v.get("share"), v.get("name")));

    private static final Part<IssuedPaper.Issued> PIECE = Part.<IssuedPaper.Issued>of("printed-piece")
            .field("piece", Plain.identifier(PieceNumber::new), IssuedPaper.Issued::piece)
            .key()
            .required()
            .field("version", Numeric.WHOLE, IssuedPaper.Issued::version)
            .required()
            .list("lines", LINE, IssuedPaper.Issued::lines)
            .personal()
            .text("code", IssuedPaper.Issued::code)
            .personal()
            .list("colours", COLOUR, IssuedPaper.Issued::colours)
            .list("answers", LabelFactRecords.ANSWER, IssuedPaper.Issued::answers)
            .personal()
            .built(v -> new IssuedPaper.Issued(
                    v.get("piece"),
                    v.get("version", 0),
                    v.get("lines"),
                    v.get("code"),
                    v.get("colours"),
                    v.get("answers")));

    private static final Part<IssuedPaper.Pdf> PDF = Part.<IssuedPaper.Pdf>of("stored-pdf")
            .field("digest", Plain.DIGEST, IssuedPaper.Pdf::digest)
            .required()
            .field("bytes", Numeric.LONG, IssuedPaper.Pdf::bytes)
            .required()
            .built(v -> new IssuedPaper.Pdf(v.get("digest"), v.get("bytes", 0L)));

    public static final Part<IssuedPaper> ISSUED_PAPER = Part.<IssuedPaper>of("issued-paper")
            .text("id", IssuedPaper::id)
            .key()
            .required()
            .blamed()
            .text("kind", IssuedPaper::kind)
            .required()
            .text("market", IssuedPaper::market)
            .text("template", IssuedPaper::template)
            .list("rules", Plain.TEXT, IssuedPaper::rules)
            .field("issuedAt", Plain.INSTANT, IssuedPaper::issuedAt)
            .required()
            .list("pieces", PIECE, IssuedPaper::pieces)
            .field(
                    "settings",
                    Kept.OBJECT,
                    paper -> paper.older().equals(OldPaperSettings.NONE) ? paper.settings() : null)
            .personal()
            .list("words", LINE, IssuedPaper::words)
            .personal()
            .text("replaces", IssuedPaper::replaces)
            .field("pdf", PDF, IssuedPaper::pdf)
            .personal()
            // Fields of papers from before settings.
            .text("sheet", paper -> paper.older().sheet())
            .field(
                    "copies",
                    Numeric.WHOLE,
                    paper -> paper.older().copies() == 0 ? null : paper.older().copies())
            .field("setting", Kept.OBJECT, paper -> paper.older().setting())
            .personal()
            .built(v -> new IssuedPaper(
                    v.get("id"),
                    v.get("kind"),
                    v.get("market"),
                    v.get("template"),
                    v.get("rules"),
                    v.get("issuedAt"),
                    v.get("pieces"),
                    v.get("settings"),
                    v.get("words"),
                    v.get("replaces"),
                    v.get("pdf"),
                    v.get("settings") == null
                            ? new OldPaperSettings(v.get("sheet"), v.get("copies", 0), v.get("setting"))
                            : null));

    private IssuedPaperRecord() {}
}

package tenterbook.labelling.issue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.archive.Papers;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.facts.PieceColour;
import tenterbook.facts.PieceReader;
import tenterbook.labelling.LabelBlocked;
import tenterbook.labelling.LabelText;
import tenterbook.labelling.LabelText.Part;
import tenterbook.labelling.PrintSettings;
import tenterbook.labelling.paper.LabelPaper;
import tenterbook.labelling.rule.CodedChoice;
import tenterbook.ledger.Saved;
import tenterbook.ledger.file.Progress;
import tenterbook.piece.Piece;
import tenterbook.piece.PieceNumber;

/** Issues labels: lays them out, stores the PDF, and then stores their exact text in the ledger with the name of the file. */
public final class LabelIssuer {
    private static final DateTimeFormatter STAMP =
            DateTimeFormatter.ofPattern("yyyyMMdd-HHmmss-SSS").withZone(ZoneOffset.UTC);

    private LabelIssuer() {}

    /**
     * Stores the PDF in the archive and the paper in the ledger. It replaces the newest paper of the same kind and market
     * whose pieces are all among these.
     *
     * @throws LabelBlocked where a rule forbids a label; nothing is kept
     * @throws tenterbook.typeset.DoesNotFit where words do not fit; nothing is kept
     */
    public static IssuedPaper print(
            Archive archive,
            List<Saved<Piece>> pieces,
            PrintSettings request,
            Clock clock,
            String author,
            Progress progress)
            throws IOException {
        return print(archive, pieces, texts(archive, pieces, request), request, clock, author, progress);
    }

    /**
     * The texts of labels, for showing and for printing them.
     *
     * @throws LabelBlocked where a rule forbids a label
     */
    public static List<LabelText> texts(Archive archive, List<Saved<Piece>> pieces, PrintSettings request) {
        return LabelText.of(
                PieceReader.all(archive, pieces.stream().map(Saved::record).toList()), request);
    }

    /**
     * As above, from texts that were composed before.
     *
     * @param texts of these pieces in their order, as {@link #texts} composes them
     */
    public static IssuedPaper print(
            Archive archive,
            List<Saved<Piece>> pieces,
            List<LabelText> texts,
            PrintSettings request,
            Clock clock,
            String author,
            Progress progress)
            throws IOException {
        Instant at = clock.instant().truncatedTo(ChronoUnit.MILLIS);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        LabelPaper.print(texts, request, out, Clock.fixed(at, ZoneOffset.UTC), progress);
        progress.orStop();
        IssuedPaper.Pdf pdf = archive.papers().store(out.toByteArray());
        String replaces = replaced(archive, request, pieces);
        return archive.ledger().write(author, act -> {
            String stamp = "paper-" + STAMP.format(at);
            String id = stamp;
            for (int next = 2; act.find(Kinds.ISSUED_PAPER, id).isPresent(); next++) {
                id = stamp + "-" + next;
            }
            return act.create(Kinds.ISSUED_PAPER, paper(id, request, pieces, texts, at, replaces, pdf))
                    .record();
        });
    }

    /**
     * Lays out a paper's words again, for other copies or another first place. Stores nothing; the paper as issued is its
     * stored file.
     *
     * @param asked its own settings, perhaps with other copies and another first place
     */
    public static void reprint(IssuedPaper paper, PrintSettings asked, OutputStream out, Progress progress)
            throws IOException {
        List<LabelText> texts = paper.pieces().stream()
                .map(issued -> text(paper, issued, asked))
                .toList();
        LabelPaper.print(texts, asked, out, Clock.fixed(paper.issuedAt(), ZoneOffset.UTC), progress);
    }

    private static LabelText text(IssuedPaper paper, IssuedPaper.Issued issued, PrintSettings request) {
        return new LabelText(
                issued.piece(),
                request,
                paper.rules(),
                paper.template(),
                issued.lines().stream()
                        .map(line -> new LabelText.Line(part(line.part()), line.text(), line.basis()))
                        .toList(),
                issued.code(),
                issued.colours().stream()
                        .map(c -> new PieceColour(c.colour(), c.share(), c.name()))
                        .toList(),
                List.of(),
                issued.answers());
    }

    private static Part part(String word) {
        return CodedChoice.find(Part.values(), word).orElse(Part.MADE);
    }

    /** The newest paper of the kind and market without other pieces. */
    private static String replaced(Archive archive, PrintSettings request, List<Saved<Piece>> pieces) {
        Set<PieceNumber> numbers =
                pieces.stream().map(piece -> piece.record().number()).collect(Collectors.toSet());
        return Papers.of(archive.ledger(), pieces.get(0).record().number().value()).readable().stream()
                .filter(paper -> paper.kind().equals(request.kind().code())
                        && paper.market().equals(request.market().code())
                        && paper.pieces().stream().allMatch(issued -> numbers.contains(issued.piece())))
                .findFirst()
                .map(IssuedPaper::id)
                .orElse("");
    }

    private static IssuedPaper paper(
            String id,
            PrintSettings request,
            List<Saved<Piece>> pieces,
            List<LabelText> texts,
            Instant at,
            String replaces,
            IssuedPaper.Pdf pdf) {
        List<IssuedPaper.Issued> issued = new ArrayList<>();
        for (int i = 0; i < texts.size(); i++) {
            issued.add(issued(texts.get(i), pieces.get(i).version()));
        }
        return new IssuedPaper(
                id,
                request.kind().code(),
                request.market().code(),
                texts.get(0).template(),
                texts.get(0).rules(),
                at,
                issued,
                request.stored(),
                List.of(),
                replaces,
                pdf);
    }

    static IssuedPaper.Issued issued(LabelText text, int version) {
        return new IssuedPaper.Issued(
                text.number(),
                version,
                text.lines().stream()
                        .map(line -> new IssuedPaper.Line(line.part().code(), line.text(), line.basis()))
                        .toList(),
                text.code(),
                colours(text),
                text.answers());
    }

    static List<IssuedPaper.Colour> colours(LabelText text) {
        return text.colours().stream()
                .map(c -> new IssuedPaper.Colour(c.colour(), c.share(), c.name()))
                .toList();
    }

    /** The paper without its words. */
    static IssuedPaper withoutPieces(IssuedPaper paper) {
        return new IssuedPaper(
                paper.id(),
                paper.kind(),
                paper.market(),
                paper.template(),
                paper.rules(),
                paper.issuedAt(),
                List.of(),
                paper.settings(),
                List.of(),
                paper.replaces(),
                paper.pdf());
    }
}

package tenterbook.label;

import java.io.IOException;
import java.io.OutputStream;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import tenterbook.archive.Archive;
import tenterbook.archive.IssuedPaper;
import tenterbook.archive.Kinds;
import tenterbook.archive.Papers;
import tenterbook.facts.PieceColour;
import tenterbook.facts.PieceReader;
import tenterbook.label.LabelText.Part;
import tenterbook.label.paper.LabelPaper;
import tenterbook.ledger.Progress;
import tenterbook.ledger.Saved;
import tenterbook.piece.Piece;
import tenterbook.piece.PieceNumber;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/** Issues labels: prints them and keeps their exact text in the ledger, in that order and both or neither. */
public final class Issue {
    private static final DateTimeFormatter STAMP =
            DateTimeFormatter.ofPattern("yyyyMMdd-HHmmss-SSS").withZone(ZoneOffset.UTC);

    private Issue() {}

    /** A choice as it stands in addresses, options and records, as in {@code hang-tag}. */
    public static String word(Enum<?> choice) {
        return choice.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /**
     * Writes the PDF to {@code out} and the paper to the ledger. It replaces the newest paper of the same kind and market
     * whose pieces are all among these.
     *
     * @param out should be memory: what it got is worth nothing until this returns
     * @throws LabelBlocked where a rule forbids a label; nothing is kept
     * @throws tenterbook.label.layout.DoesNotFit where words do not fit; nothing is kept
     */
    public static IssuedPaper print(
            Archive archive,
            List<Saved<Piece>> pieces,
            LabelRequest request,
            OutputStream out,
            Clock clock,
            String author,
            Progress progress)
            throws IOException {
        List<LabelText> texts = LabelText.of(
                PieceReader.all(archive, pieces.stream().map(Saved::record).toList()), request);
        Instant at = clock.instant().truncatedTo(ChronoUnit.MILLIS);
        LabelPaper.print(texts, request, out, Clock.fixed(at, ZoneOffset.UTC), watched(progress));
        progress.orStop();
        String replaces = replaced(archive, request, pieces);
        return archive.ledger().write(author, act -> {
            String stamp = "paper-" + STAMP.format(at);
            String id = stamp;
            for (int next = 2; act.find(Kinds.ISSUED_PAPER, id).isPresent(); next++) {
                id = stamp + "-" + next;
            }
            return act.create(Kinds.ISSUED_PAPER, paper(id, request, pieces, texts, at, replaces))
                    .record();
        });
    }

    private static tenterbook.label.paper.Progress watched(Progress progress) {
        String setting = Message.of("label.setting").inEnglish();
        return (done, total) -> {
            progress.at(done, total, setting);
            return !progress.cancelled();
        };
    }

    /** What was asked when a paper was issued; empty where it is no label or kept too little. */
    public static Optional<LabelRequest> request(IssuedPaper paper) {
        return Choices.request(paper);
    }

    /** The words of an issued paper, from the paper alone; empty where {@link #request} is. */
    public static List<LabelText> texts(IssuedPaper paper) {
        return Choices.request(paper)
                .map(request -> paper.pieces().stream()
                        .map(issued -> text(paper, issued, request))
                        .toList())
                .orElse(List.of());
    }

    /**
     * Prints a paper again, word for word, from the ledger alone; at the instant of its issue, so that the same paper on the
     * same sheet is the same file. Keeps nothing.
     *
     * @param laying copies and place to begin at; as it was where null
     * @throws IllegalArgumentException if the paper cannot be set again, with the reason
     */
    public static void reprint(IssuedPaper paper, Laying laying, OutputStream out, Progress progress)
            throws IOException {
        LabelRequest request =
                Choices.request(paper).orElseThrow(() -> Refusal.of("label.refused.again", "paper", paper.id()));
        LabelRequest asked = laying == null ? request : request.laid(laying);
        List<LabelText> texts = paper.pieces().stream()
                .map(issued -> text(paper, issued, asked))
                .toList();
        LabelPaper.print(texts, asked, out, Clock.fixed(paper.issuedAt(), ZoneOffset.UTC), watched(progress));
    }

    private static LabelText text(IssuedPaper paper, IssuedPaper.Issued issued, LabelRequest request) {
        return new LabelText(
                issued.piece(),
                request,
                paper.rules(),
                paper.template(),
                issued.lines().stream()
                        .map(line -> new LabelText.Line(
                                Choices.named(Part.values(), line.part()).orElse(Part.MADE), line.text(), line.basis()))
                        .toList(),
                issued.code(),
                issued.colours().stream()
                        .map(c -> new PieceColour(c.colour(), c.share(), c.name()))
                        .toList(),
                List.of());
    }

    /** The newest paper of the kind and market that says nothing of other pieces. */
    private static String replaced(Archive archive, LabelRequest request, List<Saved<Piece>> pieces) {
        Set<PieceNumber> numbers =
                pieces.stream().map(piece -> piece.record().number()).collect(Collectors.toSet());
        return Papers.of(archive.ledger(), pieces.get(0).record().number().value()).readable().stream()
                .filter(paper -> paper.kind().equals(word(request.kind()))
                        && paper.market().equals(word(request.market()))
                        && paper.pieces().stream().allMatch(issued -> numbers.contains(issued.piece())))
                .findFirst()
                .map(IssuedPaper::id)
                .orElse("");
    }

    private static IssuedPaper paper(
            String id,
            LabelRequest request,
            List<Saved<Piece>> pieces,
            List<LabelText> texts,
            Instant at,
            String replaces) {
        List<IssuedPaper.Issued> issued = new ArrayList<>();
        for (int i = 0; i < texts.size(); i++) {
            issued.add(issued(texts.get(i), pieces.get(i).version()));
        }
        return new IssuedPaper(
                id,
                word(request.kind()),
                word(request.market()),
                word(request.sheet()),
                texts.get(0).template(),
                texts.get(0).rules(),
                at,
                issued,
                Choices.of(request),
                List.of(),
                request.laying().copies(),
                replaces);
    }

    static IssuedPaper.Issued issued(LabelText text, int version) {
        return new IssuedPaper.Issued(
                text.number(),
                version,
                text.lines().stream()
                        .map(line -> new IssuedPaper.Line(word(line.part()), line.text(), line.basis()))
                        .toList(),
                text.code(),
                colours(text));
    }

    static List<IssuedPaper.Colour> colours(LabelText text) {
        return text.colours().stream()
                .map(c -> new IssuedPaper.Colour(c.colour(), c.share(), c.name()))
                .toList();
    }

    /** The choices of a paper without the words. */
    static IssuedPaper withoutPieces(IssuedPaper paper) {
        return new IssuedPaper(
                paper.id(),
                paper.kind(),
                paper.market(),
                paper.sheet(),
                paper.template(),
                paper.rules(),
                paper.issuedAt(),
                List.of(),
                paper.setting(),
                List.of(),
                paper.copies(),
                paper.replaces());
    }
}

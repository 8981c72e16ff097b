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
import java.util.Map;
import tenterbook.archive.Archive;
import tenterbook.archive.IssuedPaper;
import tenterbook.archive.Kinds;
import tenterbook.label.paper.LabelPaper;
import tenterbook.ledger.Progress;
import tenterbook.ledger.Saved;
import tenterbook.piece.Piece;

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
     * Writes the PDF to {@code out} and the paper to the ledger.
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
                pieces.stream()
                        .map(piece -> Gathering.of(archive, piece.record()))
                        .toList(),
                request);
        LabelPaper.print(texts, request, out, clock, (done, total) -> {
            progress.at(done, total, "setting labels");
            return !progress.cancelled();
        });
        IssuedPaper paper = paper(request, pieces, texts, clock.instant().truncatedTo(ChronoUnit.MILLIS));
        archive.ledger().write(author, act -> act.create(Kinds.ISSUED_PAPER, paper));
        return paper;
    }

    private static IssuedPaper paper(
            LabelRequest request, List<Saved<Piece>> pieces, List<LabelText> texts, Instant at) {
        List<IssuedPaper.Issued> issued = new ArrayList<>();
        for (int i = 0; i < texts.size(); i++) {
            issued.add(new IssuedPaper.Issued(
                    texts.get(i).number(),
                    pieces.get(i).version(),
                    texts.get(i).lines().stream().map(Issue::line).toList(),
                    texts.get(i).code(),
                    texts.get(i).colours().stream()
                            .map(c -> new IssuedPaper.Colour(c.colour(), c.share(), c.name()))
                            .toList()));
        }
        return new IssuedPaper(
                "paper-" + STAMP.format(at),
                word(request.kind()),
                word(request.market()),
                word(request.sheet()),
                texts.get(0).template(),
                texts.get(0).rules(),
                at,
                issued,
                setting(request),
                List.of(),
                1,
                "");
    }

    private static IssuedPaper.Line line(LabelText.Line line) {
        return new IssuedPaper.Line(word(line.part()), line.text(), line.basis());
    }

    private static Map<String, String> setting(LabelRequest request) {
        return Map.of(
                "widthMm", Double.toString(request.widthMm()),
                "heightMm", Double.toString(request.heightMm()),
                "priceShown", Boolean.toString(request.priceShown()),
                "blackOnly", Boolean.toString(request.blackOnly()),
                "fullContent", Boolean.toString(request.fullContent()));
    }
}

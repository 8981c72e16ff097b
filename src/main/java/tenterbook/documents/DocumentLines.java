package tenterbook.documents;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.archive.record.IssuedPaper.Line;
import tenterbook.piece.PieceNumber;
import tenterbook.words.Refusal;

/**
 * A document as lines of issued paper, without loss either way. A line's part is the kind of block, its text the words as
 * printed, its basis other values of the block, such as a photograph's digest or a colour's values. The lines of a section
 * about one piece are stored with that piece; a line {@code piece} among the words marks their place.
 *
 * @param words of the whole document
 * @param pieces the lines of sections about one piece
 */
public record DocumentLines(List<Line> words, Map<PieceNumber, List<Line>> pieces) {
    private static final String PIECE = "piece";
    private static final String TITLE = "title";
    private static final String RUNNING = "running";
    private static final String MAKER = "maker";
    private static final String APART = "part";

    public static DocumentLines of(DocumentText text) {
        List<Line> words = new ArrayList<>();
        Map<PieceNumber, List<Line>> pieces = new LinkedHashMap<>();
        words.add(new Line(TITLE, text.title(), ""));
        words.add(new Line(RUNNING, text.running(), ""));
        words.add(new Line(MAKER, text.maker(), ""));
        for (DocumentText.DocumentSection part : text.parts()) {
            List<Line> lines = part.blocks().stream()
                    .flatMap(block -> BlockLines.of(block).stream())
                    .toList();
            if (part.piece() == null) {
                words.add(new Line(APART, "", ""));
                words.addAll(lines);
            } else {
                words.add(new Line(PIECE, "", part.piece().value()));
                pieces.put(part.piece(), lines);
            }
        }
        return new DocumentLines(List.copyOf(words), pieces);
    }

    /**
     * The document that an issued paper keeps.
     *
     * @throws IllegalArgumentException where its lines are not those of a document
     */
    public static DocumentText read(IssuedPaper paper) {
        String title = "";
        String running = "";
        String maker = "";
        List<DocumentText.DocumentSection> parts = new ArrayList<>();
        List<Line> open = new ArrayList<>();
        boolean inPart = false;
        for (Line line : paper.words()) {
            boolean apart = line.part().equals(APART) || line.part().equals(PIECE);
            if (apart && inPart) {
                parts.add(new DocumentText.DocumentSection(null, BlockLines.read(open)));
                open.clear();
                inPart = false;
            }
            switch (line.part()) {
                case TITLE -> title = line.text();
                case RUNNING -> running = line.text();
                case MAKER -> maker = line.text();
                case APART -> inPart = true;
                case PIECE -> parts.add(subject(paper, line.basis()));
                default -> open.add(line);
            }
        }
        if (inPart) {
            parts.add(new DocumentText.DocumentSection(null, BlockLines.read(open)));
        }
        return new DocumentText(paper.kind(), paper.template(), title, running, maker, parts);
    }

    /** The words only, also of a paper whose lines are not understood. */
    public static List<String> bare(IssuedPaper paper) {
        return Stream.concat(paper.words().stream(), paper.pieces().stream().flatMap(issued -> issued.lines().stream()))
                .map(Line::text)
                .filter(text -> !text.isEmpty())
                .toList();
    }

    private static DocumentText.DocumentSection subject(IssuedPaper paper, String number) {
        IssuedPaper.Issued issued = paper.pieces().stream()
                .filter(each -> each.piece().value().equals(number))
                .findFirst()
                .orElseThrow(() -> Refusal.of("document.refused.no-lines", "paper", paper.id(), "piece", number));
        return new DocumentText.DocumentSection(issued.piece(), BlockLines.read(issued.lines()));
    }

    /** Every line in order of reading. */
    List<Line> all() {
        return words.stream()
                .flatMap(line -> line.part().equals(PIECE)
                        ? pieces.get(new PieceNumber(line.basis())).stream()
                        : Stream.of(line))
                .toList();
    }
}

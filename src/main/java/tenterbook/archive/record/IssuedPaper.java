package tenterbook.archive.record;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tenterbook.colour.space.Lab;
import tenterbook.measure.Digest;
import tenterbook.piece.PieceNumber;
import tenterbook.piece.label.RuleAnswer;
import tenterbook.words.Refusal;

/**
 * A paper as printed, so that it can be shown and printed again word for word without evaluating the records or the rules
 * again.
 *
 * @param id as in {@code paper-20240305-101500-1}
 * @param kind of paper, as in {@code hang-tag} or {@code condition-report}
 * @param market whose rules were followed, as in {@code us}; empty where no rules apply
 * @param template name and version of the words and layout
 * @param rules name and version of each rule table
 * @param pieces the pieces, each with the version of its record and the exact lines
 * @param settings every choice of the person who printed; empty in papers of the first form, which kept only their words. The
 *     packages that print know its contents.
 * @param words lines that belong to no single piece, such as a schedule's parties and terms
 * @param replaces the paper that this one replaces; empty for none
 * @param pdf its file among the archive's paper files; null in papers issued before files were stored, and where a person was
 *     erased from it
 * @param older settings of older papers, from which {@code settings} are derived
 */
public record IssuedPaper(
        String id,
        String kind,
        String market,
        String template,
        List<String> rules,
        Instant issuedAt,
        List<Issued> pieces,
        ObjectNode settings,
        List<Line> words,
        String replaces,
        Pdf pdf,
        OldPaperSettings older) {
    /** The stored file, by its SHA-256 and its length. */
    public record Pdf(Digest digest, long bytes) {}

    /**
     * One piece on the paper.
     *
     * @param version of the piece's record it was printed from
     * @param lines its text in order
     * @param code contents of its QR code; empty for none
     * @param colours those of its colour band; empty for none
     * @param answers that held when it was printed; empty in papers from before answers were kept
     */
    public record Issued(
            PieceNumber piece,
            int version,
            List<Line> lines,
            String code,
            List<Colour> colours,
            List<RuleAnswer> answers) {
        /** Without answers. */
        public Issued(PieceNumber piece, int version, List<Line> lines, String code, List<Colour> colours) {
            this(piece, version, lines, code, colours, List.of());
        }

        public Issued {
            lines = lines == null ? List.of() : List.copyOf(lines);
            code = code == null ? "" : code;
            colours = colours == null ? List.of() : List.copyOf(colours);
            answers = answers == null ? List.of() : List.copyOf(answers);
        }

        public List<String> text() {
            return lines.stream().map(Line::text).toList();
        }
    }

    /**
     * One line exactly as printed. Papers of the first form kept the text only.
     *
     * @param part of the layout it stands in; empty where not kept
     * @param basis the citation or the record it rests on; empty for a plain fact
     */
    public record Line(String part, String text, String basis) {
        public Line {
            part = part == null ? "" : part;
            text = text == null ? "" : text;
            basis = basis == null ? "" : basis;
        }
    }

    /** A colour of the band: CIELAB, D65, 2° observer; share of the area, null where not measured; its printed name. */
    public record Colour(Lab colour, @Nullable Double share, String name) {
        public Colour {
            name = name == null ? "" : name;
        }
    }

    /** @throws IllegalArgumentException without identifier, kind or time of issue */
    public IssuedPaper {
        if (id == null || id.isEmpty() || kind == null || kind.isEmpty() || issuedAt == null) {
            throw Refusal.of(
                    "sheet.incomplete",
                    "id",
                    String.valueOf(id),
                    "kind",
                    String.valueOf(kind),
                    "issued",
                    String.valueOf(issuedAt));
        }
        market = market == null ? "" : market;
        template = template == null ? "" : template;
        rules = rules == null ? List.of() : List.copyOf(rules);
        pieces = pieces == null ? List.of() : List.copyOf(pieces);
        older = older == null ? OldPaperSettings.NONE : older;
        settings = settings == null ? older.settings(kind, market) : settings;
        words = words == null ? List.of() : List.copyOf(words);
        replaces = replaces == null ? "" : replaces;
    }

    /** A paper of the present form. */
    public IssuedPaper(
            String id,
            String kind,
            String market,
            String template,
            List<String> rules,
            Instant issuedAt,
            List<Issued> pieces,
            ObjectNode settings,
            List<Line> words,
            String replaces,
            Pdf pdf) {
        this(id, kind, market, template, rules, issuedAt, pieces, settings, words, replaces, pdf, null);
    }

    public IssuedPaper with(Pdf stored) {
        return new IssuedPaper(
                id, kind, market, template, rules, issuedAt, pieces, settings, words, replaces, stored, older);
    }
}

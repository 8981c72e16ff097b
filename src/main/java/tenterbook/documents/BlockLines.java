package tenterbook.documents;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tenterbook.archive.record.IssuedPaper.Line;
import tenterbook.colour.space.Lab;
import tenterbook.facts.PieceColour;
import tenterbook.measure.Digest;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/** Converts blocks to lines and back. Each block begins with a line of its own kind. */
final class BlockLines {
    private static final String NONE = "-";

    private final List<Line> lines;
    private int at;

    private BlockLines(List<Line> lines) {
        this.lines = lines;
    }

    // ---- writing

    static List<Line> of(Block block) {
        List<Line> lines = new ArrayList<>();
        if (block instanceof Block.Heading heading) {
            lines.add(line("heading", heading.text(), heading.level()));
        } else if (block instanceof Block.Paragraph paragraph) {
            lines.add(line("paragraph", paragraph.text()));
        } else if (block instanceof Block.Note note) {
            lines.add(line("note", note.text(), word(note.manner())));
        } else if (block instanceof Block.Items items) {
            lines.add(line("list", "", items.numbered() ? "numbered" : "plain"));
            items.items().forEach(item -> lines.add(line("item", item)));
        } else if (block instanceof Block.Facts facts) {
            lines.add(line("facts", ""));
            facts(facts.facts(), lines);
        } else if (block instanceof Block.Table table) {
            table(table, lines);
        } else if (block instanceof Block.Photograph photo) {
            photograph(photo, lines);
        } else if (block instanceof Block.Entry entry) {
            lines.add(line("entry", entry.heading(), digest(entry.photo())));
            lines.add(line("instead", entry.instead()));
            facts(entry.facts(), lines);
        } else if (block instanceof Block.Palette palette) {
            lines.add(line("palette", ""));
            palette.colours()
                    .forEach(each -> lines.add(line(
                            "colour",
                            each.name(),
                            each.colour().lightness(),
                            each.colour().a(),
                            each.colour().b(),
                            each.share() == null ? NONE : each.share())));
        } else if (block instanceof Block.Signatures signatures) {
            lines.add(line("signatures", ""));
            signatures.who().forEach(who -> lines.add(line("signature", who)));
        } else if (block instanceof Block.Blank blank) {
            lines.add(line("blank", blank.label(), blank.lines()));
        } else if (block instanceof Block.Code code) {
            lines.add(line("code", code.content()));
            lines.add(line("shown", code.shown()));
            lines.add(line("words", code.words()));
        } else if (block instanceof Block.Layers layers) {
            lines.add(line("layers", layers.caption(), layers.columns()));
            layers.panels()
                    .forEach(each -> lines.add(line(
                            "panel",
                            Integer.toString(each.layer()),
                            each.faceUp(),
                            each.mirroredLength(),
                            each.mirroredWidth())));
        } else if (block instanceof Block.Holes holes) {
            lines.add(line("holes", holes.caption(), holes.wide(), holes.high()));
            holes.holes().forEach(each -> lines.add(line("hole", each.name(), each.across(), each.down())));
        } else if (block instanceof Block.NewPage) {
            lines.add(line("new-page", ""));
        }
        return lines;
    }

    private static void facts(List<Block.Fact> facts, List<Line> lines) {
        facts.forEach(fact -> {
            lines.add(line("label", fact.label()));
            lines.add(line("value", fact.value()));
        });
    }

    private static void table(Block.Table table, List<Line> lines) {
        lines.add(line("table", ""));
        table.columns()
                .forEach(column -> lines.add(
                        line("column", column.head(), column.share(), column.figures() ? "figures" : "words")));
        table.rows().forEach(row -> {
            lines.add(line("row", "", digest(row.photo())));
            row.cells().forEach(cell -> lines.add(line("cell", cell)));
        });
    }

    private static void photograph(Block.Photograph photo, List<Line> lines) {
        lines.add(line("photograph", photo.caption(), digest(photo.photo()), word(photo.extent())));
        lines.add(line("instead", photo.instead()));
        if (photo.scale() != null) {
            lines.add(line("scale", photo.scale().length(), photo.scale().part()));
        }
        photo.marks()
                .forEach(mark -> lines.add(
                        mark.area()
                                ? line(
                                        "mark",
                                        mark.words(),
                                        mark.number(),
                                        mark.across(),
                                        mark.down(),
                                        mark.right(),
                                        mark.bottom())
                                : line("mark", mark.words(), mark.number(), mark.across(), mark.down())));
    }

    private static Line line(String part, String text, Object... basis) {
        List<String> words = new ArrayList<>();
        for (Object each : basis) {
            words.add(each.toString());
        }
        return new Line(part, text, String.join(" ", words));
    }

    private static String word(Enum<?> choice) {
        return choice.name().toLowerCase(Locale.ROOT);
    }

    private static String digest(Digest digest) {
        return digest == null ? NONE : digest.hex();
    }

    // ---- reading

    static List<Block> read(List<Line> lines) {
        BlockLines reading = new BlockLines(List.copyOf(lines));
        List<Block> blocks = new ArrayList<>();
        while (reading.at < reading.lines.size()) {
            blocks.add(reading.block());
        }
        return blocks;
    }

    private Block block() {
        Line first = lines.get(at);
        try {
            return block(lines.get(at++));
        } catch (NumberFormatException | IndexOutOfBoundsException e) {
            throw new Refusal(Message.of("document.refused.line", "kind", first.part(), "found", first.basis()), e);
        }
    }

    private Block block(Line first) {
        String[] basis = first.basis().split(" ");
        return switch (first.part()) {
            case "heading" -> new Block.Heading(Integer.parseInt(basis[0]), first.text());
            case "paragraph" -> new Block.Paragraph(first.text());
            case "note" -> new Block.Note(Block.Manner.valueOf(basis[0].toUpperCase(Locale.ROOT)), first.text());
            case "list" -> new Block.Items(basis[0].equals("numbered"), texts("item"));
            case "facts" -> new Block.Facts(facts());
            case "table" -> table();
            case "photograph" -> photograph(first.text(), basis);
            case "entry" -> new Block.Entry(digest(basis[0]), one("instead"), first.text(), facts());
            case "palette" -> new Block.Palette(colours());
            case "signatures" -> new Block.Signatures(texts("signature"));
            case "blank" -> new Block.Blank(first.text(), Integer.parseInt(basis[0]));
            case "code" -> new Block.Code(first.text(), one("shown"), one("words"));
            case "layers" -> new Block.Layers(Integer.parseInt(basis[0]), panels(), first.text());
            case "holes" ->
                new Block.Holes(Double.parseDouble(basis[0]), Double.parseDouble(basis[1]), holes(), first.text());
            case "new-page" -> new Block.NewPage();
            default -> throw Refusal.of("document.refused.line-unknown", "kind", first.part());
        };
    }

    private Block.Photograph photograph(String caption, String[] basis) {
        Digest photo = digest(basis[0]);
        Block.Extent extent = Block.Extent.valueOf(basis[1].toUpperCase(Locale.ROOT));
        String instead = one("instead");
        Block.ScaleBar scale = null;
        if (next("scale")) {
            Line bar = lines.get(at++);
            scale = new Block.ScaleBar(Double.parseDouble(bar.basis()), bar.text());
        }
        return new Block.Photograph(photo, extent, instead, caption, marks(), scale);
    }

    private boolean next(String part) {
        return at < lines.size() && lines.get(at).part().equals(part);
    }

    private String one(String part) {
        return next(part) ? lines.get(at++).text() : "";
    }

    private List<String> texts(String part) {
        List<String> texts = new ArrayList<>();
        while (next(part)) {
            texts.add(lines.get(at++).text());
        }
        return texts;
    }

    private List<Block.Fact> facts() {
        List<Block.Fact> facts = new ArrayList<>();
        while (next("label")) {
            facts.add(new Block.Fact(one("label"), one("value")));
        }
        return facts;
    }

    private Block.Table table() {
        List<Block.Column> columns = new ArrayList<>();
        while (next("column")) {
            Line column = lines.get(at++);
            String[] basis = column.basis().split(" ");
            columns.add(new Block.Column(column.text(), Double.parseDouble(basis[0]), basis[1].equals("figures")));
        }
        List<Block.TableRow> rows = new ArrayList<>();
        while (next("row")) {
            Digest photo = digest(lines.get(at++).basis());
            rows.add(new Block.TableRow(photo, texts("cell")));
        }
        return new Block.Table(columns, rows);
    }

    private List<Block.Mark> marks() {
        List<Block.Mark> marks = new ArrayList<>();
        while (next("mark")) {
            Line mark = lines.get(at++);
            String[] basis = mark.basis().split(" ");
            marks.add(new Block.Mark(
                    Integer.parseInt(basis[0]),
                    Double.parseDouble(basis[1]),
                    Double.parseDouble(basis[2]),
                    mark.text(),
                    basis.length > 4 ? (Double) Double.parseDouble(basis[3]) : null,
                    basis.length > 4 ? (Double) Double.parseDouble(basis[4]) : null));
        }
        return marks;
    }

    private List<PieceColour> colours() {
        List<PieceColour> colours = new ArrayList<>();
        while (next("colour")) {
            Line colour = lines.get(at++);
            String[] basis = colour.basis().split(" ");
            colours.add(new PieceColour(
                    new Lab(Double.parseDouble(basis[0]), Double.parseDouble(basis[1]), Double.parseDouble(basis[2])),
                    basis[3].equals(NONE) ? null : (Double) Double.parseDouble(basis[3]),
                    colour.text()));
        }
        return colours;
    }

    private List<Block.Panel> panels() {
        List<Block.Panel> panels = new ArrayList<>();
        while (next("panel")) {
            Line panel = lines.get(at++);
            String[] basis = panel.basis().split(" ");
            panels.add(new Block.Panel(
                    Integer.parseInt(panel.text()),
                    Boolean.parseBoolean(basis[0]),
                    Boolean.parseBoolean(basis[1]),
                    Boolean.parseBoolean(basis[2])));
        }
        return panels;
    }

    private List<Block.HolePlace> holes() {
        List<Block.HolePlace> holes = new ArrayList<>();
        while (next("hole")) {
            Line hole = lines.get(at++);
            String[] basis = hole.basis().split(" ");
            holes.add(new Block.HolePlace(hole.text(), Double.parseDouble(basis[0]), Double.parseDouble(basis[1])));
        }
        return holes;
    }

    private static Digest digest(String text) {
        return text.equals(NONE) ? null : new Digest(text);
    }
}

package tenterbook.documents;

import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tenterbook.facts.PieceColour;
import tenterbook.measure.Digest;
import tenterbook.measure.NumberWords;
import tenterbook.words.Message;
import tenterbook.words.Refusal;
import tenterbook.words.Written;

/** One block of a document: exact words, with the little layout that they need. Texts are one paragraph each. */
public sealed interface Block {
    /** @param level 1 for a part of the document, which is bookmarked, as are those of level 2; to 3 */
    record Heading(int level, String text) implements Block {
        public Heading {
            text = Block.line(text);
            if (level < 1 || level > 3) {
                throw Refusal.of("document.refused.heading", "level", level);
            }
        }
    }

    /** Running text. */
    record Paragraph(String text) implements Block {
        public Paragraph {
            text = Block.line(text);
        }
    }

    enum Manner {
        /** A quiet remark. */
        NOTE,
        /** A risk of harm to people or the piece. */
        CAUTION,
        /** Information that the document should have and lacks. */
        MISSING
    }

    record Note(Manner manner, String text) implements Block {
        public Note {
            manner = manner == null ? Manner.NOTE : manner;
            text = Block.line(text);
        }
    }

    /** A list, each item a paragraph. */
    record Items(boolean numbered, List<String> items) implements Block {
        public Items {
            items = items.stream().map(Block::line).toList();
        }
    }

    /** A named fact. */
    record Fact(String label, String value) {
        public Fact {
            label = Block.line(label);
            value = Block.line(value);
        }
    }

    record Facts(List<Fact> facts) implements Block {
        public Facts {
            facts = List.copyOf(facts);
        }
    }

    /**
     * A column of a table.
     *
     * @param share of the table's width, weighed against the others; above 0
     * @param figures whether its cells are numbers, set flush right
     */
    record Column(String head, double share, boolean figures) {
        public Column {
            head = Block.line(head);
            if (!(share > 0)) {
                throw Refusal.of("document.refused.column", "share", NumberWords.plain(share));
            }
        }
    }

    /**
     * A row of a table.
     *
     * @param photo shown small before the cells; null for none
     * @param cells one for each column
     */
    record TableRow(Digest photo, List<String> cells) {
        public TableRow {
            cells = cells.stream().map(Block::line).toList();
        }
    }

    record Table(List<Column> columns, List<TableRow> rows) implements Block {
        public Table {
            columns = List.copyOf(columns);
            rows = List.copyOf(rows);
            for (TableRow row : rows) {
                if (row.cells.size() != columns.size()) {
                    throw Refusal.of("document.refused.row", "columns", columns.size(), "cells", row.cells.size());
                }
            }
        }
    }

    /** How much of the page a photograph takes. Neighbours that are halves or thirds stand side by side. */
    enum Extent {
        /** Half the height of the page's text, with thirds beside it where there is room. */
        LARGE,
        WHOLE,
        HALF,
        THIRD
    }

    /**
     * A numbered mark on a photograph: a point, or the outline of an area.
     *
     * @param number as shown in the mark
     * @param across from the left, as a part of the picture's width, 0 to 1; of an area its left side
     * @param down from the top, as a part of its height, 0 to 1; of an area its upper side
     * @param words what is there; stands beside the picture
     * @param right of an area, at or right of {@code across}; null, with {@code bottom}, for a point
     */
    record Mark(int number, double across, double down, String words, Double right, Double bottom) {
        public Mark {
            words = Block.line(words);
            if (!(across >= 0 && across <= 1 && down >= 0 && down <= 1)) {
                throw Refusal.of(
                        "document.refused.mark",
                        "number",
                        number,
                        "across",
                        NumberWords.plain(across),
                        "down",
                        NumberWords.plain(down));
            }
            boolean point = right == null && bottom == null;
            boolean area =
                    right != null && bottom != null && right >= across && right <= 1 && bottom >= down && bottom <= 1;
            if (!point && !area) {
                throw Refusal.of(
                        "document.refused.area",
                        "number",
                        number,
                        "across",
                        NumberWords.plain(across),
                        "down",
                        NumberWords.plain(down),
                        "right",
                        found(right),
                        "bottom",
                        found(bottom));
            }
        }

        private static Written found(Double side) {
            return side == null ? Message.of("measure.not-recorded") : NumberWords.plain(side);
        }

        public boolean area() {
            return right != null;
        }
    }

    /**
     * A bar below a photograph.
     *
     * @param part its length as a part of the picture's width, above 0 and at most 1
     * @param length of the piece that the bar stands for, as in '20 cm'
     */
    record ScaleBar(double part, String length) {
        public ScaleBar {
            length = Block.line(length);
            if (!(part > 0 && part <= 1)) {
                throw Refusal.of("document.refused.scale", "part", NumberWords.plain(part));
            }
        }
    }

    /**
     * A photograph.
     *
     * @param instead text alternative
     * @param caption below it; may be empty
     * @param scale drawn below it; null for none
     */
    record Photograph(
            Digest photo,
            Extent extent,
            String instead,
            String caption,
            List<Mark> marks,
            @Nullable ScaleBar scale) implements Block {
        /** Without a scale. */
        public Photograph(Digest photo, Extent extent, String instead, String caption, List<Mark> marks) {
            this(photo, extent, instead, caption, marks, null);
        }

        public Photograph {
            Objects.requireNonNull(photo, "A photograph is named by the digest of its file");
            extent = extent == null ? Extent.WHOLE : extent;
            instead = Block.line(instead);
            caption = Block.line(caption);
            marks = marks == null ? List.of() : List.copyOf(marks);
        }
    }

    /**
     * A piece in a list of pieces: its photograph small at the left, its facts at the right.
     *
     * @param photo null where there is none
     * @param heading its number and title
     */
    record Entry(Digest photo, String instead, String heading, List<Fact> facts) implements Block {
        public Entry {
            instead = Block.line(instead);
            heading = Block.line(heading);
            facts = List.copyOf(facts);
        }
    }

    /** Colours with their names and, where measured, shares. */
    record Palette(List<PieceColour> colours) implements Block {
        public Palette {
            colours = colours.stream()
                    .map(each -> new PieceColour(each.colour(), each.share(), Block.line(each.name())))
                    .toList();
        }
    }

    /** Lines to sign, with the signatory below each. */
    record Signatures(List<String> who) implements Block {
        public Signatures {
            who = who.stream().map(Block::line).toList();
        }
    }

    /**
     * Room to write by hand.
     *
     * @param lines how many, 1 or more
     */
    record Blank(String label, int lines) implements Block {
        public Blank {
            label = Block.line(label);
            if (lines < 1 || lines > 40) {
                throw Refusal.of("document.refused.blank", "lines", lines);
            }
        }
    }

    /**
     * A square code.
     *
     * @param content its content, plain text of one or more lines
     * @param shown a short code for people, set large beside it; may be empty
     * @param words its purpose, printed beside it
     */
    record Code(String content, String shown, String words) implements Block {
        public Code {
            shown = Block.line(shown);
            words = Block.line(words);
        }
    }

    /**
     * A panel of the opened cloth.
     *
     * @param layer in the folded stack, from 1
     * @param faceUp see {@link tenterbook.recipe.LayerMap.Cell}, as are the others
     */
    record Panel(int layer, boolean faceUp, boolean mirroredLength, boolean mirroredWidth) {}

    /**
     * The opened cloth, each panel with its layer and how it was turned.
     *
     * @param columns panels across the width
     * @param panels row by row
     */
    record Layers(int columns, List<Panel> panels, String caption) implements Block {
        public Layers {
            panels = List.copyOf(panels);
            caption = Block.line(caption);
            if (columns < 1 || panels.isEmpty() || panels.size() % columns != 0) {
                throw Refusal.of("document.refused.panels", "panels", panels.size(), "columns", columns);
            }
        }
    }

    /** A hole, in millimetres from the left and the upper edge of its board. */
    record HolePlace(String name, double across, double down) {
        public HolePlace {
            name = Block.line(name);
        }
    }

    /** A board with its holes, as seen from outside; sides in millimetres. */
    record Holes(double wide, double high, List<HolePlace> holes, String caption) implements Block {
        public Holes {
            holes = List.copyOf(holes);
            caption = Block.line(caption);
            if (!(wide > 0 && high > 0)) {
                throw Refusal.of(
                        "document.refused.board", "wide", NumberWords.plain(wide), "high", NumberWords.plain(high));
            }
        }
    }

    /** What follows begins a new page. */
    record NewPage() implements Block {}

    private static String line(String text) {
        return text == null ? "" : text.strip().replaceAll("[\\s&&[^\u00a0]]+", " ");
    }
}

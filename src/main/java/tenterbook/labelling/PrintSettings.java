package tenterbook.labelling;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Objects;
import java.util.Optional;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.archive.record.LabelSheet;
import tenterbook.labelling.rule.Market;
import tenterbook.measure.NumberWords;
import tenterbook.words.Listing;
import tenterbook.words.Refusal;

/**
 * Every choice of a print of labels: which label, for where, what it says, on what paper and how it is finished. An issued
 * paper stores them in this form, under the names written here.
 *
 * @param format the usual one of the kind where null
 * @param content the usual one where null
 * @param placement one label on a page of its own where null
 * @param finish the usual one where null
 */
public record PrintSettings(
        @JsonProperty("kind") LabelKind kind,
        @JsonProperty("market") Market market,
        @JsonProperty("format") Format format,
        @JsonProperty("content") Content content,
        @JsonProperty("placement") Placement placement,
        @JsonProperty("finish") Finish finish) {
    private static final String STORED = "label";

    /**
     * The label itself.
     *
     * @param widthMm of the label; for a care label of the tape. Each kind has its limits.
     * @param heightMm of the label
     * @param arrangement one of the kind's own; the usual one where null
     */
    public record Format(
            @JsonProperty("widthMm") double widthMm,
            @JsonProperty("heightMm") double heightMm,
            @JsonProperty("arrangement") Arrangement arrangement) {}

    /**
     * Its content.
     *
     * @param priceShown whether a hang tag carries the asking price, where one is recorded
     * @param fullContent whether a hang tag states the whole fibre content; otherwise it is not the required label, which it
     *     states where the market asks
     * @param careSymbols whether care is shown in drawn symbols too, as far as the evidence carries them
     * @param boardsNamed whether the boards and their states are named
     * @param words the maker's own words, where the kind has room for them; empty for none
     * @param soldIn country of this sale; empty where that of the piece or the studio holds
     */
    public record Content(
            @JsonProperty("priceShown") boolean priceShown,
            @JsonProperty("fullContent") boolean fullContent,
            @JsonProperty("careSymbols") boolean careSymbols,

            @JsonProperty("boardsNamed") @JsonInclude(JsonInclude.Include.NON_DEFAULT)
            boolean boardsNamed,

            @JsonProperty("words") @JsonInclude(JsonInclude.Include.NON_EMPTY)
            String words,

            @JsonProperty("soldIn") @JsonInclude(JsonInclude.Include.NON_EMPTY)
            String soldIn) {
        public static final Content USUAL = new Content(false, true, false);

        public Content {
            words = words == null ? "" : words.strip();
            soldIn = soldIn == null ? "" : soldIn.strip();
        }

        /** Without the names of boards, words of the maker and a country. */
        public Content(boolean priceShown, boolean fullContent, boolean careSymbols) {
            this(priceShown, fullContent, careSymbols, false, "", "");
        }
    }

    /**
     * How labels lie on the paper.
     *
     * @param sheet a page of its own where null
     * @param own a copy of the stored sheet, which may be changed later; null unless the sheet is {@link SheetSize#OWN}
     * @param rollMm width of a roll, 20 to 120
     * @param from the first place of the sheet to fill, from 1, for half-used sheets
     * @param copies of each label, 1 to 200
     */
    public record Placement(
            @JsonProperty("sheet") SheetSize sheet,
            @JsonProperty("own") LabelSheet own,
            @JsonProperty("rollMm") double rollMm,
            @JsonProperty("from") int from,
            @JsonProperty("copies") int copies) {
        public static final double USUAL_ROLL_MM = 62;
        public static final int MOST_COPIES = 200;
        public static final Placement USUAL = new Placement(SheetSize.SINGLE, null, USUAL_ROLL_MM, 1, 1);

        public Placement {
            sheet = sheet == null ? SheetSize.SINGLE : sheet;
            if (!(rollMm >= 20 && rollMm <= 120)) {
                throw Refusal.of("label.refused.roll", "found", NumberWords.plain(rollMm));
            }
            if (from < 1 || from > 2400) {
                throw Refusal.of("label.refused.from", "found", from);
            }
            if (copies < 1 || copies > MOST_COPIES) {
                throw Refusal.of("label.refused.copies", "most", MOST_COPIES, "found", copies);
            }
            if (sheet == SheetSize.OWN && own == null) {
                throw Refusal.of("label.refused.no-sheet");
            }
        }
    }

    /**
     * Ink and marks.
     *
     * @param blackOnly whether everything is black, colours as hatchings, for a one-colour printer or tape
     * @param cutMarks whether corners are marked for cutting, where the sheet is not cut already
     * @param holeMark whether a hang tag shows where its hole is punched
     * @param bleedMm how far colour that touches the edge runs over it, 0 to 5; 0 keeps all colour inside the edge
     */
    public record Finish(
            @JsonProperty("blackOnly") boolean blackOnly,
            @JsonProperty("cutMarks") boolean cutMarks,
            @JsonProperty("holeMark") boolean holeMark,
            @JsonProperty("bleedMm") double bleedMm) {
        /** In colour, with marks and without bleed. */
        public static final Finish USUAL = new Finish(false, true, true, 0);

        public Finish {
            if (!(bleedMm >= 0 && bleedMm <= 5)) {
                throw Refusal.of("label.refused.bleed", "found", NumberWords.plain(bleedMm));
            }
        }
    }

    public PrintSettings {
        Objects.requireNonNull(kind, "Print settings name the kind of label");
        Objects.requireNonNull(market, "Print settings name the market");
        Arrangement usual = kind.arrangements().get(0);
        if (format == null || format.arrangement() == null) {
            format = format == null
                    ? new Format(kind.widthMm(), kind.heightMm(), usual)
                    : new Format(format.widthMm(), format.heightMm(), usual);
        }
        content = content == null ? Content.USUAL : content;
        placement = placement == null ? Placement.USUAL : placement;
        finish = finish == null ? Finish.USUAL : finish;
        kind.check(format.widthMm(), format.heightMm());
        if (!kind.arrangements().contains(format.arrangement())) {
            throw Refusal.of(
                    "label.refused.arrangement",
                    "kind",
                    kind,
                    "arrangement",
                    format.arrangement(),
                    "arrangements",
                    Listing.or(kind.arrangements()));
        }
    }

    /** A label of the usual size on its own page, in colour, without a price. */
    public static PrintSettings of(LabelKind kind, Market market) {
        return new PrintSettings(kind, market, null, null, null, null);
    }

    /** Those of an issued paper; empty where it is not a label, has none, or has values that this program does not know. */
    public static Optional<PrintSettings> of(IssuedPaper paper) {
        try {
            return paper.settings().has(STORED)
                    ? Optional.of(StoredSettings.read(paper, STORED, PrintSettings.class))
                    : Optional.empty();
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    /** As stored with an issued paper. */
    public ObjectNode stored() {
        return JsonNodeFactory.instance.objectNode().set(STORED, StoredSettings.json(this));
    }

    /** On other paper. A roll's printer knows black alone, so the label turns black. */
    public PrintSettings on(SheetSize sheet) {
        return placed(new Placement(sheet, placement.own(), placement.rollMm(), placement.from(), placement.copies()))
                .finished(new Finish(
                        finish.blackOnly() || sheet == SheetSize.ROLL,
                        finish.cutMarks(),
                        finish.holeMark(),
                        finish.bleedMm()));
    }

    public PrintSettings startingAt(int place) {
        return placed(new Placement(placement.sheet(), placement.own(), placement.rollMm(), place, placement.copies()));
    }

    public PrintSettings times(int copies) {
        return placed(new Placement(placement.sheet(), placement.own(), placement.rollMm(), placement.from(), copies));
    }

    public PrintSettings arranged(Arrangement other) {
        return formatted(new Format(format.widthMm(), format.heightMm(), other));
    }

    public PrintSettings sized(double widthMm, double heightMm) {
        return formatted(new Format(widthMm, heightMm, format.arrangement()));
    }

    public PrintSettings withPrice() {
        return saying(new Content(
                true,
                content.fullContent(),
                content.careSymbols(),
                content.boardsNamed(),
                content.words(),
                content.soldIn()));
    }

    public PrintSettings withCareSymbols() {
        return saying(new Content(
                content.priceShown(),
                content.fullContent(),
                true,
                content.boardsNamed(),
                content.words(),
                content.soldIn()));
    }

    public PrintSettings inBlack() {
        return finished(new Finish(true, finish.cutMarks(), finish.holeMark(), finish.bleedMm()));
    }

    private PrintSettings formatted(Format other) {
        return new PrintSettings(kind, market, other, content, placement, finish);
    }

    private PrintSettings saying(Content other) {
        return new PrintSettings(kind, market, format, other, placement, finish);
    }

    private PrintSettings placed(Placement other) {
        return new PrintSettings(kind, market, format, content, other, finish);
    }

    private PrintSettings finished(Finish other) {
        return new PrintSettings(kind, market, format, content, placement, other);
    }
}

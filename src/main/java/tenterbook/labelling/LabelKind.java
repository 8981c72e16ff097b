package tenterbook.labelling;

import java.util.List;
import tenterbook.labelling.rule.CodedChoice;
import tenterbook.measure.NumberWords;
import tenterbook.words.Message;
import tenterbook.words.Refusal;
import tenterbook.words.Worded;

/** The purpose of a label, and its limits of size. */
public enum LabelKind implements CodedChoice, Worded {
    HANG_TAG(
            "hang-tag",
            "tag 3",
            55,
            90,
            new Limits(45, 120, 70, 200),
            true,
            Arrangement.COLUMN,
            Arrangement.HEM,
            Arrangement.SELVEDGE),
    /** Sewn in: words on tape. */
    CARE_LABEL("care-label", "care 1", 30, 60, new Limits(25, 40, 30, 200), true, Arrangement.COLUMN),
    EXHIBITION_LABEL(
            "exhibition-label",
            "exhibition 3",
            150,
            100,
            new Limits(90, 297, 60, 210),
            false,
            Arrangement.COLUMN,
            Arrangement.TWO_COLUMNS),
    /** Tied to a piece that is sold or lent: what it is made of and in what condition. */
    CONDITION_TAG(
            "condition-tag",
            "condition 1",
            74,
            120,
            new Limits(60, 150, 90, 220),
            true,
            Arrangement.COLUMN,
            Arrangement.ROWS,
            Arrangement.TWO_COLUMNS),
    /** The same for a wall or a table. */
    CONDITION_LABEL(
            "condition-label",
            "condition 1",
            210,
            148,
            new Limits(150, 297, 100, 210),
            true,
            Arrangement.TWO_COLUMNS,
            Arrangement.ROWS,
            Arrangement.COLUMN),
    /** On the edge of a shelf or the lid of a box. */
    SHELF_TAG("shelf-tag", "shelf 1", 90, 38, new Limits(60, 150, 30, 80), false, Arrangement.COLUMN),
    /** Along the tube on which a piece is rolled. */
    TUBE_TAG("tube-tag", "tube 1", 170, 28, new Limits(110, 280, 20, 50), false, Arrangement.COLUMN);

    /** Least and greatest sides, in millimetres. */
    private record Limits(double leastWidth, double mostWidth, double leastHeight, double mostHeight) {}

    private final String code;
    private final String template;
    private final double widthMm;
    private final double heightMm;
    private final Limits limits;
    private final boolean statesFibres;
    private final List<Arrangement> arrangements;

    LabelKind(
            String code,
            String template,
            double widthMm,
            double heightMm,
            Limits limits,
            boolean statesFibres,
            Arrangement... arrangements) {
        this.code = code;
        this.template = template;
        this.widthMm = widthMm;
        this.heightMm = heightMm;
        this.limits = limits;
        this.statesFibres = statesFibres;
        this.arrangements = List.of(arrangements);
    }

    @Override
    public String code() {
        return code;
    }

    /** The version of its words and layout, kept with each label issued. */
    public String template() {
        return template;
    }

    /** Usual width, in millimetres. */
    public double widthMm() {
        return widthMm;
    }

    /** Usual height, in millimetres. */
    public double heightMm() {
        return heightMm;
    }

    /** Whether the rules of fibre content apply, so that it can be blocked. */
    public boolean statesFibres() {
        return statesFibres;
    }

    /** How its parts can be arranged, the usual way first. */
    public List<Arrangement> arrangements() {
        return arrangements;
    }

    /** Whether it carries the colours and, to be tied, a hole. */
    public boolean hung() {
        return this == HANG_TAG;
    }

    /** Whether it is tied, and shows where its hole is punched. */
    public boolean tied() {
        return this == HANG_TAG || this == CONDITION_TAG;
    }

    /** Whether it states the condition, and has room for the maker's own words. */
    public boolean statesCondition() {
        return this == CONDITION_TAG || this == CONDITION_LABEL;
    }

    void check(double width, double height) {
        if (!(width >= limits.leastWidth
                && width <= limits.mostWidth
                && height >= limits.leastHeight
                && height <= limits.mostHeight)) {
            throw Refusal.of(
                    "label.refused.size",
                    "kind",
                    this,
                    "leastWidth",
                    NumberWords.plain(limits.leastWidth),
                    "mostWidth",
                    NumberWords.plain(limits.mostWidth),
                    "leastHeight",
                    NumberWords.plain(limits.leastHeight),
                    "mostHeight",
                    NumberWords.plain(limits.mostHeight),
                    "width",
                    NumberWords.plain(width),
                    "height",
                    NumberWords.plain(height));
        }
    }

    @Override
    public Message word() {
        return Message.of("label.kind." + code);
    }

    @Override
    public String toString() {
        return inEnglish();
    }
}

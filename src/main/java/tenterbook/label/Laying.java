package tenterbook.label;

import tenterbook.archive.LabelSheet;
import tenterbook.measure.NumberWords;
import tenterbook.words.Refusal;

/**
 * How labels are laid on the paper and what is drawn beside them.
 *
 * @param own the kept sheet; null unless the sheet is {@link SheetSize#OWN}
 * @param rollMm width of a roll, 20 to 120
 * @param from the place of the sheet that is filled first, from 1, so that a half-used sheet can go on
 * @param copies of each label, 1 to 200
 * @param cutMarks whether corners are marked for cutting, where the sheet is not cut already
 * @param holeMark whether a hang tag shows where its hole is punched
 * @param bleedMm how far colour that touches the edge runs over it, 0 to 5; 0 keeps all colour inside the edge
 */
public record Laying(
        LabelSheet own, double rollMm, int from, int copies, boolean cutMarks, boolean holeMark, double bleedMm) {
    public static final int MOST_COPIES = 200;

    /** Once, from the first place, with marks and without bleed. */
    public static final Laying USUAL = new Laying(null, 62, 1, 1, true, true, 0);

    public Laying {
        if (!(rollMm >= 20 && rollMm <= 120)) {
            throw Refusal.of("label.refused.roll", "found", NumberWords.plain(rollMm));
        }
        if (from < 1 || from > 2400) {
            throw Refusal.of("label.refused.from", "found", from);
        }
        if (copies < 1 || copies > MOST_COPIES) {
            throw Refusal.of("label.refused.copies", "most", MOST_COPIES, "found", copies);
        }
        if (!(bleedMm >= 0 && bleedMm <= 5)) {
            throw Refusal.of("label.refused.bleed", "found", NumberWords.plain(bleedMm));
        }
    }

    public Laying on(LabelSheet sheet) {
        return new Laying(sheet, rollMm, from, copies, cutMarks, holeMark, bleedMm);
    }

    public Laying onRollOf(double width) {
        return new Laying(own, width, from, copies, cutMarks, holeMark, bleedMm);
    }

    public Laying startingAt(int place) {
        return new Laying(own, rollMm, place, copies, cutMarks, holeMark, bleedMm);
    }

    public Laying times(int number) {
        return new Laying(own, rollMm, from, number, cutMarks, holeMark, bleedMm);
    }

    public Laying marked(boolean cut, boolean hole) {
        return new Laying(own, rollMm, from, copies, cut, hole, bleedMm);
    }

    public Laying bleeding(double mm) {
        return new Laying(own, rollMm, from, copies, cutMarks, holeMark, mm);
    }
}

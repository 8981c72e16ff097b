package tenterbook.measure;

import tenterbook.words.Message;
import tenterbook.words.Worded;

/** The units of lengths that are typed without one, as a studio chooses them. Small things, as a warp or a stain, are in millimetres in each. */
public enum LengthUnits implements Worded {
    /** Centimetres for cloth and pieces, millimetres for boards: what holds where nothing is chosen. */
    CM_AND_MM("cm-and-mm", Unit.CENTIMETRE, Unit.MILLIMETRE),
    CENTIMETRES("cm", Unit.CENTIMETRE, Unit.CENTIMETRE),
    INCHES("in", Unit.INCH, Unit.INCH);

    private final String code;
    private final Unit cloth;
    private final Unit boards;

    LengthUnits(String code, Unit cloth, Unit boards) {
        this.code = code;
        this.cloth = cloth;
        this.boards = boards;
    }

    /** What a length belongs to. */
    public enum Of {
        /** Cloth, cuts and finished pieces. */
        CLOTH,
        /** Boards and the places of their holes. */
        BOARDS
    }

    public Unit of(Of what) {
        return what == Of.CLOTH ? cloth : boards;
    }

    /** As in records. */
    public String code() {
        return code;
    }

    @Override
    public Message word() {
        return Message.of("measure.lengths." + code);
    }

    @Override
    public String toString() {
        return code;
    }
}

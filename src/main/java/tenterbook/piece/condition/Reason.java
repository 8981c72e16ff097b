package tenterbook.piece.condition;

/** Why a piece was examined. */
public enum Reason {
    BEFORE_LOAN("before a loan"),
    DEPARTURE("on departure"),
    ARRIVAL("on arrival"),
    RETURN("on return"),
    SALE("before a sale"),
    AFTER_WASH("after washing"),
    ROUTINE("routine"),
    OTHER("other");

    private final String word;

    Reason(String word) {
        this.word = word;
    }

    @Override
    public String toString() {
        return word;
    }
}

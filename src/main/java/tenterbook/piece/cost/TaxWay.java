package tenterbook.piece.cost;

import tenterbook.words.Message;
import tenterbook.words.Worded;

/** How a price and the tax of a sale go together. */
public enum TaxWay implements Worded {
    /** The price has the tax in it. */
    INCLUDED("included"),
    /** The tax came on top of the price. */
    ADDED("added"),
    /** No tax was charged. */
    NONE("none");

    private final String code;

    TaxWay(String code) {
        this.code = code;
    }

    /** As in an address and in records. */
    public String code() {
        return code;
    }

    @Override
    public Message word() {
        return Message.of("cost.tax-way." + code);
    }

    @Override
    public String toString() {
        return inEnglish();
    }
}

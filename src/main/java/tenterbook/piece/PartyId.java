package tenterbook.piece;

import tenterbook.measure.Identifier;
import tenterbook.words.Message;

/** The name of a party, as in {@code sala-vermia}; once given it is never given again. */
public record PartyId(String value) implements Identifier {
    public PartyId {
        value = Identifier.checked(Message.of("piece.kind.party"), value);
    }

    @Override
    public String toString() {
        return value;
    }
}

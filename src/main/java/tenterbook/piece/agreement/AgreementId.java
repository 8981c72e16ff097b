package tenterbook.piece.agreement;

import tenterbook.measure.Identifier;
import tenterbook.words.Message;

/** The name of an agreement, as in {@code A24-001}; once given it is never given again. */
public record AgreementId(String value) implements Identifier {
    public AgreementId {
        value = Identifier.checked(Message.of("agreement.kind"), value);
    }

    @Override
    public String toString() {
        return value;
    }
}

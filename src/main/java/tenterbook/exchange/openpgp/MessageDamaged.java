package tenterbook.exchange.openpgp;

import java.io.IOException;
import org.jspecify.annotations.Nullable;

/** An encrypted message is not as it was written, or was not written for this key. */
public final class MessageDamaged extends IOException {
    private static final long serialVersionUID = 1L;

    public MessageDamaged(@Nullable Throwable cause) {
        super(cause);
    }
}

package tenterbook.network;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import tenterbook.words.Message;
import tenterbook.words.Worded;

/** What a paired device may do; each includes those before it. */
public enum Rights implements Worded {
    LOOK,
    RECORD,
    EVERYTHING;

    public static Optional<Rights> of(String code) {
        return Stream.of(values()).filter(each -> each.toString().equals(code)).findFirst();
    }

    @Override
    public Message word() {
        return Message.of("device.rights." + this);
    }

    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}

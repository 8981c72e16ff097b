package tenterbook.web.form;

import tenterbook.words.Explained;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** A form with more fields than {@link FormEncoding#MOST_FIELDS}. */
public final class TooManyFields extends RuntimeException implements Explained {
    private static final long serialVersionUID = 1L;

    public TooManyFields() {
        super("More than " + FormEncoding.MOST_FIELDS + " fields");
    }

    @Override
    public Written explanation() {
        return Message.of("failure.too-many-fields", "most", FormEncoding.MOST_FIELDS);
    }
}

package tenterbook.web.form;

import tenterbook.ledger.Kind;

/** How records of one kind stand in a form. */
public interface RecordForm<T> {
    Kind<T> kind();

    /** The record in text. */
    Form filled(T record);

    /**
     * The record a form describes; null where something could not be understood, which is then noted in the form.
     *
     * @param form what was typed
     * @param old the record as it was, for what the form does not show; null for a new one
     */
    T read(Form form, T old);
}

/**
 * What every kind of record holds, one file a record: each field's stored name, kind of value, whether it is required, and whether
 * it tells of a person or of money. Stored names and codes never change; a new field gets a new name. Message keys of a field's
 * label and help are the record's name and the field's, as in {@code piece.finished}.
 */
package tenterbook.archive.record;

/**
 * How a field of a record is described: its stored name, what kind of value it holds, how that value is written in text and in
 * JSON. The descriptions themselves stand in {@code tenterbook.archive.record}, one file a record; forms, API, OpenAPI and the
 * comparison of versions follow from them. Start at {@link tenterbook.archive.field.Part}.
 */
package tenterbook.archive.field;

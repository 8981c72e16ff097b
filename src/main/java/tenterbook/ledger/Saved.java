package tenterbook.ledger;

import java.time.Instant;

/**
 * A record as it stands in one revision.
 *
 * @param version of the record, from 1; which an edit states as its base
 * @param withdrawn whether the record has been taken out of use
 */
public record Saved<T>(T record, int version, long sequence, Instant writtenAt, String author, boolean withdrawn) {}

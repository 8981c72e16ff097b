package tenterbook.ledger.file;

import java.util.Locale;
import tenterbook.words.Message;

/** What a finding means for the person who keeps the archive: how grave it is, what is safe all the same, and what to do. */
public enum Consequence {
    /** Revisions, references or the file of the ledger are not as they were written. */
    RECORDS(Severity.DAMAGE),
    /** The ledger is older than what was written here, or is another. */
    BEHIND(Severity.DAMAGE),
    /** A photograph or a paper that the ledger names is missing or changed. */
    FILES(Severity.DAMAGE),
    /** The computer's clock is behind the newest revision, so it may show a wrong day. */
    CLOCK(Severity.WARNING),
    /** What is derived from the ledger differs from it; it can be made anew. */
    DERIVED(Severity.WARNING),
    /** A file that no record names. */
    UNNAMED(Severity.NOTE);

    /** Gravest first. */
    public enum Severity {
        /** Something that was recorded is wrong or lost here. */
        DAMAGE,
        /** Nothing recorded is wrong, but something works worse until it is mended. */
        WARNING,
        /** Nothing is wrong with what was recorded. */
        NOTE
    }

    private final Severity severity;

    Consequence(Severity severity) {
        this.severity = severity;
    }

    public Severity severity() {
        return severity;
    }

    /** What is safe, and what to do, in a sentence or two. */
    public Message advice() {
        return Message.of("ledger.consequence." + name().toLowerCase(Locale.ROOT));
    }
}

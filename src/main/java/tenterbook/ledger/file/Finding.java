package tenterbook.ledger.file;

import tenterbook.words.Conventions;
import tenterbook.words.Joined;
import tenterbook.words.Written;

/**
 * One thing that a check found wrong.
 *
 * @param place the revision, record, file or index entry
 * @param problem expected and found, in a sentence
 */
public record Finding(Written place, Written problem) implements Written {
    public Finding(String where, Written problem) {
        this(Joined.with("", where), problem);
    }

    public Finding(String where, String what) {
        this(where, Joined.with("", what));
    }

    public String where() {
        return place.inEnglish();
    }

    public String what() {
        return problem.inEnglish();
    }

    @Override
    public String in(Conventions conventions) {
        return place.in(conventions) + ": " + problem.in(conventions);
    }

    @Override
    public String toString() {
        return inEnglish();
    }
}

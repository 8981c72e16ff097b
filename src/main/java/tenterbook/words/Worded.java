package tenterbook.words;

/** An enumeration whose constants have a name in every language. {@code toString()} stays the code kept in records. */
public interface Worded extends Written {
    Message word();

    @Override
    default String in(Conventions conventions) {
        return word().in(conventions);
    }
}

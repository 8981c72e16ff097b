package tenterbook.words;

/** What can be written for a person. As an argument of a {@link Message} it is written as the message is. */
@FunctionalInterface
public interface Written {
    String in(Conventions conventions);

    default String inEnglish() {
        return in(Conventions.english());
    }
}

package tenterbook.piece;

/**
 * A word that a label needs in another language, as the maker entered it. The program translates nothing: what is printed from
 * this rests on whoever entered it, and the paper's record says who that was.
 *
 * @param term what it stands for, in English, as in 'silk' or 'other fibre'
 * @param language an RFC 5646 tag, as in 'fr-CA' or 'ja'
 * @param name the word as printed
 * @param enteredBy who answers for it and where it was found, as in 'Inês Valderim, from the Official Journal'
 */
public record LocalName(String term, String language, String name, String enteredBy) {
    public LocalName {
        term = term == null ? "" : term.strip();
        language = language == null ? "" : language.strip();
        name = name == null ? "" : name.strip();
        enteredBy = enteredBy == null ? "" : enteredBy.strip();
        if (term.isEmpty() || name.isEmpty() || enteredBy.isEmpty()) {
            throw new IllegalArgumentException(
                    "A name in another language needs the English term, the name, and who entered it; found “%s”, “%s”, “%s”."
                            .formatted(term, name, enteredBy));
        }
        if (!language.matches("[A-Za-z]{2,3}(-[A-Za-z0-9]{2,8})*")) {
            throw new IllegalArgumentException(
                    "A language is a tag such as fr-CA or ja; found “%s”.".formatted(language));
        }
    }
}

package tenterbook.piece;

import tenterbook.words.Refusal;

/**
 * A word that a label needs in another language, as the maker entered it. The program translates nothing; the record of the
 * paper names who entered the word.
 *
 * @param term what it stands for, in English, as in 'silk' or 'other fibre'
 * @param language an RFC 5646 tag, as in 'fr-CA' or 'ja'
 * @param name the word as printed
 * @param enteredBy who entered it and where it was found, as in 'Inês Valderim, from the Official Journal'
 */
public record LocalName(String term, String language, String name, String enteredBy) {
    public LocalName {
        term = term == null ? "" : term.strip();
        language = language == null ? "" : language.strip();
        name = name == null ? "" : name.strip();
        enteredBy = enteredBy == null ? "" : enteredBy.strip();
        if (term.isEmpty() || name.isEmpty() || enteredBy.isEmpty()) {
            throw Refusal.of("piece.local-name-incomplete", "term", term, "name", name, "enteredBy", enteredBy);
        }
        if (!language.matches("[A-Za-z]{2,3}(-[A-Za-z0-9]{2,8})*")) {
            throw Refusal.of("piece.local-name-language", "found", language);
        }
    }
}

package tenterbook.words;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** A language in which pages, refusals and documents are written. What a person typed stays as it was typed. */
public enum Language {
    ENGLISH("en", Locale.UK, '.', "English"),
    PORTUGUESE("pt", Locale.forLanguageTag("pt-PT"), ',', "Português");

    private final String code;
    private final Locale locale;
    private final char decimalMark;
    private final String ownName;

    Language(String code, Locale locale, char decimalMark, String ownName) {
        this.code = code;
        this.locale = locale;
        this.decimalMark = decimalMark;
        this.ownName = ownName;
    }

    /** As in a cookie, in the attribute {@code lang} and behind the name of a bundle. */
    public String code() {
        return code;
    }

    /** What its speakers call it. */
    public String ownName() {
        return ownName;
    }

    /** As in the attribute of a PDF (BCP 47): {@code pt-PT}. */
    public String tag() {
        return locale.toLanguageTag();
    }

    Locale locale() {
        return locale;
    }

    char decimalMark() {
        return decimalMark;
    }

    public static Optional<Language> of(String code) {
        return Arrays.stream(values()).filter(each -> each.code.equals(code)).findFirst();
    }

    /**
     * The first of these languages that a browser asks for (RFC 9110, section 12.5.4, with the look-up of RFC 4647, section 3.4: 'pt-BR' is
     * answered in Portuguese); English where it asks for none of them, or not intelligibly.
     *
     * @param acceptLanguage the header's value, as in {@code pt-PT,pt;q=0.9,en;q=0.5}; may be empty
     */
    public static Language preferred(String acceptLanguage) {
        if (acceptLanguage.isBlank()) {
            return ENGLISH;
        }
        try {
            List<String> codes = Arrays.stream(values()).map(Language::code).toList();
            String found = Locale.lookupTag(Locale.LanguageRange.parse(acceptLanguage), codes);
            return found == null ? ENGLISH : of(found).orElse(ENGLISH);
        } catch (IllegalArgumentException e) {
            return ENGLISH;
        }
    }
}

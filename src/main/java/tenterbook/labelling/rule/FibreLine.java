package tenterbook.labelling.rule;

/**
 * One line of required words, exactly as printed.
 *
 * @param kind what the line states
 * @param rule the rule it follows
 * @param note further basis, such as who entered a name; may be empty
 */
public record FibreLine(Kind kind, String text, Rule rule, String note) {
    /** What a line states. */
    public enum Kind implements CodedChoice {
        CONTENT("content"),
        ANIMAL_PARTS("animal-parts"),
        ORIGIN("origin"),
        /** The maker's name. */
        MAKER("maker"),
        /** Number, address and the like of the maker or the responsible person. */
        PARTICULARS("particulars");

        private final String code;

        Kind(String code) {
            this.code = code;
        }

        @Override
        public String code() {
            return code;
        }
    }

    FibreLine(Kind kind, String text, Rule rule) {
        this(kind, text, rule, "");
    }

    /** The rule's citation, and the note where there is one. */
    public String basis() {
        return note.isEmpty() ? rule.citation() : rule.citation() + "; " + note;
    }
}

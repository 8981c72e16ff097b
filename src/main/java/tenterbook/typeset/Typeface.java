package tenterbook.typeset;

/** The typefaces of all paper, each with the figures it sets. */
public enum Typeface {
    TITLE("Alegreya_400Regular", ""),
    TITLE_ITALIC("Alegreya_400Regular_Italic", ""),
    /** Lining figures, as in required words such as '100% Silk'. */
    TEXT("AlegreyaSans_400Regular", "lnum"),
    TEXT_MEDIUM("AlegreyaSans_500Medium", "lnum"),
    TEXT_BOLD("AlegreyaSans_700Bold", "lnum"),
    /** True small capitals for lower case letters. */
    SMALL_CAPS("AlegreyaSans_500Medium", "smcp"),
    /** For scripts that the others lack. */
    FALLBACK("NotoSansJP_400Regular", "");

    private final String file;
    private final String feature;

    Typeface(String file, String feature) {
        this.file = file;
        this.feature = feature;
    }

    String resource() {
        return "/fonts/" + file + ".ttf";
    }

    /** The OpenType feature always on in this face; empty where none. */
    String feature() {
        return feature;
    }
}

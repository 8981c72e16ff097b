package tenterbook.label.layout;

import java.util.List;

/** Text has no room even at its smallest size. Nothing is clipped; the words without room are named. */
public final class DoesNotFit extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;
    private final transient List<String> words;

    public DoesNotFit(String what, double widthMm, double heightMm, List<String> words) {
        super(
                "%s has no room in %.1f by %.1f mm, even at the smallest size. Left over: “%s”. Shorten the text or take a larger label."
                        .formatted(what, widthMm, heightMm, String.join(" / ", words)));
        this.words = List.copyOf(words);
    }

    /** The lines or words that found no room. */
    public List<String> words() {
        return words;
    }
}

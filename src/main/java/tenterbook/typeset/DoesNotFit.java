package tenterbook.typeset;

import java.util.List;
import tenterbook.measure.NumberWords;
import tenterbook.words.Message;
import tenterbook.words.Refusal;
import tenterbook.words.Written;

/** Text has no room even at its smallest size. Nothing is clipped; the words without room are named. */
public final class DoesNotFit extends Refusal {
    private static final long serialVersionUID = 1L;
    private final transient List<String> words;

    public DoesNotFit(Written what, double widthMm, double heightMm, List<String> words) {
        super(Message.of(
                "layout.does-not-fit",
                "what",
                what,
                "width",
                NumberWords.decimals(widthMm, 1),
                "height",
                NumberWords.decimals(heightMm, 1),
                "left",
                String.join(" / ", words)));
        this.words = List.copyOf(words);
    }

    /** The lines or words that found no room. */
    public List<String> words() {
        return words;
    }
}

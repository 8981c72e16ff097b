package tenterbook.search.query;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Deque;
import org.apache.lucene.analysis.TokenFilter;
import org.apache.lucene.analysis.TokenStream;
import org.apache.lucene.analysis.tokenattributes.CharTermAttribute;
import org.apache.lucene.analysis.tokenattributes.PositionIncrementAttribute;

/** Adds the stems of each word at its place. */
final class StemFilter extends TokenFilter {
    private final CharTermAttribute term = addAttribute(CharTermAttribute.class);
    private final PositionIncrementAttribute step = addAttribute(PositionIncrementAttribute.class);
    private final Deque<String> waiting = new ArrayDeque<>();
    private State word;

    StemFilter(TokenStream words) {
        super(words);
    }

    @Override
    public boolean incrementToken() throws IOException {
        if (!waiting.isEmpty()) {
            restoreState(word);
            term.setEmpty().append(waiting.remove());
            step.setPositionIncrement(0);
            return true;
        }
        if (!input.incrementToken()) {
            return false;
        }
        waiting.addAll(Stems.of(term.toString()));
        word = captureState();
        return true;
    }

    @Override
    public void reset() throws IOException {
        super.reset();
        waiting.clear();
    }
}

package tenterbook.search.query;

import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.lucene.analysis.Analyzer;
import org.apache.lucene.analysis.TokenStream;
import org.apache.lucene.analysis.Tokenizer;
import org.apache.lucene.analysis.cjk.CJKBigramFilter;
import org.apache.lucene.analysis.icu.ICUFoldingFilter;
import org.apache.lucene.analysis.icu.ICUNormalizer2CharFilter;
import org.apache.lucene.analysis.icu.segmentation.DefaultICUTokenizerConfig;
import org.apache.lucene.analysis.icu.segmentation.ICUTokenizer;
import org.apache.lucene.analysis.tokenattributes.CharTermAttribute;
import org.apache.lucene.analysis.tokenattributes.OffsetAttribute;

/**
 * How text becomes words: NFKC with case folding first (so that full-width letters are letters), words by UAX #29, folding
 * of accents and macrons, and Chinese and Japanese runs as overlapping pairs, so that 板締め is found in 板締め絞り without
 * a dictionary that might cut the two differently.
 *
 * <p>Change anything here and {@code PieceDocument.FORMAT} must change too.
 */
public final class TextAnalysis extends Analyzer {
    /** For the index: single characters of a run too, so that one character finds it, and the stems of every word. */
    public static final TextAnalysis FOR_INDEX = new TextAnalysis(true);
    /** For what is typed: pairs, and a single character only where it stands alone. */
    public static final TextAnalysis FOR_QUERY = new TextAnalysis(false);

    private final boolean indexing;

    private TextAnalysis(boolean indexing) {
        this.indexing = indexing;
    }

    @Override
    protected TokenStreamComponents createComponents(String field) {
        Tokenizer words = new ICUTokenizer(new DefaultICUTokenizerConfig(false, true));
        TokenStream folded = new ICUFoldingFilter(words);
        int scripts = CJKBigramFilter.HAN | CJKBigramFilter.HIRAGANA | CJKBigramFilter.KATAKANA;
        TokenStream pairs = new CJKBigramFilter(folded, scripts, indexing);
        return new TokenStreamComponents(words, indexing ? new StemFilter(pairs) : pairs);
    }

    @Override
    protected Reader initReader(String field, Reader reader) {
        return new ICUNormalizer2CharFilter(reader);
    }

    /** Between two values of one field, so that no phrase runs from one into the next. */
    @Override
    public int getPositionIncrementGap(String field) {
        return 100;
    }

    /** A word and where it stood. */
    public record Token(String word, int start, int end) {}

    public List<Token> tokens(String text) {
        List<Token> found = new ArrayList<>();
        try (TokenStream stream = tokenStream("", text)) {
            CharTermAttribute word = stream.addAttribute(CharTermAttribute.class);
            OffsetAttribute offset = stream.addAttribute(OffsetAttribute.class);
            stream.reset();
            while (stream.incrementToken()) {
                found.add(new Token(word.toString(), offset.startOffset(), offset.endOffset()));
            }
            stream.end();
        } catch (IOException e) {
            throw new UncheckedIOException("A text in memory could not be read", e);
        }
        return found;
    }
}

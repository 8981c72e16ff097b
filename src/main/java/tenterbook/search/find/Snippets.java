package tenterbook.search.find;

import java.util.ArrayList;
import java.util.List;
import org.apache.lucene.search.spell.LevenshteinDistance;
import tenterbook.search.index.PieceTexts;
import tenterbook.search.query.Letters;
import tenterbook.search.query.Stems;
import tenterbook.search.query.TextAnalysis;
import tenterbook.search.query.TextAnalysis.Token;
import tenterbook.search.query.UserText;

/** Passages of a record that have the words typed. */
final class Snippets {
    private static final int MOST = 2;
    private static final int AROUND = 60;
    /** Forms of a word begin with the same letters; these many are looked for before a passage is taken apart. */
    private static final int SHORTEST_STEM = 3;

    private final List<UserText.Term> parts;
    private final boolean respelt;

    Snippets(UserText text, boolean respelt) {
        this.parts = text.parts().stream().filter(part -> !part.without()).toList();
        this.respelt = respelt;
    }

    /** Up to two passages, as in 'lesson: … seal the beak …'. */
    List<String> of(List<PieceTexts.Passage> passages) {
        List<String> found = new ArrayList<>();
        if (parts.isEmpty()) {
            return found;
        }
        for (PieceTexts.Passage passage : passages) {
            if (found.size() == MOST) {
                break;
            }
            if (!mayHold(passage.text())) {
                continue;
            }
            List<Token> tokens = TextAnalysis.FOR_QUERY.tokens(passage.text());
            for (int at = 0; at < tokens.size(); at++) {
                if (fits(tokens, at)) {
                    found.add(passage.label() + ": " + around(passage.text(), tokens.get(at)));
                    break;
                }
            }
        }
        return found;
    }

    /** Whether a passage can match at all: ASCII letters are only lower-cased, so a word must occur in it as it is. */
    private boolean mayHold(String text) {
        if (respelt || !text.chars().allMatch(sign -> sign < 128)) {
            return true;
        }
        String plain = text.toLowerCase(java.util.Locale.ROOT);
        return parts.stream()
                .flatMap(part -> part.words().stream())
                .anyMatch(word -> plain.contains(word.substring(0, Math.min(word.length(), SHORTEST_STEM))));
    }

    /** Whether a part of what was typed begins at a token: the words of a phrase or of a number one after another. */
    private boolean fits(List<Token> tokens, int at) {
        for (UserText.Term part : parts) {
            boolean row = part.words().size() > 1 && (!respelt || part.phrase());
            if (row ? inRow(part, tokens, at) : anyOf(part, tokens.get(at).word())) {
                return true;
            }
        }
        return false;
    }

    private static boolean inRow(UserText.Term part, List<Token> tokens, int at) {
        int words = part.words().size();
        if (at + words > tokens.size()) {
            return false;
        }
        for (int i = 0; i < words; i++) {
            String word = tokens.get(at + i).word();
            String wanted = part.words().get(i);
            boolean open = part.unfinished() && i == words - 1;
            if (!(open ? word.startsWith(wanted) : word.equals(wanted))) {
                return false;
            }
        }
        return true;
    }

    private boolean anyOf(UserText.Term part, String word) {
        for (String wanted : part.words()) {
            int edits = respelt ? Letters.edits(wanted) : 0;
            if (word.equals(wanted)
                    || !part.phrase() && Stems.alike(wanted, word)
                    || part.unfinished() && word.startsWith(wanted)
                    || edits > 0 && near(wanted, word, edits)) {
                return true;
            }
        }
        return false;
    }

    private static boolean near(String one, String other, int edits) {
        int longest = Math.max(one.length(), other.length());
        return Math.abs(one.length() - other.length()) <= edits
                && Math.round((1 - new LevenshteinDistance().getDistance(one, other)) * longest) <= edits;
    }

    private static String around(String text, Token token) {
        int from = token.start() <= AROUND ? 0 : text.indexOf(' ', token.start() - AROUND) + 1;
        from = from > token.start() ? token.start() : from;
        int end = Math.min(text.length(), Math.max(token.end(), token.start() + 2 * AROUND));
        int space = end < text.length() ? text.lastIndexOf(' ', end) : end;
        end = space > token.end() ? space : end;
        String cut = text.substring(from, end).replaceAll("\\s+", " ").strip();
        return (from > 0 ? "… " : "") + cut + (end < text.length() ? " …" : "");
    }
}

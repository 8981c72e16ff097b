package tenterbook.search.question;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import tenterbook.words.Message;

/** Other ways in which one question may have been meant, each once. */
final class Offers {
    /** More than these are no help. */
    private static final int MOST = 4;

    private static final int MOST_DIPS = 60;

    private final WordTable table = WordTable.SHIPPED;
    private final String typed;
    private final List<Token> tokens;
    private final Function<String, QuestionText> reader;
    private final Map<String, Offer> found = new LinkedHashMap<>();

    /** @param reader reads another text as a question, for its labels */
    Offers(String typed, List<Token> tokens, Function<String, QuestionText> reader) {
        this.typed = typed;
        this.tokens = tokens;
        this.reader = reader;
    }

    /** @param instead what would be typed in place of some characters */
    void add(int start, int end, String instead) {
        add(start, end, instead, false);
    }

    /** @param related whether it is the same dye by another name */
    void add(int start, int end, String instead, boolean related) {
        Message label = null;
        for (Message each : reader.apply(instead).labels()) {
            label = label == null ? each : Message.of("question.both", "one", label, "other", each);
        }
        if (label != null) {
            String question = typed.substring(0, start) + instead + typed.substring(end);
            found.putIfAbsent(
                    question, new Offer(related ? Message.of("question.relative", "what", label) : label, question));
        }
    }

    /** @param plain places of tokens that are no facts */
    List<Offer> all(Parts parts, List<Integer> plain) {
        for (int from = 0; from < tokens.size(); from++) {
            WordTable.Found doubt = table.longest("doubt", tokens, from);
            int start = tokens.get(from).start();
            if (doubt != null) {
                int end = tokens.get(doubt.end() - 1).end();
                boolean words = true;
                for (int at = from; at < doubt.end(); at++) {
                    words &= plain.contains(at);
                }
                if (words || parts.has(start, end)) {
                    for (String instead : doubt.value().split(";")) {
                        add(start, end, instead);
                    }
                }
            }
            quoted(tokens.get(from));
        }
        alone();
        List<Offer> all = new ArrayList<>(parts.offers());
        all.addAll(found.values());
        return all.stream().limit(MOST).toList();
    }

    /** A quoted fact without its quotes. */
    private void quoted(Token token) {
        if (token.kind() == Token.Kind.QUOTED && reader.apply(token.text()).facts()) {
            add(token.start(), token.end(), token.text().strip());
        }
    }

    /** A number alone. */
    private void alone() {
        if (tokens.size() != 1
                || !tokens.get(0).text().matches("\\d{1,5}")
                || Times.year(Double.parseDouble(tokens.get(0).text()))) {
            return;
        }
        String number = tokens.get(0).text();
        List<String> readings = new ArrayList<>(List.of(number + " cm", "price " + number));
        if (Integer.parseInt(number) <= MOST_DIPS) {
            readings.add(0, number + " dips");
        }
        readings.forEach(each -> add(tokens.get(0).start(), tokens.get(0).end(), each));
    }
}

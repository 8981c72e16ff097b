package tenterbook.search.question;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tenterbook.search.query.Constraint;
import tenterbook.search.query.Order;
import tenterbook.search.query.UserText;
import tenterbook.words.Message;

/** One question, read from left to right. */
final class QuestionText {
    private final WordTable table = WordTable.SHIPPED;
    private final List<Match.Matcher> matchers;
    private final OwnWords own;
    private final String typed;
    private final List<Token> tokens;
    private final Parts parts;
    private final Offers offers;
    private final WordsLeft words;
    private final List<String> weighing = new ArrayList<>();
    /** Places of tokens that are words to look for, or none at all. */
    private final List<Integer> plain = new ArrayList<>();
    /** How denials that stand together and dashes were read. */
    private final List<Message> denying = new ArrayList<>();

    private @Nullable Order order;

    QuestionText(String typed, List<Match.Matcher> matchers, OwnWords own) {
        this.typed = typed;
        this.own = own;
        this.matchers = matchers;
        this.tokens = table.tokens(typed);
        this.parts = new Parts(typed);
        this.words = new WordsLeft(typed, tokens, () -> !parts.none());
        this.offers = new Offers(typed, tokens, other -> new QuestionText(other, matchers, own));
    }

    Reading read() {
        parts();
        plain.forEach(words::add);
        List<Understood> facts = parts.understood();
        return new Reading(
                facts,
                words.text(),
                UserText.read(String.join(" ", weighing) + " "),
                order,
                offers.all(parts, plain),
                remarks(facts));
    }

    private void parts() {
        for (int at = 0; at < tokens.size(); ) {
            int next = ownFirst(at) ? ownWord(at) : ordered(at);
            next = next == at ? fact(at) : next;
            next = next == at ? deniedWord(at) : next;
            if (next == at) {
                looseDash(at);
                plain.add(at++);
            } else {
                at = next;
            }
        }
    }

    /** Says of a dash with blanks around it that it denies nothing. */
    private void looseDash(int at) {
        if (tokens.get(at).is("-")
                && at + 1 < tokens.size()
                && !minus(at)
                && !tokens.get(at).glued()) {
            Token next = tokens.get(at + 1);
            if (next.kind() != Token.Kind.SIGN) {
                denying.add(Message.of("question.loose-dash", "word", typed.substring(next.start(), next.end())));
            }
        }
    }

    /** What the question asks, without what else it may ask: labels of its facts, else its words. */
    List<Message> labels() {
        parts();
        List<Message> labels = new ArrayList<>();
        parts.understood().forEach(each -> labels.add(each.label()));
        plain.forEach(words::add);
        if (!words.wanted().isEmpty()) {
            labels.add(Message.of("question.words", "words", words.wanted()));
        }
        return labels;
    }

    /** Whether all of it is facts. */
    boolean facts() {
        parts();
        return !parts.none() && plain.stream().allMatch(words::dropped);
    }

    /** Words that are no facts. */
    List<Token> wordsLeft() {
        parts();
        return plain.stream()
                .filter(at -> !words.dropped(at))
                .map(tokens::get)
                .filter(Token::word)
                .toList();
    }

    private List<Message> remarks(List<Understood> facts) {
        String signs = typed.codePoints()
                .filter(sign -> Character.getType(sign) == Character.OTHER_SYMBOL && sign != '°')
                .distinct()
                .mapToObj(Character::toString)
                .collect(Collectors.joining(" "));
        if (facts.isEmpty() && words.none() && !typed.isBlank()) {
            return List.of(Message.of("question.nothing-to-look-for", "typed", typed.strip()));
        }
        List<Message> remarks = new ArrayList<>(denying);
        remarks.addAll(parts.remarks());
        words.beyond()
                .ifPresent(word ->
                        remarks.add(Message.of("question.too-many", "most", UserText.MOST_PARTS, "word", word)));
        if (!signs.isEmpty()) {
            remarks.add(Message.of("question.passed-over", "signs", signs));
        }
        return remarks;
    }

    /** Reads 'largest', 'cheapest' and the like; the first token after it, or where it was where there is none. */
    private int ordered(int at) {
        WordTable.Found found = order != null ? null : table.longest("order", tokens, at);
        Match fact = found == null ? null : match(at);
        if (found == null || fact != null && fact.end() > found.end()) {
            return at;
        }
        order = Order.valueOf(found.value());
        parts.order(
                Message.of("question.order", "order", Message.of("pieces.order." + order.word())),
                start(at),
                end(found.end()));
        return found.end();
    }

    private int start(int token) {
        return tokens.get(token).start();
    }

    private int end(int afterToken) {
        return tokens.get(afterToken - 1).end();
    }

    /** Reads a fact; the first token after it, or where it was where there is none. */
    private int fact(int at) {
        Match whole = match(at);
        WordTable.Found deny = table.longest("deny", tokens, at);
        boolean dash = minus(at);
        if (whole != null && !whole.deniedOnly() && !dash && (deny == null || whole.end() > deny.end())) {
            return longerDenied(deny, whole) ? denied(at, deny.end()) : added(whole, at);
        }
        if (deny == null && !dash) {
            return had(at);
        }
        Denials denials = denials(at, deny);
        int from = denials.from;
        OwnWords.Meaning mine = !denials.lack && from < tokens.size() && ownFirst(from) ? own(from) : null;
        if (mine != null && denials.cancelled()) {
            mine.addTo(parts, words, start(at), end(mine.end()));
            return remarked(denials, at, mine.end());
        }
        if (mine != null && mine.denyIn(parts, words, start(at), end(mine.end()))) {
            return remarked(denials, at, mine.end());
        }
        Match denied = from < tokens.size() ? match(from) : null;
        if (denied == null || denials.lack && !denied.deniedOnly()) {
            return whole == null || whole.deniedOnly() || dash ? at : added(whole, at);
        }
        if (!denials.cancelled()) {
            return remarked(denials, at, denied(at, from));
        }
        if (denied.deniedOnly() && denied.constraint() instanceof Constraint.OfFacet lacking) {
            parts.fact(lacking.negated(), Names.having(lacking), start(at), end(denied.end()));
        } else {
            add(denied, at, from, false);
        }
        return remarked(denials, at, denied.end());
    }

    /**
     * Denials that stand together, as in 'never without'.
     *
     * @param last the first token of the last of them
     * @param from the first token after them
     * @param turned how many turn round the one before
     * @param repeated how many say again what the one before says, as in 'no, not silk'
     * @param lack whether the last one says that something is lacking
     */
    private record Denials(int last, int from, int turned, int repeated, boolean lack) {
        /** Whether nothing is denied in the end. */
        boolean cancelled() {
            return turned % 2 == 1;
        }
    }

    /** @param deny the first of them; null for a minus */
    private Denials denials(int at, WordTable.@Nullable Found deny) {
        int last = at;
        int end = deny == null || minus(at) ? at + 1 : deny.end();
        boolean lack = deny != null && deny.value().equals("lack");
        int turned = 0;
        int repeated = 0;
        for (int from = fillers(end, minus(at)); ; from = fillers(end, minus(last))) {
            WordTable.Found next = lack || from >= tokens.size() ? null : table.longest("deny", tokens, from);
            boolean dash = !lack && from < tokens.size() && minus(from);
            if (next == null && !dash || next != null && !denies(next, from)) {
                return new Denials(last, from, turned, repeated, lack);
            }
            if (typed.substring(end(end), start(from)).chars().anyMatch(sign -> ",;.:!-–—".indexOf(sign) >= 0)) {
                repeated++;
            } else if (dash || !table.has("deny-again", tokens.get(from))) {
                turned++;
            }
            last = from;
            end = dash ? from + 1 : next.end();
            lack = !dash && next.value().equals("lack");
        }
    }

    /** Whether a word behind a denial is another one, and no part of a fact. */
    private boolean denies(WordTable.Found found, int at) {
        Match fact = match(at);
        if (!found.value().equals("lack")) {
            return (fact == null || fact.end() <= found.end()) && !portugueseIn(at);
        }
        int from = fillers(found.end());
        Match lacking = from < tokens.size() ? match(from) : null;
        return lacking != null && lacking.deniedOnly();
    }

    /** Past signs that begin no fact, as the dash of 'not - silk', and, but for a minus, past words that mean nothing. */
    private int fillers(int from, boolean dash) {
        int at = from;
        while (at < tokens.size() - 1 && tokens.get(at).kind() == Token.Kind.SIGN && !minus(at) && match(at) == null) {
            at++;
        }
        return dash ? at : fillers(at);
    }

    /** Says how several denials were read, and offers the other way. */
    private int remarked(Denials denials, int at, int end) {
        if (denials.turned + denials.repeated > 0) {
            String key = denials.repeated == 0
                    ? "question.denials"
                    : denials.turned == 0 ? "question.denials-repeated" : "question.denials-mixed";
            denying.add(Message.of(key, "typed", typed.substring(start(at), end(end))));
        }
        if (denials.turned > 0) {
            int other = denials.cancelled() ? denials.last : denials.from;
            offers.add(start(at), end(end), typed.substring(start(other), end(end)));
        }
        return end;
    }

    private int denied(int at, int fact) {
        Match denied = match(fact);
        add(denied, at, fact, !denied.deniedOnly());
        return denied.end();
    }

    /** Whether more is read where 'not' is taken as a denial, as in 'not examined since march'. */
    private boolean longerDenied(WordTable.@Nullable Found deny, Match whole) {
        Match denied =
                deny == null || deny.value().equals("lack") || deny.end() >= tokens.size() ? null : match(deny.end());
        return denied != null && !denied.deniedOnly() && denied.end() > whole.end();
    }

    /** Past words that mean nothing and begin no fact, as 'dyed with' in 'not dyed with woad'. */
    private int fillers(int from) {
        int at = from;
        while (at < tokens.size() - 1
                && tokens.get(at).word()
                && (table.has("idle", tokens.get(at)) || table.has("noun", tokens.get(at)))
                && match(at) == null) {
            at++;
        }
        return at;
    }

    /** Reads 'with a price' and the like: what is recorded, as opposed to what is lacking. */
    private int had(int at) {
        WordTable.Found have = table.longest("have", tokens, at);
        if (have == null) {
            return at;
        }
        int from = have.end();
        while (from < tokens.size() && table.has("article", tokens.get(from))) {
            from++;
        }
        Match noun = from < tokens.size() ? match(from) : null;
        if (noun == null || !noun.deniedOnly() || !(noun.constraint() instanceof Constraint.OfFacet lacking)) {
            return at;
        }
        parts.fact(lacking.negated(), Names.having(lacking), start(at), end(noun.end()));
        return noun.end();
    }

    /** Reads a word that must not be found, as in 'never rinsed': it is among what was understood, so that nobody overlooks it. */
    private int deniedWord(int at) {
        WordTable.Found deny = table.longest("deny", tokens, at);
        boolean dash = minus(at);
        if (!dash && (deny == null || tokens.get(at).is("need", "needs") || portugueseIn(at))) {
            return at;
        }
        Denials denials = denials(at, deny);
        int from = denials.from;
        if (from >= tokens.size() || tokens.get(from).kind() == Token.Kind.SIGN) {
            return at;
        }
        int to = from + 1;
        while (to < tokens.size() && tokens.get(to).glued()) {
            to++;
        }
        if (denials.cancelled()) {
            for (int each = from; each < to; each++) {
                plain.add(each);
                words.keep(each);
            }
            return remarked(denials, at, to);
        }
        String word = typed.substring(start(from), end(to)).replaceAll("[\"“”„«»]", "");
        words.deny(word, to == from + 1 && tokens.get(from).word());
        parts.withoutWord(Message.of("question.without-word", "word", word), start(at), end(to));
        if (tokens.get(at).is("no")) {
            // It may have been Portuguese for 'in the'.
            offers.add(start(at), end(to), '"' + word + '"');
        }
        return remarked(denials, at, to);
    }

    /** Reads the maker's own word for something that is more than one fact, or words. */
    private int ownWord(int at) {
        OwnWords.Meaning mine = own(at);
        if (mine == null) {
            return at;
        }
        mine.addTo(parts, words, start(at), end(mine.end()));
        return mine.end();
    }

    /** The maker's own word that begins at a token; null for none. */
    private OwnWords.@Nullable Meaning own(int at) {
        WordTable.Found found = own.longest(tokens, at);
        return found == null
                ? null
                : new OwnWords.Meaning(
                        new QuestionText(found.value(), matchers, OwnWords.NONE),
                        typed.substring(start(at), end(found.end())),
                        found.end());
    }

    /** What it asks as facts. {@link #words} then has the rest. */
    List<Understood> understood() {
        parts();
        plain.forEach(words::add);
        return parts.understood();
    }

    WordsLeft words() {
        return words;
    }

    /** Whether 'no' is Portuguese and means 'in the': another word of that language stands in the question. */
    private boolean portugueseIn(int at) {
        return tokens.get(at).is("no") && tokens.stream().anyMatch(token -> table.has("portuguese", token));
    }

    private int added(Match whole, int at) {
        add(whole, at, at, false);
        return whole.end();
    }

    private boolean minus(int at) {
        Token token = tokens.get(at);
        return token.is("-")
                && !token.glued()
                && at + 1 < tokens.size()
                && tokens.get(at + 1).glued();
    }

    private @Nullable Match match(int at) {
        OwnWords.Meaning mine = ownFirst(at) ? own(at) : null;
        Match fact = mine == null ? null : mine.fact();
        return fact != null ? fact : ofTrade(at);
    }

    /** Whether a word of the maker's own begins here, and no longer one of the trade. */
    private boolean ownFirst(int at) {
        WordTable.Found mine = own.longest(tokens, at);
        Match trade = mine == null ? null : ofTrade(at);
        return mine != null && (trade == null || trade.end() < mine.end());
    }

    private @Nullable Match ofTrade(int at) {
        if (tokens.get(at).kind() == Token.Kind.QUOTED) {
            return null;
        }
        for (Match.Matcher matcher : matchers) {
            Match match = matcher.at(tokens, at);
            if (match != null) {
                return match;
            }
        }
        return null;
    }

    /**
     * @param from the first token of it, which may be a 'not'
     * @param fact the first token of the fact itself
     */
    private void add(Match match, int from, int fact, boolean not) {
        int start = start(from);
        int end = end(match.end());
        if (match.weighs() && !not) {
            weighing.add(typed.substring(start, end));
        }
        parts.fact(
                not ? match.constraint().negated() : match.constraint(),
                not ? Parts.not(match.label()) : match.label(),
                start,
                end);
        String before = not ? typed.substring(start, start(fact)) : "";
        match.others().forEach(other -> offers.add(start, end, before + other, match.related()));
    }
}

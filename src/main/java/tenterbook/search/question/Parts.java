package tenterbook.search.question;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import tenterbook.search.query.Constraint;
import tenterbook.search.query.Facet;
import tenterbook.words.Message;

/**
 * The parts of one question that were understood. Values of one facet that stand in a list are any of them with 'or', and all of them
 * with 'and'; without either, any of them where a piece is seldom meant to have two, else all.
 */
final class Parts {
    /** Of these a piece has one value only. */
    private static final Set<Facet> ONE_OF = Set.of(Facet.STATUS, Facet.CATEGORY, Facet.HOLDER);

    private static final Pattern BETWEEN = Pattern.compile(
            "(?i)[\\s,;/]*(?:\\b(?:and|or|e|ou|both|either)\\b|[&+])?\\s*(?:(?:with|in|on|at|com|em|the)\\s+)?");
    private static final Pattern OR = Pattern.compile("(?i).*\\b(?:or|ou)\\b.*");
    /** What stands before a part: something, then 'or'. */
    private static final Pattern OR_BEFORE = Pattern.compile("(?is).*[^\\s,;][\\s,;]*\\b(?:or|ou)\\b[\\s,;]*");

    private static final Pattern AND = Pattern.compile("(?i).*(?:\\b(?:and|e)\\b|[&+]).*");

    private final String typed;
    private final List<Part> parts = new ArrayList<>();
    private final List<Offer> offers = new ArrayList<>();
    private final List<Message> remarks = new ArrayList<>();

    /**
     * @param constraint null for an order and for words
     * @param words whether it can be turned into words
     * @param carried whether it is denied by the denial of the part before it
     */
    private record Part(
            @Nullable Constraint constraint, Message label, int start, int end, boolean words, boolean carried) {
        Part(@Nullable Constraint constraint, Message label, int start, int end, boolean words) {
            this(constraint, label, start, end, words, false);
        }

        /** Whether it says itself what must not be; not of what is lacking or recorded. */
        boolean denies() {
            return !carried && !lacks() && (constraint == null ? !words : constraint.not());
        }

        /** Whether it says of something that it is lacking, or that it is recorded. */
        boolean lacks() {
            return facet() != null && facet().facet().equals(Facet.LACKING);
        }

        Constraint.@Nullable OfFacet facet() {
            return constraint instanceof Constraint.OfFacet facet ? facet : null;
        }
    }

    Parts(String typed) {
        this.typed = typed;
    }

    boolean none() {
        return parts.isEmpty();
    }

    /** A fact; one that follows a denied one of the same facet with 'or' is denied too. */
    void fact(Constraint constraint, Message label, int start, int end) {
        Part part = new Part(constraint, label, start, end, true);
        Part last = parts.isEmpty() ? null : parts.get(parts.size() - 1);
        if (last != null
                && follows(last, part)
                && last.facet().not()
                && !part.facet().not()
                && !part.lacks()
                && or(last, part)) {
            part = new Part(constraint.negated(), not(label), start, end, true, true);
        }
        parts.add(part);
    }

    static Message not(Message label) {
        return Message.of("question.not", "what", label);
    }

    void order(Message label, int start, int end) {
        parts.add(new Part(null, label, start, end, true));
    }

    /** Words that are looked for in place of others. */
    void words(Message label, int start, int end) {
        parts.add(new Part(null, label, start, end, true));
    }

    void withoutWord(Message label, int start, int end) {
        parts.add(new Part(null, label, start, end, false));
    }

    /** Whether some characters are exactly one part. */
    boolean has(int start, int end) {
        return parts.stream().anyMatch(part -> part.start() == start && part.end() == end);
    }

    /** The lists asked for with 'and' as they would be with 'or'; to be asked for after {@link #understood}. */
    List<Offer> offers() {
        return List.copyOf(offers);
    }

    /** Where 'or' was read as 'and'; to be asked for after {@link #understood}. */
    List<Message> remarks() {
        return List.copyOf(remarks);
    }

    List<Understood> understood() {
        parts.sort(Comparator.comparingInt(Part::start));
        List<Part> all = new ArrayList<>();
        for (int from = 0; from < parts.size(); ) {
            int to = from + 1;
            while (to < parts.size() && follows(parts.get(to - 1), parts.get(to))) {
                to++;
            }
            list(parts.subList(from, to)).forEach(part -> add(part, all));
            from = to;
        }
        return all.stream().map(this::one).toList();
    }

    /** With 'or' before it, a fact of another kind is an alternative to the one before. */
    private void add(Part part, List<Part> all) {
        Part last = all.isEmpty() ? null : all.get(all.size() - 1);
        if (last == null || !alternative(last, part)) {
            if (orLost(last, part)) {
                remarks.add(Message.of("question.or-as-and", "typed", typed.substring(part.start(), part.end())));
            }
            all.add(part);
            return;
        }
        if (last.denies() && part.denies()) {
            offers.add(new Offer(
                    Message.of("question.both", "one", last.label(), "other", part.label()),
                    typed.substring(0, last.end()) + " " + typed.substring(part.start())));
        }
        List<Constraint> any = new ArrayList<>(
                last.constraint() instanceof Constraint.AnyOf more && !more.not()
                        ? more.any()
                        : List.of(last.constraint()));
        any.add(part.constraint());
        Message label = Message.of("question.or", "one", last.label(), "other", part.label());
        all.set(all.size() - 1, new Part(new Constraint.AnyOf(any, false), label, last.start(), part.end(), true));
    }

    /** Whether 'or' stands before a part that is no alternative, and that no denial before it denies too. */
    private boolean orLost(@Nullable Part last, Part part) {
        return !part.carried()
                && (last != null && or(last, part)
                        || (part.denies() || part.lacks())
                                && OR_BEFORE
                                        .matcher(typed.substring(0, part.start()))
                                        .matches());
    }

    /** Whether one part, other than those denied by one denial, is an alternative to another. */
    private boolean alternative(Part one, Part other) {
        return alternative(one) && alternative(other) && (!one.denies() || other.denies()) && or(one, other);
    }

    private static boolean alternative(Part part) {
        return part.constraint() != null && !part.carried() && !(part.constraint() instanceof Constraint.OfPieceNumber);
    }

    private boolean or(Part one, Part other) {
        String between = between(one, other);
        return BETWEEN.matcher(between).matches() && OR.matcher(between).matches();
    }

    /** Whether a part goes on a list that the one before it begins. */
    private boolean follows(Part one, Part other) {
        return one.facet() != null
                && other.facet() != null
                && one.facet().facet().equals(other.facet().facet())
                && BETWEEN.matcher(between(one, other)).matches();
    }

    private String between(Part one, Part other) {
        return typed.substring(one.end(), Math.max(one.end(), other.start()));
    }

    private List<Part> list(List<Part> list) {
        List<String> between = new ArrayList<>();
        for (int i = 1; i < list.size(); i++) {
            between.add(between(list.get(i - 1), list.get(i)));
        }
        boolean or = between.stream().anyMatch(text -> OR.matcher(text).matches());
        boolean and = between.stream().anyMatch(text -> AND.matcher(text).matches());
        boolean denied = list.stream()
                .anyMatch(part -> part.facet() != null && part.facet().not());
        if (list.size() == 1 || denied) {
            return or && !and ? orDenied(list) : list;
        }
        Facet facet = list.get(0).facet().facet();
        if (or || ONE_OF.contains(facet) || facet.equals(Facet.BOARD) && !and) {
            return List.of(any(list));
        }
        List<Part> all = new ArrayList<>();
        for (Part part : list) {
            boolean joined =
                    !all.isEmpty() && (and || !between.get(all.size() - 1).isBlank());
            all.add(
                    joined
                            ? new Part(
                                    part.constraint(),
                                    Message.of("question.and", "what", part.label()),
                                    part.start(),
                                    part.end(),
                                    true)
                            : part);
        }
        if (and) {
            offers.add(new Offer(any(list).label(), withOr(list)));
        }
        return all;
    }

    /** A list of which only the last is denied, as 'silk, linen or not wool': what stands before it is one alternative. */
    private static List<Part> orDenied(List<Part> list) {
        List<Part> before = list.subList(0, list.size() - 1);
        Part last = list.get(list.size() - 1);
        return before.size() > 1
                        && last.denies()
                        && before.stream().noneMatch(part -> part.facet().not())
                ? List.of(any(before), last)
                : list;
    }

    private static Part any(List<Part> list) {
        Set<String> values = new LinkedHashSet<>();
        Message label = null;
        for (Part part : list) {
            values.addAll(part.facet().values());
            label = label == null ? part.label() : Message.of("question.or", "one", label, "other", part.label());
        }
        Constraint.OfFacet any = new Constraint.OfFacet(list.get(0).facet().facet(), values, false);
        return new Part(
                any, label, list.get(0).start(), list.get(list.size() - 1).end(), true);
    }

    private String withOr(List<Part> list) {
        StringBuilder text = new StringBuilder(typed.substring(0, list.get(0).start()));
        for (int i = 0; i < list.size(); i++) {
            text.append(i == 0 ? "" : " or ")
                    .append(typed, list.get(i).start(), list.get(i).end());
        }
        return text.append(typed.substring(list.get(list.size() - 1).end())).toString();
    }

    private Understood one(Part part) {
        String before = typed.substring(0, part.start());
        String after = typed.substring(part.end());
        String own = typed.substring(part.start(), part.end());
        return new Understood(
                part.constraint(),
                part.label(),
                own,
                (before + after).replaceAll("\\s+", " ").strip(),
                part.words() ? before + '"' + own.replace("\"", "") + '"' + after : "");
    }
}

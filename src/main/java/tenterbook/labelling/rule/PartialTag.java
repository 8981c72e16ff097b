package tenterbook.labelling.rule;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tenterbook.words.Message;

/** The sentence required on a tag without the full content whose other words name a fibre. */
public final class PartialTag {
    private PartialTag() {}

    /**
     * The sentence the tag needs; empty where it names no fibre, or only the one that the piece wholly is, or where the
     * market has no such rule.
     *
     * @param words everything else printed on the tag
     * @param refusals takes a refusal where a fibre is named and the content is not recorded
     */
    public static Optional<FibreLine> sentence(
            Market market, List<Component> components, String words, List<LabelRefusal> refusals) {
        RuleTable rules = market.rules().of(components);
        List<FibreNames.Fibre> named = FibreNames.namedIn(words);
        if (named.isEmpty()) {
            return Optional.empty();
        }
        boolean recorded = !components.isEmpty()
                && components.stream().noneMatch(c -> c.content().isEmpty());
        if (!recorded) {
            refusals.add(new LabelRefusal(
                    Message.of(
                            "rules.tag.fibre-not-recorded",
                            "fibre",
                            named.get(0).fibre()),
                    rules.rule("missing"),
                    Message.of("rules.tag.take-off"),
                    components.isEmpty() ? LabelRefusal.Mend.PIECE : LabelRefusal.Mend.CLOTH));
            return Optional.empty();
        }
        boolean wholly = named.size() == 1
                && components.stream()
                        .flatMap(c -> c.content().stream())
                        .allMatch(s -> named.get(0).entries().contains(s.fibre().toLowerCase(Locale.ROOT)));
        if (wholly || rules.partialTagPhrase().isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new FibreLine(FibreLine.Kind.CONTENT, rules.partialTagPhrase(), rules.rule("tag")));
    }
}

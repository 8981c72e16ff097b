package tenterbook.labelling.rule;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tenterbook.words.Message;

/** Fibres as a maker writes them; about those that a title names but the piece does not have the maker is asked. */
public final class FibreMentions {
    private FibreMentions() {}

    /** A name of each fibre that is known, as a maker may write it. */
    public static List<String> known() {
        return FibreNames.all().stream()
                .flatMap(fibre -> fibre.entries().stream().limit(1))
                .sorted()
                .toList();
    }

    /** A question for each fibre in {@code words} that is not among the recorded fibres. */
    public static List<Question> questions(Market market, List<Component> components, String words) {
        Rule rule = market.rules().of(components).rule("misuse");
        List<Question> questions = new ArrayList<>();
        for (FibreNames.Fibre fibre : FibreNames.namedIn(words)) {
            boolean held = components.stream()
                    .flatMap(c -> c.content().stream())
                    .anyMatch(s -> fibre.entries().contains(s.fibre().toLowerCase(Locale.ROOT)));
            if (!held) {
                questions.add(new Question(
                        Message.of(
                                "rules.mention.fibre", "fibre", fibre.entries().get(0)),
                        rule));
            }
        }
        return questions;
    }
}

package tenterbook.labelling;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import tenterbook.facts.Denial;
import tenterbook.facts.PieceFacts;
import tenterbook.material.Role;
import tenterbook.measure.Quantity;
import tenterbook.measure.QuantityWords;
import tenterbook.recipe.BoardUse;
import tenterbook.recipe.Clamping;
import tenterbook.recipe.FoldScheme;
import tenterbook.recipe.Step;
import tenterbook.recipe.StepKind;
import tenterbook.recipe.dip.DipTally;
import tenterbook.words.Message;

/**
 * How a piece was made, in plain words and from the records alone; ranges stay ranges, and numbers stand as entered. In three
 * lengths: with the boards by name, for those who read a tag or a wall, and with the least words.
 */
public final class HowMade {
    private enum Length {
        FULL,
        PUBLIC,
        BRIEF
    }

    private final PieceFacts facts;
    private final Length length;

    private HowMade(PieceFacts facts, Length length) {
        this.facts = facts;
        this.length = length;
    }

    /** One sentence for each clamping, in order of time. */
    public static String words(PieceFacts facts) {
        return Denial.NOT_KNOWN_HOW_MADE.unless(facts, () -> sentences(facts, Length.FULL));
    }

    /**
     * The same for a buyer or a visitor.
     *
     * @param boardsNamed whether boards and their states are named, which few but the maker understand
     * @param most so many characters; where they are exceeded, the shortest form is taken, which may be longer too
     */
    public static String forReaders(PieceFacts facts, boolean boardsNamed, int most) {
        return Denial.NOT_KNOWN_HOW_MADE.unless(facts, () -> {
            String words = sentences(facts, boardsNamed ? Length.FULL : Length.PUBLIC);
            return words.length() <= most ? words : sentences(facts, Length.BRIEF);
        });
    }

    private static String sentences(PieceFacts facts, Length length) {
        HowMade made = new HowMade(facts, length);
        List<String> sentences = new ArrayList<>();
        for (int i = 0; i < facts.clampings().size(); i++) {
            sentences.add(made.sentence(facts.clampings().get(i), i > 0));
        }
        return String.join(" ", sentences);
    }

    private String sentence(Clamping clamping, boolean again) {
        Set<String> words = new LinkedHashSet<>();
        Optional<String> layers = layers(clamping.fold());
        String start = "label.made." + (again ? "again" : "first")
                + (length == Length.FULL ? "" : "-" + length.name().toLowerCase(Locale.ROOT));
        words.add(Message.of(
                        start,
                        "boards",
                        length == Length.FULL
                                ? boards(clamping)
                                : clamping.boards().isEmpty() ? "no" : "yes",
                        "folded",
                        layers.isPresent() ? "yes" : "no",
                        "layers",
                        layers.orElse(""))
                .onPaper());
        steps(clamping, StepKind.DIPS).map(this::vat).forEach(words::add);
        steps(clamping, StepKind.BATH).flatMap(s -> names(s, Role.DYE).stream()).forEach(words::add);
        steps(clamping, StepKind.LOCAL_COLOUR)
                .map(s -> named(s, Role.DYE)
                        .map(dyes -> Message.of("label.made.through-holes", "dyes", dyes))
                        .orElseGet(() -> Message.of("label.made.colour-through-holes"))
                        .onPaper())
                .forEach(words::add);
        clamping.steps().stream()
                .filter(s -> length != Length.BRIEF && s.kind() != StepKind.WASHING)
                .flatMap(s -> names(s, Role.MORDANT).stream())
                .map(name -> Message.of("label.made.mordant", "name", name).onPaper())
                .forEach(words::add);
        if (clamping.lots().anyMatch(id -> facts.lot(id).isEmpty())) {
            words.add(Message.of("label.made.further-lot").onPaper());
        }
        Denial.NO_DYES.of(clamping).ifPresent(words::add);
        return String.join("; ", words) + ".";
    }

    private String boards(Clamping clamping) {
        return joined(clamping.boards().stream().map(this::board))
                .map(boards ->
                        Message.of("label.made.between", "boards", boards).onPaper())
                .orElse("");
    }

    private String board(BoardUse use) {
        String title = facts.boardTitle(use.board());
        Message words = use.state().isEmpty()
                ? Message.of("label.made.board-without-state", "board", title)
                : Message.of("label.made.board", "board", title, "state", use.state());
        return words.onPaper();
    }

    private static Optional<String> layers(FoldScheme fold) {
        if (fold.layersCounted().known()) {
            return Optional.of(bare(fold.layersCounted()));
        }
        if (fold.folds().isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(
                Long.toString(fold.folds().stream().mapToLong(f -> f.panels()).reduce(1, (a, b) -> a * b)));
    }

    private String vat(Step step) {
        String name = named(step, Role.DYE)
                .map(dyes -> Message.of("label.made.vat", "dyes", dyes))
                .orElseGet(() -> step.vat().isEmpty()
                        ? Message.of("label.made.vat-alone")
                        : Message.of("label.made.vat-named", "name", step.vat()))
                .onPaper();
        DipTally dips = step.dips().tally();
        return name + ", " + Denial.NO_NUMBER_OF_DIPS.unless(dips, dips::dips);
    }

    /** A count as understood: a range stays a range, without words like ‘counted’. */
    private static String bare(Quantity count) {
        return QuantityWords.value(count);
    }

    private Optional<String> named(Step step, Role role) {
        return joined(names(step, role).stream());
    }

    private static Optional<String> joined(Stream<String> names) {
        return names.reduce((one, other) ->
                Message.of("label.made.and", "one", one, "other", other).onPaper());
    }

    private List<String> names(Step step, Role role) {
        return step.charges().stream()
                .flatMap(charge -> facts.lot(charge.lot()).stream())
                .filter(lot -> lot.role() == role && !lot.name().isEmpty())
                .map(lot -> lot.name().strip())
                .distinct()
                .toList();
    }

    private static Stream<Step> steps(Clamping clamping, StepKind kind) {
        return clamping.steps().stream().filter(step -> step.kind() == kind);
    }
}

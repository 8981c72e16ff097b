package tenterbook.web.found;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import tenterbook.facts.PieceFacts;
import tenterbook.facts.PieceReader;
import tenterbook.labelling.issue.HangTagStatus.Standing;
import tenterbook.web.Site;

/** Reads pieces found, with what their columns need, in the order found. */
final class Subjects {
    /** Read together; a file of all pieces never holds more of them in memory. */
    private static final int TOGETHER = 100;

    private final Site site;

    Subjects(Site site) {
        this.site = site;
    }

    List<Subject> of(List<String> numbers, Collection<Column> columns) {
        List<Subject> all = new ArrayList<>();
        each(numbers, columns, all::add);
        return all;
    }

    /** Those no longer there are left out. */
    void each(List<String> numbers, Collection<Column> columns, Consumer<Subject> row) {
        PieceReader reader = new PieceReader(site.archive());
        for (int at = 0; at < numbers.size(); at += TOGETHER) {
            List<String> some = numbers.subList(at, Math.min(numbers.size(), at + TOGETHER));
            Map<String, PieceFacts> facts = reader.named(some).stream()
                    .collect(Collectors.toMap(each -> each.piece().number().value(), each -> each));
            Map<String, List<Standing>> tags = columns.contains(Column.TAG) ? tags(some) : Map.of();
            some.stream()
                    .map(facts::get)
                    .filter(Objects::nonNull)
                    .map(each -> new Subject(
                            each, tags.getOrDefault(each.piece().number().value(), List.of())))
                    .forEach(row);
        }
    }

    private Map<String, List<Standing>> tags(List<String> numbers) {
        Map<String, List<Standing>> tags = new LinkedHashMap<>(site.tags().of(numbers));
        tags.replaceAll((number, standings) -> standings.stream()
                .filter(each -> printed(each)
                        || home().filter(each.market().code()::equals).isPresent())
                .toList());
        return tags;
    }

    private static boolean printed(Standing standing) {
        return switch (standing.state()) {
            case CURRENT, OUT_OF_DATE -> true;
            case NONE, REFUSED -> false;
        };
    }

    /** Code of the market where the studio most likely sells. */
    private Optional<String> home() {
        return site.archive()
                .readableStudio()
                .map(studio -> tenterbook.labelling.rule.Market.of(studio).code());
    }
}

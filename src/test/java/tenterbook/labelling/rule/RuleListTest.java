package tenterbook.labelling.rule;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import tenterbook.measure.OwnTable;

/**
 * The list of rules for people, {@code README.md} beside the tables, says what the tables say. After a change of the tables run
 * with {@code -Drules.write=true} and read what came out.
 */
class RuleListTest {
    private static final Path LIST = Path.of("src/main/resources/label/README.md");

    @Test
    void theListOfRulesIsWhatTheTablesHold() throws IOException {
        String list = list();
        if (Boolean.getBoolean("rules.write")) {
            Files.writeString(LIST, list, StandardCharsets.UTF_8);
        }
        assertThat(Files.readString(LIST, StandardCharsets.UTF_8)).isEqualTo(list);
        assertThat(list).contains("no legal advice", "from memory: verify", "| read |");
    }

    private static String list() {
        StringBuilder list = new StringBuilder("""
                # Rules of labels

                Made from the tables beside this file, and compared with them by `RuleListTest`. It is no legal advice: the person who
                sells answers for the label. *read* means that the passage beside it was read at the source; *read second hand* that it
                was told or quoted elsewhere; *from memory: verify* that nobody has compared the rule with its source yet. A market
                that has another below it takes the other's rules where it has none of its own: Great Britain and Northern Ireland
                take those of the European Union, wool in the United States those of the United States, and all the common ones. What
                Great Britain takes counts there as from memory, since its copy of the text was not compared.
                *value*: the figures that the program works with.

                Not in here: customs rules of origin, state and provincial law, rules for down, fur and leather goods, and languages.
                This program translates nothing; words in other languages are the maker's, and the paper's record says whose.
                Origin on a label of the United States stands on its front side (16 CFR 303.15): turn a tag so that this side shows.
                """);
        for (String table : OwnTable.rows("/label/rules.csv").stream()
                .map(row -> row.get("market"))
                .distinct()
                .toList()) {
            list.append("\n## %s\n\n".formatted(heading(table)));
            list.append("| rule | value | says | source | passage | status |\n|---|---|---|---|---|---|\n");
            OwnTable.rows("/label/rules.csv").stream()
                    .filter(row -> row.get("market").equals(table))
                    .forEach(row -> list.append("| %s | %s | %s | %s | %s | %s |\n"
                            .formatted(
                                    row.get("rule"),
                                    row.get("value").replace("|", ", "),
                                    row.get("says"),
                                    row.get("source"),
                                    row.get("passage"),
                                    row.get("status"))));
        }
        list.append("\n## Fibre names\n\n");
        list.append("| market | language | names read | names from memory |\n|---|---|---|---|\n");
        var rows = OwnTable.rows("/label/fibre-names.csv");
        rows.stream()
                .map(row -> row.get("market") + " | " + row.get("language"))
                .distinct()
                .forEach(key -> list.append(
                        "| %s | %s | %s |\n".formatted(key, names(rows, key, true), names(rows, key, false))));
        list.append(
                "\nGreat Britain and Northern Ireland use the names of the EU. Japanese names are all the maker's.\n");
        list.append("\n## Methods of care tests\n\n| method | shows | is a test of | status |\n|---|---|---|---|\n");
        OwnTable.rows("/label/care-methods.csv")
                .forEach(row -> list.append("| %s | %s | %s | %s |\n"
                        .formatted(
                                row.get("method"),
                                row.get("shows"),
                                row.get("fits").isEmpty()
                                        ? "any"
                                        : row.get("fits").replace("|", ", "),
                                row.get("status"))));
        list.append("\n## What is commonly held of materials\n\nPut to the maker as questions, and never printed.\n\n");
        list.append("| of | words | says | answered by a test of | source |\n|---|---|---|---|---|\n");
        OwnTable.rows("/label/care-practice.csv")
                .forEach(row -> list.append("| %s | %s | %s | %s | %s |\n"
                        .formatted(
                                row.get("of"),
                                row.get("words").replace("|", ", "),
                                row.get("says"),
                                row.get("answered_by").replace("|", ", "),
                                row.get("source"))));
        list.append("\n## Usual numbers of recipes\n\nA doubt is raised outside; nothing is refused.\n\n");
        list.append(
                "| number | of | fibre | usual | note | source | passage | status |\n|---|---|---|---|---|---|---|---|\n");
        OwnTable.rows("/tenterbook/recipe/usual-numbers.csv").stream()
                .filter(row -> !row.get("low").isEmpty())
                .forEach(row -> list.append("| %s | %s | %s | %s–%s | %s | %s | %s | %s |\n"
                        .formatted(
                                row.get("id"),
                                row.get("of"),
                                row.get("fibre"),
                                row.get("low"),
                                row.get("high"),
                                row.get("note"),
                                row.get("source"),
                                row.get("passage"),
                                row.get("status"))));
        list.append(
                "\n## Substances\n\nWhere no statements stand the supplier's safety data sheet is named instead.\n\n");
        list.append(
                "| CAS | substance | statements, with concentration | note | source | status |\n|---|---|---|---|---|---|\n");
        OwnTable.rows("/tenterbook/recipe/substances.csv")
                .forEach(row -> list.append("| %s | %s | %s | %s | %s | %s |\n"
                        .formatted(
                                row.get("cas"),
                                row.get("chemical"),
                                row.get("statements"),
                                row.get("note"),
                                row.get("source"),
                                row.get("status"))));
        return list.toString();
    }

    private static String heading(String table) {
        if (table.equals("common")) {
            return "All markets";
        }
        RuleTable rules = RuleTable.named(table);
        return "%s%s (`%s`)"
                .formatted(rules.name(), table.equals("us-wool") ? ", where there is wool" : "", rules.version());
    }

    private static String names(List<org.apache.commons.csv.CSVRecord> rows, String key, boolean read) {
        return rows.stream()
                .filter(row -> (row.get("market") + " | " + row.get("language")).equals(key))
                .filter(row -> row.get("status").equals("read") == read)
                .map(row -> row.get("names").replace("|", " or "))
                .collect(Collectors.joining(", "));
    }
}

package tenterbook.web.print;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVRecord;
import tenterbook.colour.compare.GreyScale;
import tenterbook.labelling.rule.Market;
import tenterbook.measure.NumberWords;
import tenterbook.measure.OwnTable;
import tenterbook.measure.Threshold;
import tenterbook.web.Site;
import tenterbook.web.page.Html;

/** Every rule, usual number and deciding figure that the program works with, with its source, the passage that was read, and its status. */
public final class RulePages {
    private final Site site;

    public RulePages(Site site) {
        this.site = site;
    }

    public void routes(RoutesConfig routes) {
        routes.get("/print/rules", this::show);
        routes.get("/figures", this::figures);
    }

    /** One table of the page. */
    public record RuleList(String id, String heading, List<Row> rows) {}

    /** One rule. */
    public record Row(
            String id, String name, String value, String says, String source, String passage, String status) {}

    private void show(Context ctx) {
        List<CSVRecord> rules = OwnTable.rows("/label/rules.csv");
        List<RuleList> lists = Stream.of(
                        rules.stream()
                                .map(row -> row.get("market"))
                                .distinct()
                                .map(market -> new RuleList(market, heading(market), ofMarket(rules, market))),
                        Stream.of(new RuleList("usual-numbers", w("print.rules-usual"), usual())),
                        Stream.of(new RuleList("substances", w("print.rules-substances"), substances())))
                .flatMap(each -> each)
                .toList();
        Html.show(ctx, "rules", Map.of("page", site.page(ctx, w("print.rules-title"), "print"), "lists", lists));
    }

    private void figures(Context ctx) {
        List<RuleList> lists = List.of(
                new RuleList("figures", w("print.figures-decide"), thresholds()),
                new RuleList("light", w("print.figures-light"), light()),
                new RuleList("grey-scale", w("print.figures-grey-scale"), greyScale()));
        Html.show(ctx, "figures", Map.of("page", site.page(ctx, w("print.figures-title"), ""), "lists", lists));
    }

    private static List<Row> thresholds() {
        return Threshold.all().stream()
                .map(each -> new Row(
                        each.id(),
                        each.title(),
                        each.values().stream()
                                .map(value -> w(NumberWords.plain(value)))
                                .collect(Collectors.joining(", ")),
                        each.says(),
                        each.source(),
                        each.passage(),
                        each.status()))
                .toList();
    }

    private static List<Row> light() {
        return OwnTable.rows("/label/light.csv").stream()
                .map(row -> new Row(
                        "",
                        row.get("words").replace("|", ", ").replace("?", ""),
                        row.get("degree"),
                        row.get("fibres").replace("|", ", "),
                        "",
                        "",
                        row.get("status")))
                .toList();
    }

    private static List<Row> greyScale() {
        return GreyScale.CHIPS.stream()
                .map(chip -> new Row(
                        "",
                        chip.grade(),
                        w(NumberWords.plain(chip.difference())),
                        w("print.figures-grey-scale-says"),
                        "EN 20105-A02:1994 (ISO 105-A02:1993), 2.4",
                        "",
                        w("print.figures-grey-scale-status")))
                .toList();
    }

    private static String heading(String table) {
        return switch (table) {
            case "common" -> w("print.rules-common");
            case "us-wool" -> w("print.rules-wool");
            default -> Market.valueOf(table.toUpperCase(Locale.ROOT)).place();
        };
    }

    private static List<Row> ofMarket(List<CSVRecord> rules, String market) {
        return rules.stream()
                .filter(row -> row.get("market").equals(market))
                .map(row -> row(row, "rule", row.get("value").replace("|", ", "), row.get("says")))
                .toList();
    }

    private static List<Row> usual() {
        return OwnTable.rows("/tenterbook/recipe/usual-numbers.csv").stream()
                .filter(row -> !row.get("low").isEmpty())
                .map(row -> row(row, "id", row.get("low") + "–" + row.get("high"), row.get("note")))
                .toList();
    }

    private static List<Row> substances() {
        return OwnTable.rows("/tenterbook/recipe/substances.csv").stream()
                .map(row -> row(row, "chemical", row.get("statements"), row.get("note")))
                .toList();
    }

    private static Row row(CSVRecord row, String id, String value, String says) {
        return new Row(row.get(id), row.get(id), value, says, row.get("source"), row.get("passage"), row.get("status"));
    }
}

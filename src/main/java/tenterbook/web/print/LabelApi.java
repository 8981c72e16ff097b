package tenterbook.web.print;

import static tenterbook.web.page.Words.w;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tenterbook.labelling.rule.Article;
import tenterbook.labelling.rule.CodedChoice;
import tenterbook.labelling.rule.Component;
import tenterbook.labelling.rule.FibreStatement;
import tenterbook.labelling.rule.Market;
import tenterbook.labelling.rule.Rule;
import tenterbook.material.FibreShare;
import tenterbook.piece.Category;
import tenterbook.piece.Studio;
import tenterbook.web.Site;
import tenterbook.words.Refusal;

/** The rules of labels over HTTP. The maker's particulars are the archive's own. No legal advice. */
public final class LabelApi {
    private final Site site;

    public LabelApi(Site site) {
        this.site = site;
    }

    public void routes(RoutesConfig routes) {
        routes.get("/api/labels/fibre-statement", this::statement);
    }

    /** What the rules say. Every field is always there. */
    @JsonInclude(JsonInclude.Include.ALWAYS)
    record Answer(
            String market,
            String name,
            String version,
            List<Line> lines,
            List<Refused> refusals,
            List<Question> questions,
            List<Rule> coverage,
            String notice) {}

    /** @param basis the citation, and who is responsible for a word in another language */
    @JsonInclude(JsonInclude.Include.ALWAYS)
    record Line(String kind, String text, String basis, Rule rule) {}

    @JsonInclude(JsonInclude.Include.ALWAYS)
    record Refused(String found, Rule rule, String fix) {}

    @JsonInclude(JsonInclude.Include.ALWAYS)
    record Question(String asks, Rule rule) {}

    private void statement(Context ctx) {
        Market market = market(ctx.queryParam("market"));
        String origin = given(ctx, "origin");
        Studio studio = site.archive().studio();
        List<Component> components = new ArrayList<>();
        for (String content : ctx.queryParams("content")) {
            if (!content.isBlank()) {
                components.add(component(content, origin));
            }
        }
        FibreStatement statement = FibreStatement.of(
                market,
                new Article(
                        category(given(ctx, "category")),
                        components,
                        ctx.queryParam("dyedIn") == null ? studio.dyedIn() : given(ctx, "dyedIn"),
                        given(ctx, "trims"),
                        studio,
                        given(ctx, "words")));
        ctx.json(new Answer(
                market.code(),
                market.place(),
                statement.version(),
                statement.lines().stream()
                        .map(line -> new Line(line.kind().code(), line.text(), line.basis(), line.rule()))
                        .toList(),
                statement.refusals().stream()
                        .map(refusal -> new Refused(w(refusal.found()), refusal.rule(), w(refusal.fix())))
                        .toList(),
                statement.questions().stream()
                        .map(question -> new Question(w(question.asks()), question.rule()))
                        .distinct()
                        .toList(),
                Stream.ofNullable(statement.coverage()).toList(),
                statement.notice()));
    }

    private static String given(Context ctx, String name) {
        return Optional.ofNullable(ctx.queryParam(name)).orElse("");
    }

    private static Market market(String word) {
        return CodedChoice.find(Market.values(), String.valueOf(word))
                .orElseThrow(() -> Refusal.of(
                        "api.parameter-one-of",
                        "name",
                        "market",
                        "choices",
                        Stream.of(Market.values()).map(Market::code).collect(Collectors.joining(", ")),
                        "found",
                        word == null ? "" : word));
    }

    private static @Nullable Category category(String word) {
        if (word.isBlank()) {
            return null;
        }
        return Stream.of(Category.values())
                .filter(category ->
                        category.toString().equals(word) || category.name().equalsIgnoreCase(word.replace('-', '_')))
                .findFirst()
                .orElseThrow(() -> Refusal.of(
                        "api.parameter-one-of",
                        "name",
                        "category",
                        "choices",
                        Arrays.toString(Category.values()),
                        "found",
                        word));
    }

    /** As in {@code silk:70,cotton:30}, {@code cotton:96,spandex:4:stretch} or {@code lining=silk:100}. */
    private static Component component(String content, String wovenIn) {
        int equals = content.indexOf('=');
        String part = equals < 0 ? "" : content.substring(0, equals);
        List<FibreShare> shares = Arrays.stream(content.substring(equals + 1).split(","))
                .filter(share -> !share.isBlank())
                .map(LabelApi::share)
                .toList();
        return new Component(part, part.isBlank() ? "cloth" : part, shares, wovenIn);
    }

    private static FibreShare share(String text) {
        String[] parts = text.strip().split(":", 3);
        String percent = parts.length < 2 ? "" : parts[1].strip();
        if (!percent.matches("(\\d{1,3}(\\.\\d{1,9})?)?")) {
            throw Refusal.of("api.content-unreadable", "found", text);
        }
        return new FibreShare(
                parts[0], percent.isEmpty() ? null : Double.valueOf(percent), parts.length < 3 ? "" : parts[2]);
    }
}

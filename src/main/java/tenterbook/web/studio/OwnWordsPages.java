package tenterbook.web.studio;

import static tenterbook.web.page.Words.w;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.nio.charset.CharacterCodingException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tenterbook.ledger.revision.RecordCodec;
import tenterbook.search.question.TradeWords;
import tenterbook.web.Site;
import tenterbook.web.form.Form;
import tenterbook.web.form.FormEncoding;
import tenterbook.web.page.FlashMessage;
import tenterbook.web.page.Html;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/** The words that questions are read by: the maker's own, to be changed, and those that come with the program. */
public final class OwnWordsPages {
    /** Empty rows at the end of the form. */
    private static final int BLANK_ROWS = 3;

    private static final String ROWS = "words";

    private final Site site;

    public OwnWordsPages(Site site) {
        this.site = site;
    }

    public void routes(RoutesConfig routes) {
        routes.get(
                "/words", ctx -> show(ctx, 200, filled(site.ledger().ownWords().means())));
        routes.post("/words", this::save);
        routes.get("/api/own-words", this::answer);
        routes.put("/api/own-words", this::replace);
    }

    private static Form filled(Map<String, String> means) {
        Form form = Form.empty();
        List<Map.Entry<String, String>> all = new ArrayList<>(means.entrySet());
        for (int i = 0; i < all.size(); i++) {
            Form row = form.row(ROWS, i);
            row.put("word", all.get(i).getKey());
            row.put("means", all.get(i).getValue());
        }
        return form;
    }

    /** A row of the form, with what its meaning is read as. */
    public record Row(Form form, String readAs) {}

    private void show(Context ctx, int status, Form form) {
        List<Row> rows = new ArrayList<>();
        int typed = form.rows(ROWS).size();
        for (int i = 0; i < Math.min(OwnWordList.MOST, typed + BLANK_ROWS); i++) {
            Form row = form.row(ROWS, i);
            rows.add(new Row(row, row.text("means").isBlank() ? "" : readAs(row.text("word"), row.text("means"))));
        }
        Map<String, Object> values = new HashMap<>();
        values.put("page", site.page(ctx, w("own-words.title"), "studio"));
        values.put("form", form);
        values.put("rows", rows);
        values.put("trade", TradeWords.all());
        ctx.status(status);
        Html.show(ctx, "words", values);
    }

    private String readAs(String word, String means) {
        return site.index().reading(reader -> {
            List<String> labels =
                    reader.meaning(means).stream().map(label -> w(label)).toList();
            boolean taken = !word.isBlank() && reader.isFact(word);
            return w("own-words.read-as", "labels", String.join("; ", labels), "taken", taken);
        });
    }

    private void save(Context ctx) {
        Form form = Form.of(ctx.formParamMap());
        List<OwnWordList.Row> rows = form.rows(ROWS).stream()
                .map(row -> new OwnWordList.Row(row.text("word"), row.text("means")))
                .toList();
        Map<Integer, Map<String, Message>> problems = OwnWordList.problems(rows);
        if (problems.isEmpty() && rows.size() <= OwnWordList.MOST) {
            site.ledger().ownWords().replace(OwnWordList.means(rows));
            FlashMessage.andGo(ctx, w("own-words.saved"), "/words");
            return;
        }
        List<Form> forms = form.rows(ROWS);
        problems.forEach(
                (row, its) -> its.forEach((field, problem) -> forms.get(row).problem(field, w(problem))));
        show(ctx, 422, form);
    }

    /** The list is always there. */
    @JsonInclude(JsonInclude.Include.ALWAYS)
    record Listed(List<OwnWordList.Row> words) {}

    private void answer(Context ctx) {
        List<OwnWordList.Row> words = new ArrayList<>();
        site.ledger().ownWords().means().forEach((word, means) -> words.add(new OwnWordList.Row(word, means)));
        ctx.json(new Listed(words));
    }

    private void replace(Context ctx) {
        try {
            List<OwnWordList.Row> rows = OwnWordList.read(RecordCodec.parsed(FormEncoding.utf8(ctx.bodyAsBytes())));
            site.ledger().ownWords().replace(OwnWordList.means(rows));
        } catch (CharacterCodingException e) {
            throw new Refusal(Message.of("api.not-utf8"), e);
        }
        answer(ctx);
    }
}

package tenterbook.web.condition;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tenterbook.archive.Ahead;
import tenterbook.archive.Kinds;
import tenterbook.archive.field.Faults;
import tenterbook.archive.field.InputRefused;
import tenterbook.archive.record.ExaminationRecord;
import tenterbook.ledger.Saved;
import tenterbook.piece.condition.Change;
import tenterbook.piece.condition.Comparison;
import tenterbook.piece.condition.Examination;
import tenterbook.piece.condition.NextExamination;
import tenterbook.web.Site;
import tenterbook.web.page.Words;
import tenterbook.web.record.RecordInput;
import tenterbook.words.Refusal;

/** The examinations of a piece over HTTP: reading them with what changed, and recording one. */
public final class ConditionApi {
    private final Site site;
    private final RecordInput<Examination> input;

    public ConditionApi(Site site) {
        this.site = site;
        this.input = new RecordInput<>(site, Kinds.EXAMINATION, ExaminationRecord.EXAMINATION);
    }

    public void routes(RoutesConfig routes) {
        routes.get("/api/pieces/{number}/examinations", this::read);
        routes.post("/api/pieces/{number}/examinations", this::record);
    }

    private List<Examination> all(Context ctx) {
        String number = ctx.pathParam("number");
        return site.archive()
                .examinationsOf(site.saved(Kinds.PIECE, number).record().number());
    }

    private void read(Context ctx) {
        List<Examination> all = all(ctx);
        List<Map<String, Object>> list = new ArrayList<>();
        for (Examination each : all) {
            site.ledger().find(Kinds.EXAMINATION, each.id().value()).ifPresent(saved -> list.add(answer(saved, all)));
        }
        ctx.json(new Listed(ctx.pathParam("number"), NextExamination.number(all), list));
    }

    /** The examinations of a piece. The list is always there. */
    @JsonInclude(JsonInclude.Include.ALWAYS)
    record Listed(String number, int next, List<Map<String, Object>> examinations) {}

    private static Map<String, Object> answer(Saved<Examination> saved, List<Examination> all) {
        Examination examination = saved.record();
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("id", examination.id());
        answer.put("version", saved.version());
        answer.put("savedAt", saved.writtenAt());
        answer.put("examination", ExaminationRecord.EXAMINATION.write(examination));
        all.stream()
                .filter(other -> other.id().equals(examination.earlier()))
                .findFirst()
                .map(before -> Comparison.of(before, examination))
                .ifPresent(comparison -> answer.put(
                        "changes",
                        comparison.changes().stream().map(ConditionApi::change).toList()));
        return answer;
    }

    private static Map<String, Object> change(Change change) {
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("number", change.number());
        answer.put("became", change.kind());
        answer.put("differs", change.differs().stream().map(Words::w).toList());
        if (change.doubt() != null) {
            answer.put("doubt", Words.w(change.doubt()));
        }
        return answer;
    }

    /** The name and the piece are set here; an observation without a number gets the next free one. */
    private void record(Context ctx) {
        List<Examination> all = all(ctx);
        ObjectNode object = input.sent(ctx);
        if (object.has("id") || object.has("piece")) {
            throw Refusal.of("api.examination-names-its-piece");
        }
        object.put("piece", ctx.pathParam("number"));
        int next = NextExamination.number(all);
        for (var row : object.path("observations")) {
            if (row instanceof ObjectNode observation && !observation.hasNonNull("number")) {
                observation.put("number", next++);
            }
        }
        Saved<Examination> saved = site.write(act -> {
            object.put(
                    "id",
                    ExaminationPages.next(start -> act.idsEverUsed(Kinds.EXAMINATION, start), site.today())
                            .value());
            Examination examination = input.read(object);
            Faults faults = new Faults();
            Ahead.check(site.ledger(), null, examination, faults);
            if (!faults.isEmpty()) {
                throw new InputRefused(Kinds.EXAMINATION.called(), faults);
            }
            return act.create(Kinds.EXAMINATION, examination);
        });
        ctx.status(201);
        ctx.header("Location", "/api/examinations/" + saved.record().id());
        ctx.json(answer(saved, all));
    }
}

package tenterbook.web.act;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import tenterbook.archive.act.ActFields;
import tenterbook.archive.act.ActRequest;
import tenterbook.archive.act.ActWriter;
import tenterbook.archive.act.Correction;
import tenterbook.archive.field.Faults;
import tenterbook.archive.field.InputRefused;
import tenterbook.archive.record.PieceRecord;
import tenterbook.ledger.Saved;
import tenterbook.piece.Piece;
import tenterbook.piece.history.Act;
import tenterbook.web.Site;
import tenterbook.web.record.JsonInput;
import tenterbook.words.Message;

/** Acts on pieces for programs. */
public final class ActApi {
    private final Site site;

    public ActApi(Site site) {
        this.site = site;
    }

    public void routes(RoutesConfig routes) {
        routes.post("/api/acts/correct", this::correct);
        routes.post("/api/acts/{act}", this::record);
    }

    private void correct(Context ctx) {
        JsonInput<Correction> input = new JsonInput<>(site, Message.of("act.correct.called"), ActFields.CORRECTION);
        Saved<Piece> saved = input.read(input.sent(ctx)).write(site.archive());
        ObjectNode answer = JsonNodeFactory.instance.objectNode();
        answer.put("piece", saved.record().number().value());
        answer.put("version", saved.version());
        answer.set("events", PieceRecord.PIECE.write(saved.record()).get("events"));
        ctx.json(answer);
    }

    private void record(Context ctx) {
        Act act = ActPages.act(ctx);
        JsonInput<ActRequest> input = new JsonInput<>(site, act.word(), ActFields.ACT);
        ObjectNode sent = input.sent(ctx);
        ActRequest request = input.read(sent);
        Faults faults = new Faults();
        ActFields.checkAsked(act, sent, faults);
        if (!faults.isEmpty()) {
            throw new InputRefused(act.word(), faults);
        }
        ActWriter.Done done = new ActWriter(site.archive(), act, request, site.today()).write();
        ObjectNode answer = JsonNodeFactory.instance.objectNode();
        ArrayNode pieces = answer.putArray("pieces");
        done.pieces().forEach(number -> pieces.add(number.value()));
        if (done.party() != null) {
            answer.put("party", done.party().value());
        }
        if (done.agreement() != null) {
            answer.put("agreement", done.agreement().value());
        }
        ctx.status(201);
        ctx.json(answer);
    }
}

package tenterbook.web.act;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import tenterbook.archive.Kinds;
import tenterbook.piece.Event;
import tenterbook.piece.Piece;
import tenterbook.piece.history.Act;
import tenterbook.web.Site;
import tenterbook.web.page.Html;
import tenterbook.words.Refusal;

/** The receipt of a sale, from the history of its piece. */
public final class ReceiptPages {
    private final Site site;

    public ReceiptPages(Site site) {
        this.site = site;
    }

    /** Before those of the acts, whose addresses have the same form. */
    public void routes(RoutesConfig routes) {
        routes.get("/acts/receipt", this::show);
    }

    private void show(Context ctx) {
        String number = ctx.queryParam("piece");
        String at = ctx.queryParam("event");
        Piece piece = site.saved(Kinds.PIECE, number == null ? "" : number).record();
        List<Event> events = piece.events();
        boolean named = at != null && at.matches("\\d{1,4}") && Integer.parseInt(at) < events.size();
        if (!named || events.get(Integer.parseInt(at)).kind() != Act.SELL.event()) {
            throw Refusal.of("act.correct.no-such-event", "number", piece.shown());
        }
        Html.show(
                ctx,
                "receipt",
                Map.of(
                        "page",
                        site.page(ctx, w("act.receipt"), "pieces"),
                        "piece",
                        piece,
                        "text",
                        Receipt.of(site, piece, events.get(Integer.parseInt(at)))));
    }
}

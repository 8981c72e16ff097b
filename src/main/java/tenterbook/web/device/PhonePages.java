package tenterbook.web.device;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import tenterbook.archive.Kinds;
import tenterbook.archive.arrival.PhotoRegistration;
import tenterbook.archive.arrival.PiecePhotographs;
import tenterbook.measure.Digest;
import tenterbook.piece.Piece;
import tenterbook.web.Site;
import tenterbook.web.form.Form;
import tenterbook.web.page.FlashMessage;
import tenterbook.web.page.Html;
import tenterbook.web.record.UploadedPhotos;

/** Where a phone begins: photographing the piece that is open on the computer or another one, finding and recording pieces. */
public final class PhonePages {
    private final Site site;
    private final PhotoRegistration registration;
    private final OpenPiece open;

    public PhonePages(Site site, PhotoRegistration registration) {
        this.site = site;
        this.registration = registration;
        this.open = new OpenPiece(site);
    }

    public void routes(RoutesConfig routes) {
        open.routes(routes);
        routes.get("/phone", ctx -> show(ctx, 200, Form.empty()));
        routes.post("/phone/photographs", this::take);
    }

    /** The piece that the address names, else the one that is open on the computer. */
    private Optional<Piece> piece(Context ctx) {
        String named = ctx.queryParam("piece");
        return named == null
                ? open.piece()
                : Optional.of(site.saved(Kinds.PIECE, named).record());
    }

    private void show(Context ctx, int status, Form form) {
        Map<String, Object> values = new HashMap<>();
        values.put("page", site.page(ctx, w("device.phone"), "phone"));
        values.put("piece", piece(ctx).orElse(null));
        values.put("open", ctx.queryParam("piece") == null);
        values.put("problem", form.problem("files"));
        ctx.status(status);
        Html.show(ctx, "phone", values);
    }

    /** A photograph that is refused keeps none of the others out. */
    private void take(Context ctx) {
        String number = Objects.requireNonNullElse(ctx.formParam("piece"), "");
        Piece piece = site.saved(Kinds.PIECE, number).record();
        Form form = Form.empty();
        List<Digest> taken = new ArrayList<>();
        UploadedPhotos.take(ctx, form, registration, taken::add);
        if (!taken.isEmpty()) {
            site.write(act -> PiecePhotographs.of(taken).add(act, piece.number()));
        }
        String said =
                taken.isEmpty() ? w("device.no-photograph") : w("device.added", "count", taken.size(), "piece", number);
        String problem = form.problem("files");
        FlashMessage.andGo(ctx, problem.isEmpty() ? said : said + " " + problem, "/phone?piece=" + number);
    }
}

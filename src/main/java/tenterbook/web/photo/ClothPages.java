package tenterbook.web.photo;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.List;
import tenterbook.archive.Kinds;
import tenterbook.colour.palette.Region;
import tenterbook.imaging.Photo;
import tenterbook.ledger.Saved;
import tenterbook.measure.Digest;
import tenterbook.piece.Piece;
import tenterbook.web.Site;
import tenterbook.web.form.Form;
import tenterbook.web.page.FlashMessage;
import tenterbook.web.page.NotFound;
import tenterbook.words.Message;

/** The outline of the cloth on a photograph, corrected by a person. */
public final class ClothPages {
    private final Site site;
    private final PhotoPages photos;

    public ClothPages(Site site, PhotoPages photos) {
        this.site = site;
        this.photos = photos;
    }

    public void routes(RoutesConfig routes) {
        routes.post("/pieces/{number}/photos/{digest}/cloth", this::outline);
    }

    /** Keeps the outline that a person drew, or takes it back; what the program found stands where there is none. */
    private void outline(Context ctx) throws IOException {
        Saved<Piece> saved = photos.piece(ctx);
        Digest digest = PhotoPages.digest(ctx);
        PhotoPages.shot(saved.record(), digest);
        Saved<Photo> photo = site.ledger()
                .find(Kinds.PHOTO, digest.hex())
                .orElseThrow(() -> new NotFound(Message.of("not-here.photograph", "name", digest.brief())));
        Form typed = Form.of(ctx.formParamMap());
        Region outline = switch (typed.text("act")) {
            case "whole" -> Region.WHOLE;
            case "found" -> null;
            default -> typed.read("cloth", null, MarkedPart::drawn);
        };
        if (outline == null && !typed.text("act").equals("found") && !typed.hasProblems()) {
            typed.problem("cloth", w("measuring.no-outline"));
        }
        if (typed.hasProblems()) {
            photos.again(ctx, typed);
            return;
        }
        Photo changed = photo.record().withCloth(outline == null ? List.of() : outline.corners());
        // Its colours are known before the index asks for them.
        site.archive().cloths().of(changed);
        site.write(act -> act.save(Kinds.PHOTO, changed, photo.version(), w("measuring.outlined-note")));
        FlashMessage.andGo(
                ctx,
                w(outline == null ? "measuring.outline-taken-back" : "measuring.outlined"),
                "/pieces/" + saved.record().number() + "/photos/" + digest + "#cloth");
    }
}

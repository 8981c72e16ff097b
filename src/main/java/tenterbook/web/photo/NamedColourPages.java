package tenterbook.web.photo;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Kinds;
import tenterbook.colour.palette.Region;
import tenterbook.colour.space.Lab;
import tenterbook.ledger.Saved;
import tenterbook.measure.Digest;
import tenterbook.piece.ColourRegion;
import tenterbook.piece.ColourRole;
import tenterbook.piece.Piece;
import tenterbook.piece.PiecePhoto;
import tenterbook.web.Site;
import tenterbook.web.colour.ColourBand;
import tenterbook.web.form.Form;
import tenterbook.web.page.FlashMessage;
import tenterbook.web.page.Words;
import tenterbook.words.Refusal;

/** The colours that a person names on a photograph. */
public final class NamedColourPages {
    private final Site site;
    private final PhotoMeasuring measuring;
    private final PhotoPages photos;

    public NamedColourPages(Site site, PhotoMeasuring measuring, PhotoPages photos) {
        this.site = site;
        this.measuring = measuring;
        this.photos = photos;
    }

    public void routes(RoutesConfig routes) {
        routes.post("/pieces/{number}/photos/{digest}/colours", this::nameColour);
        routes.post("/pieces/{number}/photos/{digest}/colours/forget", this::forgetColour);
    }

    /** Names a colour: measured over a marked part of the picture, or taken from the palette. */
    private void nameColour(Context ctx) throws IOException {
        Saved<Piece> saved = photos.piece(ctx);
        Digest digest = PhotoPages.digest(ctx);
        PiecePhoto shot = PhotoPages.shot(saved.record(), digest);
        String name = Optional.ofNullable(ctx.formParam("name")).orElse("");
        String colour = Optional.ofNullable(ctx.formParam("colour")).orElse("");
        ColourRegion region;
        if (!colour.isBlank()) {
            Double share = share(ctx.formParam("share"));
            region = new ColourRegion(role(ctx.formParam("role")), name, Lab.parse(colour), share, List.of(), false);
        } else {
            Form typed = Form.of(ctx.formParamMap());
            region = measured(typed, digest, name);
            if (region == null) {
                photos.again(ctx, typed);
                return;
            }
        }
        List<ColourRegion> regions = new ArrayList<>(shot.regions());
        regions.add(region);
        save(saved, digest, regions, w("measuring.named-note"));
        FlashMessage.andGo(
                ctx,
                w(
                        "measuring.named",
                        "part",
                        region.role(),
                        "colour",
                        ColourBand.swatch(region.colour(), "", 1, 0).words()),
                "/pieces/" + saved.record().number() + "/photos/" + digest);
    }

    /** One of those that the page offers. */
    private static ColourRole role(@Nullable String text) {
        return Stream.of(ColourRole.values())
                .filter(each -> each.toString().equals(text))
                .findFirst()
                .orElseThrow(() -> Refusal.of(
                        "measuring.no-such-part",
                        "choices",
                        List.of(ColourRole.values()).toString(),
                        "found",
                        text == null ? "" : text));
    }

    private static Double share(String text) {
        if (text == null || text.isBlank()) {
            return null;
        }
        if (!text.strip().matches("[01]([.]\\d{1,18})?(E-\\d{1,3})?")) {
            throw Refusal.of("measuring.no-share", "found", text);
        }
        return Double.valueOf(text.strip());
    }

    /** The colour of the part typed in; null where that part is no part of the picture, which is noted beside the field. */
    private ColourRegion measured(Form typed, Digest digest, String name) throws IOException {
        Double share = share(typed.value("share"));
        boolean free = typed.has("outline");
        Region part = free ? typed.read("outline", null, MarkedPart::drawn) : MarkedPart.rectangle(typed);
        if (typed.hasProblems()) {
            return null;
        }
        ColourRole role = role(typed.value("role"));
        try {
            return measuring.region(digest, role, name, part, share);
        } catch (IllegalArgumentException e) {
            typed.problem(free ? "outline" : "left", Words.sentence(e));
            return null;
        }
    }

    private void forgetColour(Context ctx) {
        Saved<Piece> saved = photos.piece(ctx);
        Digest digest = PhotoPages.digest(ctx);
        List<ColourRegion> regions =
                new ArrayList<>(PhotoPages.shot(saved.record(), digest).regions());
        String typed = String.valueOf(ctx.formParam("index"));
        int index = typed.matches("\\d{1,6}") ? Integer.parseInt(typed) : regions.size();
        if (index < regions.size()) {
            regions.remove(index);
        }
        save(saved, digest, regions, w("measuring.taken-away-note"));
        FlashMessage.andGo(
                ctx, w("measuring.taken-away"), "/pieces/" + saved.record().number() + "/photos/" + digest);
    }

    private void save(Saved<Piece> saved, Digest digest, List<ColourRegion> regions, String note) {
        List<PiecePhoto> photos = saved.record().photos().stream()
                .map(each -> each.photo().equals(digest) ? each.withRegions(regions) : each)
                .toList();
        site.archive()
                .ledger()
                .write(
                        site.author(),
                        act -> act.save(Kinds.PIECE, saved.record().withPhotos(photos), saved.version(), note));
    }
}

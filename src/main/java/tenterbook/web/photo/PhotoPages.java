package tenterbook.web.photo;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import tenterbook.archive.ChartOfCamera;
import tenterbook.archive.Kinds;
import tenterbook.archive.arrival.PhotoRegistration;
import tenterbook.colour.palette.Region;
import tenterbook.colour.target.WhitePoint;
import tenterbook.imaging.Photo;
import tenterbook.imaging.SeenCloth;
import tenterbook.imaging.cloth.ClothOutline;
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
import tenterbook.web.page.Html;
import tenterbook.web.page.NotFound;
import tenterbook.web.record.Choices;
import tenterbook.words.Message;

/** A photograph of a piece, with the outline of its cloth and its colours. */
public final class PhotoPages {
    private final Site site;
    private final PhotoRegistration registration;
    private final PhotoMeasuring measuring;

    public PhotoPages(Site site, PhotoRegistration registration, PhotoMeasuring measuring) {
        this.site = site;
        this.registration = registration;
        this.measuring = measuring;
    }

    public void routes(RoutesConfig routes) {
        routes.post("/pieces/{number}/photos/{digest}/again", this::lookAgain);
        routes.get(
                "/pieces/{number}/photos/{digest}",
                ctx -> show(
                        ctx,
                        Form.empty()
                                .put("corners", corners(ctx))
                                .put(
                                        "card",
                                        Optional.ofNullable(ctx.queryParam("card"))
                                                .orElse(""))));
    }

    /** Looks once more at a photograph that could not be shown. */
    private void lookAgain(Context ctx) throws IOException {
        Saved<Piece> saved = piece(ctx);
        Digest digest = digest(ctx);
        shot(saved.record(), digest);
        FlashMessage.andGo(
                ctx,
                w(registration.again(digest).isPresent() ? "photo.now-shown" : "photo.not-shown-yet"),
                "/pieces/" + saved.record().number() + "/photos/" + digest);
    }

    static Digest digest(Context ctx) {
        try {
            return new Digest(ctx.pathParam("digest"));
        } catch (IllegalArgumentException e) {
            throw new NotFound(Message.of("not-here.photograph-so-named"));
        }
    }

    Saved<Piece> piece(Context ctx) {
        String number = ctx.pathParam("number");
        return site.saved(Kinds.PIECE, number);
    }

    private static String corners(Context ctx) {
        return Optional.ofNullable(ctx.queryParam("corners")).orElse("").replace('+', ' ');
    }

    /** Of the cloth; where its edge is not known, of the whole picture, for a person to judge. */
    private List<PhotoPageView.Proposal> proposals(Digest digest, ClothOutline cloth) throws IOException {
        Region outline = cloth.edge().found() ? new Region(cloth.corners()) : Region.WHOLE;
        return measuring.proposals(digest, outline).stream()
                .map(area -> new PhotoPageView.Proposal(
                        area.part().toString(),
                        ColourBand.swatch(area.mean(), "", area.share(), 0),
                        area.share(),
                        CalibrationPages.text(area.sample().corners()).replace('+', ' '),
                        PhotoPageView.points(area.sample().corners())))
                .toList();
    }

    /** Shows the photograph again with what was typed about it and what is wrong with that; nothing was written. */
    void again(Context ctx, Form typed) throws IOException {
        ctx.status(422);
        show(ctx, typed);
    }

    private void show(Context ctx, Form typed) throws IOException {
        Saved<Piece> saved = piece(ctx);
        Digest digest = digest(ctx);
        PiecePhoto shot = shot(saved.record(), digest);
        Photo photo = registration
                .find(digest)
                .orElseThrow(() -> new NotFound(Message.of("not-here.photograph", "name", digest.brief())));
        List<PhotoPageView.Named> named = new ArrayList<>();
        for (int i = 0; i < shot.regions().size(); i++) {
            ColourRegion region = shot.regions().get(i);
            named.add(new PhotoPageView.Named(
                    i, region, ColourBand.swatch(region.colour(), region.name(), 1, 0), corners(region)));
        }
        SeenCloth seen = site.archive().cloths().of(photo);
        boolean propose = ctx.queryParam("propose") != null && photo.viewable();
        Html.show(
                ctx,
                "photo",
                Map.of(
                        "page",
                                site.page(
                                        ctx,
                                        w(
                                                "titles.photograph",
                                                "piece",
                                                saved.record().number()),
                                        "pieces"),
                        "view",
                                new PhotoPageView(
                                        saved.record(),
                                        saved.version(),
                                        shot,
                                        photo,
                                        seen,
                                        ColourBand.of(photo, seen.palette()),
                                        ColourBand.of(photo, photo.palette()),
                                        named,
                                        measuring.calibration(digest).orElse(null),
                                        ChartOfCamera.of(site.archive().ledger(), photo)
                                                .orElse(null),
                                        typed.text("corners").matches("[-\\d., ]*") ? typed.text("corners") : "",
                                        propose,
                                        propose ? proposals(digest, seen.outline()) : List.of(),
                                        WhitePoint.parse(ctx.queryParam("illuminant")),
                                        typed),
                        "colourRoles", Choices.words(ColourRole.values())));
    }

    private static String corners(ColourRegion region) {
        StringBuilder text = new StringBuilder();
        region.corners()
                .forEach(corner -> text.append(text.isEmpty() ? "" : " ")
                        .append(String.format(Locale.ROOT, "%.4f,%.4f", corner.across(), corner.down())));
        return text.toString();
    }

    static PiecePhoto shot(Piece piece, Digest digest) {
        return piece.photos().stream()
                .filter(each -> each.photo().equals(digest))
                .findFirst()
                .orElseThrow(() -> new NotFound(Message.of("not-here.photograph-of-piece", "piece", piece.number())));
    }
}

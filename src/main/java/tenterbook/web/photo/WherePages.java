package tenterbook.web.photo;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javax.imageio.ImageIO;
import tenterbook.archive.Kinds;
import tenterbook.colour.palette.LabRaster;
import tenterbook.colour.palette.Pixels;
import tenterbook.colour.palette.Region;
import tenterbook.colour.space.Lab;
import tenterbook.colour.target.Correction;
import tenterbook.imaging.Photo;
import tenterbook.imaging.PreviewSize;
import tenterbook.imaging.SeenCloth;
import tenterbook.imaging.cloth.ClothOutline.Edge;
import tenterbook.imaging.cloth.MatchingPart;
import tenterbook.measure.Digest;
import tenterbook.search.query.ColourChoice;
import tenterbook.search.query.PieceQuery;
import tenterbook.web.Site;
import tenterbook.web.page.NotFound;
import tenterbook.words.Message;

/**
 * Where a photograph has the colours of a search: an SVG picture of the outline alone, to lie over the small preview. A page of
 * results names these pictures and does not wait for them.
 */
public final class WherePages {
    /** Outlines kept, a few kilobytes each. */
    private static final int MOST_KEPT = 400;

    private final Site site;
    private final PhotoMeasuring measuring;
    private final Map<String, String> kept = Collections.synchronizedMap(new LinkedHashMap<>(64, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, String> eldest) {
            return size() > MOST_KEPT;
        }
    });

    public WherePages(Site site, PhotoMeasuring measuring) {
        this.site = site;
        this.measuring = measuring;
    }

    public void routes(RoutesConfig routes) {
        routes.get("/photos/{digest}/where", this::where);
    }

    private void where(Context ctx) throws IOException {
        Digest digest = PhotoPages.digest(ctx);
        Photo photo = site.ledger()
                .find(Kinds.PHOTO, digest.hex())
                .orElseThrow(() -> new NotFound(Message.of("not-here.photograph", "name", digest.brief())))
                .record();
        ColourChoice asked = PieceQuery.of(ctx.queryParamMap()).colours();
        SeenCloth seen = site.archive().cloths().known(List.of(photo)).get(digest);
        boolean known = seen.outline().edge() != Edge.NOT_YET;
        ctx.contentType("image/svg+xml; charset=utf-8");
        ctx.header("Cache-Control", known ? "private, max-age=600" : "no-store");
        String key = digest + " " + asked + " " + seen.hashCode() + " "
                + measuring.correction(digest).hashCode();
        String svg = kept.get(key);
        if (svg == null) {
            svg = svg(digest, seen, asked);
            kept.put(key, svg);
        }
        ctx.result(svg);
    }

    private String svg(Digest digest, SeenCloth seen, ColourChoice asked) throws IOException {
        Path preview = site.previews()
                .get(digest, PreviewSize.SMALL)
                .orElseThrow(() -> new NotFound(Message.of("not-here.picture", "name", digest.brief())));
        boolean cloth = seen.outline().edge().found();
        LabRaster raster = LabRaster.of(pixels(preview), MatchingPart.LONG_EDGE);
        // A photograph without a cloth shows none of its colours, unless anything in it was asked for.
        boolean nothing = asked.asks().isEmpty() || !cloth && !asked.picture();
        List<List<Lab>> colours = nothing
                ? List.of(List.of())
                : asked.asks().stream().map(ask -> List.of(ask.colour())).toList();
        Correction correction = measuring.correction(digest);
        return MatchingPart.svg(colours.stream()
                .map(each -> MatchingPart.of(
                        raster,
                        asked.picture() || !cloth
                                ? null
                                : new Region(seen.outline().corners()),
                        asked.picture() ? List.of() : seen.palette(),
                        correction,
                        each,
                        asked.limit()))
                .toList());
    }

    private static Pixels pixels(Path preview) throws IOException {
        BufferedImage image = ImageIO.read(preview.toFile());
        int width = image.getWidth();
        int height = image.getHeight();
        return new Pixels(image.getRGB(0, 0, width, height, null, 0, width), width, height);
    }
}

package tenterbook.web.photo;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import tenterbook.archive.Kinds;
import tenterbook.colour.compare.ComparedPicture;
import tenterbook.colour.compare.DepthOfShade;
import tenterbook.colour.compare.Layer;
import tenterbook.colour.compare.LayerDepths;
import tenterbook.colour.compare.LayerStack;
import tenterbook.colour.compare.LayerSymmetry;
import tenterbook.colour.palette.Pixels;
import tenterbook.colour.palette.Region;
import tenterbook.colour.palette.RegionColour;
import tenterbook.colour.space.Lab;
import tenterbook.colour.space.MeasurementResult;
import tenterbook.ledger.Saved;
import tenterbook.measure.NumberWords;
import tenterbook.piece.Piece;
import tenterbook.piece.PieceNumber;
import tenterbook.piece.PiecePhoto;
import tenterbook.recipe.Clamping;
import tenterbook.recipe.LayerMap;
import tenterbook.web.Site;
import tenterbook.web.colour.ColourBand;
import tenterbook.web.page.Html;
import tenterbook.web.page.Words;

/** How the layers of one clamping compare, from photographs that show one layer each. */
public final class LayerPages {
    private static final int EDGE = 500;

    private final Site site;
    private final PhotoMeasuring measuring;

    public LayerPages(Site site, PhotoMeasuring measuring) {
        this.site = site;
        this.measuring = measuring;
    }

    public void routes(RoutesConfig routes) {
        routes.get("/clampings/{id}/layers", this::show);
    }

    /**
     * One photographed layer.
     *
     * @param depth against the outer layers in words, empty where it could not be measured
     * @param height of its bar, 0 to 100: full is the depth of the outer layers, and no bar is higher
     */
    public record Strip(
            int layer, String photo, String alt, String piece, ColourBand.Swatch mean, String depth, double height) {}

    /**
     * The page.
     *
     * @param decay how the depth falls into the stack, or why that is not known
     * @param symmetries of neighbours, in sentences
     */
    public record LayerView(
            String clamping, int total, List<Strip> strips, String decay, List<String> symmetries, String refusal) {}

    private record LayerPhoto(Piece piece, PiecePhoto photo) {}

    private void show(Context ctx) throws IOException {
        String id = ctx.pathParam("id");
        Clamping clamping = site.saved(Kinds.CLAMPING, id).record();
        Html.show(
                ctx,
                "layers",
                Map.of(
                        "page",
                        site.page(ctx, w("titles.layers", "clamping", id), "clampings"),
                        "view",
                        view(clamping)));
    }

    private Map<Integer, LayerPhoto> photos(Clamping clamping) {
        Map<Integer, LayerPhoto> photos = new TreeMap<>();
        for (PieceNumber number : site.archive().piecesOf(clamping)) {
            Optional<Piece> piece =
                    site.archive().ledger().find(Kinds.PIECE, number.value()).map(Saved::record);
            piece.ifPresent(found -> found.photos().stream()
                    .filter(photo -> photo.layer() != null)
                    .filter(photo -> madeIn(found, photo.state(), clamping))
                    .forEach(photo -> photos.putIfAbsent(photo.layer(), new LayerPhoto(found, photo))));
        }
        return photos;
    }

    private static boolean madeIn(Piece piece, int state, Clamping clamping) {
        return state <= piece.made().size()
                && piece.made().get(state - 1).clamping().equals(clamping.id());
    }

    private LayerView view(Clamping clamping) throws IOException {
        Map<Integer, LayerPhoto> photos = photos(clamping);
        if (clamping.fold().folds().isEmpty()) {
            return refused(clamping, w("change.no-folds"));
        }
        LayerMap map = LayerMap.of(clamping.fold().folds());
        photos.keySet().removeIf(layer -> layer > map.layers());
        if (photos.size() < 2) {
            return refused(clamping, w("change.two-layers-needed"));
        }
        List<Layer> layers = new ArrayList<>();
        List<Lab> means = new ArrayList<>();
        for (Map.Entry<Integer, LayerPhoto> entry : photos.entrySet()) {
            Pixels pixels = measuring.open(entry.getValue().photo().photo());
            means.add(RegionColour.of(pixels.argb(), pixels.width(), pixels.height(), Region.WHOLE)
                    .mean());
            LayerMap.Cell cell = map.cells().get(entry.getKey() - 1);
            layers.add(new Layer(entry.getKey(), small(pixels), cell.mirroredLength(), cell.mirroredWidth()));
        }
        MeasurementResult<LayerDepths> depths =
                LayerStack.depths(layers, map.layers(), DepthOfShade.darkestChannel(means));
        return new LayerView(
                clamping.id().value(),
                map.layers(),
                strips(photos, means, depths),
                decay(depths),
                symmetries(layers),
                Words.w(depths.reason()));
    }

    private static LayerView refused(Clamping clamping, String why) {
        return new LayerView(clamping.id().value(), 0, List.of(), "", List.of(), why);
    }

    private static List<Strip> strips(
            Map<Integer, LayerPhoto> photos, List<Lab> means, MeasurementResult<LayerDepths> depths) {
        List<Strip> strips = new ArrayList<>();
        int i = 0;
        for (Map.Entry<Integer, LayerPhoto> entry : photos.entrySet()) {
            int layer = entry.getKey();
            Optional<LayerDepths.Depth> depth = depths.value()
                    .flatMap(found -> found.layers().stream()
                            .filter(each -> each.number() == layer)
                            .findFirst());
            strips.add(new Strip(
                    layer,
                    entry.getValue().photo().photo().hex(),
                    entry.getValue().photo().caption(),
                    entry.getValue().piece().number().value(),
                    ColourBand.swatch(means.get(i), "", 1, 0),
                    depth.map(each -> w(
                                    "change.depth",
                                    "ks",
                                    NumberWords.decimals(each.ks(), 2),
                                    "share",
                                    NumberWords.percent(each.ratio(), 0)))
                            .orElse(w("change.not-measurable")),
                    depth.map(each -> Math.min(100, each.ratio() * 100)).orElse(0.0)));
            i++;
        }
        return strips;
    }

    private static String decay(MeasurementResult<LayerDepths> depths) {
        return depths.value()
                .map(found -> found.decay()
                        .value()
                        .map(decay -> decay.innerPaler()
                                ? w(
                                        "change.kept-per-layer",
                                        "share",
                                        NumberWords.percent(decay.keptPerLayer(), 0),
                                        "low",
                                        NumberWords.decimals(
                                                decay.keptPerLayerPlausible().low() * 100, 0),
                                        "high",
                                        NumberWords.percent(
                                                decay.keptPerLayerPlausible().high(), 0))
                                : w("change.no-paler"))
                        .orElse(w(found.decay().reason())))
                .orElse("");
    }

    private static List<String> symmetries(List<Layer> layers) {
        List<String> sentences = new ArrayList<>();
        for (MeasurementResult<LayerSymmetry> found : LayerStack.symmetries(layers)) {
            sentences.add(found.value()
                    .map(symmetry -> w(
                            "change.mirror",
                            "mirrors",
                            symmetry.mirrors(),
                            "layer",
                            symmetry.layer(),
                            "next",
                            symmetry.next(),
                            "correlation",
                            NumberWords.decimals(symmetry.correlation(), 2)))
                    .orElse(w(found.reason())));
        }
        return sentences;
    }

    /** Every nth pixel; a correlation of images needs no more. */
    private static ComparedPicture small(Pixels pixels) {
        int step = Math.max(1, Math.max(pixels.width(), pixels.height()) / EDGE);
        int width = pixels.width() / step;
        int height = pixels.height() / step;
        int[] argb = new int[width * height];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                argb[y * width + x] = pixels.argb()[y * step * pixels.width() + x * step];
            }
        }
        return new ComparedPicture(argb, width, height);
    }
}

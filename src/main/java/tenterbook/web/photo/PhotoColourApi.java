package tenterbook.web.photo;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import tenterbook.archive.Kinds;
import tenterbook.colour.palette.PaletteColour;
import tenterbook.colour.space.ColourWords;
import tenterbook.colour.space.Lab;
import tenterbook.colour.target.MeasuredColour;
import tenterbook.colour.target.WhitePoint;
import tenterbook.imaging.Photo;
import tenterbook.imaging.PhotoCalibration;
import tenterbook.imaging.SeenCloth;
import tenterbook.ledger.Saved;
import tenterbook.ledger.revision.RecordKey;
import tenterbook.measure.Digest;
import tenterbook.piece.ColourRegion;
import tenterbook.piece.Piece;
import tenterbook.piece.PiecePhoto;
import tenterbook.web.Site;
import tenterbook.web.page.NotFound;
import tenterbook.words.Message;

/** What was measured on one photograph: each value with its illuminant, its observer and how far it may be trusted. */
public final class PhotoColourApi {
    private final Site site;

    public PhotoColourApi(Site site) {
        this.site = site;
    }

    public void routes(RoutesConfig routes) {
        routes.get("/api/colour/photos/{digest}", this::photo);
    }

    private void photo(Context ctx) {
        WhitePoint white = WhitePoint.parse(ctx.queryParam("illuminant"));
        Digest digest;
        try {
            digest = new Digest(ctx.pathParam("digest"));
        } catch (IllegalArgumentException e) {
            throw new NotFound(Message.of("not-here.photograph-so-named"));
        }
        Photo photo = site.archive()
                .ledger()
                .find(Kinds.PHOTO, digest.hex())
                .map(Saved::record)
                .orElseThrow(() -> new NotFound(Message.of("not-here.photograph", "name", digest.brief())));
        Optional<PhotoCalibration> calibration =
                site.archive().ledger().find(Kinds.CALIBRATION, digest.hex()).map(Saved::record);
        ctx.json(new Answer(
                digest.hex(),
                calibration.isPresent(),
                calibration.map(found -> calibration(found, white)).orElse(null),
                regions(digest, white),
                palette(photo.palette(), white),
                cloth(site.archive().cloths().of(photo), white)));
    }

    /** Both lists are always there, the calibration only where there is one. */
    record Answer(
            String digest,
            @JsonInclude(JsonInclude.Include.ALWAYS) boolean calibrated,
            @JsonInclude(JsonInclude.Include.NON_NULL) Map<String, Object> calibration,
            @JsonInclude(JsonInclude.Include.ALWAYS) List<Map<String, Object>> regions,
            @JsonInclude(JsonInclude.Include.ALWAYS) List<Map<String, Object>> palette,
            @JsonInclude(JsonInclude.Include.ALWAYS) Map<String, Object> cloth) {}

    /** Who says where the cloth is or why nobody does, its outline in parts of the picture, and its colours. */
    private static Map<String, Object> cloth(SeenCloth seen, WhitePoint white) {
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("edge", seen.outline().edge().name().toLowerCase(Locale.ROOT).replace('_', '-'));
        answer.put("measured", seen.outline().measured());
        answer.put("outline", seen.outline().corners());
        answer.put("palette", palette(seen.palette(), white));
        return answer;
    }

    private static List<Map<String, Object>> palette(List<PaletteColour> colours, WhitePoint white) {
        return colours.stream()
                .map(entry -> {
                    Map<String, Object> each = new LinkedHashMap<>();
                    each.put("colour", colour(entry.colour(), white));
                    each.put("words", ColourWords.of(entry.colour()));
                    each.put("share", entry.share());
                    return each;
                })
                .toList();
    }

    private static Map<String, Object> colour(Lab colour, WhitePoint white) {
        Lab adapted = WhitePoint.D65.adapt(colour, white);
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("lightness", adapted.lightness());
        answer.put("a", adapted.a());
        answer.put("b", adapted.b());
        answer.put("illuminant", white.name());
        answer.put("observer", MeasuredColour.TWO_DEGREES);
        return answer;
    }

    private static Map<String, Object> calibration(PhotoCalibration found, WhitePoint white) {
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("by", found.how().toString());
        answer.put("likelyError", found.likelyError());
        answer.put("note", found.note());
        answer.put("at", found.at().toString());
        List<Map<String, Object>> cards = new ArrayList<>();
        for (PhotoCalibration.MarkedCard card : found.cards()) {
            Map<String, Object> each = new LinkedHashMap<>();
            each.put("name", card.name());
            if (card.known() != null) {
                each.put("known", colour(card.known(), white));
            }
            each.put(
                    "corners",
                    corners(card.corners().stream()
                            .map(corner -> new double[] {corner.x(), corner.y()})
                            .toList()));
            cards.add(each);
        }
        answer.put("cards", cards);
        return answer;
    }

    private static List<Map<String, Object>> corners(List<double[]> corners) {
        return corners.stream()
                .map(corner -> Map.<String, Object>of("across", corner[0], "down", corner[1]))
                .toList();
    }

    /** The colours named on it by every piece that shows it. */
    private List<Map<String, Object>> regions(Digest digest, WhitePoint white) {
        List<Map<String, Object>> regions = new ArrayList<>();
        for (RecordKey key : site.archive().ledger().referencedBy(Kinds.PHOTO.key(digest.hex()))) {
            if (!key.kind().equals(Kinds.PIECE.name())) {
                continue;
            }
            Piece piece = site.archive().piece(key.id()).orElseThrow();
            for (PiecePhoto photo : piece.photos()) {
                if (photo.photo().equals(digest)) {
                    photo.regions().forEach(region -> regions.add(region(piece, photo, region, white)));
                }
            }
        }
        return regions;
    }

    private static Map<String, Object> region(Piece piece, PiecePhoto photo, ColourRegion region, WhitePoint white) {
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("piece", piece.number().value());
        answer.put("state", photo.state());
        answer.put("role", region.role().toString());
        answer.put("name", region.name());
        answer.put("colour", colour(region.colour(), white));
        answer.put("words", ColourWords.of(region.colour()));
        answer.put("calibrated", region.calibrated());
        putKnown(answer, "likelyError", region.likelyError());
        putKnown(answer, "spread", region.spread());
        putKnown(answer, "pixels", region.pixels());
        putKnown(answer, "share", region.share());
        answer.put(
                "corners",
                corners(region.corners().stream()
                        .map(corner -> new double[] {corner.across(), corner.down()})
                        .toList()));
        return answer;
    }

    private static void putKnown(Map<String, Object> answer, String name, Object value) {
        if (value != null) {
            answer.put(name, value);
        }
    }
}

package tenterbook.web.piece;

import static tenterbook.web.page.Words.w;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.javalin.config.RoutesConfig;
import io.javalin.http.ContentTooLargeResponse;
import io.javalin.http.Context;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Kinds;
import tenterbook.archive.arrival.PhotoRegistration;
import tenterbook.archive.arrival.PiecePhotographs;
import tenterbook.archive.record.ClampingRecord;
import tenterbook.archive.record.PieceRecord;
import tenterbook.imaging.Originals;
import tenterbook.imaging.Photo;
import tenterbook.ledger.Saved;
import tenterbook.measure.Digest;
import tenterbook.measure.QuantityText;
import tenterbook.measure.Unit;
import tenterbook.piece.PhotoRole;
import tenterbook.piece.Piece;
import tenterbook.piece.PieceNumber;
import tenterbook.search.facet.FacetGroup;
import tenterbook.search.find.Hit;
import tenterbook.search.find.SearchResult;
import tenterbook.web.Site;
import tenterbook.web.page.Words;
import tenterbook.web.record.FactLine;
import tenterbook.web.record.OpenApi;
import tenterbook.words.Refusal;

/** Pieces over HTTP: finding, reading, recording, and adding photographs. */
public final class PieceApi {
    private final Site site;
    private final PhotoRegistration registration;

    public PieceApi(Site site, PhotoRegistration registration) {
        this.site = site;
        this.registration = registration;
    }

    public void routes(RoutesConfig routes) {
        routes.get("/api/openapi.json", PieceApi::description);
        routes.get("/api/pieces", this::find);
        routes.get("/api/pieces/{number}", this::read);
        routes.post("/api/pieces/{number}/photos", this::addPhotos);
        routes.get(
                "/api/suggestions",
                ctx -> ctx.json(site.index()
                        .suggest(Optional.ofNullable(ctx.queryParam("q")).orElse(""), 8)));
        routes.get("/api/understood", this::understood);
    }

    private static void description(Context ctx) {
        ctx.json(OpenApi.description());
    }

    private void find(Context ctx) {
        SearchResult result = site.index().search(site.index().query(ctx.queryParamMap()));
        ctx.json(new Found(
                result.total(),
                result.query().page(),
                result.query().size(),
                result.micros(),
                result.respelt(),
                result.understood().stream()
                        .map(each -> new Fact(each.typed(), w(each.label())))
                        .toList(),
                result.leftOut(),
                result.remarks().stream().map(Words::w).toList(),
                result.offers().stream()
                        .map(each -> new Other(w(each.label()), each.question()))
                        .toList(),
                result.note(),
                result.hits().stream().map(PieceApi::hit).toList(),
                result.facets()));
    }

    /** One page of results. Every field is always there. */
    @JsonInclude(JsonInclude.Include.ALWAYS)
    record Found(
            long total,
            int page,
            int size,
            long micros,
            boolean respelt,
            List<Fact> understood,
            List<String> leftOut,
            List<String> remarks,
            List<Other> offers,
            String note,
            List<Map<String, Object>> pieces,
            List<FacetGroup> facets) {}

    /** Another way in which the question may have been meant, with the question that is read so. */
    record Other(String meaning, String question) {}

    /** A part of the question that was read as a fact. */
    record Fact(String typed, String meaning) {}

    private static Map<String, Object> hit(Hit hit) {
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("number", hit.card().number());
        answer.put("title", hit.card().title());
        if (hit.distance() != null) {
            answer.put("distance", hit.distance());
        }
        if (hit.nearest() != null) {
            answer.put("nearest", hit.nearest());
        }
        if (hit.share() != null) {
            answer.put("share", hit.share());
        }
        answer.put("card", hit.card());
        answer.put("why", hit.why());
        return answer;
    }

    private Saved<Piece> saved(String number) {
        return site.saved(Kinds.PIECE, number);
    }

    private void read(Context ctx) {
        Saved<Piece> saved = saved(ctx.pathParam("number"));
        Map<String, Object> answer = answer(saved);
        ctx.header("ETag", "\"" + saved.version() + "\"");
        answer.put(
                "clampings",
                site.archive().clampingsOf(saved.record()).stream()
                        .map(ClampingRecord.CLAMPING::write)
                        .toList());
        ctx.json(answer);
    }

    private static Map<String, Object> answer(Saved<Piece> saved) {
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("number", saved.record().number());
        answer.put("version", saved.version());
        answer.put("savedAt", saved.writtenAt());
        answer.put("piece", PieceRecord.PIECE.write(saved.record()));
        return answer;
    }

    private void addPhotos(Context ctx) throws IOException {
        PieceNumber number = saved(ctx.pathParam("number")).record().number();
        List<UploadedFile> files = ctx.isMultipart() ? ctx.uploadedFiles() : List.of();
        if (files.isEmpty()) {
            throw Refusal.of("api.no-photograph-arrived");
        }
        if (files.stream().anyMatch(file -> file.size() > Originals.LIMIT_BYTES)) {
            throw new ContentTooLargeResponse();
        }
        PhotoRole role = role(ctx.formParam("role"));
        String caption = Optional.ofNullable(ctx.formParam("caption")).orElse("");
        List<Photo> taken = new ArrayList<>();
        for (UploadedFile file : files) {
            try (InputStream bytes = file.content()) {
                taken.add(registration.take(bytes, file.filename()));
            }
        }
        List<Digest> digests = taken.stream().map(Photo::digest).toList();
        Saved<Piece> after = site.write(act -> new PiecePhotographs(digests, role, caption, null).add(act, number));
        Map<String, Object> answer = answer(after);
        answer.put("photos", taken);
        ctx.status(201);
        ctx.json(answer);
    }

    private static @Nullable PhotoRole role(@Nullable String word) {
        if (word == null || word.isBlank()) {
            return null;
        }
        return Stream.of(PhotoRole.values())
                .filter(each -> each.toString().equals(word))
                .findFirst()
                .orElseThrow(() -> Refusal.of(
                        "api.no-such-role",
                        "choices",
                        List.of(PhotoRole.values()).toString(),
                        "found",
                        word));
    }

    /** What a typed quantity means, for the line beneath a field. */
    private void understood(Context ctx) {
        String text = Optional.ofNullable(ctx.queryParam("text")).orElse("");
        String word = Optional.ofNullable(ctx.queryParam("unit")).orElse("");
        Unit unit = Stream.of(Unit.values())
                .filter(each -> each.toString().equals(word.isBlank() ? Unit.COUNT.toString() : word))
                .findFirst()
                .orElseThrow(() -> Refusal.of(
                        "api.parameter-one-of",
                        "name",
                        "unit",
                        "choices",
                        List.of(Unit.values()).toString(),
                        "found",
                        word));
        Map<String, Object> answer = new LinkedHashMap<>();
        try {
            answer.put("read", FactLine.also(QuantityText.read(text, unit)));
        } catch (IllegalArgumentException e) {
            answer.put("problem", Words.sentence(e));
        }
        ctx.json(answer);
    }
}

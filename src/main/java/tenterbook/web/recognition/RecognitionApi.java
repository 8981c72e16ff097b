package tenterbook.web.recognition;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tenterbook.colour.palette.Pixels;
import tenterbook.imaging.PhotoMeasure;
import tenterbook.ledger.file.Progress;
import tenterbook.measure.Digest;
import tenterbook.recipe.BoardUse;
import tenterbook.search.recognition.Recognition;
import tenterbook.search.recognition.Recognition.Candidate;
import tenterbook.web.Site;
import tenterbook.web.page.NotFound;
import tenterbook.words.Message;

/** Which piece a photograph shows, over HTTP; see {@code web/openapi.json}. */
public final class RecognitionApi {
    private final Site site;
    private final PhotoMeasure photos;

    public RecognitionApi(Site site) {
        this.site = site;
        this.photos = new PhotoMeasure(site.originals());
    }

    public void routes(RoutesConfig routes) {
        routes.post("/api/recognition", this::ofPicture);
        routes.get("/api/recognition/photos/{digest}", this::ofPhotograph);
    }

    /** An answer. */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Answer(
            String level,
            String sentence,
            List<AnsweredPiece> pieces,
            List<AnsweredBoard> boards,
            int compared,
            int waiting) {}

    /** A piece that it may be. */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record AnsweredPiece(
            String number,
            String photo,
            List<AnsweredBoard> boards,
            boolean mirrored,
            int matches,
            double share,
            double timesStrangers,
            double residualPixels,
            @Nullable Double residualMm,
            double[] homography) {}

    /** A board pair that it may be made with. */
    public record AnsweredBoard(String board, String state) {}

    private void ofPicture(Context ctx) throws IOException {
        Recognition answer = site.recogniser().recognise(SentPicture.of(ctx).pixels(), Set.of(), Progress.UNWATCHED);
        ctx.json(answer(answer));
    }

    private void ofPhotograph(Context ctx) throws IOException {
        Digest photo = RecognitionPages.digest(site, ctx);
        Pixels picture = photos.open(photo)
                .orElseThrow(() -> new NotFound(Message.of("not-here.photograph-picture")))
                .pixels();
        ctx.json(answer(site.recogniser().recognise(picture, Set.of(photo), Progress.UNWATCHED)));
    }

    private Answer answer(Recognition answer) {
        return new Answer(
                answer.level().name().toLowerCase(Locale.ROOT).replace('_', '-'),
                RecognitionView.sentence(site, answer),
                answer.pieces().stream().map(RecognitionApi::piece).toList(),
                answer.boards().stream().map(each -> board(each.board())).toList(),
                answer.compared(),
                answer.waiting());
    }

    private static AnsweredPiece piece(Candidate candidate) {
        Recognition.Evidence evidence = candidate.evidence();
        return new AnsweredPiece(
                candidate.piece().value(),
                candidate.photo().hex(),
                candidate.boards().stream().map(RecognitionApi::board).toList(),
                evidence.mirrored(),
                evidence.matches(),
                evidence.share(),
                evidence.timesStrangers(),
                evidence.residualPixels(),
                evidence.residualMm(),
                evidence.onPhotograph().h());
    }

    private static AnsweredBoard board(BoardUse use) {
        return new AnsweredBoard(use.board().value(), use.state());
    }
}

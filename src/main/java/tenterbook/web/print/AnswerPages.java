package tenterbook.web.print;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Kinds;
import tenterbook.facts.PieceFacts;
import tenterbook.facts.PieceReader;
import tenterbook.labelling.Answers;
import tenterbook.labelling.LabelBlocked;
import tenterbook.labelling.LabelText;
import tenterbook.labelling.PrintSettings;
import tenterbook.labelling.rule.Question;
import tenterbook.ledger.Conflict;
import tenterbook.ledger.Saved;
import tenterbook.piece.Piece;
import tenterbook.piece.Studio;
import tenterbook.piece.label.RuleAnswer;
import tenterbook.web.Site;
import tenterbook.web.found.ChosenPieces;
import tenterbook.web.page.Address;
import tenterbook.web.page.FlashMessage;
import tenterbook.web.page.Words;

/**
 * Answers to the questions of label rules: given on the print page, taken back on the page of the piece or the studio. Only what is
 * asked at that moment can be answered.
 */
public final class AnswerPages {
    private final Site site;

    public AnswerPages(Site site) {
        this.site = site;
    }

    public void routes(RoutesConfig routes) {
        routes.post("/print/answers", this::answer);
        routes.post("/print/answers/take-back", this::takeBack);
    }

    private void answer(Context ctx) {
        PrintParameters choices = new PrintParameters(ctx.formParamMap());
        List<String> numbers = ChosenPieces.named(site, ctx.formParamMap());
        String back = "/print?" + Address.query(choices.fields()) + "&pieces="
                + Address.encoded(given(ctx, "back").isEmpty() ? String.join(",", numbers) : given(ctx, "back"));
        String words = given(ctx, "answerWords");
        if (words.isEmpty() || !given(ctx, "answerHolds").matches("yes|no")) {
            FlashMessage.andGo(ctx, w("print.answer-needs-words"), back);
            return;
        }
        PrintSettings request = choices.request(site);
        List<RuleAnswer> answers = new ArrayList<>();
        List<Saved<Piece>> answered = new ArrayList<>();
        for (Saved<Piece> piece : ChosenPieces.saved(site, numbers)) {
            PieceFacts facts = PieceReader.of(site.archive(), piece.record());
            if (asked(ctx, facts, request).isPresent()) {
                answers.add(answer(ctx, words, facts));
                answered.add(piece);
            }
        }
        if (answered.isEmpty()) {
            FlashMessage.andGo(ctx, w("print.not-asked-any-more"), back);
            return;
        }
        try {
            keep(answered, answers);
        } catch (Conflict e) {
            FlashMessage.andGo(ctx, Words.sentence(e), back);
            return;
        }
        FlashMessage.andGo(ctx, w("print.answer-kept"), back);
    }

    /** The question as it stands now; one that a record must answer, or that is not asked, has no answer. */
    private static Optional<Question> asked(Context ctx, PieceFacts facts, PrintSettings request) {
        try {
            return LabelText.of(facts, request).questions().stream()
                    .filter(question -> question.mend() == null)
                    .filter(question -> question.rule().id().equals(given(ctx, "answerRule"))
                            && question.asks().inEnglish().equals(given(ctx, "answerAsked")))
                    .findFirst();
        } catch (LabelBlocked e) {
            return Optional.empty();
        }
    }

    private RuleAnswer answer(Context ctx, String words, PieceFacts facts) {
        String rule = given(ctx, "answerRule");
        String asked = given(ctx, "answerAsked");
        String by = given(ctx, "answerBy");
        Instant now = site.clock().instant().truncatedTo(ChronoUnit.MILLIS);
        return new RuleAnswer(
                rule,
                asked,
                given(ctx, "answerHolds").equals("yes"),
                words,
                by.isEmpty() ? site.author() : by,
                now,
                Answers.facts(rule, asked, facts));
    }

    private void keep(List<Saved<Piece>> pieces, List<RuleAnswer> answers) {
        if (Answers.ofStudio(answers.get(0).rule())) {
            Saved<Studio> studio = studio();
            Studio old = studio == null ? Studio.UNNAMED : studio.record();
            Studio now = old.with(old.selling().answered(answers.get(0)));
            site.write(act -> act.save(Kinds.STUDIO, now, studio == null ? 0 : studio.version(), ""));
            return;
        }
        site.write(act -> {
            for (int i = 0; i < pieces.size(); i++) {
                Piece old = pieces.get(i).record();
                act.save(
                        Kinds.PIECE,
                        old.with(old.label().answered(answers.get(i))),
                        pieces.get(i).version(),
                        "");
            }
            return null;
        });
    }

    private @Nullable Saved<Studio> studio() {
        return site.ledger().find(Kinds.STUDIO, Kinds.THE_STUDIO).orElse(null);
    }

    /** Of a piece, or of the studio where none is named. */
    private void takeBack(Context ctx) {
        String number = given(ctx, "piece");
        String back = number.isEmpty() ? "/studio" : "/pieces/" + number;
        boolean found = number.isEmpty() ? takeBackFromStudio(ctx) : takeBackFromPiece(ctx, number);
        FlashMessage.andGo(ctx, w(found ? "print.answer-taken-back" : "print.no-such-answer"), back);
    }

    private boolean takeBackFromPiece(Context ctx, String number) {
        Saved<Piece> saved = site.saved(Kinds.PIECE, number);
        Piece piece = saved.record();
        Optional<RuleAnswer> answer = named(ctx, piece.label().answers());
        answer.ifPresent(each ->
                site.write(act -> act.save(Kinds.PIECE, piece.with(piece.label().without(each)), saved.version(), "")));
        return answer.isPresent();
    }

    private boolean takeBackFromStudio(Context ctx) {
        Saved<Studio> saved = studio();
        if (saved == null) {
            return false;
        }
        Studio studio = saved.record();
        Optional<RuleAnswer> answer = named(ctx, studio.selling().answers());
        answer.ifPresent(each -> site.write(
                act -> act.save(Kinds.STUDIO, studio.with(studio.selling().without(each)), saved.version(), "")));
        return answer.isPresent();
    }

    private static Optional<RuleAnswer> named(Context ctx, List<RuleAnswer> answers) {
        return answers.stream()
                .filter(each -> each.rule().equals(given(ctx, "answerRule"))
                        && each.asked().equals(given(ctx, "answerAsked")))
                .findFirst();
    }

    private static String given(Context ctx, String name) {
        return Optional.ofNullable(ctx.formParam(name)).orElse("").strip();
    }
}

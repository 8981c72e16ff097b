package tenterbook.web.print;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.labelling.LabelBlocked;
import tenterbook.labelling.LabelText;
import tenterbook.labelling.PrintSettings;
import tenterbook.labelling.issue.LabelIssuer;
import tenterbook.labelling.paper.LabelPaper;
import tenterbook.ledger.Saved;
import tenterbook.ledger.file.Progress;
import tenterbook.piece.Piece;
import tenterbook.web.Site;
import tenterbook.web.found.ChosenPieces;
import tenterbook.web.job.Job;
import tenterbook.web.page.Address;
import tenterbook.web.page.FlashMessage;
import tenterbook.web.page.Words;
import tenterbook.words.Conventions;
import tenterbook.words.Message;

/** Prints labels: a few at once, many as work that can be watched and stopped. What is printed is kept. */
public final class LabelPrinting {
    /** As many are printed while one waits. */
    private static final int MOST_AT_ONCE = 50;

    private final Site site;

    public LabelPrinting(Site site) {
        this.site = site;
    }

    public void routes(RoutesConfig routes) {
        routes.post("/print/issue", this::issue);
    }

    /** Prints. The paper is in the ledger before the PDF is sent. */
    private void issue(Context ctx) throws IOException {
        Map<String, List<String>> parameters = ctx.formParamMap();
        PrintParameters choices = new PrintParameters(parameters);
        Map<String, List<String>> typed = new HashMap<>(parameters);
        typed.remove(Preview.SHOWN);
        String back = "/print?" + Address.query(typed);
        ChosenPieces.Found found = ChosenPieces.find(site, parameters, choices.search(), PrintPages.MOST);
        ChosenPieces.LookedUp looked = PrintPages.lookUp(site, found);
        List<Saved<Piece>> pieces = looked.pieces();
        String trouble = found.trouble().isEmpty() ? looked.trouble() : found.trouble();
        if (!trouble.isEmpty()) {
            FlashMessage.andGo(ctx, w("print.nothing-printed", "why", trouble), back);
            return;
        }
        if (pieces.isEmpty()) {
            FlashMessage.andGo(ctx, w("print.choose-a-piece"), back);
            return;
        }
        PrintSettings request;
        try {
            request = choices.request(site);
            LabelPaper.places(request, pieces.size());
        } catch (IllegalArgumentException e) {
            FlashMessage.andGo(ctx, w("print.reason-below"), back);
            return;
        }
        List<String> sent = parameters.get(Preview.SHOWN);
        List<LabelText> first = List.of();
        if (sent != null) {
            try {
                first = LabelIssuer.texts(site.archive(), PrintPages.laidOut(pieces), request);
            } catch (LabelBlocked e) {
                FlashMessage.andGo(ctx, w("print.reasons-below"), back);
                return;
            }
            if (!Preview.isShown(sent, PrintPages.code(request, first))) {
                FlashMessage.andGo(ctx, w("issuing.shown-once-more"), back);
                return;
            }
        }
        List<LabelText> shown = first;
        if (pieces.size() * request.placement().copies() > MOST_AT_ONCE) {
            Conventions reader = Words.conventions();
            Job job = site.jobs()
                    .start(w("print.printing-labels"), progress -> print(pieces, shown, request, progress, reader));
            ctx.redirect("/work/" + job.id(), HttpStatus.SEE_OTHER);
            return;
        }
        try {
            IssuedPaper paper = print(pieces, shown, request, Progress.UNWATCHED);
            IssuedPages.send(ctx, site.archive().papers().read(paper.pdf()), paper);
        } catch (LabelBlocked | IllegalArgumentException e) {
            FlashMessage.andGo(ctx, w("print.reasons-below"), back);
        }
    }

    /** @param shown texts of the first of these pieces, composed for the code of what was shown; the others are composed now */
    private IssuedPaper print(
            List<Saved<Piece>> pieces, List<LabelText> shown, PrintSettings request, Progress progress)
            throws IOException {
        List<LabelText> texts = new ArrayList<>(shown);
        texts.addAll(LabelIssuer.texts(site.archive(), pieces.subList(shown.size(), pieces.size()), request));
        return LabelIssuer.print(site.archive(), pieces, texts, request, site.clock(), site.author(), progress);
    }

    private Job.Outcome print(
            List<Saved<Piece>> pieces,
            List<LabelText> shown,
            PrintSettings request,
            Progress progress,
            Conventions reader)
            throws IOException {
        try {
            IssuedPaper paper = print(pieces, shown, request, progress);
            return new Job.Outcome(
                    Message.of("print.laid-out", "pieces", pieces.size()).in(reader),
                    List.of(),
                    "/print/issued/" + paper.id() + ".pdf");
        } catch (LabelBlocked e) {
            return new Job.Outcome(
                    Message.of(
                                    "print.nothing-printed-held-back",
                                    "labels",
                                    e.pieces().size())
                            .in(reader),
                    e.pieces().stream()
                            .map(piece -> piece.number() + ": "
                                    + piece.refusals().stream()
                                            .map(Object::toString)
                                            .collect(Collectors.joining(" ")))
                            .limit(200)
                            .toList(),
                    "");
        } catch (IllegalArgumentException e) {
            return new Job.Outcome(Message.of("print.no-room").in(reader), List.of(Words.sentence(e, reader)), "");
        }
    }
}

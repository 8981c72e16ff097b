package tenterbook.web.print;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tenterbook.archive.Kinds;
import tenterbook.archive.arrival.PhotoRegistration;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.archive.record.LabelSheet;
import tenterbook.facts.PieceFacts;
import tenterbook.facts.PieceReader;
import tenterbook.labelling.Arrangement;
import tenterbook.labelling.LabelBlocked;
import tenterbook.labelling.LabelText;
import tenterbook.labelling.PrintSettings;
import tenterbook.labelling.SheetSize;
import tenterbook.labelling.issue.LabelIssuer;
import tenterbook.labelling.paper.LabelPaper;
import tenterbook.ledger.Saved;
import tenterbook.ledger.file.Progress;
import tenterbook.piece.Piece;
import tenterbook.piece.PieceNumber;
import tenterbook.search.find.Hit;
import tenterbook.search.find.SearchResult;
import tenterbook.search.query.PieceQuery;
import tenterbook.web.Site;
import tenterbook.web.job.Job;
import tenterbook.web.page.FlashMessage;
import tenterbook.web.page.Html;
import tenterbook.web.page.Words;
import tenterbook.web.print.ChosenPieces.Looked;
import tenterbook.words.Conventions;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/** Labels: choosing, a live preview, and the PDF, which is kept with its text when it is issued. */
public final class PrintPages {
    /** More labels than anyone prints for one fair; a guard against printing the whole archive by a slip. */
    static final int MOST = 5000;

    /** More than these are printed as work that can be watched and stopped. */
    static final int MOST_AT_ONCE = 50;

    /** So many are laid out for the page; whether the others have room is told when they are printed. */
    private static final int MOST_LAID_OUT = 200;

    private final Site site;

    public PrintPages(Site site, PhotoRegistration registration) {
        this.site = site;
    }

    /** Labels that can be seen before printing. */
    private static final int MOST_SHOWN = 9;

    public void routes(RoutesConfig routes) {
        routes.get("/print", this::show);
        routes.get("/print/preview.png", this::preview);
        routes.post("/print/issue", this::issue);
    }

    /** A label that is shown before it is printed: of which piece, and the address of its picture. */
    public record Shown(String number, String picture) {}

    /**
     * The print page.
     *
     * @param problem a choice that cannot be, in a sentence; empty where all can
     * @param numbers the pieces chosen one by one, with commas; empty where a search chose them
     * @param request what will be printed; of the usual kind where there is a problem
     * @param asked what was typed, by parameter
     * @param choices the choices for hidden fields
     * @param search the search that chose the pieces, for hidden fields; empty where none did
     * @param sheets kept sheets
     * @param places labels on one sheet
     * @param blocked why labels cannot be printed, by piece
     * @param questions doubts that do not stop a label
     * @param lines the exact text of the first label
     * @param preview address of the picture of the first label; empty where there is none
     * @param others the numbers whose labels can be printed where some cannot, with commas
     * @param issued labels printed before, newest first
     * @param noSymbols why no care symbol can be drawn for the first piece, row by row; empty where one can or none is asked
     * @param next the labels after the first, at most {@link #MOST_SHOWN} with it
     * @param typedNumbers what stands in the field again, also numbers that are not here
     */
    public record PrintView(
            String problem,
            String numbers,
            int pieces,
            PrintSettings request,
            Map<String, String> asked,
            List<Map.Entry<String, String>> choices,
            List<Map.Entry<String, String>> search,
            List<LabelSheet> sheets,
            int places,
            List<BlockedLabels.Label> blocked,
            List<String> questions,
            List<String> lines,
            String preview,
            String first,
            String others,
            List<IssuedPaper> issued,
            String typedNumbers,
            List<String> noSymbols,
            List<Shown> next) {
        /** What was typed, or nothing. */
        public String typed(String name) {
            return asked.getOrDefault(name, "");
        }

        /** How the parts of this kind can be arranged. */
        public List<Arrangement> arrangements() {
            return request.kind().arrangements();
        }

        /** Labels in all, copies included. */
        public int labels() {
            return pieces * request.placement().copies();
        }

        /** The choices as a query, for a link that goes on with {@code &}. */
        public String query() {
            return choices.stream()
                    .map(each -> each.getKey() + "=" + encode(each.getValue()))
                    .collect(Collectors.joining("&"));
        }
    }

    /** @param behind changes that the search did not see yet, so that pieces may be missing */
    private record Found(List<String> numbers, long behind) {
        String trouble() {
            return behind == 0 ? "" : w("print.search-behind", "changes", behind);
        }
    }

    /** The numbers named, or of all that the search finds; where that is more than {@link #MOST}, one too many. */
    private Found numbers(Map<String, List<String>> parameters, PrintParameters choices) {
        List<String> numbers = ChosenPieces.named(parameters);
        long behind = 0;
        if (numbers.isEmpty()) {
            PieceQuery query = site.index().query(choices.search());
            if (!query.narrows() && !parameters.containsKey("page")) {
                return new Found(List.of(), 0);
            }
            int size = PieceQuery.MOST_SIZE;
            for (int page = 1; numbers.size() <= MOST; page++) {
                SearchResult result = site.index().search(query.withSize(size).withPage(page));
                behind = Math.max(behind, result.behind());
                List<Hit> hits = result.hits();
                hits.forEach(hit -> numbers.add(hit.card().number()));
                if (hits.size() < size) {
                    break;
                }
            }
        }
        return new Found(numbers.stream().distinct().limit(MOST + 1L).toList(), behind);
    }

    private Looked looked(List<String> numbers) {
        return ChosenPieces.look(site, numbers.stream().limit(MOST).toList());
    }

    private void show(Context ctx) throws IOException {
        Map<String, List<String>> parameters = ctx.queryParamMap();
        PrintParameters choices = new PrintParameters(parameters);
        Found found = numbers(parameters, choices);
        List<String> asking = found.numbers();
        Looked looked = looked(asking);
        List<Saved<Piece>> pieces = looked.pieces();
        String problem = found.trouble().isEmpty() ? looked.trouble() : found.trouble();
        if (!looked.unknown().isEmpty()) {
            ctx.status(HttpStatus.UNPROCESSABLE_CONTENT);
        }
        boolean possible = true;
        PrintSettings request;
        int places = 1;
        try {
            request = choices.request(site);
            places = LabelPaper.places(request, pieces.size());
        } catch (IllegalArgumentException e) {
            problem = Stream.of(looked.trouble(), Words.sentence(e))
                    .filter(each -> !each.isEmpty())
                    .collect(Collectors.joining(" "));
            possible = false;
            request = PrintSettings.of(choices.kind(), choices.market(site));
            ctx.status(HttpStatus.UNPROCESSABLE_CONTENT);
        }
        List<BlockedLabels.Label> blocked = new ArrayList<>();
        List<LabelText> texts = texts(pieces, request, blocked);
        Map<PieceNumber, String> unprintable =
                LabelPaper.unprintable(texts.subList(0, Math.min(MOST_LAID_OUT, texts.size())), request);
        for (Saved<Piece> piece : pieces) {
            String reason = unprintable.get(piece.record().number());
            if (reason != null) {
                boolean seek = possible && blocked.size() < BlockedLabels.SOUGHT;
                blocked.add(BlockedLabels.unprintable(site, piece.record(), reason, request, seek));
            }
        }
        texts.removeIf(text -> unprintable.containsKey(text.number()));
        LabelText first = texts.isEmpty() ? null : texts.get(0);
        boolean searched = ChosenPieces.named(parameters).isEmpty();
        Html.show(
                ctx,
                "print",
                Map.of(
                        "page",
                        site.page(ctx, w("page.menu.print"), "print"),
                        "view",
                        new PrintView(
                                problem,
                                searched ? "" : numbers(pieces),
                                pieces.size(),
                                request,
                                choices.asked(),
                                choices.fields(),
                                searched && !pieces.isEmpty() ? choices.searchFields() : List.of(),
                                site.records(Kinds.LABEL_SHEET),
                                places,
                                blocked,
                                questions(asking, texts, pieces, request),
                                first == null
                                        ? List.of()
                                        : first.lines().stream()
                                                .map(PrintPages::withBasis)
                                                .toList(),
                                first == null || !possible ? "" : picture(first, choices),
                                first == null ? "" : first.number().value(),
                                others(looked, blocked),
                                issued(pieces),
                                searched ? "" : looked.typed(),
                                LabelQuestions.noSymbols(site, pieces, request),
                                possible ? next(texts, choices) : List.of())));
    }

    /** A line, and in brackets the rule or the evidence it rests on. */
    private static String withBasis(LabelText.Line line) {
        return line.basis().isEmpty() ? line.text() : "%s [%s]".formatted(line.text(), line.basis());
    }

    private List<LabelText> texts(List<Saved<Piece>> pieces, PrintSettings request, List<BlockedLabels.Label> blocked) {
        List<LabelText> texts = new ArrayList<>();
        for (PieceFacts facts : PieceReader.all(
                site.archive(), pieces.stream().map(Saved::record).toList())) {
            try {
                texts.add(LabelText.of(facts, request));
            } catch (LabelBlocked e) {
                e.pieces().forEach(each -> blocked.add(BlockedLabels.refused(each, facts)));
            }
        }
        return texts;
    }

    private static List<String> questions(
            List<String> asking, List<LabelText> texts, List<Saved<Piece>> pieces, PrintSettings request) {
        Stream<String> first = asking.size() > MOST ? Stream.of(w("print.at-most", "most", MOST)) : Stream.empty();
        return Stream.of(
                        first, LabelQuestions.withoutPrice(pieces, request).stream(), LabelQuestions.of(texts).stream())
                .flatMap(each -> each)
                .toList();
    }

    private static List<Shown> next(List<LabelText> texts, PrintParameters choices) {
        return texts.stream()
                .skip(1)
                .limit(MOST_SHOWN - 1L)
                .map(text -> new Shown(text.number().value(), picture(text, choices)))
                .toList();
    }

    private static String picture(LabelText first, PrintParameters choices) {
        return "/print/preview.png?pieces=" + encode(first.number().value())
                + choices.fields().stream()
                        .map(each -> "&" + each.getKey() + "=" + encode(each.getValue()))
                        .collect(Collectors.joining());
    }

    private static String numbers(List<Saved<Piece>> pieces) {
        return pieces.stream().map(piece -> piece.record().number().value()).collect(Collectors.joining(","));
    }

    static String encode(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }

    /** The numbers whose labels can be printed, with commas; empty where none is held back or none is left. */
    private static String others(Looked looked, List<BlockedLabels.Label> blocked) {
        List<String> held = blocked.stream().map(BlockedLabels.Label::number).toList();
        return held.isEmpty() && looked.unknown().isEmpty()
                ? ""
                : looked.pieces().stream()
                        .map(piece -> piece.record().number().value())
                        .filter(number -> !held.contains(number))
                        .collect(Collectors.joining(","));
    }

    private List<IssuedPaper> issued(List<Saved<Piece>> pieces) {
        if (pieces.size() != 1) {
            return site.archive().ledger().latest(Kinds.ISSUED_PAPER, 5).stream()
                    .map(Saved::record)
                    .toList();
        }
        return IssuedPaperView.papers(site, pieces.get(0).record().number().value()).stream()
                .limit(10)
                .toList();
    }

    private void preview(Context ctx) throws IOException {
        List<Saved<Piece>> pieces = ChosenPieces.saved(site, ChosenPieces.named(ctx.queryParamMap()));
        if (pieces.isEmpty()) {
            throw Refusal.of("print.preview-needs-a-piece");
        }
        PieceFacts facts = PieceReader.of(site.archive(), pieces.get(0).record());
        ctx.contentType("image/png");
        ctx.header("Cache-Control", "no-store");
        ctx.result(LabelPaper.face(facts, new PrintParameters(ctx.queryParamMap()).request(site), 220));
    }

    /** Prints, and keeps what was printed: the paper is in the ledger before the PDF is sent. */
    private void issue(Context ctx) throws IOException {
        Map<String, List<String>> parameters = ctx.formParamMap();
        PrintParameters choices = new PrintParameters(parameters);
        String back = "/print?"
                + parameters.entrySet().stream()
                        .flatMap(entry -> entry.getValue().stream().map(value -> entry.getKey() + "=" + encode(value)))
                        .collect(Collectors.joining("&"));
        Found found = numbers(parameters, choices);
        Looked looked = looked(found.numbers());
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
        if (pieces.size() * request.placement().copies() > MOST_AT_ONCE) {
            Conventions reader = Words.conventions();
            Job job =
                    site.jobs().start(w("print.printing-labels"), progress -> print(pieces, request, progress, reader));
            ctx.redirect("/work/" + job.id(), HttpStatus.SEE_OTHER);
            return;
        }
        try {
            IssuedPaper paper =
                    LabelIssuer.print(site.archive(), pieces, request, site.clock(), site.author(), Progress.UNWATCHED);
            IssuedPages.send(ctx, site.archive().papers().read(paper.pdf()), paper);
        } catch (LabelBlocked | IllegalArgumentException e) {
            FlashMessage.andGo(ctx, w("print.reasons-below"), back);
        }
    }

    private Job.Outcome print(List<Saved<Piece>> pieces, PrintSettings request, Progress progress, Conventions reader)
            throws IOException {
        try {
            IssuedPaper paper =
                    LabelIssuer.print(site.archive(), pieces, request, site.clock(), site.author(), progress);
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

    /** The sheets of paper a label can be put on, without those of one's own. */
    public static List<SheetSize> papers() {
        return Stream.of(SheetSize.values())
                .filter(size -> size != SheetSize.OWN)
                .toList();
    }
}

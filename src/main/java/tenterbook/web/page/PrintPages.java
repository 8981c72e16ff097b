package tenterbook.web.page;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tenterbook.archive.IssuedPaper;
import tenterbook.archive.Kinds;
import tenterbook.label.Gathering;
import tenterbook.label.Issue;
import tenterbook.label.LabelBlocked;
import tenterbook.label.LabelFacts;
import tenterbook.label.LabelKind;
import tenterbook.label.LabelRequest;
import tenterbook.label.LabelText;
import tenterbook.label.SheetSize;
import tenterbook.label.paper.LabelPaper;
import tenterbook.label.rule.Market;
import tenterbook.ledger.Progress;
import tenterbook.ledger.Saved;
import tenterbook.piece.Piece;
import tenterbook.piece.PieceNumber;
import tenterbook.search.Hit;
import tenterbook.search.PieceQuery;
import tenterbook.web.Html;
import tenterbook.web.Said;
import tenterbook.web.Site;

/** Labels: choosing, a live preview, and the PDF, whose text is kept when it is issued. */
public final class PrintPages {
    /** More labels than anyone prints for one fair; a guard against printing the whole archive by a slip. */
    private static final int MOST = 1000;

    private final Site site;

    public PrintPages(Site site, PhotoShelf shelf) {
        this.site = site;
    }

    public void routes(RoutesConfig routes) {
        routes.get("/print", this::show);
        routes.get("/print/preview.png", this::preview);
        routes.post("/print/issue", this::issue);
        routes.get("/print/issued/{id}", this::reprint);
    }

    /**
     * The print page.
     *
     * @param numbers the pieces chosen, as numbers with commas
     * @param symbols whether a care label shows care symbols too
     * @param blocked why labels cannot be printed, by piece
     * @param questions doubts that do not stop a label
     * @param lines the exact text of the first label
     * @param preview address of the picture of the first label; empty where there is none
     * @param issued labels printed before for these pieces, newest first
     */
    public record View(
            String numbers,
            int pieces,
            String kind,
            String market,
            String sheet,
            boolean price,
            boolean black,
            boolean symbols,
            List<Blocked> blocked,
            List<String> questions,
            List<String> lines,
            String preview,
            String first,
            String others,
            List<IssuedPaper> issued) {}

    /** A piece whose label is refused, with the reasons and what to do. */
    public record Blocked(String number, List<String> reasons) {}

    private static LabelKind kind(String text) {
        return Stream.of(LabelKind.values())
                .filter(kind -> Issue.word(kind).equals(text))
                .findFirst()
                .orElse(LabelKind.HANG_TAG);
    }

    private Market market(String text) {
        return Stream.of(Market.values())
                .filter(market -> Issue.word(market).equals(text))
                .findFirst()
                .orElse(site.currency().getCurrencyCode().equals("USD") ? Market.US : Market.EU);
    }

    private static SheetSize sheet(String text) {
        return Stream.of(SheetSize.values())
                .filter(sheet -> Issue.word(sheet).equals(text))
                .findFirst()
                .orElse(SheetSize.SINGLE);
    }

    private LabelRequest request(Map<String, String> asked) {
        LabelRequest request = LabelRequest.of(
                        kind(asked.getOrDefault("kind", "")), market(asked.getOrDefault("market", "")))
                .on(sheet(asked.getOrDefault("sheet", "")));
        request = asked.getOrDefault("price", "").isEmpty() ? request : request.withPrice();
        request = asked.getOrDefault("symbols", "").isEmpty() ? request : request.withCareSymbols();
        return asked.getOrDefault("black", "").isEmpty() ? request : request.inBlack();
    }

    private static Map<String, String> asked(Map<String, List<String>> parameters) {
        return parameters.entrySet().stream()
                .collect(Collectors.toMap(Map.Entry::getKey, entry -> String.join(",", entry.getValue())));
    }

    /** The numbers asked for, or of all that a search finds; where that is more than {@link #MOST}, not all of them. */
    private List<String> numbers(Map<String, List<String>> parameters) {
        List<String> numbers = new ArrayList<>();
        for (String list : parameters.getOrDefault("pieces", List.of())) {
            numbers.addAll(Arrays.stream(list.split("[,\\s]+"))
                    .filter(n -> !n.isBlank())
                    .toList());
        }
        if (numbers.isEmpty()) {
            Map<String, List<String>> search = new HashMap<>(parameters);
            search.keySet()
                    .removeAll(List.of("kind", "market", "sheet", "price", "black", "symbols", "pieces", "chosen"));
            PieceQuery query = PieceQuery.of(search);
            if (!query.narrows() && !parameters.containsKey("page")) {
                return List.of();
            }
            int size = PieceQuery.MOST_SIZE;
            for (int page = 1; numbers.size() <= MOST; page++) {
                List<Hit> hits =
                        site.index().search(query.withSize(size).withPage(page)).hits();
                hits.forEach(hit -> numbers.add(hit.card().number()));
                if (hits.size() < size) {
                    break;
                }
            }
        }
        return numbers.stream().distinct().toList();
    }

    private List<Saved<Piece>> pieces(List<String> numbers) {
        List<Saved<Piece>> pieces = new ArrayList<>();
        for (String number : numbers.stream().limit(MOST).toList()) {
            pieces.add(site.archive()
                    .ledger()
                    .find(Kinds.PIECE, number)
                    .orElseThrow(() -> new tenterbook.web.NotHere("piece “" + number + "”")));
        }
        return pieces;
    }

    private void show(Context ctx) throws IOException {
        Map<String, List<String>> parameters = ctx.queryParamMap();
        Map<String, String> asked = asked(parameters);
        LabelRequest request = request(asked);
        List<String> asking = numbers(parameters);
        List<Saved<Piece>> pieces = pieces(asking);
        List<Blocked> blocked = new ArrayList<>();
        List<String> questions = new ArrayList<>();
        if (asking.size() > MOST) {
            questions.add(
                    "At most " + MOST
                            + " labels are printed at once. These are the first of them; narrow the search and print the others after them.");
        }
        List<LabelText> texts = new ArrayList<>();
        for (Saved<Piece> piece : pieces) {
            try {
                texts.add(LabelText.of(Gathering.of(site.archive(), piece.record()), request));
            } catch (LabelBlocked e) {
                e.pieces()
                        .forEach(each -> blocked.add(new Blocked(
                                each.number().value(),
                                each.refusals().stream().map(Object::toString).toList())));
            }
        }
        Map<PieceNumber, String> unprintable = LabelPaper.unprintable(texts, request);
        unprintable.forEach((number, reason) -> blocked.add(new Blocked(number.value(), List.of(reason))));
        texts.removeIf(text -> unprintable.containsKey(text.number()));
        texts.forEach(text -> text.questions().forEach(question -> questions.add(text.number() + ": " + question)));
        LabelText first = texts.isEmpty() ? null : texts.get(0);
        String numbers =
                pieces.stream().map(piece -> piece.record().number().value()).collect(Collectors.joining(","));
        String preview = first == null
                ? ""
                : "/print/preview.png?pieces=%s&kind=%s&market=%s&price=%s&black=%s&symbols=%s"
                        .formatted(
                                encode(first.number().value()),
                                Issue.word(request.kind()),
                                Issue.word(request.market()),
                                request.priceShown() ? "1" : "",
                                request.blackOnly() ? "1" : "",
                                request.careSymbols() ? "1" : "");
        View view = new View(
                numbers,
                pieces.size(),
                Issue.word(request.kind()),
                Issue.word(request.market()),
                Issue.word(request.sheet()),
                request.priceShown(),
                request.blackOnly(),
                request.careSymbols(),
                blocked,
                questions.stream().distinct().limit(30).toList(),
                first == null
                        ? List.of()
                        : first.lines().stream().map(PrintPages::withBasis).toList(),
                preview,
                first == null ? "" : first.number().value(),
                others(pieces, blocked),
                issued(pieces));
        Html.show(ctx, "print", Map.of("page", site.page(ctx, "Print", "print"), "view", view));
    }

    /** A line, and in brackets the rule or the evidence it rests on. */
    private static String withBasis(LabelText.Line line) {
        return line.basis().isEmpty() ? line.text() : "%s [%s]".formatted(line.text(), line.basis());
    }

    private static String encode(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }

    /** The numbers whose labels can be printed, with commas; empty where none is held back or none is left. */
    private static String others(List<Saved<Piece>> pieces, List<Blocked> blocked) {
        List<String> held = blocked.stream().map(Blocked::number).toList();
        return held.isEmpty()
                ? ""
                : pieces.stream()
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
        return site
                .archive()
                .ledger()
                .namedBy(Kinds.PIECE.key(pieces.get(0).record().number().value()))
                .stream()
                .filter(key -> key.kind().equals(Kinds.ISSUED_PAPER.name()))
                .flatMap(key -> site.archive().ledger().find(Kinds.ISSUED_PAPER, key.id()).stream())
                .map(Saved::record)
                .sorted(java.util.Comparator.comparing(IssuedPaper::issuedAt).reversed())
                .limit(10)
                .toList();
    }

    private void preview(Context ctx) throws IOException {
        List<Saved<Piece>> pieces = pieces(numbers(ctx.queryParamMap()));
        if (pieces.isEmpty()) {
            throw new IllegalArgumentException("A preview needs a piece; none was named.");
        }
        LabelFacts facts = Gathering.of(site.archive(), pieces.get(0).record());
        ctx.contentType("image/png");
        ctx.header("Cache-Control", "no-store");
        ctx.result(LabelPaper.face(facts, request(asked(ctx.queryParamMap())), 220));
    }

    /** Prints, and keeps what was printed: the paper is in the ledger before the PDF is sent. */
    private void issue(Context ctx) throws IOException {
        Map<String, List<String>> parameters = ctx.formParamMap();
        LabelRequest request = request(asked(parameters));
        List<Saved<Piece>> pieces = pieces(numbers(parameters));
        String back = "/print?"
                + parameters.entrySet().stream()
                        .map(entry -> entry.getKey() + "=" + encode(String.join(",", entry.getValue())))
                        .collect(Collectors.joining("&"));
        if (pieces.isEmpty()) {
            Said.andGo(ctx, "Choose at least one piece to print.", back);
            return;
        }
        ByteArrayOutputStream pdf = new ByteArrayOutputStream();
        try {
            IssuedPaper paper =
                    Issue.print(site.archive(), pieces, request, pdf, site.clock(), site.author(), Progress.UNWATCHED);
            send(ctx, pdf, paper);
        } catch (LabelBlocked | IllegalArgumentException e) {
            Said.andGo(ctx, "Nothing was printed. The reasons stand below.", back);
        }
    }

    private static void send(Context ctx, ByteArrayOutputStream pdf, IssuedPaper paper) {
        ctx.contentType("application/pdf");
        ctx.header("Cache-Control", "no-store");
        ctx.header("Content-Disposition", "inline; filename=\"" + paper.kind() + "-" + paper.id() + ".pdf\"");
        ctx.result(pdf.toByteArray());
    }

    /** What was printed, word for word, as the ledger keeps it. */
    private void reprint(Context ctx) {
        String id = ctx.pathParam("id");
        IssuedPaper paper = site.archive()
                .ledger()
                .find(Kinds.ISSUED_PAPER, id)
                .orElseThrow(() -> new tenterbook.web.NotHere("issued paper “" + id + "”"))
                .record();
        Map<String, Boolean> changed = new HashMap<>();
        paper.pieces()
                .forEach(issued -> changed.put(
                        issued.piece().value(),
                        site.archive()
                                .ledger()
                                .find(Kinds.PIECE, issued.piece().value())
                                .map(now -> now.version() != issued.version())
                                .orElse(true)));
        Html.show(
                ctx,
                "issued",
                Map.of(
                        "page",
                        site.page(ctx, "Printed on " + paper.issuedAt(), "print"),
                        "paper",
                        paper,
                        "changed",
                        changed));
    }
}

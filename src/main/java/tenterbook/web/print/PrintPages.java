package tenterbook.web.print;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tenterbook.archive.Kinds;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.facts.PieceFacts;
import tenterbook.facts.PieceReader;
import tenterbook.labelling.DistanceOffer;
import tenterbook.labelling.LabelBlocked;
import tenterbook.labelling.LabelText;
import tenterbook.labelling.PrintSettings;
import tenterbook.labelling.SheetSize;
import tenterbook.labelling.paper.LabelPaper;
import tenterbook.ledger.Saved;
import tenterbook.piece.Piece;
import tenterbook.piece.PieceNumber;
import tenterbook.web.Site;
import tenterbook.web.found.ChosenPieces;
import tenterbook.web.found.ChosenPieces.LookedUp;
import tenterbook.web.page.Address;
import tenterbook.web.page.Html;
import tenterbook.web.page.Uncached;
import tenterbook.web.page.Words;
import tenterbook.words.Refusal;

/** Labels: choosing them, with a live preview. {@link LabelPrinting} makes the PDF. */
public final class PrintPages {
    /** More than a fair needs; keeps a slip from printing the whole archive. */
    static final int MOST = 5000;

    /** So many are laid out for the page; whether the others have room is checked when they are printed. */
    private static final int MOST_LAID_OUT = 200;

    /** Labels that can be seen before printing. */
    private static final int MOST_SHOWN = 9;

    private final Site site;

    public PrintPages(Site site) {
        this.site = site;
    }

    public void routes(RoutesConfig routes) {
        routes.get("/print", this::show);
        routes.get("/print/preview.png", this::preview);
    }

    private void show(Context ctx) throws IOException {
        Map<String, List<String>> parameters = ctx.queryParamMap();
        PrintParameters choices = new PrintParameters(parameters);
        ChosenPieces.Found found = ChosenPieces.find(site, parameters, choices.search(), MOST);
        LookedUp looked = lookUp(site, found);
        List<Saved<Piece>> pieces = looked.pieces();
        String problem = found.trouble().isEmpty() ? looked.trouble() : found.trouble();
        boolean possible = true;
        PrintSettings request;
        int places = 1;
        try {
            request = choices.request(site);
            places = LabelPaper.places(request, pieces.size());
        } catch (IllegalArgumentException e) {
            problem = (looked.trouble() + " " + Words.sentence(e)).strip();
            possible = false;
            request = PrintSettings.of(choices.kind(), choices.market(site));
        }
        if (!possible || !looked.unknown().isEmpty()) {
            ctx.status(HttpStatus.UNPROCESSABLE_CONTENT);
        }
        List<BlockedLabels.Label> blocked = new ArrayList<>();
        List<PieceFacts> facts = PieceReader.all(
                site.archive(), pieces.stream().map(Saved::record).toList());
        List<LabelText> texts = printable(facts, pieces, request, possible, blocked);
        DistanceOffer offer = pieces.isEmpty()
                ? new DistanceOffer(List.of(), List.of(), List.of())
                : DistanceOffer.of(facts.get(0), request.market());
        boolean searched = !ChosenPieces.anyNamed(parameters);
        PrintView view = new PrintView(
                problem,
                searched ? "" : ChosenPieces.joined(pieces),
                pieces.size(),
                request,
                choices.asked(),
                choices.fields(),
                searched && !pieces.isEmpty() ? choices.searchFields() : List.of(),
                site.records(Kinds.LABEL_SHEET),
                places,
                blocked,
                remarks(found.numbers().size(), pieces, request),
                LabelQuestions.of(texts, facts),
                LabelQuestions.answered(texts),
                texts.stream()
                        .limit(1)
                        .flatMap(first -> first.lines().stream())
                        .map(PrintPages::withBasis)
                        .toList(),
                texts.isEmpty() ? "" : texts.get(0).number().value(),
                possible ? shown(texts, choices) : List.of(),
                others(looked, blocked),
                issued(pieces),
                searched ? "" : looked.typed(),
                LabelQuestions.noSymbols(site, pieces, request),
                offer.lines(),
                offer.questions().stream().map(Words::w).toList(),
                code(request, texts));
        Html.show(
                ctx,
                "print",
                Map.of(
                        "page",
                        site.page(ctx, w("page.menu.print"), "print"),
                        "view",
                        view,
                        "picker",
                        PiecePicker.of(site, parameters, numbers(pieces))));
    }

    static List<String> numbers(List<Saved<Piece>> pieces) {
        return pieces.stream().map(piece -> piece.record().number().value()).toList();
    }

    /** The pieces found, at most {@link #MOST}. */
    static LookedUp lookUp(Site site, ChosenPieces.Found found) {
        return ChosenPieces.lookUp(site, found.numbers().stream().limit(MOST).toList());
    }

    /** The texts of the labels that can be printed; why the others cannot is added to {@code blocked}. */
    private List<LabelText> printable(
            List<PieceFacts> facts,
            List<Saved<Piece>> pieces,
            PrintSettings request,
            boolean possible,
            List<BlockedLabels.Label> blocked)
            throws IOException {
        List<LabelText> texts = texts(facts, request, blocked);
        Map<PieceNumber, String> unprintable =
                LabelPaper.unprintable(texts.subList(0, Math.min(MOST_LAID_OUT, texts.size())), request);
        for (Saved<Piece> piece : pieces) {
            String reason = unprintable.get(piece.record().number());
            if (reason != null) {
                boolean larger = possible && blocked.size() < BlockedLabels.SOUGHT;
                blocked.add(
                        larger
                                ? BlockedLabels.withLargerSize(site, piece.record(), reason, request)
                                : BlockedLabels.unprintable(piece.record(), reason));
            }
        }
        texts.removeIf(text -> unprintable.containsKey(text.number()));
        return texts;
    }

    /** Code of the labels that are shown, of so many at most as are laid out for it. */
    static String code(PrintSettings request, List<LabelText> texts) {
        return Preview.of(request, texts.stream().limit(MOST_LAID_OUT).toList());
    }

    /** As many of them as are laid out for showing them. */
    static List<Saved<Piece>> laidOut(List<Saved<Piece>> pieces) {
        return pieces.subList(0, Math.min(MOST_LAID_OUT, pieces.size()));
    }

    /** A line, and in brackets its rule or its evidence. */
    private static String withBasis(LabelText.Line line) {
        return line.basis().isEmpty() ? line.text() : "%s [%s]".formatted(line.text(), line.basis());
    }

    private static List<LabelText> texts(
            List<PieceFacts> pieces, PrintSettings request, List<BlockedLabels.Label> blocked) {
        List<LabelText> texts = new ArrayList<>();
        for (PieceFacts piece : pieces) {
            try {
                texts.add(LabelText.of(piece, request));
            } catch (LabelBlocked e) {
                e.pieces().forEach(each -> blocked.add(BlockedLabels.refused(each, piece)));
            }
        }
        return texts;
    }

    private static List<String> remarks(int found, List<Saved<Piece>> pieces, PrintSettings request) {
        Stream<String> first = found > MOST ? Stream.of(w("print.at-most", "most", MOST)) : Stream.empty();
        return Stream.concat(first, LabelQuestions.withoutPrice(pieces, request).stream())
                .toList();
    }

    private static List<PrintView.Shown> shown(List<LabelText> texts, PrintParameters choices) {
        String settings = choices.fields().isEmpty() ? "" : "&" + Address.query(choices.fields());
        return texts.stream()
                .limit(MOST_SHOWN)
                .map(text -> text.number().value())
                .map(number ->
                        new PrintView.Shown(number, "/print/preview.png?pieces=" + Address.encoded(number) + settings))
                .toList();
    }

    /** The numbers whose labels can be printed, with commas; empty where all can, or none. */
    private static String others(LookedUp looked, List<BlockedLabels.Label> blocked) {
        List<String> held = blocked.stream().map(BlockedLabels.Label::number).toList();
        return held.isEmpty() && looked.unknown().isEmpty()
                ? ""
                : looked.pieces().stream()
                        .map(piece -> piece.record().shown().value())
                        .filter(number -> !held.contains(number))
                        .collect(Collectors.joining(","));
    }

    private List<IssuedPaper> issued(List<Saved<Piece>> pieces) {
        if (pieces.size() != 1) {
            return site.ledger().latest(Kinds.ISSUED_PAPER, 5).stream()
                    .map(Saved::record)
                    .toList();
        }
        return IssuedPaperView.papers(site, pieces.get(0).record().number().value()).stream()
                .limit(10)
                .toList();
    }

    private void preview(Context ctx) throws IOException {
        List<Saved<Piece>> pieces = ChosenPieces.saved(site, ChosenPieces.named(site, ctx.queryParamMap()));
        if (pieces.isEmpty()) {
            throw Refusal.of("print.preview-needs-a-piece");
        }
        PieceFacts facts = PieceReader.of(site.archive(), pieces.get(0).record());
        Uncached.send(
                ctx, "image/png", LabelPaper.face(facts, new PrintParameters(ctx.queryParamMap()).request(site), 220));
    }

    /** The sheets of paper a label can be put on, without those that the studio described. */
    public static List<SheetSize> papers() {
        return Stream.of(SheetSize.values())
                .filter(size -> size != SheetSize.OWN)
                .toList();
    }
}

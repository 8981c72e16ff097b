package tenterbook.web.fair;

import static tenterbook.web.page.Words.w;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Kinds;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.documents.DocumentDraft;
import tenterbook.documents.DocumentKind;
import tenterbook.documents.DocumentSettings;
import tenterbook.documents.PhotoSource;
import tenterbook.documents.issue.DocumentIssuer;
import tenterbook.documents.kind.Composition;
import tenterbook.facts.Availability;
import tenterbook.facts.PieceFacts;
import tenterbook.facts.PieceReader;
import tenterbook.labelling.LabelBlocked;
import tenterbook.labelling.LabelKind;
import tenterbook.labelling.LabelText;
import tenterbook.labelling.PrintSettings;
import tenterbook.labelling.SheetSize;
import tenterbook.labelling.issue.FairNeed;
import tenterbook.labelling.issue.LabelIssuer;
import tenterbook.labelling.paper.LabelPaper;
import tenterbook.labelling.rule.Market;
import tenterbook.ledger.Saved;
import tenterbook.ledger.file.Progress;
import tenterbook.piece.Piece;
import tenterbook.piece.PieceNumber;
import tenterbook.piece.fair.Fair;
import tenterbook.web.Site;
import tenterbook.web.page.Address;
import tenterbook.web.page.LanguageChoice;
import tenterbook.web.page.Words;
import tenterbook.words.Written;

/**
 * The papers of a fair: hang tags, price list, packing list, customs list and checklist. A piece that cannot be there is left out and named. What is held back is named with the
 * reason, and the others are printed.
 */
public final class FairPapers {
    private final Site site;
    private final Fair fair;
    private final List<Saved<Piece>> chosen;
    /** Those of the chosen ones that can be there, as far as is recorded. */
    private final List<Saved<Piece>> pieces = new ArrayList<>();

    private final List<String> leftOut = new ArrayList<>();

    FairPapers(Site site, Fair fair) {
        this.site = site;
        this.fair = fair;
        this.chosen = fair.pieces().stream()
                .flatMap(each -> site.ledger().find(Kinds.PIECE, each.piece().value()).stream())
                .toList();
        List<PieceFacts> all = PieceReader.all(
                site.archive(), chosen.stream().map(Saved::record).toList());
        for (int i = 0; i < chosen.size(); i++) {
            Saved<Piece> piece = chosen.get(i);
            Availability.refusal(all.get(i), fair, site.today())
                    .ifPresentOrElse(
                            why -> leftOut.add(piece.record().shown() + ": " + Written.stop(Written.capital(w(why)))),
                            () -> pieces.add(piece));
        }
    }

    /**
     * A paper that may be printed.
     *
     * @param address where it is chosen by itself
     * @param ready for how many pieces it can be printed
     * @param held why it is held back, or for which pieces
     */
    public record Paper(String name, String address, int ready, List<String> held) {}

    /** Tags that can be printed, and why the others cannot. */
    private record Tags(List<Saved<Piece>> pieces, List<LabelText> texts, List<String> held) {}

    /** A sentence for each chosen piece that no paper but the checklist names, since it cannot be there. */
    List<String> leftOut() {
        return leftOut;
    }

    List<Paper> all() throws IOException {
        List<Paper> papers = new ArrayList<>();
        if (pieces.isEmpty()) {
            return chosen.isEmpty() ? papers : List.of(paper(DocumentKind.FAIR_CHECKLIST));
        }
        PrintSettings settings = tagSettings();
        Tags tags = tags(settings);
        String market = settings == null ? "" : "&market=" + settings.market().code();
        papers.add(new Paper(
                Written.capital(w(LabelKind.HANG_TAG)),
                "/print?kind=hang-tag" + market + "&sheet=a4&soldIn=" + Address.encoded(fair.soldIn()) + "&pieces="
                        + numbers(pieces),
                tags.pieces().size(),
                tags.held()));
        for (DocumentKind kind : kinds()) {
            papers.add(paper(kind));
        }
        return papers;
    }

    private Paper paper(DocumentKind kind) {
        return new Paper(
                w(kind),
                "/documents?kind=" + kind.code() + "&fair="
                        + Address.encoded(fair.id().value()) + "&pieces=" + numbers(on(kind)),
                on(kind).size(),
                draft(kind).lacking().stream().map(Words::w).toList());
    }

    /** The checklist says of each chosen piece what it lacks, also that it cannot be there. */
    private List<Saved<Piece>> on(DocumentKind kind) {
        return kind == DocumentKind.FAIR_CHECKLIST ? chosen : pieces;
    }

    private static String numbers(List<Saved<Piece>> some) {
        return Address.encoded(String.join(
                ",", some.stream().map(piece -> piece.record().number().value()).toList()));
    }

    /** A customs list only where the purpose for customs is recorded: most fairs cross no border. */
    private List<DocumentKind> kinds() {
        return Stream.of(
                        DocumentKind.PRICE_LIST,
                        DocumentKind.PACKING_LIST,
                        DocumentKind.CUSTOMS_LIST,
                        DocumentKind.FAIR_CHECKLIST)
                .filter(kind -> kind != DocumentKind.CUSTOMS_LIST || fair.purpose() != null)
                .toList();
    }

    private DocumentDraft draft(DocumentKind kind) {
        DocumentSettings settings = new DocumentSettings(
                kind,
                null,
                null,
                null,
                "",
                new DocumentSettings.Shipment(fair.id().value(), ""),
                LanguageChoice.current());
        return Composition.of(site.archive(), on(kind), settings, site.today()).get(0);
    }

    private @Nullable PrintSettings tagSettings() {
        Market market = FairNeed.market(fair).orElse(null);
        return market == null
                ? null
                : new PrintSettings(
                        LabelKind.HANG_TAG,
                        market,
                        null,
                        new PrintSettings.Content(false, true, false, false, "", fair.soldIn()),
                        new PrintSettings.Placement(
                                market == Market.US ? SheetSize.LETTER : SheetSize.A4,
                                null,
                                PrintSettings.Placement.USUAL_ROLL_MM,
                                1,
                                1),
                        null);
    }

    private Tags tags(@Nullable PrintSettings settings) throws IOException {
        List<String> held = new ArrayList<>();
        if (settings == null) {
            held.add(w("fair.no-market"));
            return new Tags(List.of(), List.of(), held);
        }
        List<Saved<Piece>> possible = new ArrayList<>();
        List<LabelText> texts = new ArrayList<>();
        for (Saved<Piece> piece : pieces) {
            try {
                LabelText text = LabelIssuer.texts(site.archive(), List.of(piece), settings)
                        .get(0);
                Map<PieceNumber, String> unprintable = LabelPaper.unprintable(List.of(text), settings);
                if (unprintable.isEmpty()) {
                    possible.add(piece);
                    texts.add(text);
                } else {
                    held.add(piece.record().shown() + ": " + String.join(" ", unprintable.values()));
                }
            } catch (LabelBlocked e) {
                held.add(piece.record().shown() + ": "
                        + e.pieces().stream()
                                .flatMap(each -> each.refusals().stream())
                                .map(refusal -> Written.stop(w(refusal.found())))
                                .findFirst()
                                .orElse(""));
            }
        }
        return new Tags(possible, texts, held);
    }

    /** Stores and issues every paper that is not held back, in the order of {@link #all}. */
    List<IssuedPaper> issue() throws IOException {
        List<IssuedPaper> issued = new ArrayList<>();
        if (chosen.isEmpty()) {
            return issued;
        }
        PrintSettings settings = tagSettings();
        Tags tags = tags(settings);
        if (settings != null && !tags.pieces().isEmpty()) {
            issued.add(LabelIssuer.print(
                    site.archive(),
                    tags.pieces(),
                    tags.texts(),
                    settings,
                    site.clock(),
                    site.author(),
                    Progress.UNWATCHED));
        }
        for (DocumentKind kind : pieces.isEmpty() ? List.of(DocumentKind.FAIR_CHECKLIST) : kinds()) {
            DocumentDraft draft = draft(kind);
            if (draft.lacking().isEmpty()) {
                issued.addAll(DocumentIssuer.print(
                        site.archive(),
                        List.of(draft),
                        "",
                        PhotoSource.of(site.previews()),
                        new ByteArrayOutputStream(),
                        site.clock(),
                        site.author()));
            }
        }
        return issued;
    }
}

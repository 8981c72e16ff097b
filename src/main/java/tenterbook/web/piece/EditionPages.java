package tenterbook.web.piece;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Editions;
import tenterbook.facts.PieceFacts;
import tenterbook.facts.PieceReader;
import tenterbook.ledger.Saved;
import tenterbook.piece.Piece;
import tenterbook.piece.edition.EditionPart;
import tenterbook.piece.edition.EditionPlace;
import tenterbook.recipe.BoardUse;
import tenterbook.web.Site;
import tenterbook.web.page.Html;
import tenterbook.web.page.NotFound;
import tenterbook.web.record.FactLine;
import tenterbook.words.Message;

/** Editions and sets: all of them, and the pieces of one with their places, proofs apart. */
public final class EditionPages {
    private final Site site;

    public EditionPages(Site site) {
        this.site = site;
    }

    public void routes(RoutesConfig routes) {
        routes.get("/editions", this::show);
    }

    /**
     * A piece of an edition.
     *
     * @param place as typed; empty where only the edition is recorded
     * @param state of the boards, typed or else that of its clampings; empty where not recorded
     */
    public record Line(Piece piece, String place, String state, String status, boolean sold) {}

    /** Pieces that are numbered together, as the copies or the artist's proofs. */
    public record Section(String title, List<Line> lines) {}

    /**
     * An edition or set.
     *
     * @param facts its size and the numbers that are given and free
     */
    public record EditionView(String name, List<FactLine> facts, List<Section> sections) {}

    private void show(Context ctx) {
        String name = Objects.requireNonNullElse(ctx.queryParam("name"), "").strip();
        Editions editions = new Editions(site.archive());
        if (name.isEmpty()) {
            Html.show(
                    ctx,
                    "editions",
                    Map.of("page", site.page(ctx, w("edition.title"), "pieces"), "names", editions.names()));
            return;
        }
        List<Piece> pieces = editions.pieces(name).stream().map(Saved::record).toList();
        if (pieces.isEmpty()) {
            throw new NotFound(Message.of("edition.none-called", "name", name));
        }
        String spelt = pieces.get(0).inEdition().name();
        Html.show(ctx, "edition", Map.of("page", site.page(ctx, spelt, "pieces"), "view", view(spelt, pieces)));
    }

    private EditionView view(String name, List<Piece> pieces) {
        List<Section> sections = new ArrayList<>();
        for (EditionPart part : EditionPart.values()) {
            add(sections, w("edition.section." + part), pieces, piece -> part == part(piece));
        }
        add(sections, w("edition.section.unread"), pieces, piece -> part(piece) == null);
        List<FactLine> facts = new ArrayList<>();
        for (EditionPart part : List.of(EditionPart.COPY, EditionPart.OF_SET)) {
            List<Piece> numbered =
                    pieces.stream().filter(piece -> part == part(piece)).toList();
            if (!numbered.isEmpty()) {
                numbers(facts, numbered);
            }
        }
        facts.add(new FactLine(
                w("edition.sold"),
                String.valueOf(pieces.stream().filter(Editions::sold).count())));
        return new EditionView(name, facts, sections);
    }

    private static @Nullable EditionPart part(Piece piece) {
        return piece.placeInEdition().map(EditionPlace::part).orElse(null);
    }

    private void add(List<Section> sections, String title, List<Piece> pieces, Predicate<Piece> which) {
        List<Line> lines = pieces.stream().filter(which).map(this::line).toList();
        if (!lines.isEmpty()) {
            sections.add(new Section(title, lines));
        }
    }

    private Line line(Piece piece) {
        PieceFacts facts = PieceReader.of(site.archive(), piece);
        String state = piece.placeInEdition().map(EditionPlace::state).orElse("");
        return new Line(
                piece,
                piece.edition(),
                state.isEmpty()
                        ? facts.boardUses().stream()
                                .map(BoardUse::state)
                                .filter(each -> !each.isEmpty())
                                .distinct()
                                .collect(Collectors.joining(", "))
                        : state,
                FactLine.or(facts.whereabouts().status()),
                Editions.sold(piece));
    }

    /** Sizes as the pieces state them, more than one where they differ; which numbers are given and which are free. */
    private static void numbers(List<FactLine> facts, List<Piece> pieces) {
        TreeSet<Integer> sizes = new TreeSet<>();
        TreeSet<Integer> given = new TreeSet<>();
        for (Piece piece : pieces) {
            EditionPlace place = piece.placeInEdition().orElseThrow();
            if (place.size() != null) {
                sizes.add(piece.inEdition().enlarged() ? piece.inEdition().enlargedTo() : place.size());
            }
            if (place.number() != null) {
                given.add(place.number());
            }
        }
        facts.add(new FactLine(
                w("edition.size"),
                FactLine.or(sizes.stream().map(String::valueOf).collect(Collectors.joining(", "))),
                sizes.size() > 1 ? w("edition.sizes-differ") : ""));
        pieces.stream()
                .filter(piece -> piece.inEdition().enlarged())
                .findFirst()
                .ifPresent(piece -> facts.add(new FactLine(
                        w("edition.enlarged"),
                        w(
                                "edition.enlarged-from-to",
                                "from",
                                piece.inEdition().enlargedFrom(),
                                "to",
                                piece.inEdition().enlargedTo()))));
        facts.add(new FactLine(w("edition.given"), FactLine.or(ranges(given))));
        if (!sizes.isEmpty()) {
            TreeSet<Integer> free = new TreeSet<>();
            for (int i = 1; i <= sizes.last(); i++) {
                free.add(i);
            }
            free.removeAll(given);
            facts.add(new FactLine(w("edition.free"), free.isEmpty() ? w("edition.all-given") : ranges(free)));
        }
    }

    /** As in '1, 3–9'. */
    static String ranges(TreeSet<Integer> numbers) {
        List<String> texts = new ArrayList<>();
        Integer from = null;
        for (Integer number : numbers) {
            from = from == null ? number : from;
            if (!numbers.contains(number + 1)) {
                texts.add(from.equals(number) ? String.valueOf(number) : from + "–" + number);
                from = null;
            }
        }
        return String.join(", ", texts);
    }
}

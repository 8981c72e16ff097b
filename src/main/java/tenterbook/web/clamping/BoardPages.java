package tenterbook.web.clamping;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import tenterbook.archive.Kinds;
import tenterbook.board.BoardPair;
import tenterbook.ledger.Saved;
import tenterbook.search.index.PieceCard;
import tenterbook.web.Site;
import tenterbook.web.form.Form;
import tenterbook.web.form.Forms;
import tenterbook.web.page.Html;
import tenterbook.web.record.RecordEditor;

/** Board pairs: the list, one pair with every piece made from it, and its form. */
public final class BoardPages {
    /** Pieces on a board's page; a search among them shows the others. */
    private static final int SHOWN = 120;

    /** Pieces shown beside a board in the list. */
    private static final int NEWEST = 6;

    private final Site site;
    private final RecordEditor<BoardPair> editor;

    public BoardPages(Site site) {
        this.site = site;
        this.editor = new RecordEditor<>(
                site,
                new Forms(site::currency).boards(),
                new RecordEditor.About("board-form", "boards", "/boards"),
                board -> "/boards/" + board.id(),
                Map::of);
    }

    public void routes(RoutesConfig routes) {
        routes.get("/boards", this::list);
        editor.routes(routes, ctx -> Form.empty());
        routes.get("/boards/{id}", this::show);
    }

    /** A pair in the list, with its newest pieces. */
    public record ListedBoard(BoardPair board, List<PieceCard> pieces, int total) {}

    private ListedBoard listed(BoardPair board) {
        int total = site.index().countByBoard(board.id().value());
        return new ListedBoard(
                board, site.index().byBoard(board.id().value(), Math.max(0, total - NEWEST), NEWEST), total);
    }

    private void list(Context ctx) {
        List<ListedBoard> boards =
                site.records(Kinds.BOARD_PAIR).stream().map(this::listed).toList();
        Html.show(ctx, "boards", Map.of("page", site.page(ctx, w("board.title"), "boards"), "boards", boards));
    }

    private void show(Context ctx) {
        String id = ctx.pathParam("id");
        Saved<BoardPair> saved = site.saved(Kinds.BOARD_PAIR, id);
        Html.show(
                ctx,
                "board",
                Map.of(
                        "page", site.page(ctx, saved.record().title(), "boards"),
                        "board", saved.record(),
                        "pieces", site.index().byBoard(id, 0, SHOWN),
                        "total", site.index().countByBoard(id)));
    }
}

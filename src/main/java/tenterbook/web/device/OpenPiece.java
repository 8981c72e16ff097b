package tenterbook.web.device;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Kinds;
import tenterbook.piece.Piece;
import tenterbook.web.Site;
import tenterbook.web.page.Visitor;

/** The piece whose page or form was shown last at this computer; forgotten when the program ends. */
final class OpenPiece {
    private final Site site;
    private volatile @Nullable String number;

    OpenPiece(Site site) {
        this.site = site;
    }

    void routes(RoutesConfig routes) {
        routes.after("/pieces/{number}", this::note);
        routes.after("/pieces/{number}/edit", this::note);
    }

    private void note(Context ctx) {
        Visitor visitor = Visitor.now();
        boolean here = !visitor.onDevice() && !visitor.equals(Visitor.STRANGER);
        if (here && ctx.statusCode() == 200 && ctx.method().name().equals("GET")) {
            number = ctx.pathParam("number");
        }
    }

    /** Empty too where it is not there any more; the form of a new piece is none. */
    Optional<Piece> piece() {
        String open = number;
        return open == null
                ? Optional.empty()
                : site.ledger().find(Kinds.PIECE, open).map(saved -> saved.record());
    }
}

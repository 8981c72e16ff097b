package tenterbook.web.piece;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Editions;
import tenterbook.ledger.Saved;
import tenterbook.piece.Piece;
import tenterbook.piece.edition.EditionPlace;
import tenterbook.piece.edition.InEdition;
import tenterbook.web.Site;

/** Editions and sets for programs. */
public final class EditionApi {
    private final Site site;

    public EditionApi(Site site) {
        this.site = site;
    }

    public void routes(RoutesConfig routes) {
        routes.get("/api/editions", this::list);
    }

    @JsonInclude(JsonInclude.Include.ALWAYS)
    record Listed(List<Edition> editions) {}

    /**
     * @param size the largest number of copies that a piece states; null where none does
     * @param enlargedFrom its size before it grew after its first sale; null where it did not
     */
    record Edition(
            String name, @Nullable Integer size, @Nullable Integer enlargedFrom, List<Place> pieces) {}

    /**
     * @param number of the piece, its first one
     * @param edition as typed, as in '2 of 9'
     * @param part of the edition, as in 'copy'; null where the text is not read, as is place
     * @param place its number among its part
     */
    record Place(
            String number,
            String edition,
            @Nullable String part,
            @Nullable Integer place,
            boolean sold) {}

    private void list(Context ctx) {
        String name = ctx.queryParam("name");
        String key = name == null || name.isBlank() ? "" : InEdition.key(name);
        Editions editions = new Editions(site.archive());
        ctx.json(new Listed(editions.names().keySet().stream()
                .filter(each -> key.isEmpty() || key.equals(InEdition.key(each)))
                .map(each -> edition(each, editions.pieces(each)))
                .toList()));
    }

    private static Edition edition(String name, List<Saved<Piece>> saved) {
        List<Piece> pieces = saved.stream().map(Saved::record).toList();
        int size = pieces.stream().mapToInt(Editions::size).max().orElse(0);
        Integer from = pieces.stream()
                .map(Piece::inEdition)
                .filter(InEdition::enlarged)
                .map(InEdition::enlargedFrom)
                .findFirst()
                .orElse(null);
        return new Edition(
                name,
                size == 0 ? null : size,
                from,
                pieces.stream().map(EditionApi::place).toList());
    }

    private static Place place(Piece piece) {
        EditionPlace place = piece.placeInEdition().orElse(null);
        return new Place(
                piece.number().value(),
                piece.edition(),
                place == null ? null : place.part().toString(),
                place == null ? null : place.number(),
                Editions.sold(piece));
    }
}

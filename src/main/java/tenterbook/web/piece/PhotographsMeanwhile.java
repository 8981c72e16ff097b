package tenterbook.web.piece;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import tenterbook.archive.Kinds;
import tenterbook.ledger.Saved;
import tenterbook.piece.Piece;
import tenterbook.piece.PiecePhoto;
import tenterbook.web.Site;
import tenterbook.web.form.Form;

/** Photographs that a device added to a piece while its form was open on the computer. */
final class PhotographsMeanwhile {
    private PhotographsMeanwhile() {}

    /**
     * Where nothing but photographs was added since the version the form was opened with, they join the form, which is then of the
     * newest version. Any other change stays a conflict.
     *
     * @param row adds a photograph to the form
     */
    static void join(Site site, String number, Form form, Consumer<PiecePhoto> row) {
        Optional<Saved<Piece>> newest = site.ledger().find(Kinds.PIECE, number);
        int version = form.version(0);
        if (newest.isEmpty() || version < 1 || version >= newest.get().version()) {
            return;
        }
        Piece now = newest.get().record();
        site.ledger().history(Kinds.PIECE.key(number)).stream()
                .filter(revision -> revision.version() == version && !revision.withdrawn())
                .findFirst()
                .map(revision -> Kinds.PIECE.codec().fromText(revision.json()))
                .filter(before -> now.photos().size() > before.photos().size()
                        && now.photos().subList(0, before.photos().size()).equals(before.photos())
                        && now.withPhotos(before.photos()).equals(before))
                .ifPresent(before -> {
                    List<PiecePhoto> added = now.photos()
                            .subList(before.photos().size(), now.photos().size());
                    added.forEach(row);
                    form.put("version", newest.get().version());
                });
    }
}

package tenterbook.web.photo;

import static tenterbook.web.page.Words.w;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.archive.arrival.PiecePhotographs;
import tenterbook.ledger.LedgerTransaction;
import tenterbook.measure.Digest;
import tenterbook.piece.PhotoRole;
import tenterbook.piece.Piece;
import tenterbook.web.form.Form;
import tenterbook.web.form.TypedNumber;
import tenterbook.words.Message;

/** What the form of waiting photographs asks for: photographs given to pieces and photographs set aside. */
final class GivenPhotos {
    private final Archive archive;
    private final Form form;
    private final Map<String, List<PiecePhotographs>> byPiece = new LinkedHashMap<>();
    private final List<Digest> aside = new ArrayList<>();

    private GivenPhotos(Archive archive, Form form) {
        this.archive = archive;
        this.form = form;
    }

    /** What cannot be done stands as a problem in its row of the form. */
    static GivenPhotos read(Archive archive, Form form) {
        GivenPhotos given = new GivenPhotos(archive, form);
        form.rows("photos").forEach(given::read);
        return given;
    }

    /** Those for each piece, by its first number. */
    Map<String, List<PiecePhotographs>> byPiece() {
        return byPiece;
    }

    List<Digest> aside() {
        return aside;
    }

    boolean nothing() {
        return byPiece.isEmpty() && aside.isEmpty();
    }

    /** The piece typed for all photographs of the row's group; empty where it is in none, or none was typed. */
    private String ofGroup(Form row) {
        String group = row.text("group");
        return group.matches("\\d{1,4}")
                ? form.row("groups", Integer.parseInt(group)).text("number")
                : "";
    }

    private Optional<Piece> piece(String typed) {
        return TypedNumber.piece(archive, typed);
    }

    private void read(Form row) {
        String proposed = row.text("proposed");
        boolean putAside = row.checked("aside");
        boolean ofGroup = row.text("number").isEmpty() && proposed.isEmpty() && !putAside;
        String typed = ofGroup ? ofGroup(row) : row.text("number");
        if (typed.isEmpty() && proposed.isEmpty() && !putAside) {
            return;
        }
        Digest digest;
        try {
            digest = new Digest(row.text("digest"));
        } catch (IllegalArgumentException e) {
            row.problem("number", w("giving.which-photograph"));
            return;
        }
        if (putAside && typed.isEmpty() && proposed.isEmpty()) {
            aside.add(digest);
        } else if (putAside) {
            row.problem("number", w("giving.not-both"));
        } else if (!typed.isEmpty() && !proposed.isEmpty() && !piece(typed).equals(piece(proposed))) {
            row.problem("number", w("giving.two-numbers", "proposed", proposed, "typed", typed));
        } else {
            String number = typed.isEmpty() ? proposed : typed;
            piece(number)
                    .ifPresentOrElse(
                            piece -> give(row, digest, piece),
                            () -> row.problem("number", w("not-here.piece", "id", number)));
        }
    }

    private void give(Form row, Digest photo, Piece piece) {
        String number = piece.number().value();
        Integer state = row.wholeNumber("state");
        Message refusal = piece.stateRefused(state).orElse(null);
        if (refusal != null) {
            row.problem("state", w(refusal));
        } else {
            // Which one is the first of its piece is decided where they are added.
            PhotoRole role = row.choice("role", PhotoRole.values());
            byPiece.computeIfAbsent(number, each -> new ArrayList<>())
                    .add(new PiecePhotographs(List.of(photo), role, "", state));
        }
    }

    /** Writes all of it, and gives the photographs to be set aside that were set aside before. */
    List<Digest> write(LedgerTransaction act) {
        byPiece.forEach((number, photos) -> add(act, number, photos));
        List<Digest> gone = new ArrayList<>();
        for (Digest photo : aside) {
            archive.ledger()
                    .find(Kinds.PHOTO, photo.hex())
                    .ifPresentOrElse(
                            found ->
                                    act.withdraw(Kinds.PHOTO, photo.hex(), found.version(), w("giving.set-aside-note")),
                            () -> gone.add(photo));
        }
        return gone;
    }

    private void add(LedgerTransaction act, String number, List<PiecePhotographs> given) {
        var saved = archive.ledger().find(Kinds.PIECE, number).orElseThrow();
        Piece piece = saved.record();
        for (PiecePhotographs photographs : given) {
            piece = photographs.on(piece);
        }
        act.save(Kinds.PIECE, piece, saved.version(), w("giving.given-note"));
    }
}

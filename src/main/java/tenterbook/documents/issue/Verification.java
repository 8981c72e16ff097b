package tenterbook.documents.issue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.archive.Papers;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.documents.DocumentOrigin;
import tenterbook.documents.VerificationCode;
import tenterbook.ledger.Saved;
import tenterbook.ledger.revision.Revision;
import tenterbook.measure.Digest;
import tenterbook.piece.Piece;

/**
 * The result of looking up a certificate's code.
 *
 * @param revision of the piece, whose hash begins with the code
 * @param holds whether the revision's contents still match its hash
 * @param linked whether it still has the hash of the revision before it
 * @param newest the newest version of the piece; 0 where it was withdrawn
 * @param certificates issued here with this code
 */
public record Verification(
        Revision revision, boolean holds, boolean linked, int newest, List<IssuedPaper> certificates) {
    private static final int AT_ONCE = 1000;

    /** Whether nothing was altered other than by an erasure. */
    public boolean whole() {
        return linked && (holds || erased());
    }

    /** Whether it no longer matches its hash because particulars of a person were erased from it. */
    public boolean erased() {
        return !holds && revision.redacted();
    }

    /** Every revision of a piece whose hash begins with the code, usually one. */
    public static List<Verification> of(Archive archive, VerificationCode code) {
        List<Verification> found = new ArrayList<>();
        Digest before = Revision.NONE;
        long last = 0;
        List<Revision> some = archive.ledger().after(0, AT_ONCE);
        while (!some.isEmpty()) {
            for (Revision revision : some) {
                if (revision.key().kind().equals(Kinds.PIECE.name()) && code.begins(revision.hash())) {
                    found.add(subject(archive, revision, revision.previous().equals(before), code));
                }
                before = revision.hash();
                last = revision.sequence();
            }
            some = archive.ledger().after(last, AT_ONCE);
        }
        return found;
    }

    private static Verification subject(Archive archive, Revision revision, boolean linked, VerificationCode code) {
        String number = revision.key().id();
        Optional<Saved<Piece>> now = archive.ledger().find(Kinds.PIECE, number);
        List<IssuedPaper> certificates = Papers.of(archive.ledger(), number).readable().stream()
                .filter(paper -> code.toString().equals(DocumentOrigin.of(paper).certificateCode()))
                .toList();
        return new Verification(
                revision,
                revision.computedHash().equals(revision.hash()),
                linked,
                now.map(Saved::version).orElse(0),
                certificates);
    }
}

package tenterbook.exchange;

import com.fasterxml.jackson.databind.node.TextNode;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.slf4j.LoggerFactory;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.Progress;
import tenterbook.ledger.revision.EarlierPart;
import tenterbook.ledger.revision.RecordKey;
import tenterbook.ledger.revision.Revision;
import tenterbook.measure.Digest;
import tenterbook.words.Message;

/**
 * One piece's history as a file that anyone can check without this program, and that has nothing else of the archive: the whole
 * chain as digests, and the texts of this piece's revisions that give some of them.
 *
 * <p>The file is JSON with one thing on each line: {@code about} says how to check it and what follows, {@code not_shown} what does
 * not, {@code earlier} lists what the first revision of format 2 commits to, {@code
 * chain} what each hash of format 2 covers, {@code parts} the texts that are shown, each of which gives a digest (of an earlier
 * revision whose private part is shown, first the {@code link} that has the private digest), and {@code sha256} covers all
 * bytes before its line. {@link ProofCheck} says what follows from it and what does not.
 */
public final class PieceProof {
    /** What a proof shows besides the public parts of the piece. */
    public enum Include {
        /** Its clampings, with their boards and cloths. */
        CLAMPINGS,
        /** Holders, prices, notes, authors. */
        PRIVATE_PARTS
    }

    /** How to check the file, for someone who has nothing else. */
    private static final List<Message> ABOUT = List.of(
            Message.of("exchange.proof.about.what"),
            Message.of("exchange.proof.about.sum"),
            Message.of("exchange.proof.about.earlier"),
            Message.of("exchange.proof.about.chain"),
            Message.of("exchange.proof.about.end"),
            Message.of("exchange.proof.about.parts"),
            Message.of("exchange.proof.about.versions"),
            Message.of("exchange.proof.about.shows"));

    private static final int PAGE = 500;
    private final Archive archive;
    private final Progress progress;

    public PieceProof(Archive archive, Progress progress) {
        this.archive = archive;
        this.progress = progress;
    }

    /**
     * Writes the proof of one piece.
     *
     * @throws ArchiveProblem where there is no such piece or nothing can be proven of it; no file is left
     */
    public void write(String number, Set<Include> include, Path file) {
        Set<RecordKey> shown = shown(number, include.contains(Include.CLAMPINGS));
        if (archive.ledger().history(Kinds.PIECE.key(number)).isEmpty()) {
            throw new ArchiveProblem(Message.of("exchange.proof.no-piece", "piece", number));
        }
        long last = archive.ledger().lastSequence();
        if (archive.ledger().after(last - 1, 1).get(0).format() == 1) {
            throw new ArchiveProblem(Message.of("exchange.proof.nothing-yet"));
        }
        if (Files.exists(file)) {
            throw new ArchiveProblem(Message.of("exchange.proof.already-there", "file", file));
        }
        boolean whole = false;
        try {
            write(number, shown, include.contains(Include.PRIVATE_PARTS), last, file);
            whole = true;
        } catch (IOException e) {
            throw new ArchiveProblem(
                    Message.of("exchange.proof.not-written", "file", file.toAbsolutePath(), "why", e.toString()), e);
        } finally {
            if (!whole) {
                remove(file);
            }
        }
    }

    private static void remove(Path file) {
        try {
            Files.deleteIfExists(file);
        } catch (IOException e) {
            LoggerFactory.getLogger(PieceProof.class).warn("An unfinished proof is left at {}", file, e);
        }
    }

    private Set<RecordKey> shown(String number, boolean made) {
        Set<RecordKey> shown = new HashSet<>();
        shown.add(Kinds.PIECE.key(number));
        if (made) {
            archive.ledger().references(Kinds.PIECE.key(number)).stream()
                    .filter(key -> key.kind().equals(Kinds.CLAMPING.name()))
                    .forEach(clamping -> {
                        shown.add(clamping);
                        archive.ledger().references(clamping).stream()
                                .filter(key -> key.kind().equals(Kinds.BOARD_PAIR.name())
                                        || key.kind().equals(Kinds.CLOTH.name()))
                                .forEach(shown::add);
                    });
        }
        return shown;
    }

    private interface Each {
        void take(Revision revision, @Nullable EarlierPart earlier) throws IOException;
    }

    private void write(String number, Set<RecordKey> shown, boolean confidential, long last, Path file)
            throws IOException {
        MessageDigest sum = Digest.sha256();
        try (Writer out = new BufferedWriter(new OutputStreamWriter(
                new DigestOutputStream(Files.newOutputStream(file, StandardOpenOption.CREATE_NEW), sum),
                StandardCharsets.UTF_8))) {
            Revision end = archive.ledger().after(last - 1, 1).get(0);
            out.write("{\n\"proof\":1,\n\"about\":[");
            texts(ABOUT, out);
            out.write("\n],\n\"not_shown\":[");
            texts(ProofCheck.NOT_SHOWN, out);
            out.write("\n],\n\"piece\":%s,\n\"end_sequence\":%d,\n\"end_hash\":\"%s\",\n\"earlier\":["
                    .formatted(TextNode.valueOf(number), last, end.hash()));
            Lines earlier = new Lines(out);
            each(last, (revision, part) -> {
                if (part != null) {
                    earlier.add(part.row());
                }
            });
            out.write("\n],\n\"chain\":[");
            Lines chain = new Lines(out);
            each(last, (revision, part) -> {
                if (revision.chained().isPresent()) {
                    chain.add(TextNode.valueOf(revision.chained().get()).toString());
                }
            });
            out.write("\n],\n\"parts\":[");
            Lines parts = new Lines(out);
            each(last, (revision, part) -> {
                if (shown.contains(revision.key())) {
                    parts(revision, part, confidential, parts);
                }
            });
            out.write("\n],\n");
            out.flush();
            out.write("\"sha256\":\"%s\"\n}\n".formatted(Digest.of(sum)));
        }
    }

    private static void texts(List<Message> texts, Writer out) throws IOException {
        Lines lines = new Lines(out);
        for (Message text : texts) {
            lines.add(TextNode.valueOf(text.inEnglish()).toString());
        }
    }

    private static void parts(Revision revision, @Nullable EarlierPart earlier, boolean confidential, Lines parts)
            throws IOException {
        String shown = earlier == null ? revision.publicText().orElseThrow() : earlier.publicText();
        parts.add("[%d,\"public\",%s]".formatted(revision.sequence(), TextNode.valueOf(shown)));
        Optional<String> kept = earlier == null ? revision.privateText() : earlier.privateText();
        if (confidential && kept.isPresent()) {
            if (earlier != null) {
                parts.add("[%d,\"link\",%s]".formatted(revision.sequence(), TextNode.valueOf(earlier.link())));
            }
            parts.add("[%d,\"private\",%s]".formatted(revision.sequence(), TextNode.valueOf(kept.get())));
        }
    }

    /** Every revision to the last, those of format 1 as they are committed to. */
    private void each(long last, Each take) throws IOException {
        long sequence = 0;
        List<EarlierPart> parts = archive.ledger().earlierParts(sequence, PAGE);
        while (!parts.isEmpty()) {
            for (EarlierPart part : parts) {
                take.take(part.revision(), part);
                sequence = part.revision().sequence();
            }
            parts = archive.ledger().earlierParts(sequence, PAGE);
        }
        while (sequence < last) {
            for (Revision revision : archive.ledger().after(sequence, PAGE)) {
                sequence = revision.sequence();
                if (sequence <= last) {
                    take.take(revision, null);
                }
            }
            progress.at(Math.min(sequence, last), last, Message.of("exchange.proof.writing"));
            progress.orStop();
        }
    }

    /** The elements of a JSON array, one on each line. */
    private static final class Lines {
        private final Writer out;
        private boolean any;

        Lines(Writer out) {
            this.out = out;
        }

        void add(String element) throws IOException {
            out.write((any ? ",\n" : "\n") + element);
            any = true;
        }
    }
}

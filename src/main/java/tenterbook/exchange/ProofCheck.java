package tenterbook.exchange;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import tenterbook.archive.Kinds;
import tenterbook.ledger.Finding;
import tenterbook.ledger.Revision;
import tenterbook.measure.Digest;

/**
 * Checks what {@link PieceProof} wrote, with nothing but the file.
 *
 * <p>Shown, where nothing is found wrong: the texts are those that were written at their places in one chain of revisions, and
 * that chain ends in the hash the file names. Not shown: what {@link #NOT_SHOWN} says.
 */
public final class ProofCheck {
    /** What no such file can show. */
    public static final List<String> NOT_SHOWN = List.of(
            "That what was recorded is true, or that the piece before you is the one described.",
            "When and by whom it was written: the clock and the names are those of the studio's own computer.",
            "That the chain is the studio's: compare the hash at its end with one you have from elsewhere, as from a packed copy or a certificate. Whoever has the ledger could write a whole new chain.",
            "That no later version of this piece was kept back: a revision that is not shown does not tell which piece it is of.",
            "Anything of revisions whose text is not shown, and of format 1 that their older hashes fit: those cover private words too.");

    private final ProofFile proof;
    private final List<Finding> findings;
    private final Map<Long, Link> links = new HashMap<>();
    private final Map<Long, JsonNode> publicParts = new TreeMap<>();
    private final TreeSet<Long> privateParts = new TreeSet<>();

    /**
     * @param digests by what a text is of: public, private or link
     * @param chained what the hash covers; for format 1 null
     */
    private record Link(Map<String, String> digests, JsonNode chained) {}

    /**
     * @param findings everything wrong; empty where the proof holds
     * @param shows sentences on what it shows, if it holds
     */
    public record Result(List<Finding> findings, List<String> shows) {}

    private ProofCheck(ProofFile proof, List<Finding> findings) {
        this.proof = proof;
        this.findings = findings;
    }

    public static Result run(Path file) throws IOException {
        List<Finding> findings = new ArrayList<>();
        try {
            ProofCheck check = new ProofCheck(ProofFile.read(file, findings), findings);
            check.chain();
            check.parts();
            check.versions();
            return new Result(List.copyOf(findings), findings.isEmpty() ? check.shows() : List.of());
        } catch (IllegalArgumentException e) {
            findings.add(new Finding(file.getFileName().toString(), "is no whole proof: " + e.getMessage()));
            return new Result(List.copyOf(findings), List.of());
        }
    }

    private static String sha256(String text) {
        return Digest.of(text.getBytes(StandardCharsets.UTF_8)).hex();
    }

    private void chain() {
        String previous = Revision.NONE.hex();
        long sequence = 0;
        for (JsonNode row : proof.earlier()) {
            sequence++;
            if (row.get(0).longValue() != sequence) {
                say("earlier revision " + sequence, "stands there as %s".formatted(row.get(0)));
            }
            Map<String, String> digests = new HashMap<>();
            digests.put("public", row.get(1).textValue());
            digests.put("link", row.get(2).textValue());
            links.put(sequence, new Link(digests, null));
            // The hash of an earlier revision is not shown; what follows commits to all of them by ‘before’.
            previous = null;
        }
        String before = sequence == 0
                ? ""
                : sha256(proof.earlier().stream().map(JsonNode::toString).collect(Collectors.joining(",", "[", "]")));
        for (String text : proof.chain()) {
            sequence++;
            JsonNode link = ProofFile.object(text);
            String where = "revision " + sequence;
            if (link.path("format").asInt() != 2 || link.path("sequence").asLong() != sequence) {
                say(where, "is not the next revision of format 2: “%s”".formatted(text));
            }
            if (previous != null && !link.path("previous_hash").asText().equals(previous)) {
                say(where, "does not name the hash of the revision before it: one of the two was changed");
            }
            if (!link.path("before").asText("").equals(before)) {
                say(where, "does not commit to the earlier revisions as they stand here");
            }
            before = "";
            previous = sha256(text);
            links.put(
                    sequence,
                    new Link(
                            Map.of(
                                    "public", link.path("public_digest").asText(),
                                    "private", link.path("private_digest").asText()),
                            link));
        }
        if (proof.chain().isEmpty()
                || sequence != proof.endSequence()
                || !proof.endHash().equals(previous)) {
            say(
                    "the end of the chain",
                    "is revision %d with the hash %s, but the file says revision %d with %s"
                            .formatted(sequence, previous, proof.endSequence(), proof.endHash()));
        }
    }

    private void parts() {
        for (JsonNode row : proof.parts()) {
            long sequence = row.get(0).longValue();
            String which = row.get(1).textValue();
            String where = "the %s part of revision %d".formatted(which, sequence);
            String text = row.get(2).textValue();
            Link link = links.get(sequence);
            String due = link == null ? null : link.digests().get(which);
            if (due == null) {
                say(where, "belongs to nothing in the chain");
            } else if (!sha256(text).equals(due)) {
                say(where, "does not give its digest: it was changed");
            } else if (which.equals("public")) {
                publicParts.put(sequence, ProofFile.object(text));
            } else if (which.equals("link")) {
                link.digests().put("private", ProofFile.pair(text).get(1).textValue());
            } else {
                privateParts.add(sequence);
            }
        }
    }

    /** Of a revision of format 1 the public part says these; of format 2, what its hash covers. */
    private JsonNode link(long sequence) {
        JsonNode chained = links.get(sequence).chained();
        return chained == null ? publicParts.get(sequence) : chained;
    }

    private boolean ofThePiece(long sequence) {
        return link(sequence).path("kind").asText().equals(Kinds.PIECE.name())
                && publicParts.get(sequence).path("id").asText().equals(proof.piece());
    }

    private void versions() {
        int version = 0;
        for (long sequence : publicParts.keySet()) {
            if (ofThePiece(sequence) && link(sequence).path("version").asInt() != ++version) {
                say(
                        "revision " + sequence,
                        "is version %d of piece %s, where version %d was due: one was left out"
                                .formatted(link(sequence).path("version").asInt(), proof.piece(), version));
            }
        }
        if (version == 0) {
            say("piece " + proof.piece(), "has no revision in the file");
        }
    }

    private List<String> shows() {
        List<String> shows = new ArrayList<>();
        publicParts.forEach((sequence, part) -> shows.add("%s %s, version %d, %s %s in revision %d; private part %s."
                .formatted(
                        link(sequence).path("kind").asText(),
                        part.path("id").asText(),
                        link(sequence).path("version").asInt(),
                        link(sequence).path("act").asText().equals("save") ? "saved" : "withdrawn",
                        link(sequence).path("written_at").asText(),
                        sequence,
                        privateParts.contains(sequence) ? "shown" : "not shown")));
        shows.add("The texts above are the ones written at these places of a chain of %d revisions."
                .formatted(proof.endSequence()));
        shows.add("The chain ends in revision %d with the hash %s.".formatted(proof.endSequence(), proof.endHash()));
        return shows;
    }

    private void say(String where, String what) {
        findings.add(new Finding(where, what));
    }
}

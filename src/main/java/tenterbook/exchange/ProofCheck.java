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
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.revision.RecordKey;
import tenterbook.ledger.revision.Revision;
import tenterbook.measure.Digest;
import tenterbook.words.Explained;
import tenterbook.words.Message;

/**
 * Checks a file of {@link PieceProof} without the archive.
 *
 * <p>Shown, where nothing is found wrong: the texts are those that were written at their places in one chain of revisions, and
 * that chain ends in the hash the file names. Not shown: what {@link #NOT_SHOWN} says.
 */
public final class ProofCheck {
    /** What such a file cannot show. */
    public static final List<Message> NOT_SHOWN = List.of(
            Message.of("exchange.proof.not-shown.truth"),
            Message.of("exchange.proof.not-shown.when"),
            Message.of("exchange.proof.not-shown.chain"),
            Message.of("exchange.proof.not-shown.later"),
            Message.of("exchange.proof.not-shown.other"));

    private final ProofFile proof;
    private final List<Finding> findings;
    private final Map<Long, Link> links = new HashMap<>();
    private final Map<Long, JsonNode> publicParts = new TreeMap<>();
    private final Map<Long, String> hashes = new HashMap<>();
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
    public record Result(List<Finding> findings, List<Message> shows) {}

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
            findings.add(new Finding(
                    file.getFileName().toString(), Message.of("exchange.proof.not-whole", "why", Explained.of(e))));
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
                say(
                        Message.of("exchange.proof.earlier-revision", "sequence", sequence),
                        Message.of("exchange.proof.stands-as", "found", row.get(0)));
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
            Message where = Message.of("exchange.proof.revision", "sequence", sequence);
            if (link.path("format").asInt() != 2 || link.path("sequence").asLong() != sequence) {
                say(where, Message.of("exchange.proof.not-next", "found", text));
            }
            if (previous != null && !link.path("previous_hash").asText().equals(previous)) {
                say(where, Message.of("exchange.proof.previous"));
            }
            if (!link.path("before").asText("").equals(before)) {
                say(where, Message.of("exchange.proof.commitment"));
            }
            before = "";
            previous = sha256(text);
            hashes.put(sequence, previous);
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
                    Message.of("exchange.proof.end"),
                    Message.of(
                            "exchange.proof.end-differs",
                            "sequence",
                            sequence,
                            "hash",
                            String.valueOf(previous),
                            "statedSequence",
                            proof.endSequence(),
                            "statedHash",
                            proof.endHash()));
        }
    }

    private void parts() {
        for (JsonNode row : proof.parts()) {
            long sequence = row.get(0).longValue();
            String which = row.get(1).textValue();
            Message where = Message.of("exchange.proof.part", "part", which, "sequence", sequence);
            String text = row.get(2).textValue();
            Link link = links.get(sequence);
            String due = link == null ? null : link.digests().get(which);
            if (due == null) {
                say(where, Message.of("exchange.proof.part-of-nothing"));
            } else if (!sha256(text).equals(due)) {
                say(where, Message.of("exchange.proof.part-changed"));
            } else if (which.equals("public")) {
                publicParts.put(sequence, ProofFile.object(text));
            } else if (which.equals("link")) {
                link.digests().put("private", ProofFile.pair(text).get(1).textValue());
                hashes.put(sequence, ProofFile.pair(text).get(0).textValue());
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

    /** All versions of every record that is shown, as they were written. */
    private void versions() {
        Map<RecordKey, Integer> versions = new HashMap<>();
        for (Map.Entry<Long, JsonNode> part : publicParts.entrySet()) {
            JsonNode link = link(part.getKey());
            RecordKey record = new RecordKey(
                    link.path("kind").asText(), part.getValue().path("id").asText());
            int found = link.path("version").asInt();
            int due = versions.getOrDefault(record, 0) + 1;
            versions.put(record, found);
            if (found != due) {
                say(
                        Message.of("exchange.proof.revision", "sequence", part.getKey()),
                        Message.of(
                                found > due ? "exchange.proof.left-out" : "exchange.proof.twice",
                                "found",
                                found,
                                "record",
                                record,
                                "due",
                                due,
                                "missing",
                                Math.max(0, found - due)));
            }
        }
        if (!versions.containsKey(Kinds.PIECE.key(proof.piece()))) {
            say(Message.of("exchange.proof.piece", "piece", proof.piece()), Message.of("exchange.proof.no-revision"));
        }
    }

    private List<Message> shows() {
        List<Message> shows = new ArrayList<>();
        publicParts.forEach((sequence, part) -> shows.add(Message.of(
                "exchange.proof.shows",
                "kind",
                link(sequence).path("kind").asText(),
                "id",
                part.path("id").asText(),
                "version",
                link(sequence).path("version").asInt(),
                "act",
                link(sequence).path("act").asText(),
                "at",
                link(sequence).path("written_at").asText(),
                "sequence",
                sequence,
                "part",
                privateParts.contains(sequence),
                "hash",
                hashes.getOrDefault(sequence, ""))));
        shows.add(Message.of("exchange.proof.shows-texts", "sequence", proof.endSequence()));
        shows.add(Message.of("exchange.proof.shows-end", "sequence", proof.endSequence(), "hash", proof.endHash()));
        return shows;
    }

    private void say(Message where, Message what) {
        findings.add(new Finding(where, what));
    }
}

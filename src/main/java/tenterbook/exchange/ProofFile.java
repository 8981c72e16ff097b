package tenterbook.exchange;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import tenterbook.ledger.file.Finding;
import tenterbook.measure.Digest;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/**
 * What {@link PieceProof} wrote, read again.
 *
 * @param earlier rows of {@code sequence, public digest, digest of the link}
 * @param chain what the hashes of format 2 cover
 * @param parts rows of {@code sequence, what, text}, where {@code what} is public, private or link
 */
record ProofFile(
        String piece,
        long endSequence,
        String endHash,
        List<JsonNode> earlier,
        List<String> chain,
        List<JsonNode> parts) {
    private static final JsonMapper JSON = JsonMapper.builder()
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS, DeserializationFeature.FAIL_ON_READING_DUP_TREE_KEY)
            .build();
    private static final String SUM = "\n\"sha256\":\"";

    /**
     * @param findings gets a finding where the file was changed
     * @throws IllegalArgumentException with a sentence, where it is no proof at all
     */
    static ProofFile read(Path file, List<Finding> findings) throws IOException {
        byte[] bytes = Files.readAllBytes(file);
        String text;
        JsonNode json;
        try {
            text = StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
            json = JSON.readTree(text);
        } catch (CharacterCodingException e) {
            throw new Refusal(Message.of("exchange.proof.no-text"), e);
        } catch (com.fasterxml.jackson.core.JsonProcessingException e) {
            throw new Refusal(
                    Message.of(
                            "exchange.proof.no-json-from",
                            "line",
                            e.getLocation() == null ? 0 : e.getLocation().getLineNr(),
                            "why",
                            e.getOriginalMessage()),
                    e);
        }
        sum(text, findings);
        if (!json.path("proof").isInt() || json.path("proof").intValue() != 1) {
            throw Refusal.of("exchange.proof.no-proof");
        }
        List<String> chain = new ArrayList<>();
        list(json, "chain").forEach(each -> chain.add(text(each, "chain")));
        return new ProofFile(
                text(json.path("piece"), "piece"),
                json.path("end_sequence").asLong(),
                text(json.path("end_hash"), "end_hash"),
                rows(json, "earlier", 3),
                chain,
                rows(json, "parts", 3));
    }

    private static void sum(String text, List<Finding> findings) {
        int at = text.lastIndexOf(SUM);
        String due = at < 0
                ? ""
                : text.substring(0, at + 1)
                        + SUM.substring(1)
                        + Digest.of(text.substring(0, at + 1).getBytes(StandardCharsets.UTF_8))
                        + "\"\n}\n";
        if (!due.equals(text)) {
            findings.add(new Finding(Message.of("exchange.proof.the-file"), Message.of("exchange.proof.sum")));
        }
    }

    private static List<JsonNode> rows(JsonNode json, String name, int length) {
        List<JsonNode> rows = list(json, name);
        for (JsonNode row : rows) {
            boolean fits = row.isArray() && row.size() == length && row.get(0).isIntegralNumber();
            for (int i = 1; fits && i < length; i++) {
                fits = row.get(i).isTextual();
            }
            if (!fits) {
                throw Refusal.of("exchange.proof.no-row", "list", name, "found", row);
            }
        }
        return rows;
    }

    private static List<JsonNode> list(JsonNode json, String name) {
        if (!json.path(name).isArray()) {
            throw Refusal.of("exchange.proof.no-list", "list", name);
        }
        List<JsonNode> list = new ArrayList<>();
        json.path(name).forEach(list::add);
        return list;
    }

    private static String text(JsonNode node, String name) {
        if (!node.isTextual()) {
            throw Refusal.of("exchange.proof.no-string", "found", name);
        }
        return node.textValue();
    }

    /** @throws IllegalArgumentException where it is no JSON array of two texts */
    static JsonNode pair(String text) {
        try {
            JsonNode pair = JSON.readTree(text);
            if (pair.isArray()
                    && pair.size() == 2
                    && pair.get(0).isTextual()
                    && pair.get(1).isTextual()) {
                return pair;
            }
        } catch (com.fasterxml.jackson.core.JsonProcessingException e) {
            throw new Refusal(Message.of("exchange.proof.no-json", "found", text), e);
        }
        throw Refusal.of("exchange.proof.no-pair", "found", text);
    }

    /** @throws IllegalArgumentException where it is no JSON object */
    static JsonNode object(String text) {
        return tenterbook.ledger.revision.RecordCodec.parsed(text);
    }
}

package tenterbook.ledger;

import com.fasterxml.jackson.databind.json.JsonMapper;
import java.util.List;
import tenterbook.words.Message;

/**
 * The record that a person's particulars were erased, without any of them.
 *
 * @param id as in {@code erasure-1}
 * @param day of the erasure, ISO 8601
 * @param reason in words that name nobody
 * @param kind of the record that was erased
 * @param handle under which its revisions stand: random, and naming nobody any more
 * @param sequences of the revisions out of which something was taken
 */
public record Erasure(String id, String day, String reason, String kind, String handle, List<Long> sequences) {
    public static final Kind<Erasure> KIND = new Kind<>(
            "erasure",
            Message.of("kind.erasure"),
            Erasure.class,
            new MappedCodec<>(JsonMapper.builder().build(), Erasure.class),
            Erasure::id,
            erasure -> List.of(),
            Privacy.NONE);

    public Erasure {
        sequences = List.copyOf(sequences);
    }
}

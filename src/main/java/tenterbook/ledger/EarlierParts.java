package tenterbook.ledger;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;
import tenterbook.ledger.revision.Chain;
import tenterbook.ledger.revision.EarlierPart;
import tenterbook.ledger.revision.KnownKinds;
import tenterbook.ledger.revision.Privacy;
import tenterbook.ledger.revision.RecordCodec;
import tenterbook.ledger.revision.RecordKey;
import tenterbook.ledger.revision.Revision;
import tenterbook.ledger.revision.RevisionForm;
import tenterbook.ledger.revision.TwoParts;
import tenterbook.measure.Digest;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/** The revisions of format 1 in two parts: committed to once, when the first revision of format 2 is written. */
final class EarlierParts {
    private static final int PAGE = 1000;
    private static final JsonMapper JSON = JsonMapper.builder().build();

    private EarlierParts() {}

    /**
     * Splits every revision and stores the digests. Takes some seconds for 100,000 revisions; done once.
     *
     * @return the digest that the next revision commits to; empty where the ledger is empty
     */
    static Optional<Digest> commit(Handle handle, KnownKinds kinds) {
        Commitment commitment = new Commitment();
        long sequence = 0;
        List<Revision> page = LedgerSql.after(handle, sequence, PAGE);
        while (!page.isEmpty()) {
            for (Revision revision : page) {
                EarlierPart part = split(handle, revision, kinds);
                insert(handle, part);
                commitment.add(part);
                sequence = revision.sequence();
            }
            page = LedgerSql.after(handle, sequence, PAGE);
        }
        return commitment.digest();
    }

    private static EarlierPart split(Handle handle, Revision revision, KnownKinds kinds) {
        Privacy privacy = kinds.privacy(revision.key().kind());
        List<String> pointers = new ArrayList<>();
        RecordCodec.parsed(TwoParts.split(revision.json(), privacy).fields())
                .fieldNames()
                .forEachRemaining(pointers::add);
        RecordKey key = privacy.id()
                ? new RecordKey(revision.key().kind(), Handles.of(handle, revision.key(), kinds))
                : revision.key();
        EarlierPart bare =
                new EarlierPart(revision, key, kinds.salt(), Revision.NONE, kinds.salt(), Revision.NONE, pointers);
        return new EarlierPart(
                revision,
                key,
                bare.publicSalt(),
                Chain.digest(bare.publicText()),
                bare.privateSalt(),
                bare.kept().digest(),
                pointers);
    }

    private static void insert(Handle handle, EarlierPart part) {
        ArrayNode pointers = JsonNodeFactory.instance.arrayNode();
        part.pointers().forEach(pointers::add);
        handle.createUpdate("""
                        INSERT INTO earlier_parts
                            (sequence, public_salt, public_digest, private_salt, private_digest, pointers)
                        VALUES (:sequence, :publicSalt, :publicDigest, :privateSalt, :privateDigest, :pointers)
                        """)
                .bind("sequence", part.revision().sequence())
                .bind("publicSalt", part.publicSalt())
                .bind("publicDigest", part.publicDigest().hex())
                .bind("privateSalt", part.privateSalt())
                .bind("privateDigest", part.privateDigest().hex())
                .bind("pointers", pointers.toString())
                .execute();
    }

    /** Up to {@code limit} after {@code sequence}, in order; none in a ledger that began with format 2. */
    static List<EarlierPart> after(Handle handle, long sequence, int limit) {
        return handle.createQuery("""
                        SELECT e.sequence, coalesce(h.handle, r.id), e.public_salt, e.public_digest, e.private_salt,
                            e.private_digest, e.pointers, r.kind, r.id, r.version, r.act, r.record, r.written_at, r.author,
                            r.note, r.previous_hash, r.hash, r.redacted
                        FROM earlier_parts AS e
                        JOIN revisions AS r ON r.sequence = e.sequence
                        LEFT JOIN handles AS h ON h.kind = r.kind AND h.id = r.id
                        WHERE e.sequence > :sequence
                        ORDER BY e.sequence
                        LIMIT :limit
                        """)
                .bind("sequence", sequence)
                .bind("limit", limit)
                .map(EarlierParts::read)
                .list();
    }

    private static EarlierPart read(ResultSet row, StatementContext context) throws SQLException {
        Revision revision = new Revision(
                row.getLong(1),
                new RecordKey(row.getString(8), row.getString(9)),
                row.getInt(10),
                row.getString(11).equals("withdraw"),
                row.getString(12),
                java.time.Instant.parse(row.getString(13)),
                row.getString(14),
                row.getString(15),
                new Digest(row.getString(16)),
                new Digest(row.getString(17)),
                new RevisionForm.Whole(row.getInt(18) == 1));
        return new EarlierPart(
                revision,
                new RecordKey(row.getString(8), row.getString(2)),
                row.getString(3),
                new Digest(row.getString(4)),
                row.getString(5),
                new Digest(row.getString(6)),
                pointers(row.getString(7)));
    }

    private static List<String> pointers(String json) {
        try {
            return List.of(JSON.readValue(json, String[].class));
        } catch (JsonProcessingException e) {
            throw new Refusal(Message.of("ledger.check.fields-not-listed", "why", e.getOriginalMessage()), e);
        }
    }

    /** The digest over all rows, taken one after the other. */
    static final class Commitment {
        private final MessageDigest sha256 = Digest.sha256();
        private boolean empty = true;

        void add(EarlierPart part) {
            sha256.update(((empty ? "[" : ",") + part.row()).getBytes(StandardCharsets.UTF_8));
            empty = false;
        }

        Optional<Digest> digest() {
            if (empty) {
                return Optional.empty();
            }
            sha256.update((byte) ']');
            return Optional.of(Digest.of(sha256));
        }
    }
}

package tenterbook.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import org.flywaydb.core.Flyway;
import org.jdbi.v3.core.Jdbi;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.ledger.revision.EarlierPart;
import tenterbook.ledger.revision.Revision;

/** What a revision's hash covers, written out. These texts and hashes are frozen: ledgers in use depend on them. */
class GoldenHashTest {
    @TempDir
    Path root;

    private static String sha256(String text) throws Exception {
        return HexFormat.of()
                .formatHex(MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
    }

    @Test
    void format1CoversTheColumnsAsTheyAre() throws Exception {
        String url = "jdbc:sqlite:" + root.resolve("ledger.db");
        Flyway.configure().dataSource(url, null, null).loggers("slf4j").load().migrate();
        Jdbi.create(url)
                .useTransaction(handle -> new FormatOne(handle).save(Things.BOARD, new Things.Board("B01", "Fig")));
        String text =
                "{\"act\":\"save\",\"author\":\"the old program\",\"id\":\"B01\",\"kind\":\"board-pair\",\"note\":\"\","
                        + "\"previous_hash\":\"" + "0".repeat(64) + "\","
                        + "\"record\":\"{\\\"id\\\":\\\"B01\\\",\\\"image\\\":\\\"Fig\\\"}\","
                        + "\"sequence\":1,\"version\":1,\"written_at\":\"2024-03-05T10:15:00.123Z\"}";

        try (Things.Opened opened = new Things.Opened(root)) {
            Revision revision = opened.ledger.after(0, 1).get(0);
            assertThat(revision.format()).isEqualTo(1);
            assertThat(revision.hash().hex()).isEqualTo(sha256(text));
            assertThat(revision.computedHash()).isEqualTo(revision.hash());
            assertThat(revision.lines())
                    .containsExactly(text.replace("\"id\":", "\"hash\":\"" + sha256(text) + "\",\"id\":"));
        }
    }

    @Test
    void format2CoversTwoSaltedDigests() throws Exception {
        try (People.Opened opened = new People.Opened(root)) {
            opened.ledger.write("Inês", act -> act.create(People.PERSON, People.BUYER));
            opened.ledger.write(
                    "Inês",
                    act -> act.create(
                            People.WORK,
                            People.work("V24-001", "Maré", "buyer-1", People.sold("buyer-1", "by “hand”"))));

            List<Revision> revisions = opened.ledger.after(0, 9);
            // The first salt becomes the handle; then two salts for each revision.
            String person = "handle-00000000000000000000000000000001";
            String shownPerson = "{\"id\":\"" + person + "\",\"record\":\"{}\",\"salt\":\"" + salt(2) + "\"}";
            String keptPerson =
                    "{\"author\":\"Inês\",\"fields\":\"{\\\"/contact\\\":\\\"7 Rua do Sal Velho\\\\n+351 000 000 017\\\","
                            + "\\\"/id\\\":\\\"buyer-1\\\",\\\"/name\\\":\\\"Brites Almorena\\\",\\\"/notes\\\":\\\"Likes blue.\\\"}\","
                            + "\"id\":\"buyer-1\",\"note\":\"\",\"salt\":\"" + salt(3) + "\"}";
            String first = "{\"act\":\"save\",\"format\":2,\"kind\":\"party\",\"previous_hash\":\"" + "0".repeat(64)
                    + "\",\"private_digest\":\"" + sha256(keptPerson) + "\",\"public_digest\":\"" + sha256(shownPerson)
                    + "\",\"sequence\":1,\"version\":1,\"written_at\":\"2024-03-05T10:15:00.123Z\"}";
            String shown =
                    "{\"id\":\"V24-001\",\"record\":\"{\\\"events\\\":[{\\\"what\\\":\\\"sold\\\"}],\\\"id\\\":\\\"V24-001\\\","
                            + "\\\"title\\\":\\\"Maré\\\"}\",\"salt\":\"" + salt(4) + "\"}";
            String kept =
                    "{\"author\":\"Inês\",\"fields\":\"{\\\"/events/0/note\\\":\\\"by “hand”\\\",\\\"/events/0/party\\\":\\\"buyer-1\\\","
                            + "\\\"/events/0/price\\\":\\\"160.00\\\",\\\"/holder\\\":\\\"buyer-1\\\",\\\"/notes\\\":\\\"Two panels.\\\","
                            + "\\\"/place\\\":\\\"at home with the holder\\\"}\",\"note\":\"\",\"salt\":\"" + salt(5)
                            + "\"}";
            String second = "{\"act\":\"save\",\"format\":2,\"kind\":\"piece\",\"previous_hash\":\"" + sha256(first)
                    + "\",\"private_digest\":\"" + sha256(kept) + "\",\"public_digest\":\"" + sha256(shown)
                    + "\",\"sequence\":2,\"version\":1,\"written_at\":\"2024-03-05T10:15:00.123Z\"}";

            assertThat(revisions.get(0).publicText()).contains(shownPerson);
            assertThat(revisions.get(0).privateText()).contains(keptPerson);
            assertThat(revisions.get(0).chained()).contains(first);
            assertThat(revisions.get(1).publicText()).contains(shown);
            assertThat(revisions.get(1).privateText()).contains(kept);
            assertThat(revisions.get(1).chained()).contains(second);
            assertThat(revisions.get(0).hash().hex()).isEqualTo(sha256(first));
            assertThat(revisions.get(1).hash().hex())
                    .isEqualTo(sha256(second))
                    .isEqualTo("38da4a29f6a8b51e980238a6872ff570aefb40b031a55c08b7939d6f912340bc");
            assertThat(opened.check()).isEmpty();
        }
    }

    private static String salt(int n) {
        return "%032x".formatted(n);
    }

    @Test
    void theFirstOfFormat2CommitsToAllBeforeIt() throws Exception {
        String url = "jdbc:sqlite:" + root.resolve("ledger.db");
        Flyway.configure().dataSource(url, null, null).loggers("slf4j").load().migrate();
        Jdbi.create(url).useTransaction(handle -> {
            FormatOne old = new FormatOne(handle);
            old.save(People.PERSON, People.BUYER);
            old.save(People.WORK, People.work("V24-001", "Maré", "buyer-1"));
        });
        try (People.Opened opened = new People.Opened(root)) {
            opened.ledger.write("Inês", act -> act.create(People.PERSON, People.GALLERY));

            List<Revision> all = opened.ledger.after(0, 9);
            List<EarlierPart> earlier = opened.ledger.earlierParts(0, 9);
            String shown = "{\"act\":\"save\",\"id\":\"V24-001\",\"kind\":\"piece\",\"record\":\"{\\\"events\\\":[],"
                    + "\\\"id\\\":\\\"V24-001\\\",\\\"title\\\":\\\"Maré\\\"}\",\"salt\":\""
                    + earlier.get(1).publicSalt() + "\",\"version\":1,\"written_at\":\"2024-03-05T10:15:00.123Z\"}";
            String kept = "{\"author\":\"the old program\",\"fields\":\"{\\\"/holder\\\":\\\"buyer-1\\\","
                    + "\\\"/notes\\\":\\\"Two panels.\\\",\\\"/place\\\":\\\"at home with the holder\\\"}\",\"note\":\"\",\"salt\":\""
                    + earlier.get(1).privateSalt() + "\"}";
            assertThat(earlier.get(1).publicDigest().hex()).isEqualTo(sha256(shown));
            assertThat(earlier.get(1).privateDigest().hex()).isEqualTo(sha256(kept));
            String before = sha256("[" + row(all.get(0), earlier.get(0)) + "," + row(all.get(1), earlier.get(1)) + "]");
            assertThat(all.get(2).chained().orElseThrow()).contains("\"before\":\"" + before + "\"");
            assertThat(opened.check()).isEmpty();
        }
    }

    private static String row(Revision revision, EarlierPart part) throws Exception {
        String link = "[\"" + revision.hash() + "\",\"" + part.privateDigest() + "\"]";
        return "[" + revision.sequence() + ",\"" + part.publicDigest() + "\",\"" + sha256(link) + "\"]";
    }
}

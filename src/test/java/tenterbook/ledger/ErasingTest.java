package tenterbook.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tenterbook.ledger.People.Opened;
import tenterbook.ledger.People.Person;
import tenterbook.ledger.People.Work;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.revision.Erasure;
import tenterbook.ledger.revision.Revision;

class ErasingTest {
    private static final String REASON = "asked for by the person";

    @TempDir
    Path root;

    /** Two revisions of the buyer, one of a gallery, two of a piece that was sold to the one and shown in the other. */
    private void fill(int format) {
        Person moved = new Person("buyer-1", People.NAME, "2 Rua do Cais", "Likes blue.");
        Work first = People.work("V24-001", "Maré", "buyer-1", People.sold("buyer-1", "a gift for her sister"));
        Work second = People.work(
                "V24-001", "Maré", "vermia", People.sold("buyer-1", "a gift"), People.sold("vermia", "bought back"));
        People.fill(root, format, first);
        if (format == 1) {
            People.inFormatOne(root, old -> {
                old.save(People.PERSON, moved);
                old.save(People.WORK, second);
            });
            return;
        }
        try (Opened opened = new Opened(root)) {
            opened.ledger.write("Inês", act -> act.save(People.PERSON, moved, 1, "she moved"));
            opened.ledger.write("Inês", act -> act.save(People.WORK, second, 1, "seen by Brites Almorena"));
        }
    }

    private boolean onTheDisk(String text) throws IOException {
        byte[] wanted = text.getBytes(StandardCharsets.UTF_8);
        try (Stream<Path> files = Files.walk(root)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                String bytes = new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1);
                if (bytes.toLowerCase(java.util.Locale.ROOT)
                        .contains(new String(wanted, StandardCharsets.ISO_8859_1).toLowerCase(java.util.Locale.ROOT))) {
                    return true;
                }
            }
        }
        return false;
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2})
    void afterAnErasureThePersonIsInNoFileAndTheChainIsWhole(int format) throws Exception {
        fill(format);
        assertThat(onTheDisk("Brites")).isTrue();
        try (Opened opened = new Opened(root)) {
            opened.ledger.drafts().keep("party/buyer-1", "{\"name\":\"Brites\"}");
            opened.ledger.drafts().keep("piece/V24-002", "{\"notes\":\"ask Brites Almorena\"}");
            opened.ledger.drafts().keep("piece/V24-003", "{\"notes\":\"ask the gallery\"}");

            Erased erased = opened.ledger.erase("Inês", People.PERSON, "buyer-1", REASON);

            assertThat(opened.check()).isEmpty();
            assertThat(erased.revisions()).isEqualTo(2);
            assertThat(erased.changed())
                    .containsExactlyInAnyOrder(People.PERSON.key("vermia"), People.WORK.key("V24-001"));
            assertThat(erased.redacted()).isEqualTo(3);
            assertThat(erased.drafts()).isEqualTo(2);
            assertThat(erased.left()).isEmpty();
            for (String trace : List.of("Brites", "Almorena", "buyer-1", "Sal Velho", "do Cais", "her sister")) {
                assertThat(onTheDisk(trace)).as(trace).isFalse();
            }
        }
        try (Opened opened = new Opened(root)) {
            assertThat(opened.check()).isEmpty();
            assertThat(opened.ledger.all(People.PERSON))
                    .extracting(each -> each.record().id())
                    .containsExactly("vermia");
            assertThat(opened.ledger.history(People.PERSON.key("buyer-1"))).isEmpty();
            Work work = opened.ledger.find(People.WORK, "V24-001").orElseThrow().record();
            assertThat(work.holder()).isEqualTo("vermia");
            assertThat(work.place()).isEqualTo("at home with the holder");
            assertThat(work.events().get(0)).isEqualTo(new People.Happening("sold", null, null, "160.00"));
            assertThat(work.events().get(1)).isEqualTo(People.sold("vermia", "bought back"));
            Work before = opened.ledger
                    .version(People.WORK, "V24-001", 1)
                    .orElseThrow()
                    .record();
            assertThat(before.holder()).isNull();
            assertThat(before.place()).isNull();
            assertThat(before.notes()).as("other private facts stay").isEqualTo("Two panels.");
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2})
    void theErasureItselfIsARevisionThatNamesNobody(int format) {
        fill(format);
        try (Opened opened = new Opened(root)) {
            Erased erased = opened.ledger.erase("Brites Almorena", People.PERSON, "buyer-1", REASON);

            Erasure record =
                    opened.ledger.find(Erasure.KIND, "erasure-1").orElseThrow().record();
            assertThat(record.day()).isEqualTo("2024-03-05");
            assertThat(record.reason()).isEqualTo(REASON);
            assertThat(record.sequences()).containsExactly(1L, 2L, 3L, 4L, 5L);
            assertThat(erased.erasure()).isEqualTo(opened.ledger.lastSequence());
            Revision revision = opened.ledger.after(erased.erasure() - 1, 1).get(0);
            assertThat(revision.author()).isEmpty();
            assertThat(opened.ledger.after(0, 5)).allMatch(Revision::redacted);
            assertThat(opened.ledger.after(5, 9)).noneMatch(Revision::redacted);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2})
    void anotherErasureAndLaterWorkLeaveTheChainWhole(int format) {
        fill(format);
        try (Opened opened = new Opened(root)) {
            opened.ledger.erase("Inês", People.PERSON, "buyer-1", REASON);
            opened.ledger.write("Inês", act -> act.create(People.PERSON, new Person("buyer-1", "Another", "", "")));
            opened.ledger.erase("Inês", People.PERSON, "vermia", REASON);

            assertThat(opened.check()).isEmpty();
            assertThat(opened.ledger.all(People.PERSON))
                    .extracting(Saved::record)
                    .containsExactly(new Person("buyer-1", "Another", "", ""));
            assertThat(opened.ledger.all(Erasure.KIND)).hasSize(2);
        }
    }

    @Test
    void anErasureCutOffBeforeTheFileWasWrittenAnewIsFinishedAtTheNextStart() throws Exception {
        fill(2);
        try (Opened opened = new Opened(root)) {
            opened.ledger.write("Inês", act -> act.erase(People.PERSON, "buyer-1", REASON));
        }
        assertThat(onTheDisk("Almorena")).as("in pages that are free").isTrue();

        try (Opened opened = new Opened(root)) {
            for (String trace : List.of("Brites", "Almorena", "buyer-1", "Sal Velho", "do Cais", "her sister")) {
                assertThat(onTheDisk(trace)).as(trace).isFalse();
            }
            assertThat(opened.check()).isEmpty();
        }
    }

    @Test
    void whatStaysInAPublicPartIsSaid() {
        fill(2);
        try (Opened opened = new Opened(root)) {
            opened.ledger.write(
                    "Inês", act -> act.create(People.WORK, People.work("V24-009", "Shawl for Brites Almorena", null)));

            assertThat(opened.ledger
                            .erase("Inês", People.PERSON, "buyer-1", REASON)
                            .left())
                    .containsExactly("revision 6 (piece V24-009), title");
        }
    }

    @Test
    void aReasonThatNamesThePersonAndAPersonWhoIsNotThereAreRefused() {
        fill(2);
        try (Opened opened = new Opened(root)) {
            assertThatThrownBy(() -> opened.ledger.erase("Inês", People.PERSON, "buyer-1", "Brites Almorena asked"))
                    .hasMessageContaining("must not name the person");
            assertThatThrownBy(() -> opened.ledger.erase("Inês", People.PERSON, "nobody", REASON))
                    .isInstanceOf(ArchiveProblem.class)
                    .hasMessage("There is no party nobody in this archive. Nothing was erased.");
            assertThatThrownBy(() -> opened.ledger.erase("Inês", People.WORK, "V24-001", REASON))
                    .hasMessageContaining("is no person");
            assertThat(opened.ledger.lastSequence()).isEqualTo(5);
            assertThat(opened.check()).isEmpty();
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "DELETE FROM private_parts WHERE sequence = 3",
                "UPDATE private_parts SET note = 'x' WHERE sequence = 3",
                "UPDATE private_parts SET salt = '', redacted = 1 WHERE sequence = 3",
                "INSERT OR REPLACE INTO private_parts SELECT * FROM private_parts WHERE sequence = 5",
                "INSERT INTO erased (sequence, erasure) VALUES (3, 5)",
                "UPDATE revisions SET redacted = 1 WHERE sequence = 3"
            })
    void sqliteItselfRefusesToTakeAnythingOutWithoutAnErasure(String sql) {
        fill(2);
        assertThatThrownBy(() -> Things.byHand(root, sql)).isInstanceOf(SQLException.class);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "DELETE FROM erased",
                "UPDATE erased SET done = 0",
                "UPDATE revisions SET record = '{}', redacted = 1 WHERE sequence = 3",
                "UPDATE earlier_parts SET private_salt = ''",
                "DELETE FROM earlier_parts",
                "INSERT INTO earlier_parts SELECT 6, public_salt, public_digest, '', private_digest, '[]' FROM earlier_parts LIMIT 1"
            })
    void onceCarriedOutAnErasureOpensNothingMore(String sql) {
        fill(1);
        try (Opened opened = new Opened(root)) {
            opened.ledger.erase("Inês", People.PERSON, "buyer-1", REASON);
        }
        assertThatThrownBy(() -> Things.byHand(root, sql)).isInstanceOf(SQLException.class);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "private_parts_are_only_erased | DELETE FROM private_parts WHERE sequence = 3 | revision 3 (piece V24-001): its private part is missing, and no erasure names it",
                "private_parts_are_only_redacted | UPDATE private_parts SET salt = '', redacted = 1 WHERE sequence = 3 | revision 3 (piece V24-001): is marked as redacted, but no erasure names it",
                "private_parts_are_only_redacted | UPDATE private_parts SET fields = replace(fields, 'gift', 'sale') WHERE sequence = 3 | revision 3 (piece V24-001): its private part does not give its digest: it was changed after it was written",
                "private_parts_are_only_redacted | UPDATE private_parts SET author = 'Tomé' WHERE sequence = 3 | revision 3 (piece V24-001): its private part does not give its digest: it was changed after it was written",
                "private_parts_are_only_redacted | UPDATE private_parts SET id = 'x' WHERE sequence = 2 | revision 2 (party x): its private part does not give its digest: it was changed after it was written",
                "revisions_are_never_changed | UPDATE revisions SET record = replace(record, 'Maré', 'Mare') WHERE sequence = 3 | revision 3 (piece V24-001): its public part does not give its digest: it was changed after it was written",
                "erasures_stand_in_the_ledger | INSERT INTO erased VALUES (3, 5, 1) | revision 3: is named by the erasures in revisions [], but the table ‘erased’ says [5]",
                "erased_x | DELETE FROM handles WHERE id = 'vermia' | revision 2 (party vermia): stands under handle-00000000000000000000000000000004 where vermia was due",
                "erased_x | UPDATE current_texts SET record = replace(record, 'gift', 'sale') WHERE sequence = 5 | revision 5: what ‘current_texts’ says of it is not its two parts put together",
                "erased_x | DELETE FROM current_texts WHERE sequence = 5 | revision 5: what ‘current_texts’ says of it is not its two parts put together",
                "erased_x | INSERT INTO current_texts VALUES (3, '{}') | revision 3: what ‘current_texts’ says of it is not its two parts put together"
            })
    void whatIsChangedBehindTheTriggersIsFound(String trigger, String sql, String finding) throws SQLException {
        fill(2);
        Things.byHand(root, "DROP TRIGGER IF EXISTS " + trigger, sql);
        try (Opened opened = new Opened(root)) {
            assertThat(opened.check()).contains(finding);
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "UPDATE revisions SET record = replace(record, 'Maré', 'Mare') WHERE sequence = 3 | its public part does not give the digest that was committed to",
                "UPDATE revisions SET written_at = '2020-01-01T00:00:00Z' WHERE sequence = 1 | its public part does not give the digest that was committed to",
                "UPDATE revisions SET hash = replace(hash, substr(hash, 1, 1), 'f') WHERE sequence = 1 | does not commit to the revisions of format 1 before it as they stand",
                "UPDATE earlier_parts SET public_salt = '00' WHERE sequence = 3 | its public part does not give the digest that was committed to",
                "UPDATE earlier_parts SET private_digest = public_digest WHERE sequence = 3 | does not commit to the revisions of format 1 before it as they stand",
                "DELETE FROM earlier_parts WHERE sequence = 5 | commits to 4 revisions of format 1, but 5 stand before it",
                "UPDATE revisions SET redacted = 0 WHERE sequence = 3 | is named by an erasure, but nothing was taken out of it"
            })
    void ofARedactedRevisionOfFormat1WhatIsPublicIsStillProven(String sql, String what) throws SQLException {
        fill(1);
        try (Opened opened = new Opened(root)) {
            opened.ledger.erase("Inês", People.PERSON, "buyer-1", REASON);
            assertThat(opened.check()).isEmpty();
        }
        Things.byHand(
                root,
                "DROP TRIGGER revisions_are_never_changed",
                "DROP TRIGGER earlier_parts_only_lose_a_salt",
                "DROP TRIGGER earlier_parts_are_never_deleted",
                sql);
        try (Opened opened = new Opened(root)) {
            assertThat(opened.check()).anyMatch(finding -> finding.contains(what));
        }
    }
}

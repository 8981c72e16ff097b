package tenterbook.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tenterbook.ledger.People.Opened;
import tenterbook.ledger.People.Person;
import tenterbook.ledger.People.Work;
import tenterbook.ledger.beside.Drafts;
import tenterbook.ledger.revision.Revision;

/** Where an erasure finds a person whose name has a space and a letter outside ASCII. */
class ErasedTracesTest {
    private static final String REASON = "asked for by the person";
    private static final String NAME = "Zélia Quorfax";
    private static final Person PERSON = new Person("zelia-q", NAME, "Rua Quorsand 17", "");

    @TempDir
    Path root;

    private static String field(String name, String text) {
        return name + "=" + URLEncoder.encode(text, StandardCharsets.UTF_8);
    }

    @Test
    void aFormKeptAsItWasSentIsReadBeforeItIsSearched() {
        try (Opened opened = new Opened(root)) {
            opened.ledger.write("Inês", act -> act.create(People.PERSON, PERSON));
            Drafts drafts = opened.ledger.drafts();
            drafts.keep("piece/V24-001", field("title", "Maré") + "&" + field("notes", "for " + NAME + ", in blue"));
            drafts.keep("piece/V24-002", field("place", "Rua Quorsand 17"));
            drafts.keep("piece/V24-003", field("notes", "100 % indigo, for Zélia") + "&" + field("by", "Quorfax"));
            drafts.keep("piece/V24-004", "discount=100%&" + field("notes", NAME));
            drafts.keep("piece/V24-005", field("events.0.party", "zelia-q"));

            assertThat(opened.ledger
                            .erase("Inês", People.PERSON, "zelia-q", REASON)
                            .drafts())
                    .isEqualTo(4);
            assertThat(drafts.all()).extracting(Drafts.Draft::name).containsExactly("piece/V24-003");
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "for Zélia\nQuorfax, in blue",
                "for Zélia\r\n  Quorfax",
                "for Zélia  Quorfax",
                "for Zélia\u00a0Quorfax",
                "for ZÉLIA\u202f\u2009Quorfax",
                "for Ze\u0301lia\tQuorfax",
                "at Rua  Quorsand\n17",
                "zelia-q",
                "asked by zelia-q."
            })
    void aPrivateTextThatNamesThePersonIsTakenOutHoweverItIsSpaced(String text) {
        try (Opened opened = new Opened(root)) {
            opened.ledger.write("Inês", act -> act.create(People.PERSON, PERSON));
            opened.ledger.write("Inês", act -> act.create(People.WORK, work("V24-001", text)));
            opened.ledger.write("Inês", act -> act.save(People.WORK, work("V24-001", "plain"), 1, text));

            opened.ledger.erase("Inês", People.PERSON, "zelia-q", REASON);

            assertThat(opened.ledger.history(People.WORK.key("V24-001")))
                    .hasSize(2)
                    .allMatch(Revision::redacted)
                    .noneMatch(revision -> revision.json().contains(text));
            assertThat(opened.ledger.history(People.WORK.key("V24-001")).get(1).note())
                    .isEmpty();
            assertThat(opened.check()).isEmpty();
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"zelia-q-2", "zelia-q.b", "a.zelia-q", "Zelia-Q", "zelia-q_2", "zelia-qu", "Quorfax Zélia"})
    void anotherIdentifierAndOtherWordsStay(String text) {
        try (Opened opened = new Opened(root)) {
            opened.ledger.write("Inês", act -> act.create(People.PERSON, PERSON));
            opened.ledger.write("Inês", act -> act.create(People.WORK, work("V24-001", "seen by " + text)));

            assertThat(opened.ledger
                            .erase("Inês", People.PERSON, "zelia-q", REASON)
                            .redacted())
                    .isZero();
        }
    }

    private static Work work(String id, String notes) {
        return new Work(id, "Maré", null, null, notes, List.of());
    }
}

package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A search kept by name finds what the archive holds when it is looked at. */
class SavingSearchesTest {
    @TempDir
    static Path folder;

    private static SampleStudio studio;
    private static Client client;

    @BeforeAll
    static void open() {
        studio = SampleStudio.open(folder, Clock.systemUTC());
        client = new Client(studio.wiring().port());
    }

    @BeforeEach
    void noSearchIsSavedYet() {
        var searches = studio.wiring().archive().ledger().savedSearches();
        searches.all().forEach(each -> searches.remove(each.id()));
    }

    @AfterAll
    static void close() {
        studio.close();
    }

    private Answer save(String name, String question, String... more) throws IOException {
        String[] fields = new String[4 + more.length];
        System.arraycopy(new String[] {"name", name, "question", question}, 0, fields, 0, 4);
        System.arraycopy(more, 0, fields, 4, more.length);
        return client.post("/searches", fields);
    }

    private long only() throws IOException {
        JsonNode searches = client.get("/api/searches").json().get("searches");
        assertThat(searches).hasSize(1);
        return searches.get(0).get("id").longValue();
    }

    @Test
    void theQuestionIsKeptWithItsViewAndItsOrderButNotItsPage() throws IOException {
        Answer saved = save("woad", "q=woad&page=3&size=4&view=table&column=dips&sort=dips&colour=");
        assertThat(saved.status()).isEqualTo(303);
        assertThat(saved.location()).isEqualTo("/?q=woad&sort=dips&size=4&view=table&column=dips");
        assertThat(client.get(saved.location()).words()).contains("15 pieces");
        assertThat(client.get("/").text()).contains("/?q=woad&amp;sort=dips&amp;size=4&amp;view=table&amp;column=dips");
        assertThat(client.get("/searches").words()).contains("“woad”, by fewest dips, as a table");
    }

    @Test
    void theCountFollowsTheArchive() throws IOException {
        save("on loan", "status=on-loan");
        assertThat(client.get("/api/searches").json().at("/searches/0/count").intValue())
                .isEqualTo(2);
        String piece = "{\"number\": \"V24-900\", \"events\": [{\"kind\": \"lent\"}]}";
        assertThat(client.postJson("/api/pieces", piece).status()).isEqualTo(201);
        assertThat(client.get("/api/searches").json().at("/searches/0/count").intValue())
                .isEqualTo(3);
        assertThat(client.get("/searches").words()).contains("on loan 3 pieces");
        client.send("DELETE", "/api/pieces/V24-900", new byte[0], "If-Match", "\"1\"");
        assertThat(client.get("/api/searches").json().at("/searches/0/count").intValue())
                .isEqualTo(2);
    }

    @Test
    void aQuestionInWordsIsReadAnewEachTime() throws IOException {
        save("linen of six dips", "q=linen+six+dips");
        assertThat(client.get("/api/searches").json().at("/searches/0/count").intValue())
                .isEqualTo(1);
    }

    @Test
    void aNameInUseAsksBeforeItIsReplaced() throws IOException {
        save("woad", "dye=woad");
        Answer taken = save("woad", "dye=woad&view=plot");
        assertThat(taken.status()).isEqualTo(409);
        assertThat(taken.words()).contains("saved already").contains("Replace the one that is saved");
        assertThat(taken.field("question")).isEqualTo("dye=woad&view=plot");
        assertThat(save("woad", "dye=woad&view=plot", "replace", "yes").status())
                .isEqualTo(303);
        assertThat(client.get("/api/searches").json().at("/searches/0/question").textValue())
                .isEqualTo("dye=woad&view=plot");
    }

    @Test
    void oneIsRenamedRemovedAndBroughtBack() throws IOException {
        save("woad", "dye=woad");
        long id = only();
        assertThat(client.post("/searches/" + id + "/rename", "name", "all woad")
                        .status())
                .isEqualTo(303);
        assertThat(client.get("/").words()).contains("all woad");

        assertThat(client.post("/searches/" + id + "/remove").status()).isEqualTo(303);
        assertThat(client.get("/").words()).doesNotContain("all woad");
        assertThat(client.get("/searches").words())
                .contains("“all woad” was removed.")
                .contains("Bring it back");

        assertThat(client.post("/searches/" + id + "/restore").status()).isEqualTo(303);
        assertThat(client.get("/").words()).contains("all woad");
        assertThat(client.post("/searches/99/remove").status()).isEqualTo(404);
        assertThat(client.post("/searches/x/rename", "name", "y").status()).isEqualTo(404);
    }

    @Test
    void aQuestionThatCannotBeReadIsNotSaved() throws IOException {
        Answer refused = save("odd", "dips=many");
        assertThat(refused.status()).isEqualTo(400);
        assertThat(refused.words()).contains("dips").contains("many");
        assertThat(save("odd", "smell=sweet").words()).contains("smell, which this program does not know");
        assertThat(save(" ", "q=woad").words()).contains("needs a name");
        assertThat(client.get("/api/searches").json().get("searches")).isEmpty();
    }

    @Test
    void aSearchThatAsksNothingByWhatItNamesIsNotKeptAsEveryPiece() throws IOException {
        for (String asked : List.of("smell=", "smell", "q=&smell=")) {
            assertThat(save("odd", asked).words()).contains("smell, which this program does not know");
        }
        assertThat(save("odd", "within=5").words())
                .contains("within says something of a colour, and no colour is asked");
        assertThat(save("odd", "share=0.5&dips=6").status()).isEqualTo(400);
        assertThat(client.post("/searches", "name", "odd").words()).contains("No question arrived");
        assertThat(client.get("/api/searches").json().get("searches")).isEmpty();
        assertThat(save("all, dearest first", "sort=dearest&colour=&within=").status())
                .isEqualTo(303);
    }

    @Test
    void oneThatCanNoLongerBeReadSaysSoAndIsNotCounted() throws IOException {
        var kept = studio.wiring().archive().ledger().savedSearches();
        kept.save("from another program", "smell=sweet&q=woad", false);
        assertThat(client.get("/").words()).contains("from another program cannot be read");
        assertThat(client.get("/searches").words())
                .contains("cannot be read any more")
                .contains("smell")
                .doesNotContain("15 pieces");
        JsonNode one = client.get("/api/searches").json().at("/searches/0");
        assertThat(one.has("count")).isFalse();
        assertThat(one.get("problem").textValue()).contains("smell");
    }

    @Test
    void theApiSavesListsAndRemoves() throws IOException {
        Answer saved = client.postJson("/api/searches", "{\"name\": \"linen\", \"question\": \"fibre=linen\"}");
        assertThat(saved.status()).isEqualTo(201);
        assertThat(saved.json().get("count").intValue()).isEqualTo(4);
        assertThat(client.postJson("/api/searches", "{\"name\": \"linen\", \"question\": \"\"}")
                        .status())
                .isEqualTo(409);
        assertThat(client.postJson("/api/searches", "{\"name\": 7}").status()).isEqualTo(400);
        assertThat(client.postJson("/api/searches", "nonsense").status()).isEqualTo(400);
        String one = "/api/searches/" + only();
        assertThat(client.send("DELETE", one, new byte[0]).json().get("removed").booleanValue())
                .isTrue();
        assertThat(client.send("DELETE", one, new byte[0]).status()).isEqualTo(404);
    }

    @Test
    void aNameIsShownAsTextWhateverItHolds() throws IOException {
        save("<b>woad</b> & \"blue\"", "dye=woad");
        assertThat(client.get("/").text()).doesNotContain("<b>woad").contains("&lt;b&gt;woad");
        assertThat(client.get("/searches").field("name")).isEqualTo("<b>woad</b> & \"blue\"");
    }
}

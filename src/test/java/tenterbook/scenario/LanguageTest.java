package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

/** The language of pages and refusals: chosen by the browser, then by the person, for each request by itself. */
class LanguageTest extends Scenario {
    private static final String PORTUGUESE = "<html lang=\"pt-PT\">";
    private static final String ENGLISH = "<html lang=\"en-GB\">";

    @Test
    void aBrowserIsAnsweredInTheFirstLanguageItAsksForThatWeHave() throws IOException {
        assertThat(client.get("/", "Accept-Language", "pt-BR,pt;q=0.8,en;q=0.5").text())
                .contains(PORTUGUESE, ">Peças<");
        assertThat(client.get("/", "Accept-Language", "fr,en;q=0.5,pt;q=0.3").text())
                .contains(ENGLISH, ">Pieces<");
        assertThat(client.get("/", "Accept-Language", "ja").text()).contains(ENGLISH);
        assertThat(client.get("/", "Accept-Language", "not; a language;;q=x").text())
                .contains(ENGLISH);
        assertThat(client.get("/").text()).contains(ENGLISH);
    }

    @Test
    void whatAPersonChoseGoesBeforeWhatTheBrowserAsksFor() throws IOException {
        Answer chosen = choose("en", "Referer", "http://127.0.0.1:" + client.port() + "/people?x=1");
        assertThat(chosen.status()).isEqualTo(303);
        assertThat(chosen.location()).isEqualTo("/people?x=1");
        String cookie = chosen.header("Set-Cookie").split(";")[0];
        assertThat(cookie).isEqualTo("language=en");
        assertThat(client.get("/", "Accept-Language", "pt", "Cookie", cookie).text())
                .contains(ENGLISH);
        assertThat(client.get("/", "Accept-Language", "pt", "Cookie", "language=klingon")
                        .text())
                .contains(PORTUGUESE);
    }

    @Test
    void theChoiceNeverLeadsToAnotherServerAndAnUnknownLanguageChangesNothing() throws IOException {
        assertThat(choose("pt", "Referer", "http://127.0.0.1//elsewhere.example/x")
                        .location())
                .isEqualTo("/elsewhere.example/x");
        assertThat(choose("pt", "Referer", "not a page").location()).isEqualTo("/");
        assertThat(choose("xx").header("Set-Cookie")).isNullOrEmpty();
    }

    @Test
    void aRefusalIsWrittenInTheLanguageOfWhoeverIsRefused() throws IOException {
        Answer portuguese = client.get("/pieces/X99-1", "Accept-Language", "pt");
        Answer english = client.get("/pieces/X99-1");
        assertThat(portuguese.status()).isEqualTo(404);
        assertThat(portuguese.words()).contains("Não existe a peça “X99-1” neste arquivo.");
        assertThat(english.words()).contains("There is no piece “X99-1” in this archive.");
        Answer typed = client.send(
                "POST",
                "/pieces",
                Client.form("title", "Figueira", "length", "1,500 m").getBytes(StandardCharsets.US_ASCII),
                "Content-Type",
                "application/x-www-form-urlencoded",
                "Accept-Language",
                "pt");
        assertThat(typed.words()).contains("“1,500 m” não foi compreendido");
    }

    @Test
    void datesAndDecimalsFollowTheLanguage() throws IOException {
        saved("/pieces", "number", "24-001", "title", "Figueira", "length", "1.5 m");
        String piece = client.get("/pieces/24-001", "Accept-Language", "pt").words();
        assertThat(piece).contains("59,1").doesNotContain("59.1");
        assertThat(client.get("/history/piece/24-001", "Accept-Language", "pt").words())
                .contains("30 de setembro de 2024");
        assertThat(client.get("/history/piece/24-001").words()).contains("30 September 2024");
    }

    private Answer choose(String language, String... headers) throws IOException {
        String[] all = new String[headers.length + 2];
        all[0] = "Content-Type";
        all[1] = "application/x-www-form-urlencoded";
        System.arraycopy(headers, 0, all, 2, headers.length);
        return client.send(
                "POST", "/language", Client.form("language", language).getBytes(StandardCharsets.US_ASCII), all);
    }
}

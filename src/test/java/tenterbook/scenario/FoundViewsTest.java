package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Results as list, table and plot, pieces compared, and everything found as a file, on the sample. */
class FoundViewsTest {
    private static Client client;

    @BeforeAll
    static void open() {
        client = new Client(SampleStudio.readOnly().wiring().port());
    }

    private static Answer page(String address) throws IOException {
        Answer answer = client.get(address);
        assertThat(answer.status()).as(address).isEqualTo(200);
        return answer;
    }

    /** Texts of the cells of the table, row by row, without markup. */
    private static List<List<String>> rows(Answer page) {
        List<List<String>> rows = new ArrayList<>();
        Matcher row = Pattern.compile("(?s)<tr[^>]*>(.*?)</tr>").matcher(page.text());
        while (row.find()) {
            List<String> cells = new ArrayList<>();
            Matcher cell = Pattern.compile("(?s)<t[hd][^>]*>(.*?)</t[hd]>").matcher(row.group(1));
            while (cell.find()) {
                cells.add(cell.group(1)
                        .replaceAll("<[^>]*>", " ")
                        .replaceAll("\\s+", " ")
                        .strip());
            }
            rows.add(cells);
        }
        return rows;
    }

    @Test
    void aTableHasTheColumnsThatWereChosenInTheirOrder() throws IOException {
        List<List<String>> rows =
                rows(page("/?view=table&column=dips&column=title&column=status&board=B03&sort=number"));
        assertThat(rows.get(0)).containsExactly("number ↑", "title", "status", "dips");
        assertThat(rows.subList(1, rows.size()))
                .containsExactly(
                        List.of("V24-007", "Nove andorinhões", "hanging", "6"),
                        List.of("V24-008", "Andorinhões à noite", "in stock", "12"),
                        List.of("V24-009", "Vento de junho", "kept", "6–8"));
    }

    @Test
    void whatIsNotRecordedIsCalledSoAndNeverLeftBlank() throws IOException {
        List<List<String>> rows = rows(page("/?view=table&column=dips&column=price&q=V24-016"));
        assertThat(rows.get(1)).containsExactly("V24-016", "not recorded", "not recorded");
    }

    @Test
    void aColumnHeadingOrdersByItAndThenTheOtherWayRound() throws IOException {
        String table = page("/?view=table&sort=dips").text();
        assertThat(table).contains("aria-sort=\"ascending\"").contains("sort=most-dips&amp;view=table");
        String other = page("/?view=table&sort=most-dips").text();
        assertThat(other).contains("aria-sort=\"descending\"").contains("sort=dips&amp;view=table");
    }

    @Test
    void theViewStaysWhenTheSearchChanges() throws IOException {
        String page = page("/?view=plot&x=length&q=woad").text();
        String results = page.substring(page.indexOf("id=\"results\""));
        Matcher link = Pattern.compile("href=\"(/\\?[^\"]*|/)\"").matcher(results);
        List<String> without = new ArrayList<>();
        int all = 0;
        while (link.find()) {
            all++;
            if (!link.group(1).contains("x=length")) {
                without.add(link.group(1));
            }
        }
        assertThat(all).isGreaterThan(30);
        assertThat(without).isEmpty();
        assertThat(page).contains("<input type=\"hidden\" name=\"view\" value=\"plot\">");
    }

    @Test
    void aViewOrAColumnThatIsNotKnownIsNamedWithTheChoices() throws IOException {
        Answer view = client.get("/?view=map");
        assertThat(view.status()).isEqualTo(400);
        assertThat(view.words()).contains("lines, list, table, plot").contains("map");
        Answer column = client.get("/api/found?column=smell");
        assertThat(column.status()).isEqualTo(400);
        assertThat(column.json().get("error").textValue()).contains("column").contains("smell");
    }

    @Test
    void aPlotDrawsRangesAsBarsAndCountsWhatItCannotDraw() throws IOException {
        Answer plot = page("/?view=plot&x=dips&y=lightness");
        assertThat(plot.words())
                .contains("15 pieces are drawn.")
                .contains("8 pieces are not drawn; not recorded: dips for 8.");
        assertThat(Pattern.compile("<circle").matcher(plot.text()).results().count())
                .isEqualTo(15);
        // The dips of V24-009 are 6 to 8 of 20 across: from 30 to 40.
        assertThat(plot.text()).containsPattern("<path class=\"extent\" d=\"M30.00 [0-9.]+H40.00\"/>");
        assertThat(plot.text()).contains("V24-009 Vento de junho: 6–8 across, 53 up");
        assertThat(rows(plot)).contains(List.of("V24-009 Vento de junho", "6–8", "53"));
    }

    @Test
    void aPlotOfDaysAndMoneyNamesItsUnits() throws IOException {
        String words = page("/?view=plot&x=finished&y=price").words();
        assertThat(words).contains("price, EUR").contains("2024-04").contains("price for 8");
    }

    @Test
    void everyPairOfQuantitiesCanBeDrawn() throws IOException {
        String page = page("/?view=plot").text();
        List<String> quantities = Pattern.compile("<option value=\"([a-z]+)\"")
                .matcher(page.substring(page.indexOf("id=\"plot-x\""), page.indexOf("id=\"plot-y\"")))
                .results()
                .map(found -> found.group(1))
                .toList();
        assertThat(quantities).hasSize(10);
        for (String x : quantities) {
            assertThat(page("/?view=plot&x=" + x + "&y=lightness").text()).as(x).doesNotContain("NaN");
            assertThat(page("/?view=plot&x=dips&y=" + x).text()).as(x).doesNotContain("NaN");
        }
    }

    private static List<CSVRecord> csv(String address) throws IOException {
        Answer answer = page(address);
        assertThat(answer.header("Content-Type")).startsWith("text/csv");
        assertThat(answer.header("Content-Disposition")).contains("attachment");
        assertThat(answer.text()).startsWith("\uFEFF");
        return CSVFormat.RFC4180
                .parse(new StringReader(answer.text().substring(1)))
                .getRecords();
    }

    @Test
    void theFileHasEveryPieceFoundAndNotOnlyAPage() throws IOException {
        List<CSVRecord> records = csv("/found.csv?size=4&page=2&column=dips&sort=number");
        assertThat(records).hasSize(24);
        assertThat(records.get(0)).containsExactly("number", "dips", "dips, from", "dips, to");
        assertThat(records.get(1)).containsExactly("V24-001", "2", "2", "2");
        assertThat(records.get(9)).containsExactly("V24-009", "6–8", "6", "8");
        assertThat(records.get(16)).containsExactly("V24-016", "", "", "");
        assertThat(csv("/found.csv?fibre=linen")).hasSize(5);
    }

    @Test
    void whoHasAPieceWhereAndForHowMuchLeavesOnlyByAStatedChoice() throws IOException {
        String columns = "column=title&column=holder&column=place&column=price&q=V24-001";
        assertThat(csv("/found.csv?" + columns).get(0)).containsExactly("number", "title");
        assertThat(csv("/found.csv?private=yes&" + columns).get(1))
                .contains("Brites Almorena", "studio, flat drawer 1", "180\u00a0EUR", "180");

        JsonNode json = page("/api/found?" + columns).json();
        assertThat(json.get("leftOut").toString()).isEqualTo("[\"holder\",\"place\",\"price\"]");
        assertThat(json.toString()).doesNotContain("Brites");
        assertThat(page("/api/found?private=yes&" + columns)
                        .json()
                        .at("/pieces/0/values/holder/text")
                        .textValue())
                .isEqualTo("Brites Almorena");
    }

    @Test
    void theApiGivesAmountsAsNumbersAndLeavesOutWhatIsNotRecorded() throws IOException {
        JsonNode json = page("/api/found?column=dips&column=length&column=finished&column=dyes&sort=number")
                .json();
        assertThat(json.get("total").intValue()).isEqualTo(23);
        assertThat(json.get("pieces")).hasSize(23);
        JsonNode ninth = json.at("/pieces/8");
        assertThat(ninth.get("number").textValue()).isEqualTo("V24-009");
        assertThat(ninth.at("/values/dips/from").intValue()).isEqualTo(6);
        assertThat(ninth.at("/values/dips/to").intValue()).isEqualTo(8);
        assertThat(ninth.at("/values/finished/from").textValue()).isEqualTo("2024-06-15");
        assertThat(json.at("/pieces/15/values").has("dips")).isFalse();
        assertThat(json.at("/columns/3/unit").textValue()).isEqualTo("cm");
    }

    @Test
    void piecesTickedAreComparedSideBySideWithWhatDiffersInWords() throws IOException {
        Answer page = page("/compare/pieces?pieces=V24-001&pieces=V24-003");
        assertThat(page.words()).contains("They differ in:").contains("The same: ");
        List<List<String>> rows = rows(page);
        assertThat(rows).contains(List.of("dips", "2", "9", "differs"));
        assertThat(rows).contains(List.of("cloth", "SH silk habotai", "SH silk habotai", "the same"));
        assertThat(rows)
                .contains(List.of(
                        "board and state", "B01 Fig and wasp, state I", "B01 Fig and wasp, state I", "the same"));
        assertThat(page.words()).contains("ΔE00");
    }

    @Test
    void whatCannotBeComparedIsSaidAndTheRestIsShown() throws IOException {
        assertThat(page("/compare/pieces?pieces=V24-001").words()).contains("Select two to six pieces");
        assertThat(page("/compare/pieces?pieces=V24-001,V24-002,v24-900").words())
                .contains("v24-900")
                .contains("differs");
        Answer many = page("/compare/pieces?pieces=V24-001,V24-002,V24-003,V24-004,V24-005,V24-006,V24-007");
        assertThat(many.words()).contains("At most 6 pieces").contains("found 7");
        assertThat(rows(many).get(0)).hasSize(8);
    }

    @Test
    void tickedPiecesReachTheLabels() throws IOException {
        assertThat(page("/print?pieces=V24-003&pieces=V24-004").words())
                .contains("V24-003")
                .contains("V24-004");
    }

    @Test
    void aPageBehindTheLastSaysSoAndLeadsBack() throws IOException {
        Answer page = client.get("/?q=woad&page=9999");
        assertThat(page.words())
                .contains("There is no page 9999: the 15 pieces found end with page 1.")
                .doesNotContain("No pieces match all of this");
        assertThat(page.text()).contains("<a href=\"/?q=woad\">Go to that page</a>");
    }

    @Test
    void aShareWithoutAColourIsNotPassedOverInSilence() throws IOException {
        assertThat(client.get("/?share=0.5&within=5").words())
                .contains("within, share say something of a colour, and no colour is asked for");
        assertThat(client.get("/?colour=48,-5,-24&share=0.5&within=5").words())
                .doesNotContain("no colour is asked for");
        assertThat(client.get("/?colour=blue").words()).contains("a word such as ‘deep blue’ goes into Find");
    }

    @Test
    void aColourWordShowsWhatItStandsForInFigures() throws IOException {
        assertThat(client.get("/?q=deep+blue").words())
                .contains("What ‘deep blue’ is in figures")
                .contains("L* 12 to 36; C* 12 or more; hue 235° to 286°, less what other names take of that.");
        assertThat(client.get("/?colours=blue").words()).contains("L* 36 to 60; C* 12 to 55; hue 235° to 286°.");
        String undyed = client.get("/?q=undyed").words();
        assertThat(undyed)
                .contains("names of colours are in figures")
                .contains("undyed linen : the studio’s own name.");
        assertThat(client.get("/?q=woad").words()).doesNotContain("in figures");
        assertThat(client.get("/?colours=nosuch").words()).doesNotContain("in figures");
    }

    @Test
    void whereNothingIsFoundEachPartSaysWhatIsFoundWithoutIt() throws IOException {
        Answer none = client.get("/?q=light+blue+on+linen");
        assertThat(none.words())
                .contains("Without Colour: light blue : 4 pieces")
                .contains("Without Fibre: linen : 2 pieces");
        assertThat(client.get("/?dye=woad&fibre=wool").words())
                .contains("Without Dye: woad : 2 pieces")
                .contains("Without Fibre: wool : 15 pieces");
        assertThat(client.get("/?q=woad").words()).doesNotContain("Without Dye: woad");
    }
}

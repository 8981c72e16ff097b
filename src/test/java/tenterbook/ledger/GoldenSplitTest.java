package tenterbook.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import tenterbook.archive.Kinds;
import tenterbook.ledger.revision.Kind;
import tenterbook.ledger.revision.Privacy;
import tenterbook.ledger.revision.RecordCodec;
import tenterbook.ledger.revision.TwoParts;

/** The split by the descriptions' own privacy, over every record of the sample studio as format 1 stored it. */
class GoldenSplitTest {
    private static final Path LEDGER = Path.of("src/test/resources/golden/ledger-format-1.jsonl");

    @Test
    void everyRecordOfTheFirstFormatSplitsAndMergesToTheSameTextAndNoPersonIsInThePublicPart() throws IOException {
        Map<String, Privacy> privacy = Kinds.ALL.stream().collect(Collectors.toMap(Kind::name, Kind::privacy));
        Set<String> persons = new TreeSet<>();
        Map<String, TwoParts> parts = new TreeMap<>();
        for (String line : Files.readAllLines(LEDGER)) {
            JsonNode revision = new ObjectMapper().readTree(line);
            String kind = revision.get("kind").textValue();
            String record = revision.get("record").textValue();
            TwoParts split = TwoParts.split(record, privacy.get(kind));

            assertThat(split.merged()).as(line).isEqualTo(record);
            parts.put(kind + " " + revision.get("sequence"), split);
            if (kind.equals("party")) {
                persons.add(revision.get("id").textValue());
                persons.add(RecordCodec.parsed(record).path("name").textValue());
            }
        }
        assertThat(parts).hasSizeGreaterThan(200);
        assertThat(parts.values()).anyMatch(split -> !split.fields().equals(TwoParts.NO_FIELDS));
        assertThat(persons).hasSizeGreaterThan(5);
        parts.forEach((where, split) ->
                assertThat(persons).as(where).noneMatch(person -> split.shown().contains("\"" + person + "\"")));
    }
}

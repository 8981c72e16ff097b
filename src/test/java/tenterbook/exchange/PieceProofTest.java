package tenterbook.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.exchange.PieceProof.Include;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.Progress;

class PieceProofTest {
    @TempDir
    static Path around;

    private static Path lean;
    private static Path full;
    private static String end;

    @BeforeAll
    static void prove() throws IOException {
        try (Archive archive = Demo.open(around.resolve("studio"))) {
            PieceProof proof = new PieceProof(archive, Progress.UNWATCHED);
            lean = around.resolve("lean.json");
            full = around.resolve("full.json");
            proof.write("V24-001", Set.of(), lean);
            proof.write("V24-001", Set.of(Include.values()), full);
            end = archive.ledger().lastHash().hex();
        }
    }

    @Test
    void aProofShowsThePieceAndNothingOfAnybodyElse() throws IOException {
        ProofCheck.Result result = ProofCheck.run(lean);

        assertThat(result.findings()).isEmpty();
        assertThat(result.shows())
                .extracting(line -> line.inEnglish().replaceFirst(", hash [0-9a-f]{64};", ";"))
                .containsExactly(
                        "piece V24-001, version 1, saved 2024-09-30T16:20:00Z in revision 9; private part not shown.",
                        "piece V24-001, version 2, saved 2024-09-30T16:20:00Z in revision 11; private part not shown.",
                        "The texts above are the ones written at these places of a chain of 11 revisions.",
                        "The chain ends in revision 11 with the hash %s.".formatted(end));
        assertThat(Files.readString(lean))
                .contains("Maré, a figueira")
                .doesNotContain("vermia", "Vermia", "quay", "Inês", "Tomé", "title found", "Fig and wasp", "B09");
    }

    @Test
    void whatItWasMadeInAndThePrivatePartsAreShownByChoice() throws IOException {
        ProofCheck.Result result = ProofCheck.run(full);

        assertThat(result.findings()).isEmpty();
        assertThat(result.shows())
                .extracting(line -> line.inEnglish().replaceFirst(", hash [0-9a-f]{64};", ";"))
                .hasSize(6)
                .anyMatch(line -> line.startsWith("board-pair B01, version 1"))
                .anyMatch(line -> line.startsWith("clamping C24-001, version 1"))
                .contains("piece V24-001, version 2, saved 2024-09-30T16:20:00Z in revision 11; private part shown.");
        assertThat(Files.readString(full)).contains("vermia", "title found").doesNotContain("quay");
    }

    @Test
    void aByteAlteredAnywhereIsFound() throws Exception {
        byte[] whole = Files.readAllBytes(full);
        Random random = new Random(5);
        Path altered = around.resolve("altered.json");
        for (int i = 0; i < 600; i++) {
            byte[] bytes = whole.clone();
            int at = random.nextInt(bytes.length);
            bytes[at] ^= (byte) (1 << random.nextInt(7));
            Files.write(altered, bytes);

            assertThat(ProofCheck.run(altered).findings()).as("byte %d", at).isNotEmpty();
            assertThatThrownBy(() -> StrangersCheck.check(bytes))
                    .as("byte %d", at)
                    .isInstanceOf(Exception.class);
        }
    }

    /** With the sum made again, as a forger would. */
    private static List<String> findings(String from, String to) throws IOException {
        String text = Files.readString(full);
        assertThat(text).contains(from);
        String changed = text.substring(0, text.lastIndexOf("\"sha256\""))
                .replaceFirst(java.util.regex.Pattern.quote(from), java.util.regex.Matcher.quoteReplacement(to));
        Path file = around.resolve("forged.json");
        Files.writeString(
                file,
                changed + "\"sha256\":\"" + tenterbook.measure.Digest.of(changed.getBytes(StandardCharsets.UTF_8))
                        + "\"\n}\n");
        return ProofCheck.run(file).findings().stream().map(Object::toString).toList();
    }

    @Test
    void aForgedTextIsNamedAlsoWhereTheSumOfTheFileWasMadeAgain() throws IOException {
        assertThat(findings("Maré, a figueira", "Maré, a oliveira"))
                .containsExactly("the public part of revision 11: does not give its digest: it was changed");
        assertThat(findings("title found", "title lost"))
                .containsExactly("the private part of revision 11: does not give its digest: it was changed");
        assertThat(findings("\\\"sequence\\\":4", "\\\"sequence\\\":5"))
                .contains("revision 5: does not name the hash of the revision before it: one of the two was changed");
        assertThat(findings(end, "0".repeat(64)))
                .anyMatch(line -> line.startsWith("the end of the chain: is revision 11"));
        assertThat(findings("\"piece\":\"V24-001\"", "\"piece\":\"V24-002\""))
                .containsExactly("piece V24-002: has no revision in the file");
    }

    @Test
    void aVersionLeftOutIsMissed() throws IOException {
        ObjectNode proof = (ObjectNode) new ObjectMapper().readTree(lean.toFile());
        ((ArrayNode) proof.get("parts")).remove(0);
        Path file = Files.writeString(around.resolve("short.json"), proof.toString());

        assertThat(ProofCheck.run(file).findings())
                .anyMatch(
                        finding -> finding.toString()
                                .equals(
                                        "revision 11: is version 2 of piece V24-001, where version 1 was due: one was left out"));
    }

    @Test
    void aVersionLeftOutOfAnyRecordThatIsShownIsMissed() throws IOException {
        Path whole = around.resolve("boards.json");
        try (Archive archive = Demo.open(around.resolve("another-studio"))) {
            for (int version = 1; version < 5; version++) {
                int from = version;
                archive.ledger()
                        .write(
                                "Inês",
                                act -> act.save(Kinds.BOARD_PAIR, Demo.board("B01", "cut anew " + from), from, ""));
            }
            new PieceProof(archive, Progress.UNWATCHED).write("V24-001", Set.of(Include.CLAMPINGS), whole);
        }
        assertThat(ProofCheck.run(whole).findings()).isEmpty();

        assertThat(withoutPublicPart(whole, 13))
                .contains("revision 14: is version 4 of board-pair B01, where version 3 was due: one was left out");
        assertThat(withoutPublicPart(whole, 13, 12))
                .contains("revision 14: is version 4 of board-pair B01, where version 2 was due: 2 were left out");
        assertThat(withoutPublicPart(whole, 3))
                .contains("revision 12: is version 2 of board-pair B01, where version 1 was due: one was left out");
    }

    private static List<String> withoutPublicPart(Path whole, Integer... sequences) throws IOException {
        ObjectNode proof = (ObjectNode) new ObjectMapper().readTree(whole.toFile());
        ArrayNode parts = (ArrayNode) proof.get("parts");
        int before = parts.size();
        for (int i = before - 1; i >= 0; i--) {
            if (List.of(sequences).contains(parts.get(i).get(0).intValue())) {
                parts.remove(i);
            }
        }
        assertThat(parts).hasSize(before - sequences.length);
        Path file = Files.writeString(around.resolve("gap.json"), proof.toString());
        return ProofCheck.run(file).findings().stream().map(Object::toString).toList();
    }

    @Test
    void aStrangersOwnProgramAgrees() throws Exception {
        assertThat(StrangersCheck.check(Files.readAllBytes(lean))).isEqualTo(end);
        assertThat(StrangersCheck.check(Files.readAllBytes(full))).isEqualTo(end);
    }

    @Test
    void aScriptInAnotherLanguageAgrees() throws Exception {
        assumeTrue(python(List.of("--version")).startsWith("Python 3"), "Skipped: no python3 here");
        Path script = Path.of("src/test/resources/tenterbook/exchange/verify_proof.py")
                .toAbsolutePath();

        assertThat(python(List.of(script.toString(), full.toString()))).isEqualTo("OK V24-001 2 " + end);
        byte[] bytes = Files.readAllBytes(full);
        Random random = new Random(6);
        for (int i = 0; i < 15; i++) {
            byte[] changed = bytes.clone();
            changed[random.nextInt(changed.length)] ^= 1;
            Path file = Files.write(around.resolve("altered-" + i + ".json"), changed);
            assertThat(python(List.of(script.toString(), file.toString()))).startsWith("WRONG: ");
        }
        byte[] letter = Files.readString(full)
                .replaceFirst("Maré, a figueira", "Maré, a Figueira")
                .getBytes(StandardCharsets.UTF_8);
        Path file = Files.write(around.resolve("letter.json"), letter);
        assertThat(python(List.of(script.toString(), file.toString())))
                .matches("WRONG: the sha256 of the file; the public part of revision (9|11)");
    }

    /** By the command and the page, the part is named beside the file. */
    @Test
    void oneAlteredByteIsNamedWhereItStands() throws IOException {
        Path file = Files.writeString(
                around.resolve("one-letter.json"),
                Files.readString(full).replaceFirst("Maré, a figueira", "Maré, a Figueira"));
        assertThat(ProofCheck.run(file).findings())
                .extracting(Object::toString)
                .hasSize(2)
                .startsWith(
                        "the file: does not give the sha256 in its last line: a byte of it was changed after it was written")
                .last()
                .asString()
                .matches("the public part of revision (9|11): does not give its digest: it was changed");
    }

    @Test
    void aProofSaysHowToCheckItAndWhatItDoesNotShow() throws IOException {
        var proof = new ObjectMapper().readTree(lean.toFile());
        String about = proof.get("about").toString();
        // Every member that a stranger meets is explained.
        proof.fieldNames().forEachRemaining(name -> {
            if (!Set.of("proof", "about").contains(name)) {
                assertThat(about).contains("‘" + name + "’");
            }
        });
        assertThat(proof.get("not_shown")).hasSameSizeAs(ProofCheck.NOT_SHOWN);
    }

    static String python(List<String> words) throws InterruptedException {
        List<String> command = new ArrayList<>(List.of("python3"));
        command.addAll(words);
        try {
            Process python =
                    new ProcessBuilder(command).redirectErrorStream(true).start();
            String said = new String(python.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
            python.waitFor(20, TimeUnit.SECONDS);
            return said;
        } catch (IOException e) {
            return "no python3: " + e.getMessage();
        }
    }

    @Test
    void whatCannotBeProvenIsRefusedAndLeavesNoFile() {
        Path file = around.resolve("none.json");
        try (Archive archive = Archive.open(around.resolve("studio"), Demo.CLOCK)) {
            PieceProof proof = new PieceProof(archive, Progress.UNWATCHED);
            assertThatThrownBy(() -> proof.write("V24-999", Set.of(), file))
                    .isInstanceOf(ArchiveProblem.class)
                    .hasMessageContaining("There is no piece “V24-999”");
            assertThatThrownBy(() -> proof.write("V24-001", Set.of(), lean)).hasMessageContaining("already there");
            assertThatThrownBy(() -> proof.write("V24-001", Set.of(), around.resolve("no/folder.json")))
                    .hasMessageContaining("could not be written");
            assertThat(archive.ledger().find(Kinds.PIECE, "V24-001")).isPresent();
        }
        assertThat(file).doesNotExist();
    }
}

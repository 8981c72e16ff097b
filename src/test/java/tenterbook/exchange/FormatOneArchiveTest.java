package tenterbook.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.documents.PhotoSource;
import tenterbook.documents.issue.PaperPdf;
import tenterbook.exchange.PieceProof.Include;
import tenterbook.ledger.Erased;
import tenterbook.ledger.Saved;
import tenterbook.ledger.file.Progress;
import tenterbook.ledger.revision.Canonical;
import tenterbook.ledger.revision.Kind;
import tenterbook.ledger.revision.Revision;
import tenterbook.measure.Digest;
import tenterbook.piece.Party;
import tenterbook.piece.Piece;

/** The sample archive was once packed by a program of format 1, and that bag stays as it is: what was written then must open for ever. */
class FormatOneArchiveTest {
    /** After the newest revision of the bag. */
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2024-12-20T10:00:00Z"), ZoneOffset.UTC);

    private static final String END = "8c7bba7dab857ef9f61436d4e342954313699dd318ac2b69fae4a1f0e3802a7f";

    @TempDir
    Path around;

    private static List<String> check(Archive archive) {
        return ArchiveCheck.run(archive, Progress.UNWATCHED).stream()
                .map(Object::toString)
                .toList();
    }

    private Path restored() {
        return new Restore(CLOCK)
                .restore(FormatOneBag.at(around.resolve("of-format-1")), around.resolve("studio"), Progress.UNWATCHED)
                .folder();
    }

    private boolean onTheDisk(String text, Path folder) throws IOException {
        String wanted = new String(text.getBytes(StandardCharsets.UTF_8), StandardCharsets.ISO_8859_1);
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.filter(Files::isRegularFile)
                    .filter(each -> !each.toString().endsWith(".jpg"))
                    .toList()) {
                if (Files.readString(file, StandardCharsets.ISO_8859_1).contains(wanted)) {
                    return true;
                }
            }
        }
        return false;
    }

    @Test
    void anArchiveOfFormat1IsReadWrittenProvenErasedPackedAndRestored() throws Exception {
        Path place = restored();
        assertThat(place.resolve("older-ledgers"))
                .as("the bag has it as it was")
                .doesNotExist();
        Path bag = around.resolve("bag");
        try (Archive archive = Archive.open(place, CLOCK)) {
            long before = archive.ledger().lastSequence();
            assertThat(archive.ledger().lastHash().hex()).isEqualTo(END);
            assertThat(archive.ledger().after(0, 1000)).allMatch(revision -> revision.format() == 1);
            assertThatThrownBy(() -> new PieceProof(archive, Progress.UNWATCHED)
                            .write("V24-001", Set.of(), around.resolve("early.json")))
                    .hasMessageContaining("every revision here is of format 1");
            Digest last = archive.ledger().lastHash();
            Saved<Piece> piece = archive.ledger().find(Kinds.PIECE, "V24-001").orElseThrow();
            archive.ledger()
                    .write(
                            "Inês Valderim",
                            act -> act.save(
                                    Kinds.PIECE,
                                    piece.record().withPhotos(List.of()),
                                    piece.version(),
                                    "photographs out"));
            Revision first = archive.ledger().after(before, 1).get(0);
            assertThat(first.format()).isEqualTo(2);
            assertThat(first.previous()).isEqualTo(last);
            assertThat(first.chained().orElseThrow()).contains("\"before\":\"");
            assertThat(check(archive)).isEmpty();
            theOldHistoryIsProven(archive);
            aProofHoldsNoOlderHash(archive);

            assertThat(onTheDisk("Brites Almorena", place)).isTrue();
            Erased erased = archive.ledger().erase("Inês Valderim", Kinds.PARTY, "buyer-1", "asked for by the person");
            assertThat(erased.left()).isEmpty();
            assertThat(check(archive)).isEmpty();
            for (String trace : List.of("Brites", "Almorena", "buyer-1")) {
                assertThat(onTheDisk(trace, place)).as(trace).isFalse();
            }
            theOldHistoryIsProven(archive);
            new Pack(CLOCK).pack(archive, bag, Progress.UNWATCHED);
        }
        assertThat(bag.resolve("data/ledger-before.jsonl")).exists();
        Restored again = new Restore(CLOCK).restore(bag, around.resolve("again"), Progress.UNWATCHED);
        try (Archive archive = Archive.open(again.folder(), CLOCK)) {
            assertThat(check(archive)).isEmpty();
            assertThat(archive.party("buyer-1")).isEmpty();
            assertThat(archive.ledger().all(Kinds.PIECE))
                    .extracting(Saved::sequence)
                    .hasSize(23);
        }
        theProgramInTheReadMeAgrees(bag.resolve("data"), again.lastHash().hex());
        withoutTheEarlierText(bag);
    }

    private void withoutTheEarlierText(Path bag) throws IOException {
        assertThat(new Restore(CLOCK)
                        .restore(bag, around.resolve("third"), Progress.UNWATCHED)
                        .notes())
                .isEmpty();
        BadBag bad = new BadBag(bag).delete("data/ledger-before.jsonl");
        Path info = bag.resolve("bag-info.txt");
        Files.writeString(info, Files.readString(info).replaceAll("(?m)^Payload-Oxum: .*\\n", ""));
        bad.manifests();
        assertThat(new Restore(CLOCK)
                        .restore(bag, around.resolve("fourth"), Progress.UNWATCHED)
                        .notes())
                .singleElement()
                .satisfies(note -> assertThat(note.toString())
                        .startsWith("data/ledger-before.jsonl: is missing")
                        .contains("revisions of format 1"));
    }

    @Test
    void itsPapersAreLaidOutOnceAndTheirFilesAreCheckedPackedAndRestored() throws Exception {
        Path place = restored();
        try (Archive archive = Archive.open(place, CLOCK)) {
            List<String> ids = archive.ledger().allIdsEverUsed(Kinds.ISSUED_PAPER);
            assertThat(ids).hasSize(4);
            assertThat(PaperPdf.storeAll(archive, PhotoSource.NONE, Progress.UNWATCHED))
                    .isEmpty();
            long last = archive.ledger().lastSequence();
            PaperPdf.storeAll(archive, PhotoSource.NONE, Progress.UNWATCHED);
            assertThat(archive.ledger().lastSequence()).isEqualTo(last);
            assertThat(check(archive)).isEmpty();
            new Pack(CLOCK).pack(archive, around.resolve("bag"), Progress.UNWATCHED);
        }
        Restored again = new Restore(CLOCK).restore(around.resolve("bag"), around.resolve("again"), Progress.UNWATCHED);
        try (Archive archive = Archive.open(again.folder(), CLOCK)) {
            assertThat(check(archive)).isEmpty();
            for (Saved<IssuedPaper> paper : archive.ledger().all(Kinds.ISSUED_PAPER)) {
                assertThat(new String(archive.papers().read(paper.record().pdf()), StandardCharsets.ISO_8859_1))
                        .startsWith("%PDF-");
            }
        }
    }

    private void theOldHistoryIsProven(Archive archive) throws Exception {
        Path file = around.resolve("proof-%d.json".formatted(archive.ledger().lastSequence()));
        new PieceProof(archive, Progress.UNWATCHED).write("V24-001", Set.of(Include.values()), file);
        ProofCheck.Result result = ProofCheck.run(file);
        assertThat(result.findings()).isEmpty();
        assertThat(result.shows())
                .anyMatch(line -> line.inEnglish().startsWith("piece V24-001, version 1, saved 2024-"));
        assertThat(StrangersCheck.check(Files.readAllBytes(file)))
                .isEqualTo(archive.ledger().lastHash().hex());
        if (PieceProofTest.python(List.of("--version")).startsWith("Python 3")) {
            String script = Path.of("src/test/resources/tenterbook/exchange/verify_proof.py")
                    .toAbsolutePath()
                    .toString();
            assertThat(PieceProofTest.python(List.of(script, file.toString()))).startsWith("OK V24-001 ");
        }
    }

    @Test
    void aForgedPartOfAnOldRevisionIsNamedAlsoWhereTheSumOfTheFileWasMadeAgain() throws IOException {
        Path file = around.resolve("proof.json");
        try (Archive archive = Archive.open(restored(), CLOCK)) {
            Saved<Party> party = archive.ledger().all(Kinds.PARTY).get(0);
            String id = Kinds.PARTY.id().apply(party.record());
            archive.ledger().write("Inês Valderim", act -> {
                act.withdraw(Kinds.PARTY, id, party.version(), "");
                return act.save(Kinds.PARTY, party.record(), party.version() + 1, "");
            });
            new PieceProof(archive, Progress.UNWATCHED).write("V24-001", Set.of(Include.PRIVATE_PARTS), file);
        }
        String proof = Files.readString(file);
        assertThat(forged(proof, "\"public\",\"{", "\"public\",\"{ "))
                .first()
                .asString()
                .startsWith("the public part of");
        assertThat(forged(proof, "\"private\",\"{", "\"private\",\"{ "))
                .singleElement()
                .asString()
                .startsWith("the private part of");
        assertThat(forged(proof, "\"link\",\"[", "\"link\",\"[ "))
                .first()
                .asString()
                .startsWith("the link part of");
        assertThat(forged(proof, "\"earlier\":[\n[1,\"", "\"earlier\":[\n[1,\"0"))
                .singleElement()
                .asString()
                .endsWith("does not commit to the earlier revisions as they stand here");
    }

    /** What is found after the first {@code from} was changed and the sum made again, as a forger would. */
    private List<String> forged(String proof, String from, String to) throws IOException {
        assertThat(proof).contains(from);
        String changed = proof.substring(0, proof.lastIndexOf("\"sha256\""))
                .replaceFirst(Pattern.quote(from), Matcher.quoteReplacement(to));
        String sum = Digest.of(changed.getBytes(StandardCharsets.UTF_8)).hex();
        Path file = Files.writeString(around.resolve("forged.json"), changed + "\"sha256\":\"" + sum + "\"\n}\n");
        List<String> findings =
                ProofCheck.run(file).findings().stream().map(Object::toString).toList();
        assertThat(findings).isNotEmpty();
        return findings;
    }

    /** A hash of format 1 has no salt: with the one before it, a price or a buyer could be found by trying. */
    private void aProofHoldsNoOlderHash(Archive archive) throws IOException {
        Path file = around.resolve("guess.json");
        new PieceProof(archive, Progress.UNWATCHED).write("V24-001", Set.of(Include.CLAMPINGS), file);
        String proof = Files.readString(file);
        List<Revision> old = archive.ledger().after(0, 1000).stream()
                .filter(revision -> revision.format() == 1)
                .toList();
        // The last is named by the first revision of format 2; the one before it, which it covers, is not there.
        assertThat(proof).contains(old.get(old.size() - 1).hash().hex());
        assertThat(old.subList(0, old.size() - 1))
                .hasSizeGreaterThan(200)
                .noneMatch(revision -> proof.contains(revision.hash().hex()));
    }

    private void theProgramInTheReadMeAgrees(Path data, String hash) throws Exception {
        String readMe = Files.readString(data.resolve("READ-ME-FIRST.txt"));
        String program = readMe.substring(readMe.indexOf("    import hashlib"), readMe.indexOf("\nThe last revision"))
                .replace("open(\"ledger.jsonl\"", "open(\"" + data.resolve("ledger.jsonl") + "\"");
        Path script = Files.writeString(around.resolve("recompute.py"), program.replaceAll("(?m)^    ", ""));
        String said = PieceProofTest.python(List.of(script.toString()));
        if (!said.startsWith("no python3")) {
            assertThat(said).isEqualTo(hash);
        }
    }

    @Test
    void everyRecordSplitsAndComesTogetherAgain() {
        try (Archive archive = Archive.open(restored(), CLOCK)) {
            archive.ledger().write("Inês Valderim", act -> {
                for (Kind<?> kind : Kinds.ALL) {
                    again(archive, act, kind);
                }
                return null;
            });
            assertThat(check(archive)).isEmpty();
            List<Revision> all = archive.ledger().after(0, 10_000);
            assertThat(all).filteredOn(revision -> revision.format() == 2).hasSizeGreaterThan(100);
            all.stream().filter(revision -> revision.format() == 2).forEach(revision -> {
                List<Revision> history = archive.ledger().history(revision.key());
                assertThat(asWrittenNow(revision)).isEqualTo(asWrittenNow(history.get(history.size() - 3)));
            });
        }
    }

    /** What an older program stored although nobody had entered it is left out. */
    private static String asWrittenNow(Revision revision) {
        Kind<?> kind = Kinds.ALL.stream()
                .filter(each -> each.name().equals(revision.key().kind()))
                .findFirst()
                .orElseThrow();
        return asWrittenNow(kind, revision.json());
    }

    private static <T> String asWrittenNow(Kind<T> kind, String json) {
        return Canonical.json(kind.codec().toJson(kind.codec().fromText(json)));
    }

    /** Withdraws and saves, so that what is equal is written once more. */
    private static <T> void again(Archive archive, tenterbook.ledger.LedgerTransaction act, Kind<T> kind) {
        for (Saved<T> saved : archive.ledger().all(kind)) {
            String id = kind.id().apply(saved.record());
            act.withdraw(kind, id, saved.version(), "");
            act.save(kind, saved.record(), saved.version() + 1, "");
        }
    }
}

package tenterbook.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static tenterbook.search.Demo.find;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.apache.lucene.store.FSDirectory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.labelling.Samples;
import tenterbook.ledger.file.Progress;
import tenterbook.material.Role;
import tenterbook.measure.Basis;
import tenterbook.measure.Quantity;
import tenterbook.measure.Unit;
import tenterbook.piece.Party;
import tenterbook.piece.PartyId;
import tenterbook.piece.Piece;
import tenterbook.piece.Status;
import tenterbook.search.find.SearchResult;
import tenterbook.search.index.OutsideFacets;
import tenterbook.search.index.PieceDocument;
import tenterbook.search.query.PieceQuery;
import tenterbook.search.suggest.Suggestion;

class FollowingTest {
    @TempDir
    Path folder;

    @Test
    void aSearchSeesTheWriteBeforeIt() {
        try (Archive archive = Demo.archive(folder);
                PieceIndex index = PieceIndex.open(archive)) {
            for (int i = 0; i < 40; i++) {
                String number = "V24-%03d".formatted(i);
                Demo.save(archive, Kinds.PIECE, Demo.piece(number, "word" + i, null, Status.KEPT, "2024"));
                SearchResult found = index.search(PieceQuery.EVERYTHING.withText("word" + i));
                assertThat(Demo.numbers(found)).containsExactly(number);
                assertThat(found.behind()).isZero();
            }
            assertThat(index.sequence()).isEqualTo(archive.ledger().lastSequence());
        }
    }

    @Test
    void aChangeIsFoundThroughEveryRecordThatAPieceNames() {
        try (Archive archive = Demo.archive(folder);
                PieceIndex index = PieceIndex.open(archive)) {
            Demo.fill(archive);
            assertThat(find(index, "heron")).hasSize(2);
            Demo.save(archive, Kinds.BOARD_PAIR, Demo.board("B02", "Egret sluice", "sycamore", "I", "II"));
            assertThat(find(index, "egret")).containsExactlyInAnyOrder("V24-003", "V24-004");
            assertThat(find(index, "heron")).containsExactly("V24-003");
            assertThat(index.suggest("heron w", 9)).extracting(Suggestion::kind).containsExactly("title");
            Demo.save(archive, Kinds.CLOTH, Demo.cloth("LV", "linen scrim", "linen"));
            assertThat(find(index, "scrim")).hasSize(2);
            Demo.save(archive, Kinds.LOT, Demo.lot("lac-1", Role.DYE, "sticklac", ""));
            assertThat(find(index, "sticklac")).containsExactly("V24-002");
            Demo.save(archive, Kinds.PARTY, new Party(new PartyId("sala-vermia"), "Casa Ondrel", "", "", ""));
            assertThat(find(index, "ondrel")).containsExactly("V24-002");
            Demo.save(archive, Kinds.CLAMPING, Demo.clamping("C24-005", "B01", "I", "SH", "11", "thirst"));
            assertThat(find(index, "thirst")).containsExactly("V24-010");
            assertThat(index.byBoard("B03")).isEmpty();
            assertThat(index.check(Progress.UNWATCHED)).isEmpty();
        }
    }

    @Test
    void aWithdrawnPieceVanishesAndComesBackWhenRestored() {
        try (Archive archive = Demo.archive(folder);
                PieceIndex index = PieceIndex.open(archive)) {
            Demo.fill(archive);
            var piece = archive.piece("V24-003").orElseThrow();
            Demo.withdraw(archive, Kinds.PIECE, "V24-003");
            assertThat(index.search(PieceQuery.EVERYTHING).total()).isEqualTo(4);
            assertThat(find(index, "V24-003")).isEmpty();
            assertThat(index.suggest("v24003", 9)).isEmpty();
            Demo.save(archive, Kinds.PIECE, piece);
            assertThat(find(index, "V24-003")).containsExactly("V24-003");
        }
    }

    @Test
    void aPieceThatCannotBeIndexedKeepsNoOtherFromBeingFound() {
        try (Archive archive = Demo.archive(folder);
                PieceIndex index = PieceIndex.open(archive)) {
            Demo.fill(archive);
            Piece sound = Demo.piece("V24-090", "By the gram", null, Status.KEPT, "2024");
            Demo.save(archive, Kinds.PIECE, Demo.measured(sound, Quantity.between(3, 3, Unit.GRAM, Basis.UNKNOWN)));
            Demo.save(archive, Kinds.PIECE, Demo.piece("V24-091", "Afterwards", null, Status.KEPT, "2024"));
            assertThat(find(index, "afterwards")).containsExactly("V24-091");
            assertThat(index.check(Progress.UNWATCHED))
                    .singleElement()
                    .satisfies(finding -> assertThat(finding.toString()).contains("V24-090", "cannot be indexed"));
            index.reindex(Progress.UNWATCHED);
            assertThat(find(index, "afterwards")).containsExactly("V24-091");
            Demo.save(archive, Kinds.PIECE, sound);
            assertThat(find(index, "gram")).containsExactly("V24-090");
            assertThat(index.check(Progress.UNWATCHED)).isEmpty();
        }
    }

    @Test
    void aDeletedIndexIsRebuiltEqual() throws IOException {
        List<SearchResult> before;
        try (Archive archive = Demo.archive(folder)) {
            try (PieceIndex index = PieceIndex.open(archive)) {
                Demo.fill(archive);
                Demo.save(archive, Kinds.BOARD_PAIR, Demo.board("B01", "Fig and hornet", "pear", "I"));
                Demo.withdraw(archive, Kinds.PIECE, "V24-004");
                before = answers(index);
            }
            delete(archive.folder().index());
            try (PieceIndex index = PieceIndex.open(archive)) {
                assertThat(answers(index)).isEqualTo(before);
                index.reindex(Progress.UNWATCHED);
                assertThat(answers(index)).isEqualTo(before);
                assertThat(index.check(Progress.UNWATCHED)).isEmpty();
            }
        }
    }

    private static List<SearchResult> answers(PieceIndex index) {
        return Stream.of("", "hornet", "leak", "beak", "silk", "2024", "kyokechi", "V24-001")
                .map(words -> index.search(PieceQuery.EVERYTHING.withText(words)))
                .map(r -> new SearchResult(
                        r.total(),
                        r.hits(),
                        r.facets(),
                        r.query(),
                        0,
                        r.respelt(),
                        r.behind(),
                        "",
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of()))
                .toList();
    }

    static void delete(Path root) throws IOException {
        try (Stream<Path> all = Files.walk(root)) {
            for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(path);
            }
        }
    }

    @Test
    void anIndexDeletedWhileItIsOpenIsBuiltAnewAtTheNextWrite() throws IOException {
        try (Archive archive = Demo.archive(folder)) {
            try (PieceIndex index = PieceIndex.open(archive)) {
                Demo.fill(archive);
                assertThat(find(index, "heron")).hasSize(2);
                delete(archive.folder().index());
                Demo.save(archive, Kinds.PIECE, Demo.piece("V24-091", "Afterwards", null, Status.KEPT, "2024"));
                assertThat(find(index, "afterwards")).containsExactly("V24-091");
                assertThat(find(index, "heron")).hasSize(2);
                Demo.save(archive, Kinds.PIECE, Demo.piece("V24-092", "Later", null, Status.KEPT, "2024"));
                assertThat(find(index, "later")).containsExactly("V24-092");
                assertThat(index.check(Progress.UNWATCHED)).isEmpty();
            }
            try (PieceIndex index = PieceIndex.open(archive)) {
                assertThat(find(index, "later")).containsExactly("V24-092");
            }
        }
    }

    @Test
    void aDamagedIndexIsRebuilt() throws IOException {
        try (Archive archive = Demo.archive(folder)) {
            try (PieceIndex index = PieceIndex.open(archive)) {
                Demo.fill(archive);
                assertThat(find(index, "heron")).hasSize(2);
            }
            try (Stream<Path> all = Files.walk(archive.folder().index())) {
                for (Path file : all.filter(Files::isRegularFile).toList()) {
                    Files.write(file, new byte[] {1, 2, 3});
                }
            }
            try (PieceIndex index = PieceIndex.open(archive)) {
                assertThat(find(index, "heron")).hasSize(2);
            }
        }
    }

    @Test
    void aProcessKilledBetweenLedgerAndIndexCatchesUp() throws Exception {
        Process killed = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx200m",
                        "-XX:TieredStopAtLevel=1",
                        "-cp",
                        System.getProperty("java.class.path"),
                        KilledWriter.class.getName(),
                        folder.toString())
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("killed.log").toFile())
                .start();
        assertThat(killed.waitFor(60, TimeUnit.SECONDS)).isTrue();
        assertThat(killed.exitValue())
                .as(Files.readString(folder.resolve("killed.log")))
                .isEqualTo(KilledWriter.HALTED);
        try (Archive archive = Demo.archive(folder.resolve("archive"));
                PieceIndex index = PieceIndex.open(archive)) {
            assertThat(archive.piece("V24-099")).isPresent();
            assertThat(find(index, "unindexed")).containsExactly("V24-099");
            assertThat(index.search(PieceQuery.EVERYTHING).total()).isEqualTo(6);
            assertThat(index.check(Progress.UNWATCHED)).isEmpty();
        }
    }

    @Test
    void aCancelledRebuildLeavesTheOldIndexAndNoTrace() throws IOException {
        try (Archive archive = Demo.archive(folder);
                PieceIndex index = PieceIndex.open(archive)) {
            Demo.fill(archive);
            find(index, "heron");
            Progress stopping = new Progress() {
                @Override
                public void at(long done, long total, String what) {}

                @Override
                public boolean cancelled() {
                    return true;
                }
            };
            assertThatThrownBy(() -> index.reindex(stopping)).isInstanceOf(Progress.Cancelled.class);
            assertThat(find(index, "heron")).hasSize(2);
            try (Stream<Path> folders = Files.list(archive.folder().index())) {
                assertThat(folders).hasSize(1);
            }
        }
    }

    @Test
    void theCheckFindsMissingStaleAndExtraEntries() throws IOException {
        try (Archive archive = Demo.archive(folder)) {
            Demo.fill(archive);
            try (PieceIndex index = PieceIndex.open(archive)) {
                assertThat(find(index, "heron")).hasSize(2);
            }
            PieceDocument other = PieceDocument.of(
                    Samples.alone(archive.studio(), Demo.piece("V24-003", "Forged", null, Status.LOST, "2024")),
                    List.of());
            PieceDocument extra = PieceDocument.of(
                    Samples.alone(archive.studio(), Demo.piece("Z99-001", "Never was", null, Status.LOST, "2024")),
                    List.of());
            try (Generation generation = Generation.newest(
                            new Generation.Place(archive.folder().index(), OutsideFacets.NONE, FSDirectory::open))
                    .orElseThrow()) {
                generation.remove("V24-001");
                generation.replace(other);
                generation.add(extra);
                generation.refresh(generation.seen());
                generation.commit();
            }
            try (PieceIndex index = PieceIndex.open(archive)) {
                assertThat(index.check(Progress.UNWATCHED))
                        .extracting(finding ->
                                finding.where() + " " + finding.what().split(":")[0])
                        .containsExactlyInAnyOrder(
                                "piece V24-001 is missing from the search index",
                                "piece V24-003 is stale in the search index",
                                "piece Z99-001 is in the search index but not in the ledger");
                index.reindex(Progress.UNWATCHED);
                assertThat(index.check(Progress.UNWATCHED)).isEmpty();
            }
        }
    }
}

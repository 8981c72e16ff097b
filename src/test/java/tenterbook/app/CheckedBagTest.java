package tenterbook.app;

import static org.assertj.core.api.Assertions.assertThat;
import static tenterbook.app.Ran.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.exchange.BadBag;
import tenterbook.measure.Digest;

/** {@code check} of a bag says what {@code restore} would, and leaves the bag as it is. */
class CheckedBagTest {
    @TempDir
    Path around;

    private Path bag;

    @BeforeEach
    void copy() throws IOException {
        Path sample = Path.of("sample-archive");
        bag = around.resolve("bag");
        try (Stream<Path> all = Files.walk(sample)) {
            for (Path each : all.toList()) {
                Files.copy(each, bag.resolve(sample.relativize(each)));
            }
        }
    }

    /** Every file with its digest. */
    static Map<String, Digest> files(Path folder) throws IOException {
        Map<String, Digest> files = new TreeMap<>();
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path file : all.filter(Files::isRegularFile).toList()) {
                files.put(folder.relativize(file).toString(), Digest.of(Files.readAllBytes(file)));
            }
        }
        return files;
    }

    private Path aPhotograph() throws IOException {
        try (Stream<Path> all = Files.walk(bag.resolve("data/photos"))) {
            return all.filter(Files::isRegularFile).sorted().findFirst().orElseThrow();
        }
    }

    private String refusedAlike() throws IOException {
        Map<String, Digest> before = files(bag);
        Ran restored = run("restore", "--from", bag, "--archive", around.resolve("again"));
        assertThat(restored.code()).as("restore").isEqualTo(1);
        Ran outside = run("check", "--archive", bag);
        assertThat(outside.code()).as(outside.out()).isEqualTo(1);
        assertThat(outside.err()).isEmpty();
        assertThat(outside.out()).contains("would not be restored");
        Ran inside = run("check", "--archive", bag.resolve("data"));
        assertThat(inside.code()).isEqualTo(1);
        assertThat(files(bag)).isEqualTo(before);
        return outside.out();
    }

    @Test
    void aGoodBagPassesAndStaysAsItIs() throws IOException {
        Map<String, Digest> before = files(bag);
        for (Path named : new Path[] {bag, bag.resolve("data")}) {
            Ran ran = run("check", "--archive", named);
            assertThat(ran.code()).as(ran.out() + ran.err()).isZero();
            assertThat(ran.out()).contains("can be restored");
        }
        assertThat(files(bag)).isEqualTo(before);
    }

    @Test
    void aPhotographChangedUnderItsNameIsFoundAlthoughTheChecksumsWereMadeAnew() throws IOException {
        new BadBag(bag).flipBit(bag.relativize(aPhotograph()).toString()).manifests();
        assertThat(refusedAlike()).contains("its SHA-256 is");
    }

    @Test
    void aMissingPhotographIsFound() throws IOException {
        Files.delete(aPhotograph());
        Path info = bag.resolve("bag-info.txt");
        Files.writeString(info, Files.readString(info).replaceAll("Payload-Oxum: [^\\n]*\\n", ""));
        new BadBag(bag).manifests();
        assertThat(refusedAlike()).contains("its original is missing");
    }

    @Test
    void aWrongManifestIsFound() throws IOException {
        new BadBag(bag).append("data/READ-ME-FIRST.txt", "x");
        assertThat(refusedAlike()).contains("READ-ME-FIRST.txt");
    }

    @Test
    void anUnreadableRecordIsFound() throws Exception {
        change();
        new BadBag(bag).manifests();
        assertThat(refusedAlike()).contains("revision 5 ");
    }

    private void change() throws java.sql.SQLException {
        try (var connection = DriverManager.getConnection("jdbc:sqlite:" + bag.resolve("data/ledger.db"));
                var statement = connection.createStatement()) {
            String trigger;
            try (var row = statement.executeQuery(
                    "SELECT sql FROM sqlite_schema WHERE name = 'revisions_are_never_changed'")) {
                trigger = row.getString(1);
            }
            statement.execute("DROP TRIGGER revisions_are_never_changed");
            statement.execute("UPDATE revisions SET record = '{\"id\":7}' WHERE sequence = 5");
            statement.execute(trigger);
        }
    }

    @Test
    void aBagIsNeverOpenedAsAnArchive() throws IOException {
        Map<String, Digest> before = files(bag);
        for (Path named : new Path[] {bag, bag.resolve("data")}) {
            Ran ran = run("reindex", "--archive", named);
            assertThat(ran.code()).isEqualTo(3);
            assertThat(ran.err()).contains("a bag must stay as it is").contains("restore");
        }
        assertThat(files(bag)).isEqualTo(before);
    }
}

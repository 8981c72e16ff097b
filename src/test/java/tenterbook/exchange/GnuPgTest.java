package tenterbook.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Archive;
import tenterbook.exchange.backup.Backup;
import tenterbook.exchange.openpgp.BackupKey;
import tenterbook.exchange.openpgp.MessageDamaged;
import tenterbook.ledger.file.Progress;

/** What the read-me of an encrypted backup says works with GnuPG, a program of others, and what that encrypts opens here. */
class GnuPgTest {
    @TempDir
    Path around;

    private Path home;
    private Path backup;
    private Path photos;

    @BeforeEach
    void backUp() throws Exception {
        home = Files.createDirectory(around.resolve("gnupg"));
        boolean there = there();
        if (!there) {
            System.err.println("gpg is not installed, so encrypted backups are not compared with it.");
        }
        assumeTrue(there, "gpg is not installed");
        Files.setPosixFilePermissions(home, PosixFilePermissions.fromString("rwx------"));
        Path disk = Files.createDirectory(around.resolve("disk"));
        try (Archive archive = Demo.open(around.resolve("studio"))) {
            SharedBackupKey.giveTo(around.resolve("studio"));
            new Backup(disk, Demo.CLOCK).make(archive, Progress.UNWATCHED);
            photos = archive.folder().photos();
        }
        backup = disk.resolve("studio-backup-encrypted");
        Path words = Files.writeString(around.resolve("passphrase"), SharedBackupKey.WORDS);
        gpg(
                "--passphrase-file",
                words.toString(),
                "--import",
                backup.resolve("key.asc").toString());
    }

    @AfterEach
    void endAgent() throws Exception {
        if (backup != null) {
            run("gpgconf", "--homedir", home.toString(), "--kill", "gpg-agent");
        }
    }

    private static boolean there() throws InterruptedException {
        try {
            return new ProcessBuilder("gpg", "--version")
                            .redirectErrorStream(true)
                            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                            .start()
                            .waitFor()
                    == 0;
        } catch (IOException e) {
            return false;
        }
    }

    private String gpg(String... words) throws Exception {
        return run(Stream.concat(
                        Stream.of("gpg", "--homedir", home.toString(), "--batch", "--pinentry-mode", "loopback"),
                        Stream.of(words))
                .toArray(String[]::new));
    }

    private String run(String... words) throws Exception {
        Path said = Files.createTempFile(around, "said", ".txt");
        Process process = new ProcessBuilder(words)
                .redirectErrorStream(true)
                .redirectOutput(said.toFile())
                .start();
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        String text = Files.readString(said);
        assertThat(process.exitValue()).as(text).isZero();
        return text;
    }

    private Path open(Path message, String name) throws Exception {
        Path plain = around.resolve(name);
        gpg(
                "--passphrase-file",
                around.resolve("passphrase").toString(),
                "--output",
                plain.toString(),
                "--decrypt",
                message.toString());
        return plain;
    }

    private static List<Path> files(Path folder, String ending) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            return all.filter(Files::isRegularFile)
                    .filter(file -> file.toString().endsWith(ending))
                    .sorted()
                    .toList();
        }
    }

    @Test
    void everythingOpensWithGnuPgAndThePassphrase() throws Exception {
        for (Path message : files(backup.resolve("photos"), ".pgp")) {
            String name = message.getFileName().toString().replace(".pgp", "");
            assertThat(open(message, name))
                    .hasSameBinaryContentAs(
                            photos.resolve(message.getParent().getFileName()).resolve(name));
        }
        Path message = files(backup.resolve("ledgers"), ".pgp").get(0);
        try (ZipFile zip = new ZipFile(open(message, "ledger.zip").toFile())) {
            assertThat(zip.stream().map(each -> each.getName()))
                    .contains("bagit.txt", "data/ledger.db", "data/ledger.jsonl", "data/READ-ME-FIRST.txt");
        }
        assertThat(gpg(
                        "--passphrase-file",
                        around.resolve("passphrase").toString(),
                        "--list-packets",
                        message.toString()))
                .as("protected against changes, not compressed (RFC 4880, 5.13)")
                .contains("mdc_method: 2")
                .doesNotContain(":compressed packet:");
    }

    @Test
    void whatGnuPgEncryptsForTheKeyOpensHere() throws Exception {
        BackupKey key = BackupKey.read(backup.resolve("key.asc"));
        assertThat(gpg("--with-colons", "--list-keys")).contains("fpr:::::::::" + key.fingerprint() + ":");
        Path plain = files(photos, ".jpg").get(0);
        Path message = around.resolve("by-gpg.pgp");
        gpg(
                "--trust-model",
                "always",
                "--recipient",
                key.fingerprint(),
                "--output",
                message.toString(),
                "--encrypt",
                plain.toString());
        byte[] read;
        try (InputStream in = Files.newInputStream(message)) {
            read = key.open(SharedBackupKey.passphrase()).read(in, InputStream::readAllBytes);
        }
        assertThat(read).isEqualTo(Files.readAllBytes(plain));
        byte[] harmed = Files.readAllBytes(message);
        harmed[harmed.length - 30] ^= 1;
        Files.write(message, harmed);
        try (InputStream in = Files.newInputStream(message)) {
            assertThatThrownBy(() -> key.open(SharedBackupKey.passphrase()).read(in, InputStream::readAllBytes))
                    .isInstanceOf(MessageDamaged.class);
        }
    }
}

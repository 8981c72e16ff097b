package tenterbook.imaging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tenterbook.imaging.file.PhotoRefused;
import tenterbook.ledger.file.HashedFiles;
import tenterbook.measure.Digest;

class OriginalsTest {
    @TempDir
    Path folder;

    private Originals originals;

    @BeforeEach
    void open() throws IOException {
        originals = new Originals(folder);
    }

    @Test
    void anOriginalLiesUnderItsDigestByteForByte() throws IOException {
        byte[] jpeg = Corners.jpeg(64, 32);
        StoredOriginal stored = store(jpeg);

        assertThat(stored.digest()).isEqualTo(Digest.of(jpeg));
        assertThat(stored.alreadyThere()).isFalse();
        assertThat(stored.bytes()).isEqualTo(jpeg.length);
        String hex = stored.digest().hex();
        assertThat(stored.path()).isEqualTo(folder.resolve(hex.substring(0, 2)).resolve(hex + ".jpg"));
        assertThat(stored.path()).hasBinaryContent(jpeg);
        assertThat(originals.find(stored.digest())).contains(stored.path());
        assertThat(originals.all()).containsExactly(stored.digest());
        assertThat(originals.verify(stored.digest())).isEqualTo(HashedFiles.Check.GOOD);
        assertThat(leftBehind()).isEmpty();
    }

    @Test
    void theSamePhotographTwiceIsRecognised() throws IOException {
        byte[] jpeg = Corners.jpeg(64, 32);
        store(jpeg);
        assertThat(store(jpeg).alreadyThere()).isTrue();
        assertThat(originals.all()).hasSize(1);
        assertThat(leftBehind()).isEmpty();
    }

    @Test
    void aChangedOriginalIsNoticedAndMendedByTheGoodBytes() throws IOException {
        byte[] jpeg = Corners.jpeg(64, 32);
        StoredOriginal stored = store(jpeg);
        byte[] changed = jpeg.clone();
        changed[200] ^= 1;
        Files.write(stored.path(), changed);
        assertThat(originals.verify(stored.digest())).isEqualTo(HashedFiles.Check.CHANGED);

        assertThat(store(jpeg).alreadyThere()).isFalse();
        assertThat(originals.verify(stored.digest())).isEqualTo(HashedFiles.Check.GOOD);
        assertThat(originals.verify(Digest.of(new byte[0]))).isEqualTo(HashedFiles.Check.MISSING);
    }

    @ParameterizedTest
    @ValueSource(strings = {"corners.heic", "corners.avif", "corners-lossy.webp"})
    void everyKindKeepsItsExtension(String name) throws IOException {
        StoredOriginal stored = store(Corners.fixture(name));
        assertThat(stored.path().toString()).endsWith(name.substring(name.indexOf('.')));
    }

    @Test
    void anEmptyFileIsRefused() {
        assertRefused(new byte[0], "an empty file");
    }

    @Test
    void textNamedLikeAPictureIsRefused() {
        assertRefused("walnut hull 60 %, one hour".getBytes(StandardCharsets.UTF_8), "another kind");
    }

    @ParameterizedTest
    @ValueSource(strings = {"jpeg", "png", "tiff", "corners.heic", "corners.avif", "corners-lossless.webp"})
    void aFileThatBreaksOffIsRefusedWhereverItBreaks(String what) throws IOException {
        byte[] whole = what.contains(".")
                ? Corners.fixture(what)
                : Corners.encoded(Corners.image(64, 32, BufferedImage.TYPE_INT_RGB), what);
        for (int percent = 40; percent < 100; percent += 7) {
            assertRefused(Arrays.copyOf(whole, whole.length * percent / 100), "breaks off");
        }
        assertRefused(Arrays.copyOf(whole, whole.length - 1), "breaks off");
    }

    @Test
    void whatACameraAppendsAfterThePictureIsKept() throws IOException {
        byte[] jpeg = Corners.jpeg(64, 32);
        byte[] longer = Arrays.copyOf(jpeg, jpeg.length + 500);
        assertThat(store(longer).path()).hasBinaryContent(longer);
    }

    @Test
    void tooLargeAFileIsRefusedWithTheLimit() throws IOException {
        byte[] jpeg = Corners.jpeg(64, 32);
        assertThat(originals.store(new ByteArrayInputStream(jpeg), jpeg.length)).isNotNull();
        assertThatThrownBy(() -> originals.store(new ByteArrayInputStream(jpeg), jpeg.length - 1))
                .isInstanceOf(PhotoRefused.class)
                .hasMessageContaining("at most " + String.format("%,d", jpeg.length - 1))
                .hasMessageContaining("Nothing in the archive has changed");
        assertThat(leftBehind()).isEmpty();
    }

    @Test
    void aStreamThatFailsLeavesNothing() throws IOException {
        InputStream failing = new InputStream() {
            @Override
            public int read() throws IOException {
                throw new IOException("cable pulled");
            }
        };
        InputStream half = new SequenceInputStream(new ByteArrayInputStream(Corners.jpeg(64, 32)), failing);
        assertThatThrownBy(() -> originals.store(half, Originals.LIMIT_BYTES)).hasMessage("cable pulled");
        assertThat(originals.all()).isEmpty();
        assertThat(leftBehind()).isEmpty();
    }

    @Test
    void partsOfAnInterruptedArrivalAreClearedOnOpening() throws IOException {
        Path part = Files.write(folder.resolve("arriving").resolve("x.part"), new byte[100]);
        new Originals(folder);
        assertThat(part).doesNotExist();
    }

    private StoredOriginal store(byte[] bytes) throws IOException {
        return originals.store(new ByteArrayInputStream(bytes), Originals.LIMIT_BYTES);
    }

    private void assertRefused(byte[] bytes, String found) {
        assertThatThrownBy(() -> store(bytes))
                .isInstanceOf(PhotoRefused.class)
                .hasMessageStartingWith("Photo was not added: expected")
                .hasMessageContaining(found)
                .hasMessageEndingWith("Nothing in the archive has changed.");
        try {
            assertThat(originals.all()).isEmpty();
            assertThat(leftBehind()).isEmpty();
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    private List<Path> leftBehind() throws IOException {
        try (Stream<Path> files = Files.list(folder.resolve("arriving"))) {
            return files.toList();
        }
    }
}

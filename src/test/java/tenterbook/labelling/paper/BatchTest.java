package tenterbook.labelling.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.function.LongConsumer;
import java.util.stream.IntStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.facts.PieceFacts;
import tenterbook.labelling.LabelKind;
import tenterbook.labelling.PrintSettings;
import tenterbook.labelling.Samples;
import tenterbook.labelling.SheetSize;
import tenterbook.labelling.rule.Market;
import tenterbook.ledger.file.Progress;
import tenterbook.piece.Category;

/** A thousand tags at once; how quickly is measured by the benchmark, not here. */
class BatchTest {
    private static final PrintSettings TAG =
            PrintSettings.of(LabelKind.HANG_TAG, Market.EU).on(SheetSize.A4);

    private static List<PieceFacts> pieces(int count) {
        return IntStream.range(0, count)
                .mapToObj(i -> Samples.facts(Samples.piece(
                        "V24-%04d".formatted(i), "Heron weir, cutting " + i, "板締め絞り", Category.SCARF, List.of())))
                .toList();
    }

    private static Progress each(LongConsumer label) {
        return new Progress() {
            @Override
            public void at(long done, long total, String what) {
                label.accept(done);
            }

            @Override
            public boolean cancelled() {
                return false;
            }
        };
    }

    @TempDir
    Path folder;

    /**
     * Three thousand were printed by hand in a process of 112 MB, in which their facts, words, fonts and the file must all find
     * room.
     */
    @Test
    void aThousandTagsInASmallHeapAreUnderTwoMegabytesWithEachFontOnce() throws Exception {
        Path file = folder.resolve("tags.pdf");
        print(file);
        assertThat(Files.size(file)).isBetween(200_000L, 2_000_000L);
        try (PDDocument document = Loader.loadPDF(file.toFile())) {
            assertThat(document.getNumberOfPages()).isEqualTo((1000 + 5) / 6);
            Set<Object> files = new HashSet<>();
            document.getPages()
                    .forEach(page -> page.getResources().getFontNames().forEach(name -> {
                        try {
                            files.add(page.getResources()
                                    .getFont(name)
                                    .getFontDescriptor()
                                    .getCOSObject()
                                    .getDictionaryObject(COSName.FONT_FILE2));
                        } catch (IOException e) {
                            throw new java.io.UncheckedIOException("reading a font", e);
                        }
                    }));
            assertThat(files).hasSizeBetween(4, 7);
        }
    }

    /** 1,000 pieces 200 times were laid out for minutes while a page waited, and could not be stopped. */
    @Test
    void moreLabelsThanOneFileHoldsAreRefusedBeforeAnyIsLaidOut() {
        PrintSettings often = TAG.times(PrintSettings.Placement.MOST_COPIES);
        List<PieceFacts> pieces = pieces(51);
        Progress none = each(done -> {
            throw new AssertionError("none is laid out");
        });
        assertThatThrownBy(() -> LabelPaper.pdf(pieces, often, new ByteArrayOutputStream(), Printed.CLOCK, none))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContainingAll("10000", "51 pieces", "10200");
        assertThatThrownBy(() -> LabelPaper.places(often, 51)).hasMessageContaining("10200");
        assertThat(LabelPaper.places(often, 50)).isEqualTo(6);
    }

    private static void print(Path file) throws Exception {
        Process child = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx112m",
                        "-XX:TieredStopAtLevel=1",
                        "-cp",
                        System.getProperty("java.class.path"),
                        Child.class.getName(),
                        file.toString())
                .redirectErrorStream(true)
                .start();
        String said = new String(child.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(child.waitFor(5, TimeUnit.MINUTES)).isTrue();
        assertThat(child.exitValue()).as(said).isZero();
        assertThat(said).contains("printed 1000");
    }

    /** Prints in a process of its own. */
    static final class Child {
        private Child() {}

        public static void main(String[] args) throws IOException {
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            long[] printed = {0};
            LabelPaper.pdf(pieces(1000), TAG, out, Printed.CLOCK, each(done -> printed[0] = done));
            Files.write(Path.of(args[0]), out.toByteArray());
            System.out.println("printed " + printed[0]);
        }
    }
}

package tenterbook.imaging.pixels;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;
import java.util.Set;

/** The parts of a PNG file (ISO/IEC 15948, 5.3): a length, a kind of four letters, data, a check sum. */
final class PngChunks {
    private static final int SIGNATURE = 8;
    /** A chunk without its data. */
    private static final int FRAME = 12;

    /** All that the pixels need. */
    private static final Set<String> PIXELS = Set.of("IHDR", "PLTE", "tRNS", "IDAT", "IEND");

    private PngChunks() {}

    @FunctionalInterface
    private interface Visit {
        /** @return whether to go on */
        boolean chunk(String kind, long at, int length) throws IOException;
    }

    /** The data of the first chunk of a kind; empty if there is none of at most that length. */
    static Optional<ByteBuffer> first(Path file, String kind, int most) throws IOException {
        try (FileChannel in = FileChannel.open(file, StandardOpenOption.READ)) {
            ByteBuffer[] found = {null};
            visit(in, (each, at, length) -> {
                if (each.equals(kind) && length <= most) {
                    found[0] = read(in, at + 8, length);
                }
                return found[0] == null;
            });
            return Optional.ofNullable(found[0]);
        }
    }

    /** The same file with nothing but its pixels, so that damage beside them does not keep a reader from them. */
    static byte[] pixelsOnly(Path file) throws IOException {
        try (FileChannel in = FileChannel.open(file, StandardOpenOption.READ)) {
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            out.write(read(in, 0, SIGNATURE).array());
            visit(in, (kind, at, length) -> {
                if (PIXELS.contains(kind)) {
                    out.write(read(in, at, length + FRAME).array());
                }
                return true;
            });
            return out.toByteArray();
        }
    }

    private static void visit(FileChannel in, Visit visit) throws IOException {
        long at = SIGNATURE;
        boolean on = true;
        while (on && at + FRAME <= in.size()) {
            ByteBuffer head = read(in, at, 8);
            int length = head.getInt();
            String kind = new String(head.array(), 4, 4, StandardCharsets.ISO_8859_1);
            if (length < 0 || at + FRAME + length > in.size()) {
                return;
            }
            on = visit.chunk(kind, at, length);
            at += FRAME + length;
        }
    }

    private static ByteBuffer read(FileChannel in, long at, int length) throws IOException {
        ByteBuffer buffer = ByteBuffer.allocate(length);
        while (buffer.hasRemaining() && in.read(buffer, at + buffer.position()) >= 0) {
            continue;
        }
        return buffer.rewind();
    }
}

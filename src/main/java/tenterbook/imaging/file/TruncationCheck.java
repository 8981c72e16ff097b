package tenterbook.imaging.file;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Locale;
import java.util.Optional;
import tenterbook.words.Message;

/**
 * Whether a picture file is complete, from its structure without decoding. It finds a truncated copy, not a flipped bit in the
 * middle.
 */
public final class TruncationCheck {
    private static final int CHUNK = 1 << 16;

    private final FileChannel file;
    private final long size;

    private TruncationCheck(FileChannel file) throws IOException {
        this.file = file;
        this.size = file.size();
    }

    /** What is wrong, to follow "found"; empty if the file is whole as far as its structure tells. */
    public static Optional<Message> fault(Path path, MediaType type) throws IOException {
        try (FileChannel file = FileChannel.open(path, StandardOpenOption.READ)) {
            TruncationCheck wholeness = new TruncationCheck(file);
            return switch (type) {
                case JPEG -> wholeness.jpeg();
                case PNG -> wholeness.png();
                case WEBP -> wholeness.webp();
                case TIFF -> wholeness.tiff();
                case HEIC, AVIF -> wholeness.boxes();
            };
        }
    }

    /** Segments up to the first scan, then an end mark anywhere after it; within a scan 0xff is always escaped. */
    private Optional<Message> jpeg() throws IOException {
        long at = 2;
        while (at + 4 <= size) {
            ByteBuffer segment = at(at, 4);
            int mark = segment.get() & 0xff;
            int kind = segment.get() & 0xff;
            if (mark == 0xff && kind == 0xff) {
                at++;
            } else if (mark != 0xff) {
                return Optional.of(Message.of("photo.garbled-jpeg", "byte", number(at)));
            } else if (kind == 0xda) {
                return endMarkAfter(at) ? Optional.empty() : brokenOff("photo.broken-off.before-end-mark");
            } else {
                at += 2 + (segment.getShort() & 0xffff);
            }
        }
        return brokenOff("photo.broken-off.before-picture");
    }

    /** The mark is looked for at the end first, where it nearly always is. */
    private boolean endMarkAfter(long start) throws IOException {
        return endMarkFrom(Math.max(start, size - 1024)) || endMarkFrom(start);
    }

    private boolean endMarkFrom(long start) throws IOException {
        boolean mark = false;
        for (long at = start; at < size; at += CHUNK) {
            ByteBuffer chunk = at(at, (int) Math.min(CHUNK, size - at));
            while (chunk.hasRemaining()) {
                int value = chunk.get() & 0xff;
                if (mark && value == 0xd9) {
                    return true;
                }
                mark = value == 0xff;
            }
        }
        return false;
    }

    private Optional<Message> png() throws IOException {
        long at = 8;
        while (at + 12 <= size) {
            ByteBuffer chunk = at(at, 8);
            long length = chunk.getInt() & 0xffffffffL;
            String kind = text(chunk);
            if (at + 12 + length > size) {
                return brokenOff("photo.broken-off.inside-part-to", "byte", number(at + 12 + length));
            }
            if (kind.equals("IEND")) {
                return Optional.empty();
            }
            at += 12 + length;
        }
        return brokenOff("photo.broken-off.before-end-mark");
    }

    private Optional<Message> webp() throws IOException {
        long expected = 8 + (at(4, 4).order(ByteOrder.LITTLE_ENDIAN).getInt() & 0xffffffffL);
        return expected <= size ? Optional.empty() : brokenOff("photo.broken-off.of", "expected", number(expected));
    }

    private Optional<Message> boxes() throws IOException {
        long at = 0;
        while (at + 8 <= size) {
            ByteBuffer box = at(at, (int) Math.min(16, size - at));
            long length = box.getInt() & 0xffffffffL;
            box.getInt();
            if (length == 1 && box.remaining() >= 8) {
                length = box.getLong();
            } else if (length == 0) {
                return Optional.empty();
            }
            if (length < 8) {
                return Optional.of(Message.of("photo.garbled", "byte", number(at)));
            }
            if (length > size - at) {
                return brokenOff("photo.broken-off.inside-part-of", "length", number(length));
            }
            at += length;
        }
        return at == size ? Optional.empty() : brokenOff("photo.broken-off.inside-part-heading");
    }

    /** The first directory, and the strips or tiles that it names, must lie within the file. */
    private Optional<Message> tiff() throws IOException {
        if (size < 16) {
            return brokenOff("photo.broken-off.inside-heading");
        }
        ByteOrder order = at(0, 1).get() == 'I' ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN;
        TiffWidths widths = at(2, 2).order(order).getShort() == 43 ? TiffWidths.BIG : TiffWidths.ORDINARY;
        long directory = widths.offset(at(widths.firstOffset(), widths.offset()).order(order));
        if (directory < 0 || directory + widths.count() > size) {
            return brokenOff("photo.broken-off.before-directory", "byte", number(directory));
        }
        long entries = widths.entries(at(directory, widths.count()).order(order));
        if (entries < 0
                || entries > size / widths.entry()
                || directory + widths.count() + widths.entry() * entries > size) {
            return brokenOff("photo.broken-off.inside-directory");
        }
        long[] starts = {};
        long[] lengths = {};
        for (int i = 0; i < entries; i++) {
            ByteBuffer entry = at(directory + widths.count() + (long) widths.entry() * i, widths.entry())
                    .order(order);
            int tag = entry.getShort() & 0xffff;
            if (tag == 273 || tag == 324) {
                starts = values(entry, widths);
            } else if (tag == 279 || tag == 325) {
                lengths = values(entry, widths);
            }
        }
        long end = 0;
        for (int i = 0; i < Math.min(starts.length, lengths.length); i++) {
            end = Math.max(end, starts[i] + lengths[i]);
        }
        return end <= size ? Optional.empty() : brokenOff("photo.broken-off.of", "expected", number(end));
    }

    /** The values of a SHORT, LONG or LONG8 entry, wherever they stand; those outside the file count as ending past it. */
    private long[] values(ByteBuffer entry, TiffWidths widths) throws IOException {
        int type = entry.getShort();
        int width = type == 3 ? 2 : type == 16 ? 8 : 4;
        long count = widths.offset(entry);
        if (count < 0 || count > size / width) {
            return new long[] {size + 1};
        }
        long at = count * width <= widths.offset() ? -1 : widths.offset(entry);
        if (at + count * width > size || at < -1) {
            return new long[] {size + 1};
        }
        ByteBuffer data = at < 0 ? entry : at(at, (int) (count * width)).order(entry.order());
        long[] values = new long[(int) count];
        for (int i = 0; i < count; i++) {
            values[i] =
                    width == 2 ? data.getShort() & 0xffff : width == 8 ? data.getLong() : data.getInt() & 0xffffffffL;
        }
        return values;
    }

    private ByteBuffer at(long position, int length) throws IOException {
        ByteBuffer buffer = ByteBuffer.allocate(length);
        long at = position;
        while (buffer.hasRemaining()) {
            int read = file.read(buffer, at);
            if (read < 0) {
                break;
            }
            at += read;
        }
        buffer.rewind();
        return buffer;
    }

    private static String text(ByteBuffer buffer) {
        byte[] bytes = new byte[4];
        buffer.get(bytes);
        return new String(bytes, StandardCharsets.ISO_8859_1);
    }

    private Optional<Message> brokenOff(String key) {
        return Optional.of(Message.of(key, "size", number(size)));
    }

    private Optional<Message> brokenOff(String key, String name, String bytes) {
        return Optional.of(Message.of(key, "size", number(size), name, bytes));
    }

    private static String number(long bytes) {
        return String.format(Locale.ROOT, "%,d", bytes);
    }
}

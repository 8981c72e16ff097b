package tenterbook.imaging.file;

import java.io.IOException;
import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What the heading of a HEIC or AVIF file says of its primary picture. A phone's picture is a grid of tiles, each with properties
 * of its own; only those of the whole count here.
 *
 * @param width pixels before turning
 * @param height pixels before turning
 * @param quarterTurns anticlockwise, 0 to 3
 * @param primaries colour primaries by number (ITU-T H.273, table 2); 0 where the file does not name them so
 * @param transfer transfer characteristics by number (ITU-T H.273, table 3); 0 where the file does not name them so
 * @see "ISO/IEC 23008-12 (HEIF): ispe, irot, colr; ISO/IEC 14496-12: meta, pitm, iprp, ipco, ipma"
 */
public record HeifHead(long width, long height, int quarterTurns, int primaries, int transfer) {
    /** A heading of a hundred tiles takes some kilobytes; a profile in it some more. */
    private static final int LONGEST = 8 << 20;

    /** A box's content. */
    private record Box(String type, ByteBuffer content) {}

    /** The value of the EXIF tag that turns as this does. */
    public int orientation() {
        return new int[] {1, 8, 3, 6}[quarterTurns];
    }

    /** Whether its colours are not those of sRGB and no profile says which; H.273: 1 is BT.709, 2 unspecified, 5 and 6 BT.601. */
    public boolean colourOnlyByNumber() {
        return primaries > 6 || transfer == 16 || transfer == 18;
    }

    /**
     * @return empty if the heading is missing, damaged or longer than 8 MB
     * @throws IOException if the file cannot be read
     */
    public static Optional<HeifHead> read(Path file) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
            return meta(channel).flatMap(HeifHead::of);
        }
    }

    private static Optional<ByteBuffer> meta(FileChannel file) throws IOException {
        long at = 0;
        while (at + 8 <= file.size()) {
            ByteBuffer head = ByteBuffer.allocate(16);
            file.read(head, at);
            head.flip();
            long length = head.getInt() & 0xffffffffL;
            String type = text(head);
            int before = length == 1 ? 16 : 8;
            length = length == 1 && head.remaining() >= 8 ? head.getLong() : length;
            if (length < before || length > file.size() - at) {
                return Optional.empty();
            }
            if (type.equals("meta")) {
                if (length > LONGEST) {
                    return Optional.empty();
                }
                ByteBuffer content = ByteBuffer.allocate((int) length - before);
                while (content.hasRemaining() && file.read(content, at + before + content.position()) >= 0) {
                    continue;
                }
                return Optional.of(content.flip());
            }
            at += length;
        }
        return Optional.empty();
    }

    private static Optional<HeifHead> of(ByteBuffer meta) {
        try {
            meta.getInt();
            List<Box> boxes = boxes(meta);
            ByteBuffer pitm = content(boxes, "pitm");
            long primary = pitm.getInt() >>> 24 == 0 ? pitm.getShort() & 0xffff : pitm.getInt() & 0xffffffffL;
            List<Box> iprp = boxes(content(boxes, "iprp"));
            List<Box> properties = boxes(content(iprp, "ipco"));
            return Optional.ofNullable(of(properties, indices(content(iprp, "ipma"), primary)));
        } catch (BufferUnderflowException | IllegalArgumentException | IndexOutOfBoundsException e) {
            return Optional.empty();
        }
    }

    private static HeifHead of(List<Box> properties, List<Integer> indices) {
        long width = 0;
        long height = 0;
        int turns = 0;
        int primaries = 0;
        int transfer = 0;
        for (int index : indices) {
            Box property = properties.get(index - 1);
            ByteBuffer in = property.content().duplicate();
            switch (property.type()) {
                case "ispe" -> {
                    in.getInt();
                    width = in.getInt() & 0xffffffffL;
                    height = in.getInt() & 0xffffffffL;
                }
                case "irot" -> turns = in.get() & 3;
                case "colr" -> {
                    if (text(in).equals("nclx")) {
                        primaries = in.getShort() & 0xffff;
                        transfer = in.getShort() & 0xffff;
                    }
                }
                default -> {}
            }
        }
        return width == 0 || height == 0 ? null : new HeifHead(width, height, turns, primaries, transfer);
    }

    /** Numbers, from 1, of the properties of one item. */
    private static List<Integer> indices(ByteBuffer ipma, long item) {
        int head = ipma.getInt();
        boolean longIds = head >>> 24 > 0;
        boolean longIndices = (head & 1) == 1;
        List<Integer> found = new ArrayList<>();
        long entries = ipma.getInt() & 0xffffffffL;
        for (long entry = 0; entry < entries; entry++) {
            long id = longIds ? ipma.getInt() & 0xffffffffL : ipma.getShort() & 0xffff;
            for (int count = ipma.get() & 0xff; count > 0; count--) {
                int index = longIndices ? ipma.getShort() & 0x7fff : ipma.get() & 0x7f;
                if (id == item && index > 0) {
                    found.add(index);
                }
            }
        }
        return found;
    }

    private static ByteBuffer content(List<Box> boxes, String type) {
        return boxes.stream()
                .filter(box -> box.type().equals(type))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(type))
                .content();
    }

    private static List<Box> boxes(ByteBuffer in) {
        List<Box> boxes = new ArrayList<>();
        while (in.remaining() >= 8) {
            int start = in.position();
            int length = in.getInt();
            String type = text(in);
            int end = length == 0 ? in.limit() : start + length;
            if (length != 0 && length < 8 || end > in.limit()) {
                throw new IllegalArgumentException(type);
            }
            boxes.add(new Box(type, in.slice(in.position(), end - in.position())));
            in.position(end);
        }
        return boxes;
    }

    private static String text(ByteBuffer in) {
        byte[] bytes = new byte[4];
        in.get(bytes);
        return new String(bytes, StandardCharsets.ISO_8859_1);
    }
}

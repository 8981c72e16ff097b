package tenterbook.imaging.file;

import java.nio.ByteBuffer;

/** Lengths in bytes of what a TIFF file's directory is made of: TIFF 6.0, section 2, and BigTIFF. */
enum TiffWidths {
    ORDINARY(4, 4, 2, 12),
    BIG(8, 8, 8, 20);

    private final int firstOffset;
    private final int offset;
    private final int count;
    private final int entry;

    TiffWidths(int firstOffset, int offset, int count, int entry) {
        this.firstOffset = firstOffset;
        this.offset = offset;
        this.count = count;
        this.entry = entry;
    }

    /** Where the place of the first directory stands. */
    int firstOffset() {
        return firstOffset;
    }

    int offset() {
        return offset;
    }

    /** Of the number of a directory's entries. */
    int count() {
        return count;
    }

    int entry() {
        return entry;
    }

    long offset(ByteBuffer in) {
        return this == BIG ? in.getLong() : in.getInt() & 0xffffffffL;
    }

    long entries(ByteBuffer in) {
        return this == BIG ? in.getLong() : in.getShort() & 0xffff;
    }
}

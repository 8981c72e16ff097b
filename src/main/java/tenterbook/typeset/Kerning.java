package tenterbook.typeset;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.fontbox.ttf.TTFTable;
import org.apache.fontbox.ttf.TrueTypeFont;

/**
 * Pair kerning from a font's GPOS table: pair adjustment, formats 1 and 2, also through extension, of every lookup that the
 * 'kern' feature names. Only the first glyph's advance is adjusted, which is all that these fonts use.
 *
 * @see "OpenType specification 1.9, GPOS, lookup types 2 and 9; coverage and class definition tables"
 */
final class Kerning {
    private static final int PAIR = 2;
    private static final int EXTENSION = 9;
    private static final int ADVANCE = 0x4;

    private interface Subtable {
        /** The adjustment in font units; null where this subtable does not decide. */
        Integer of(int left, int right);
    }

    private final List<List<Subtable>> lookups = new ArrayList<>();
    private final Map<Long, Integer> known = new HashMap<>();
    private final ByteBuffer gpos;

    private Kerning(ByteBuffer gpos) {
        this.gpos = gpos;
    }

    static Kerning of(TrueTypeFont font) throws IOException {
        TTFTable table = font.getTableMap().get("GPOS");
        Kerning kerning = new Kerning(table == null ? null : ByteBuffer.wrap(font.getTableBytes(table)));
        if (table != null) {
            kerning.read();
        }
        return kerning;
    }

    /** Space to add between two glyphs, in font units; negative brings them nearer. */
    int between(int left, int right) {
        return known.computeIfAbsent((long) left << 32 | right, pair -> {
            int sum = 0;
            for (List<Subtable> lookup : lookups) {
                for (Subtable subtable : lookup) {
                    Integer value = subtable.of(left, right);
                    if (value != null) {
                        sum += value;
                        break;
                    }
                }
            }
            return sum;
        });
    }

    private int u16(int at) {
        return gpos.getShort(at) & 0xffff;
    }

    private void read() {
        int features = u16(6);
        int list = u16(8);
        Set<Integer> wanted = new LinkedHashSet<>();
        for (int i = 0; i < u16(features); i++) {
            int record = features + 2 + 6 * i;
            if (gpos.getInt(record) == 0x6b65726e) {
                int feature = features + u16(record + 4);
                for (int k = 0; k < u16(feature + 2); k++) {
                    wanted.add(u16(feature + 4 + 2 * k));
                }
            }
        }
        for (int index : wanted) {
            int lookup = list + u16(list + 2 + 2 * index);
            List<Subtable> subtables = new ArrayList<>();
            for (int k = 0; k < u16(lookup + 4); k++) {
                int at = lookup + u16(lookup + 6 + 2 * k);
                int type = u16(lookup);
                if (type == EXTENSION) {
                    type = u16(at + 2);
                    at += gpos.getInt(at + 4);
                }
                if (type == PAIR) {
                    subtables.add(u16(at) == 1 ? pairs(at) : classes(at));
                }
            }
            lookups.add(subtables);
        }
    }

    private int valueSize(int format) {
        return 2 * Integer.bitCount(format);
    }

    private int advance(int at, int format) {
        return (format & ADVANCE) == 0 ? 0 : gpos.getShort(at + valueSize(format & (ADVANCE - 1)));
    }

    private Subtable pairs(int at) {
        Map<Integer, Integer> coverage = coverage(at + u16(at + 2));
        int first = u16(at + 4);
        int size = 2 + valueSize(first) + valueSize(u16(at + 6));
        return (left, right) -> {
            Integer index = coverage.get(left);
            if (index == null) {
                return null;
            }
            int set = at + u16(at + 10 + 2 * index);
            for (int i = 0; i < u16(set); i++) {
                int record = set + 2 + i * size;
                if (u16(record) == right) {
                    return advance(record + 2, first);
                }
            }
            return null;
        };
    }

    private Subtable classes(int at) {
        Map<Integer, Integer> coverage = coverage(at + u16(at + 2));
        int first = u16(at + 4);
        int size = valueSize(first) + valueSize(u16(at + 6));
        Map<Integer, Integer> lefts = classesOf(at + u16(at + 8));
        Map<Integer, Integer> rights = classesOf(at + u16(at + 10));
        int columns = u16(at + 14);
        return (left, right) -> {
            if (!coverage.containsKey(left)) {
                return null;
            }
            int cell = lefts.getOrDefault(left, 0) * columns + rights.getOrDefault(right, 0);
            return advance(at + 16 + cell * size, first);
        };
    }

    private Map<Integer, Integer> coverage(int at) {
        Map<Integer, Integer> index = new HashMap<>();
        for (int i = 0; i < u16(at + 2); i++) {
            if (u16(at) == 1) {
                index.put(u16(at + 4 + 2 * i), i);
            } else {
                int range = at + 4 + 6 * i;
                for (int glyph = u16(range); glyph <= u16(range + 2); glyph++) {
                    index.put(glyph, u16(range + 4) + glyph - u16(range));
                }
            }
        }
        return index;
    }

    private Map<Integer, Integer> classesOf(int at) {
        Map<Integer, Integer> classes = new HashMap<>();
        if (u16(at) == 1) {
            for (int i = 0; i < u16(at + 4); i++) {
                classes.put(u16(at + 2) + i, u16(at + 6 + 2 * i));
            }
        } else {
            for (int i = 0; i < u16(at + 2); i++) {
                int range = at + 4 + 6 * i;
                for (int glyph = u16(range); glyph <= u16(range + 2); glyph++) {
                    classes.put(glyph, u16(range + 4));
                }
            }
        }
        return classes;
    }
}

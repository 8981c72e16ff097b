package tenterbook.label.document.set;

import tenterbook.label.layout.Ink;

/**
 * A stretch of a page over its whole width that is never split. Millimetres.
 *
 * @param before space above, left out at the top of a page
 * @param withNext whether the next must stand on the same page
 * @param newPage whether it begins a page
 * @param again what is drawn above it where it comes first on a page, as a table's head; null for nothing
 * @param words what it says, to be named where it has no room
 */
record Slab(
        double height, double before, boolean withNext, boolean newPage, Slab again, String words, Drawing drawing) {
    /** Draws at {@code y} from the top of the page. */
    interface Drawing {
        void draw(Ink ink, double y);
    }

    static Slab of(double height, double before, String words, Drawing drawing) {
        return new Slab(height, before, false, false, null, words, drawing);
    }

    static Slab space(double height) {
        return of(height, 0, "", (ink, y) -> {});
    }

    Slab tied() {
        return tied(true);
    }

    Slab tied(boolean toNext) {
        return new Slab(height, before, toNext, newPage, again, words, drawing);
    }

    Slab under(Slab head) {
        return new Slab(height, before, withNext, newPage, head, words, drawing);
    }

    Slab after(double space) {
        return new Slab(height, space, withNext, newPage, again, words, drawing);
    }

    Slab onNewPage() {
        return new Slab(height, before, withNext, true, again, words, drawing);
    }
}

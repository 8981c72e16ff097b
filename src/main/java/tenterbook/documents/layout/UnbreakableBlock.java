package tenterbook.documents.layout;

import tenterbook.typeset.PdfCanvas;

/**
 * A stretch of a page over its whole width that is never split. Millimetres.
 *
 * @param before space above, left out at the top of a page
 * @param withNext whether the next must stand on the same page
 * @param newPage whether it begins a page
 * @param again what is drawn above it where it comes first on a page, as a table's head; null for nothing
 * @param words what it says, to be named where it has no room
 */
record UnbreakableBlock(
        double height,
        double before,
        boolean withNext,
        boolean newPage,
        UnbreakableBlock again,
        String words,
        Drawing drawing) {
    /** Draws at {@code y} from the top of the page. */
    interface Drawing {
        void draw(PdfCanvas ink, double y);
    }

    static UnbreakableBlock of(double height, double before, String words, Drawing drawing) {
        return new UnbreakableBlock(height, before, false, false, null, words, drawing);
    }

    UnbreakableBlock tied() {
        return tied(true);
    }

    UnbreakableBlock tied(boolean toNext) {
        return new UnbreakableBlock(height, before, toNext, newPage, again, words, drawing);
    }

    UnbreakableBlock under(UnbreakableBlock head) {
        return new UnbreakableBlock(height, before, withNext, newPage, head, words, drawing);
    }

    UnbreakableBlock onNewPage() {
        return new UnbreakableBlock(height, before, withNext, true, again, words, drawing);
    }
}

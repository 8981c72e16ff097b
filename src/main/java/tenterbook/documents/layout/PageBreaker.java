package tenterbook.documents.layout;

import java.util.ArrayList;
import java.util.List;
import tenterbook.typeset.DoesNotFit;
import tenterbook.words.Message;

/** Slabs put on pages: what is tied stays together wherever a page can hold it. */
final class PageBreaker {
    /** Lengths that differ by less are equal: rounding of many sums, in millimetres. */
    private static final double SLACK = 1e-6;

    /** A slab in its place. */
    record Placed(UnbreakableBlock slab, double y) {}

    private final PageStyle type;
    private final List<List<Placed>> pages = new ArrayList<>();
    private double y;

    private PageBreaker(PageStyle type) {
        this.type = type;
        pages.add(new ArrayList<>());
        y = type.first();
    }

    /** @throws DoesNotFit if one slab is taller than a page */
    static List<List<Placed>> of(List<UnbreakableBlock> slabs, PageStyle type) {
        PageBreaker pages = new PageBreaker(type);
        for (int i = 0; i < slabs.size(); ) {
            int end = i + 1;
            while (end < slabs.size()
                    && slabs.get(end - 1).withNext()
                    && !slabs.get(end).newPage()) {
                end++;
            }
            pages.place(slabs.subList(i, end));
            i = end;
        }
        return pages.pages;
    }

    private void place(List<UnbreakableBlock> group) {
        if (group.get(0).newPage() && !here().isEmpty()) {
            turn();
        }
        if (!fits(group) && !here().isEmpty()) {
            turn();
        }
        if (fits(group)) {
            group.forEach(this::put);
            return;
        }
        // No page holds all of it together: as much as fits, then the next page.
        for (UnbreakableBlock slab : group) {
            if (!fits(List.of(slab)) && !here().isEmpty()) {
                turn();
            }
            if (!fits(List.of(slab))) {
                throw new DoesNotFit(
                        Message.of("document.an-undivided-part"),
                        type.measure(),
                        type.floor() - type.top(),
                        List.of(slab.words()));
            }
            put(slab);
        }
    }

    private List<Placed> here() {
        return pages.get(pages.size() - 1);
    }

    private void turn() {
        pages.add(new ArrayList<>());
        y = type.top();
    }

    private boolean fits(List<UnbreakableBlock> group) {
        double height = 0;
        boolean first = here().isEmpty();
        for (UnbreakableBlock slab : group) {
            height += (first ? heightAgain(slab) : slab.before()) + slab.height();
            first = false;
        }
        return y + height <= type.floor() + SLACK;
    }

    private static double heightAgain(UnbreakableBlock slab) {
        return slab.again() == null ? 0 : slab.again().height();
    }

    private void put(UnbreakableBlock slab) {
        if (here().isEmpty()) {
            if (slab.again() != null) {
                here().add(new Placed(slab.again(), y));
                y += slab.again().height();
            }
        } else {
            y += slab.before();
        }
        here().add(new Placed(slab, y));
        y += slab.height();
    }
}

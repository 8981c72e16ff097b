package tenterbook.documents.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import tenterbook.documents.DocumentTheme;
import tenterbook.documents.PageSize;
import tenterbook.typeset.DoesNotFit;

class PageBreakerTest {
    private static final PageStyle TYPE = PageStyle.of(DocumentTheme.SHEET, PageSize.A4, 1);

    private static UnbreakableBlock slab(double height, double before, boolean tied, boolean headed) {
        UnbreakableBlock head = UnbreakableBlock.of(7, 0, "head", (ink, y) -> {});
        UnbreakableBlock slab =
                UnbreakableBlock.of(height, before, "words", (ink, y) -> {}).tied(tied);
        return headed ? slab.under(head) : slab;
    }

    @Provide
    Arbitrary<List<UnbreakableBlock>> slabs() {
        return Combinators.combine(
                        Arbitraries.doubles().between(1, 120),
                        Arbitraries.doubles().between(0, 12),
                        Arbitraries.of(true, false, false),
                        Arbitraries.of(true, false))
                .as(PageBreakerTest::slab)
                .list()
                .ofMaxSize(60);
    }

    @Property(tries = 300)
    void everySlabStandsOnceInItsOrderAboveTheFootAndBelowTheOneBefore(@ForAll("slabs") List<UnbreakableBlock> slabs) {
        List<UnbreakableBlock> placed = new ArrayList<>();
        for (List<PageBreaker.Placed> page : PageBreaker.of(slabs, TYPE)) {
            double y = 0;
            for (PageBreaker.Placed each : page) {
                assertThat(each.y()).isGreaterThanOrEqualTo(y - 1e-6);
                y = each.y() + each.slab().height();
                assertThat(y).isLessThanOrEqualTo(TYPE.floor() + 1e-5);
                if (!each.slab().words().equals("head")) {
                    placed.add(each.slab());
                }
            }
        }
        assertThat(placed).isEqualTo(slabs);
    }

    @Property(tries = 300)
    void aTiedSlabIsLastOnAPageOnlyWhereNoPageHoldsAllItIsTiedTo(@ForAll("slabs") List<UnbreakableBlock> slabs) {
        List<List<PageBreaker.Placed>> pages = PageBreaker.of(slabs, TYPE);
        for (List<PageBreaker.Placed> page : pages.subList(0, pages.size() - 1)) {
            UnbreakableBlock last = page.get(page.size() - 1).slab();
            if (last.withNext()) {
                assertThat(groupAround(slabs, last)).isGreaterThan(TYPE.floor() - TYPE.top());
            }
        }
    }

    /** The height of all that is tied together with a slab, with its head, as it would stand at the top of a page. */
    private static double groupAround(List<UnbreakableBlock> slabs, UnbreakableBlock one) {
        int at = 0;
        while (slabs.get(at) != one) {
            at++;
        }
        int first = at;
        while (first > 0 && slabs.get(first - 1).withNext()) {
            first--;
        }
        int end = at;
        while (end < slabs.size() - 1 && slabs.get(end).withNext()) {
            end++;
        }
        double height =
                slabs.get(first).again() == null ? 0 : slabs.get(first).again().height();
        for (int i = first; i <= end; i++) {
            height += (i == first ? 0 : slabs.get(i).before()) + slabs.get(i).height();
        }
        return height;
    }

    @Example
    void whatIsTallerThanAPageIsRefusedWithItsWords() {
        assertThatThrownBy(() -> PageBreaker.of(List.of(slab(400, 0, false, false)), TYPE))
                .isInstanceOf(DoesNotFit.class)
                .hasMessageContaining("words");
    }

    @Example
    void aHeadStandsAgainWhereItsRowsGoOver() {
        List<UnbreakableBlock> rows = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            rows.add(slab(30, 0, false, true));
        }
        for (List<PageBreaker.Placed> page : PageBreaker.of(rows, TYPE)) {
            assertThat(page.get(0).slab().words()).isEqualTo("head");
            assertThat(page.get(1).y()).isCloseTo(page.get(0).y() + 7, within(1e-9));
        }
    }
}

package tenterbook.imaging.cloth;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;

class GridCutTest {
    private static final int WIDTH = 4;
    private static final int HEIGHT = 3;
    private static final int CELLS = WIDTH * HEIGHT;

    @Test
    void noDivisionOfASmallGridIsCheaper() {
        for (int seed = 0; seed < 300; seed++) {
            Random random = new Random(seed);
            int[][] prices = new int[CELLS][2];
            int[][] parting = new int[CELLS][GridCut.DIRECTIONS];
            GridCut grid = new GridCut(WIDTH, HEIGHT);
            for (int cell = 0; cell < CELLS; cell++) {
                prices[cell] = new int[] {random.nextInt(30), random.nextInt(30)};
                grid.prices(cell, prices[cell][0], prices[cell][1]);
                for (int d = 0; d < GridCut.DIRECTIONS; d += 2) {
                    if (grid.beside(cell, d) >= 0) {
                        parting[cell][d] = random.nextInt(12);
                        grid.parting(cell, d, parting[cell][d]);
                    }
                }
            }
            boolean[] cut = grid.cut();
            int sides = 0;
            for (int cell = 0; cell < CELLS; cell++) {
                sides |= cut[cell] ? 1 << cell : 0;
            }
            int least = Integer.MAX_VALUE;
            for (int each = 0; each < 1 << CELLS; each++) {
                least = Math.min(least, cost(grid, each, prices, parting));
            }
            assertThat(cost(grid, sides, prices, parting)).as("seed %d", seed).isEqualTo(least);
        }
    }

    private static int cost(GridCut grid, int sides, int[][] prices, int[][] parting) {
        int cost = 0;
        for (int cell = 0; cell < CELLS; cell++) {
            boolean source = (sides >> cell & 1) == 1;
            cost += prices[cell][source ? 0 : 1];
            for (int d = 0; d < GridCut.DIRECTIONS; d += 2) {
                int next = grid.beside(cell, d);
                cost += next >= 0 && (sides >> next & 1) == 1 != source ? parting[cell][d] : 0;
            }
        }
        return cost;
    }
}

package tenterbook.bench;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.Arrays;

/** Times of many runs of one kind of work: by the clock, and of this thread on a processor (which other programs delay less). */
final class Timings {
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();
    private final String name;
    private final long[] nanos;
    private final long[] busyNanos;
    private int count;

    Timings(String name, int runs) {
        this.name = name;
        this.nanos = new long[runs];
        this.busyNanos = new long[runs];
    }

    void run(Runnable work) {
        long busy = THREADS.getCurrentThreadCpuTime();
        long start = System.nanoTime();
        work.run();
        nanos[count] = System.nanoTime() - start;
        busyNanos[count++] = THREADS.getCurrentThreadCpuTime() - busy;
    }

    double clockMillis(double percentile) {
        return at(nanos, percentile);
    }

    private double at(long[] times, double percentile) {
        long[] sorted = Arrays.copyOf(times, count);
        Arrays.sort(sorted);
        return sorted[Math.min(count - 1, (int) (count * percentile))] / 1e6;
    }

    void print() {
        System.out.printf(
                "%-56s clock p50 %7.2f p95 %7.2f p99 %7.2f | its thread busy p50 %7.2f p95 %7.2f p99 %7.2f ms (%d runs)%n",
                name,
                at(nanos, 0.50),
                at(nanos, 0.95),
                at(nanos, 0.99),
                at(busyNanos, 0.50),
                at(busyNanos, 0.95),
                at(busyNanos, 0.99),
                count);
    }
}

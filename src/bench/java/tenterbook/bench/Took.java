package tenterbook.bench;

import java.lang.management.ManagementFactory;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** How long a whole run took, in seconds: by the clock, and of all its threads together on a processor. */
record Took(double clock, double busy) {
    private static final Pattern SAID = Pattern.compile("clock ([0-9.]+) busy ([0-9.]+)(?: ([0-9.]+))?");

    static Took of(Callable<?> work) throws Exception {
        double busy = busySeconds();
        long start = System.nanoTime();
        work.call();
        return new Took((System.nanoTime() - start) / 1e9, busySeconds() - busy);
    }

    /** From the last line of the form "clock 1.2 busy 3.4 0.5", where the third number is the system's part. */
    static Took read(String said) {
        Matcher matcher = SAID.matcher(said);
        Took last = null;
        while (matcher.find()) {
            double system = matcher.group(3) == null ? 0 : Double.parseDouble(matcher.group(3));
            last = new Took(Double.parseDouble(matcher.group(1)), Double.parseDouble(matcher.group(2)) + system);
        }
        if (last == null) {
            throw new IllegalArgumentException("Expected a line \"clock … busy …\"; found: " + said);
        }
        return last;
    }

    Took plus(Took other) {
        return new Took(clock + other.clock, busy + other.busy);
    }

    static Took median(List<Took> all) {
        return new Took(
                all.stream().mapToDouble(Took::clock).sorted().toArray()[all.size() / 2],
                all.stream().mapToDouble(Took::busy).sorted().toArray()[all.size() / 2]);
    }

    String over(Took other) {
        return String.format(Locale.ROOT, "clock × %.2f, busy × %.2f", clock / other.clock, busy / other.busy);
    }

    static double busySeconds() {
        return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
                        .getProcessCpuTime()
                / 1e9;
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT, "clock %.2f busy %.2f s", clock, busy);
    }
}

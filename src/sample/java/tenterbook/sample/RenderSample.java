package tenterbook.sample;

import java.nio.file.Files;
import java.nio.file.Path;
import tenterbook.ledger.file.Progress;

/** Renders the sample archive anew and packs it into a folder that must not exist yet; for those who work on this program. */
public final class RenderSample {
    private RenderSample() {}

    /** @param arguments the folder to make */
    public static void main(String[] arguments) throws Exception {
        if (arguments.length != 1) {
            System.err.println("Expected one argument, the folder to make; found " + arguments.length);
            System.exit(2);
        }
        SampleArchive.build(Path.of(arguments[0]), Files.createTempDirectory("tenterbook-sample"), new Printed());
    }

    private static final class Printed implements Progress {
        private String last = "";

        @Override
        public synchronized void at(long done, long total, String what) {
            if (!what.equals(last)) {
                System.out.println(what);
                last = what;
            }
        }

        @Override
        public boolean cancelled() {
            return false;
        }
    }
}

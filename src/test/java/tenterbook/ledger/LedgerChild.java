package tenterbook.ledger;

import java.nio.file.Path;
import java.util.List;
import tenterbook.ledger.Things.Board;
import tenterbook.ledger.Things.Opened;
import tenterbook.ledger.Things.Print;

/** What a child process does in tests: holds a folder, or appends acts until it is killed. */
final class LedgerChild {
    private LedgerChild() {}

    public static void main(String[] arguments) throws Exception {
        Path root = Path.of(arguments[0]);
        String round = arguments[1];
        try (Opened opened = new Opened(root)) {
            if (round.equals("hold")) {
                System.out.println("held");
                System.in.read();
                return;
            }
            for (int n = 1; ; n++) {
                String name = round + "-" + n;
                long last = opened.ledger.write("child", act -> {
                    act.create(Things.BOARD, new Board("B" + name, "Fig ".repeat(200)));
                    act.create(Things.BOARD, new Board("C" + name, "Heron"));
                    return act.create(Things.PRINT, new Print("P" + name, List.of("B" + name, "C" + name)))
                            .sequence();
                });
                System.out.println("saved " + last + " P" + name + ".");
            }
        }
    }

    static Process start(Path root, String round) throws java.io.IOException {
        return new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx128m",
                        "-XX:TieredStopAtLevel=1",
                        "-cp",
                        System.getProperty("java.class.path"),
                        LedgerChild.class.getName(),
                        root.toString(),
                        round)
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
    }
}

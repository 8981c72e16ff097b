package tenterbook.app.start;

import java.io.PrintWriter;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.web.server.Server;
import tenterbook.words.Message;

/** A port to serve on: the wanted one, or one of the next where that is busy. */
public final class FreePort {
    public static final String USUAL = "7117";
    private static final int TRIED = 20;

    private FreePort() {}

    /**
     * @param wanted 0 for any free one, which is then chosen by the system
     * @param out where it is said that another one is used
     */
    public static int from(int wanted, PrintWriter out) {
        if (wanted == 0) {
            return 0;
        }
        for (int tried = wanted; tried < wanted + TRIED && tried <= 65_535; tried++) {
            if (Server.free(tried)) {
                if (tried != wanted) {
                    out.println(Message.of("command.serve.port-busy", "port", wanted, "other", tried));
                }
                return tried;
            }
        }
        throw new ArchiveProblem(Message.of("command.serve.no-port", "first", wanted, "last", wanted + TRIED - 1));
    }
}

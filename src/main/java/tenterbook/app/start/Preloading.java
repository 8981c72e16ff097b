package tenterbook.app.start;

import org.slf4j.LoggerFactory;
import tenterbook.web.server.Server;
import tenterbook.words.Message;

/**
 * What the first page needs and what does not depend on the archive, loaded while another thread opens the archive. Whoever needs a
 * part of it before it is ready waits for it as for any class that is being loaded.
 */
public final class Preloading {
    private Preloading() {}

    public static void begin() {
        Thread ahead = new Thread(Preloading::load, "ahead");
        ahead.setDaemon(true);
        ahead.start();
    }

    private static void load() {
        try {
            Server.loadAhead();
            Message.of("pieces.count", "count", 1).inEnglish();
        } catch (RuntimeException e) {
            // Whoever needs it meets the same, and reports it.
            LoggerFactory.getLogger(Preloading.class).debug("Not loaded ahead", e);
        }
    }
}

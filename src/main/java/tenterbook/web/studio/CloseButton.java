package tenterbook.web.studio;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.Map;
import tenterbook.web.page.Html;

/** Ends the program, where it was started without a terminal in which to end it. */
public final class CloseButton {
    /** The browser still fetches what the last page is drawn with. */
    private static final long LAST_PAGE_MILLIS = 1000;

    private final Runnable end;

    /** @param end asks the program to end; returns at once */
    public CloseButton(Runnable end) {
        this.end = end;
    }

    public void routes(RoutesConfig routes) {
        routes.post("/studio/close", this::close);
    }

    private void close(Context ctx) {
        Html.show(ctx, "closed", Map.of());
        endSoon(end);
    }

    /** Once the page that is being answered has arrived. */
    public static void endSoon(Runnable end) {
        Thread last = new Thread(
                () -> {
                    try {
                        Thread.sleep(LAST_PAGE_MILLIS);
                    } catch (InterruptedException e) {
                        Thread.currentThread().interrupt();
                    }
                    end.run();
                },
                "close");
        last.setDaemon(true);
        last.start();
    }
}

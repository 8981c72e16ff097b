package tenterbook.web.studio;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import tenterbook.ledger.file.LedgerClock;
import tenterbook.measure.DateWords;
import tenterbook.web.Site;
import tenterbook.web.page.FlashMessage;

/** The answer to the question that every page asks while the computer's clock is in doubt. */
public final class ClockPages {
    private final Site site;

    public ClockPages(Site site) {
        this.site = site;
    }

    public void routes(RoutesConfig routes) {
        routes.post("/clock", this::answered);
    }

    private void answered(Context ctx) {
        LedgerClock clock = site.ledger().clock();
        String typed = String.valueOf(ctx.formParam("day")).strip();
        if ("right".equals(ctx.formParam("clock"))) {
            clock.confirm();
        } else {
            try {
                clock.correct(LocalDate.parse(typed));
            } catch (DateTimeParseException e) {
                FlashMessage.andGo(ctx, w("page.clock-no-day", "typed", typed), "/");
                return;
            }
        }
        FlashMessage.andGo(ctx, w("page.clock-goes-on", "day", DateWords.day(site.today())), "/");
    }
}

package tenterbook.web;

import io.javalin.http.Context;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Currency;
import java.util.Optional;
import tenterbook.archive.Archive;
import tenterbook.imaging.Originals;
import tenterbook.imaging.PhotoIntake;
import tenterbook.imaging.Previews;
import tenterbook.labelling.issue.TagTable;
import tenterbook.piece.Studio;
import tenterbook.search.PieceIndex;
import tenterbook.web.job.Jobs;
import tenterbook.web.page.FlashMessage;
import tenterbook.web.page.Page;

/**
 * What the pages work with: one open archive and what follows it.
 */
public record Site(
        Archive archive,
        PieceIndex index,
        TagTable tags,
        Originals originals,
        PhotoIntake intake,
        Previews previews,
        Jobs jobs,
        Clock clock) {
    /** What a page shows around its own matter. Where the studio's record cannot be read, it says so, and all else is shown. */
    public Page page(Context ctx, String title, String section) {
        String message = ctx.cookie("said");
        if (message != null) {
            ctx.removeCookie("said", "/");
        }
        return page(title, section, message == null ? "" : FlashMessage.decoded(message));
    }

    /** For a page that tells what went wrong: a message that waits stays for the next. */
    public Page page(String title) {
        return page(title, "", "");
    }

    private Page page(String title, String section, String message) {
        Optional<Studio> studio = archive.readableStudio();
        return new Page(title, section, studio.orElse(Studio.UNNAMED), message, studio.isEmpty());
    }

    public String author() {
        return archive.author();
    }

    public Currency currency() {
        return archive.studio().currency();
    }

    public LocalDate today() {
        ZoneId zone = archive.readableStudio().map(Studio::timeZone).orElse(clock.getZone());
        return LocalDate.ofInstant(clock.instant(), zone);
    }
}

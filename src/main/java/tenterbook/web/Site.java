package tenterbook.web;

import io.javalin.http.Context;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Currency;
import tenterbook.archive.Archive;
import tenterbook.label.TagTable;
import tenterbook.photo.Originals;
import tenterbook.photo.PhotoIntake;
import tenterbook.photo.Previews;
import tenterbook.search.PieceIndex;
import tenterbook.web.job.Jobs;

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
    public Page page(Context ctx, String title, String section) {
        String said = ctx.cookie("said");
        if (said != null) {
            ctx.removeCookie("said", "/");
        }
        return new Page(title, section, archive.studio(), said == null ? "" : Said.decoded(said));
    }

    /** Who saves: the maker. One person uses an archive; a name stands in every revision all the same. */
    public String author() {
        String maker = archive.studio().maker();
        return maker.isEmpty() ? "maker" : maker;
    }

    public Currency currency() {
        return archive.studio().currency();
    }

    public LocalDate today() {
        return LocalDate.now(clock);
    }
}

package tenterbook.web;

import io.javalin.http.Context;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Currency;
import java.util.Optional;
import tenterbook.archive.Archive;
import tenterbook.label.TagTable;
import tenterbook.ledger.Unreadable;
import tenterbook.photo.Originals;
import tenterbook.photo.PhotoIntake;
import tenterbook.photo.Previews;
import tenterbook.piece.Studio;
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
    /** What a page shows around its own matter. Where the studio's record cannot be read, it says so, and all else is shown. */
    public Page page(Context ctx, String title, String section) {
        String said = ctx.cookie("said");
        if (said != null) {
            ctx.removeCookie("said", "/");
        }
        return page(title, section, said == null ? "" : Said.decoded(said));
    }

    Page page(String title, String section, String said) {
        Optional<Studio> studio = studio();
        return new Page(title, section, studio.orElse(Studio.UNNAMED), said, studio.isEmpty());
    }

    /** Who saves: the maker. One person uses an archive; a name stands in every revision all the same. */
    public String author() {
        return studio().map(Studio::maker).filter(maker -> !maker.isEmpty()).orElse("maker");
    }

    /** Empty where its record cannot be read. */
    public Optional<Studio> studio() {
        try {
            return Optional.of(archive.studio());
        } catch (Unreadable e) {
            return Optional.empty();
        }
    }

    public Currency currency() {
        return archive.studio().currency();
    }

    public LocalDate today() {
        return LocalDate.now(clock);
    }
}

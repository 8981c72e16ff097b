package tenterbook.web;

import io.javalin.http.Context;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Archive;
import tenterbook.archive.field.Reading;
import tenterbook.imaging.Originals;
import tenterbook.imaging.PhotoIntake;
import tenterbook.imaging.Previews;
import tenterbook.labelling.issue.TagTable;
import tenterbook.ledger.Ledger;
import tenterbook.ledger.LedgerTransaction;
import tenterbook.ledger.Saved;
import tenterbook.ledger.revision.Kind;
import tenterbook.piece.Studio;
import tenterbook.search.PieceIndex;
import tenterbook.search.recognition.Recogniser;
import tenterbook.web.job.Jobs;
import tenterbook.web.page.FlashMessage;
import tenterbook.web.page.NotFound;
import tenterbook.web.page.Page;

/** What the pages work with: one open archive and what follows it. */
public record Site(
        Archive archive,
        PieceIndex index,
        Recogniser recogniser,
        TagTable tags,
        Originals originals,
        PhotoIntake intake,
        Previews previews,
        Jobs jobs,
        Clock clock) {
    public Ledger ledger() {
        return archive.ledger();
    }

    /** How what is typed here is read. */
    public Reading reading() {
        return Reading.of(archive.readableStudio().orElse(Studio.UNNAMED));
    }

    /** Writes in one transaction, as the author of this archive. */
    public <R extends @Nullable Object> R write(Function<LedgerTransaction, R> act) {
        return ledger().write(author(), act);
    }

    /** @throws NotFound where there is no such record */
    public <T> Saved<T> saved(Kind<T> kind, String id) {
        return ledger().find(kind, id).orElseThrow(() -> NotFound.of(kind, id));
    }

    public <T> List<T> records(Kind<T> kind) {
        return ledger().all(kind).stream().map(Saved::record).toList();
    }

    /** What every page shows. Where the studio's record cannot be read, the page states that and shows the rest. */
    public Page page(Context ctx, String title, String section) {
        String message = ctx.cookie("said");
        if (message != null) {
            ctx.removeCookie("said", "/");
        }
        return page(title, section, message == null ? "" : FlashMessage.decoded(message));
    }

    /** For a page about a failure: the flash message is kept for the next page. */
    public Page page(String title) {
        return page(title, "", "");
    }

    private Page page(String title, String section, String message) {
        Optional<Studio> studio = archive.readableStudio();
        return new Page(
                title,
                section,
                studio.orElse(Studio.UNNAMED),
                message,
                studio.isEmpty(),
                readOnly(),
                readOnly() ? null : ledger().clock().doubt().orElse(null));
    }

    /** Whether nothing can be saved. */
    public boolean readOnly() {
        return archive.folder().readOnly();
    }

    public String author() {
        return archive.author();
    }

    public Currency currency() {
        return archive.studio().currency();
    }

    /**
     * The day, where it is proposed for what is recorded.
     *
     * @throws tenterbook.ledger.file.LedgerClock.Doubted where it is not certain
     */
    public LocalDate certainToday() {
        ledger().clock().mustBeBelieved();
        return today();
    }

    /** The year for a new number; as {@link #certainToday}. */
    public int year() {
        return certainToday().getYear();
    }

    public LocalDate today() {
        ZoneId zone = archive.readableStudio().map(Studio::timeZone).orElse(clock.getZone());
        return LocalDate.ofInstant(clock.instant(), zone);
    }
}

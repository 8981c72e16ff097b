package tenterbook.web.page;

import org.jspecify.annotations.Nullable;
import tenterbook.ledger.file.LedgerClock;
import tenterbook.piece.Studio;

/**
 * What every page shows around its content.
 *
 * @param title of the page, also in the browser's tab
 * @param section which entry of the menu is highlighted
 * @param studio whose archive this is
 * @param message a sentence about what was just done, or empty
 * @param studioUnreadable whether the studio's record cannot be read; {@code studio} is then an unnamed one
 * @param readOnly whether nothing can be saved
 * @param clock what is to be asked about the computer's clock; null for nothing
 */
public record Page(
        String title,
        String section,
        Studio studio,
        String message,
        boolean studioUnreadable,
        boolean readOnly,
        LedgerClock.@Nullable Doubt clock) {}

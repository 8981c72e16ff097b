/** Sheets in and out: bringing one in step by step, templates and exports. Start at {@link tenterbook.web.exchange.ImportPages}. */
@NullMarked
package tenterbook.web.exchange;

import org.jspecify.annotations.NullMarked;

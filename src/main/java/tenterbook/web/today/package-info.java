/** What waits to be done: on a page, and its days for a calendar. */
@NullMarked
package tenterbook.web.today;

import org.jspecify.annotations.NullMarked;

/** What is asked for an act on pieces, and how it is written: the events, the person if new, the agreement. */
@NullMarked
package tenterbook.archive.act;

import org.jspecify.annotations.NullMarked;

/** Fairs, exhibitions and markets: their pages, what each piece lacks, and their papers printed together. */
@NullMarked
package tenterbook.web.fair;

import org.jspecify.annotations.NullMarked;

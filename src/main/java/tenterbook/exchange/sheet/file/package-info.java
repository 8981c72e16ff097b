/**
 * Sheets as files: CSV, xlsx and ods read row by row as texts, CSV and xlsx written. No formula is run. Start at
 * {@link tenterbook.exchange.sheet.file.SheetFile}.
 */
@NullMarked
package tenterbook.exchange.sheet.file;

import org.jspecify.annotations.NullMarked;

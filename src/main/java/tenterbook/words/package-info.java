/**
 * Words shown to people: message bundles under {@code words/} on the class path, one file per room or subject of a page,
 * in English, with a file per further language beside it ({@code measure_pt.properties}).
 *
 * <p>Patterns are ICU MessageFormat with named arguments. Numbers are written without grouping marks and with the decimal
 * mark of {@link tenterbook.words.Conventions}. Knows no other room. Start at {@link tenterbook.words.Message}.
 */
package tenterbook.words;

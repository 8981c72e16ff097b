/** Suggestions while typing. */
package tenterbook.search.suggest;

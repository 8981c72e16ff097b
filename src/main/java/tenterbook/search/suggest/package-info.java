/** What may be meant while typing. */
package tenterbook.search.suggest;

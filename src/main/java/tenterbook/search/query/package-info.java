/** A search, whole, as it stands in the address bar, and how text becomes words. Knows no index. */
package tenterbook.search.query;

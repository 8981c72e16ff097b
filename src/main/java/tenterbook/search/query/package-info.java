/** A whole search, as in the address bar, and how text becomes words. Knows no index. */
package tenterbook.search.query;

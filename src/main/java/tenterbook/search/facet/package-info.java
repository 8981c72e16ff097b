/** Facet values as numbers, and how often each occurs among the pieces found. */
package tenterbook.search.facet;

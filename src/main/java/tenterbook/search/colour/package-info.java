/** Exact nearest colours by CIEDE2000: a tree of colours, one proven bound and one refinement. */
package tenterbook.search.colour;

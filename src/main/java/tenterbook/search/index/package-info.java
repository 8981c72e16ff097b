/** What the index keeps of one piece: its document, its card, its texts, its facet values and numbers. */
package tenterbook.search.index;

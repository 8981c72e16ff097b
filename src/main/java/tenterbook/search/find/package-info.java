/** One search from question to page: words by Lucene, everything else by columns in memory, then order and cards. */
package tenterbook.search.find;

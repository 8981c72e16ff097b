/**
 * Figures for a large archive: searching, reading pieces and rebuilding the index. Never a test and no part of the program.
 * Start at {@link tenterbook.bench.ArchiveBench}.
 */
package tenterbook.bench;

/**
 * Figures for a large archive: searching, reading pieces and rebuilding the index; and for taking photographs in. Never a test
 * and no part of the program. Start at {@link tenterbook.bench.ArchiveBench} and {@link tenterbook.bench.IngestBench}.
 */
package tenterbook.bench;

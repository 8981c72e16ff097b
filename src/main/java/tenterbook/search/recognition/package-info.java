/**
 * Which piece, or at least which board pair, a photograph shows. {@link tenterbook.search.recognition.FeatureTable} keeps what is
 * distinctive on each photograph, {@link tenterbook.search.recognition.Recogniser} compares a picture with it. Start with the
 * latter. It never says more than its evidence bears, and nothing about who made a piece.
 */
package tenterbook.search.recognition;

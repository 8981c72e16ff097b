/** Which piece, or which board pair, a photograph shows: the question, its progress, and the answer with its evidence. */
@org.jspecify.annotations.NullMarked
package tenterbook.web.recognition;

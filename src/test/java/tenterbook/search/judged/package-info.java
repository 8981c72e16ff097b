/**
 * How well a search answers questions that were judged beforehand, piece by piece, from the records of the sample archive.
 *
 * <p>{@code judged-questions.tsv} is for looking into; {@code judged-questions-unseen.tsv} only for the figures, so that nobody
 * fits the search to it. Start at {@link tenterbook.search.judged.JudgedQuestions}; the figures of today are printed by {@code
 * mvn -o -q test -Dtest=QuestionsAnsweredTest}.
 */
package tenterbook.search.judged;

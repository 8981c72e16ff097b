/** What a question means: words read as facts of the record, and the words that are left. Start at {@link tenterbook.search.question.QuestionReader}. */
package tenterbook.search.question;

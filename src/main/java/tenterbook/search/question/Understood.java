package tenterbook.search.question;

import tenterbook.search.query.Constraint;
import tenterbook.words.Message;

/**
 * A part of a question that was read as a fact.
 *
 * @param constraint what it asks
 * @param label what it was taken for, as in 'status: sold'
 * @param typed as it stands in the question
 * @param without the question without it
 * @param asWords the question with it as plain words
 */
public record Understood(Constraint constraint, Message label, String typed, String without, String asWords) {}

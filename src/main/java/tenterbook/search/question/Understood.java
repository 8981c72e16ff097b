package tenterbook.search.question;

import org.jspecify.annotations.Nullable;
import tenterbook.search.query.Constraint;
import tenterbook.words.Message;

/**
 * A part of a question that was read as more than words to look for.
 *
 * @param constraint what it asks; null for an order, and for a word that must not stand there
 * @param label what it was taken for, as in 'Status: sold'
 * @param typed as it stands in the question
 * @param without the question without it
 * @param asWords the question with it as plain words; empty where it is words already
 */
public record Understood(
        @Nullable Constraint constraint, Message label, String typed, String without, String asWords) {}

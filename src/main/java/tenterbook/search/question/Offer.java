package tenterbook.search.question;

import tenterbook.words.Message;

/**
 * Another way in which a question may have been meant.
 *
 * @param label what it would be taken for, as in 'Status: hanging'
 * @param question the whole question in words that are read so
 */
public record Offer(Message label, String question) {}

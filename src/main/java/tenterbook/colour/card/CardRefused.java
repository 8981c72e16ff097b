package tenterbook.colour.card;

/** A card or chart that cannot correct the photograph; the message is for the person who marked it. */
public final class CardRefused extends RuntimeException {
    CardRefused(String message) {
        super(message);
    }
}

package tenterbook.photo;

/** A file that cannot be taken as a photograph; the message is for the person who added it. */
public final class PhotoRefused extends RuntimeException {
    private PhotoRefused(String message) {
        super(message);
    }

    static PhotoRefused because(String expected, String found, String next) {
        return new PhotoRefused("Photo was not added: expected " + expected + "; found " + found + ". " + next
                + " Nothing in the archive has changed.");
    }
}

package tenterbook.piece.fair;

/** A line of a fair's own checklist, in the maker's words. */
public record FairTask(String text, boolean done) {
    public FairTask {
        text = text == null ? "" : text.strip();
    }

    public FairTask marked(boolean now) {
        return new FairTask(text, now);
    }
}

package tenterbook.exchange;

/**
 * How much of an archive a bag holds. Written into {@code bag-info.txt}; a bag that says another word than a known one
 * is not restored, so that a leaner export can never be taken for a full backup.
 */
public enum Contents {
    EVERYTHING(
            "everything",
            "This is the maker's own full backup. Names and addresses of buyers, galleries and lenders, prices, notes, and any place coordinates inside the photographs are in it. Keep it as you keep the archive, and give it to nobody who may not see those.");

    static final String LABEL = "Tenterbook-Contents";
    private final String word;
    private final String privacy;

    Contents(String word, String privacy) {
        this.word = word;
        this.privacy = privacy;
    }

    String word() {
        return word;
    }

    /** What a person must know before handing the bag on. */
    public String privacy() {
        return privacy;
    }
}

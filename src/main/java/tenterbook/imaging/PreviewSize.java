package tenterbook.imaging;

/** How large a preview is: the most pixels along its long edge. A smaller original is never enlarged. */
public enum PreviewSize {
    SMALL(320),
    MEDIUM(960),
    LARGE(2048);

    private final int longEdge;

    PreviewSize(int longEdge) {
        this.longEdge = longEdge;
    }

    public int longEdge() {
        return longEdge;
    }
}

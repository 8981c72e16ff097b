package tenterbook.imaging.pixels;

/** How large a picture is, or becomes, in pixels. */
record PixelSize(int width, int height) {
    /** This size with its long edge reduced to {@code longEdge}; itself if it is no longer than that. */
    PixelSize within(int longEdge) {
        int longest = Math.max(width, height);
        return longest <= longEdge
                ? this
                : new PixelSize(
                        Math.max(1, Math.round((float) width * longEdge / longest)),
                        Math.max(1, Math.round((float) height * longEdge / longest)));
    }
}

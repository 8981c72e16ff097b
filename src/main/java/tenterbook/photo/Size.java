package tenterbook.photo;

import java.util.ArrayList;
import java.util.List;

/** How large a picture is, or becomes, in pixels. */
record Size(int width, int height) {
    /** This size with its long edge reduced to {@code longEdge}; itself if it is no longer than that. */
    Size within(int longEdge) {
        int longest = Math.max(width, height);
        return longest <= longEdge
                ? this
                : new Size(
                        Math.max(1, Math.round((float) width * longEdge / longest)),
                        Math.max(1, Math.round((float) height * longEdge / longest)));
    }

    /** Within the first edge, that within the second, and so on. */
    List<Size> within(int[] longEdges) {
        List<Size> sizes = new ArrayList<>();
        Size size = this;
        for (int longEdge : longEdges) {
            size = size.within(longEdge);
            sizes.add(size);
        }
        return sizes;
    }
}

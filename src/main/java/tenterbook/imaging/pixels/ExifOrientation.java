package tenterbook.imaging.pixels;

/**
 * Where each stored pixel goes when a picture is turned and mirrored as an Exif orientation asks (JEITA CP-3451, tag 274:
 * where row 0 and column 0 of the stored picture belong).
 *
 * @param size of the upright picture
 * @param first where the pixel of row 0 and column 0 goes, counted row by row
 * @param along how much further the next pixel of a row goes
 * @param down how much further the pixel below goes
 */
record ExifOrientation(PixelSize size, int first, int along, int down) {
    /** @throws IllegalStateException if the orientation is not 1 to 8 */
    static ExifOrientation of(int orientation, int width, int height) {
        if (orientation < 1 || orientation > 8) {
            throw new IllegalStateException("An orientation is 1 to 8; found: " + orientation);
        }
        int lastRow = (height - 1) * width;
        int lastColumn = (width - 1) * height;
        PixelSize same = new PixelSize(width, height);
        PixelSize sideways = new PixelSize(height, width);
        return switch (orientation) {
            case 2 -> new ExifOrientation(same, width - 1, -1, width);
            case 3 -> new ExifOrientation(same, lastRow + width - 1, -1, -width);
            case 4 -> new ExifOrientation(same, lastRow, 1, -width);
            case 5 -> new ExifOrientation(sideways, 0, height, 1);
            case 6 -> new ExifOrientation(sideways, height - 1, height, -1);
            case 7 -> new ExifOrientation(sideways, lastColumn + height - 1, -height, -1);
            case 8 -> new ExifOrientation(sideways, lastColumn, -height, 1);
            default -> new ExifOrientation(same, 0, 1, width);
        };
    }
}

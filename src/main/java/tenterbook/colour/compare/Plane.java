package tenterbook.colour.compare;

import tenterbook.colour.space.SrgbCurve;

/** One number for each pixel, row by row. */
record Plane(double[] values, int width, int height) {
    /** Lightness L*, 0 to 100. */
    static Plane lightness(ComparedPicture picture) {
        double[] values = new double[picture.argb().length];
        for (int i = 0; i < values.length; i++) {
            int p = picture.argb()[i];
            double y = 0.2126 * SrgbCurve.linear(p >> 16 & 0xff)
                    + 0.7152 * SrgbCurve.linear(p >> 8 & 0xff)
                    + 0.0722 * SrgbCurve.linear(p & 0xff);
            values[i] = y > 216.0 / 24389 ? 116 * Math.cbrt(y) - 16 : y * 24389 / 27;
        }
        return new Plane(values, picture.width(), picture.height());
    }

    /** Centred in a square, scaled so that the longer side fills it; each new pixel is the mean of its area. */
    Plane squared(int side) {
        double scale = (double) side / Math.max(width, height);
        double[] sum = new double[side * side];
        for (int y = 0; y < side; y++) {
            for (int x = 0; x < side; x++) {
                sum[y * side + x] = area(
                        (x - side / 2.0) / scale + width / 2.0, (y - side / 2.0) / scale + height / 2.0, 1 / scale);
            }
        }
        return new Plane(sum, side, side);
    }

    /** Stretched to another size; each new pixel is the mean of its area. */
    Plane stretched(int toWidth, int toHeight) {
        double[] mean = new double[toWidth * toHeight];
        double fx = (double) width / toWidth;
        double fy = (double) height / toHeight;
        for (int y = 0; y < toHeight; y++) {
            for (int x = 0; x < toWidth; x++) {
                mean[y * toWidth + x] = area(x * fx, y * fy, fx, fy);
            }
        }
        return new Plane(mean, toWidth, toHeight);
    }

    private double area(double left, double top, double size) {
        return area(left, top, size, size);
    }

    /** NaN outside the plane. */
    private double area(double left, double top, double across, double down) {
        if (across < 1.5 && down < 1.5) {
            return at(left + across / 2 - 0.5, top + down / 2 - 0.5);
        }
        int x0 = (int) Math.max(0, Math.round(left));
        int x1 = (int) Math.min(width, Math.round(left + across));
        int y0 = (int) Math.max(0, Math.round(top));
        int y1 = (int) Math.min(height, Math.round(top + down));
        double sum = 0;
        for (int y = y0; y < y1; y++) {
            for (int x = x0; x < x1; x++) {
                sum += values[y * width + x];
            }
        }
        return sum / (Math.max(0, x1 - x0) * Math.max(0, y1 - y0));
    }

    /** Bilinear interpolation; pixel centres at whole numbers; NaN outside. */
    double at(double x, double y) {
        if (!(x >= 0 && y >= 0 && x <= width - 1 && y <= height - 1)) {
            return Double.NaN;
        }
        int x0 = Math.min((int) x, Math.max(0, width - 2));
        int y0 = Math.min((int) y, Math.max(0, height - 2));
        double fx = x - x0;
        double fy = y - y0;
        int i = y0 * width + x0;
        int right = width > 1 ? 1 : 0;
        int below = height > 1 ? width : 0;
        return (values[i] * (1 - fx) + values[i + right] * fx) * (1 - fy)
                + (values[i + below] * (1 - fx) + values[i + below + right] * fx) * fy;
    }

    Plane mirrored(boolean leftRight, boolean topBottom) {
        double[] turned = new double[values.length];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                turned[y * width + x] =
                        values[(topBottom ? height - 1 - y : y) * width + (leftRight ? width - 1 - x : x)];
            }
        }
        return new Plane(turned, width, height);
    }

    /** Standard deviation over all pixels that are numbers; 0 for a flat plane. */
    double spread() {
        double n = 0;
        double sum = 0;
        double squares = 0;
        for (double v : values) {
            if (!Double.isNaN(v)) {
                n++;
                sum += v;
                squares += v * v;
            }
        }
        return n == 0 ? 0 : Math.sqrt(Math.max(0, squares / n - sum / n * (sum / n)));
    }
}

package tenterbook.sample;

/** Smooth repeatable noise: gradient noise on a lattice hashed from a seed. Values lie roughly in [-1, 1]. */
final class Noise {
    private static final int SIZE = 1024;
    private final int[] permutation = new int[SIZE * 2];
    private final float[] gx = new float[SIZE];
    private final float[] gy = new float[SIZE];

    Noise(long seed) {
        java.util.Random random = new java.util.Random(seed * 0x9E3779B97F4A7C15L + 17);
        int[] order = new int[SIZE];
        for (int i = 0; i < SIZE; i++) {
            int j = random.nextInt(i + 1);
            order[i] = order[j];
            order[j] = i;
            double angle = random.nextDouble() * Math.PI * 2;
            gx[i] = (float) Math.cos(angle) * 1.5f;
            gy[i] = (float) Math.sin(angle) * 1.5f;
        }
        for (int i = 0; i < SIZE * 2; i++) {
            permutation[i] = order[i & (SIZE - 1)];
        }
    }

    float at(double x, double y) {
        int xi = (int) Math.floor(x);
        int yi = (int) Math.floor(y);
        float fx = (float) (x - xi);
        float fy = (float) (y - yi);
        float sx = fx * fx * fx * (fx * (fx * 6 - 15) + 10);
        float sy = fy * fy * fy * (fy * (fy * 6 - 15) + 10);
        float a = dot(xi, yi, fx, fy);
        float b = dot(xi + 1, yi, fx - 1, fy);
        float c = dot(xi, yi + 1, fx, fy - 1);
        float d = dot(xi + 1, yi + 1, fx - 1, fy - 1);
        float top = a + (b - a) * sx;
        return top + (c + (d - c) * sx - top) * sy;
    }

    private float dot(int x, int y, float fx, float fy) {
        int h = permutation[permutation[x & (SIZE - 1)] + (y & (SIZE - 1))];
        return gx[h] * fx + gy[h] * fy;
    }

    /** Sum of octaves, each half as strong and twice as fine; kept near [-1, 1]. */
    float octaves(double x, double y, int count) {
        float sum = 0;
        float weight = 1;
        float total = 0;
        double f = 1;
        for (int i = 0; i < count; i++) {
            sum += weight * at(x * f + i * 31.7, y * f - i * 17.3);
            total += weight;
            weight *= 0.5f;
            f *= 2.03;
        }
        return sum / total * 1.4f;
    }

    /** White noise for one pixel, roughly Gaussian with unit spread, from a hash: the same in any order of drawing. */
    static float grain(int x, int y, long seed) {
        long h = (x * 0x9E3779B97F4A7C15L) ^ (y * 0xC2B2AE3D27D4EB4FL) ^ (seed * 0x165667B19E3779F9L);
        h ^= h >>> 29;
        h *= 0xBF58476D1CE4E5B9L;
        h ^= h >>> 32;
        h *= 0x94D049BB133111EBL;
        h ^= h >>> 29;
        int sum = (int) (h & 0xffff) + (int) (h >>> 16 & 0xffff) + (int) (h >>> 32 & 0xffff) + (int) (h >>> 48);
        return (sum - 131070) / 37837f;
    }
}

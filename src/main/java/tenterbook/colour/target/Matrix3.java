package tenterbook.colour.target;

import java.util.List;

/** A 3 × 3 matrix. */
record Matrix3(
        double a11, double a12, double a13, double a21, double a22, double a23, double a31, double a32, double a33) {
    static final Matrix3 IDENTITY = diagonal(1, 1, 1);

    static Matrix3 diagonal(double first, double second, double third) {
        return new Matrix3(first, 0, 0, 0, second, 0, 0, 0, third);
    }

    /** @param rows nine numbers, row by row */
    static Matrix3 of(double... rows) {
        return new Matrix3(rows[0], rows[1], rows[2], rows[3], rows[4], rows[5], rows[6], rows[7], rows[8]);
    }

    static Matrix3 of(List<Double> rows) {
        return of(rows.stream().mapToDouble(d -> d).toArray());
    }

    List<Double> rows() {
        return List.of(a11, a12, a13, a21, a22, a23, a31, a32, a33);
    }

    double[] times(double... v) {
        return new double[] {
            a11 * v[0] + a12 * v[1] + a13 * v[2],
            a21 * v[0] + a22 * v[1] + a23 * v[2],
            a31 * v[0] + a32 * v[1] + a33 * v[2]
        };
    }

    /** The product, this one on the left. */
    Matrix3 times(Matrix3 right) {
        double[] first = times(right.a11, right.a21, right.a31);
        double[] second = times(right.a12, right.a22, right.a32);
        double[] third = times(right.a13, right.a23, right.a33);
        return new Matrix3(first[0], second[0], third[0], first[1], second[1], third[1], first[2], second[2], third[2]);
    }

    double determinant() {
        return a11 * (a22 * a33 - a23 * a32) - a12 * (a21 * a33 - a23 * a31) + a13 * (a21 * a32 - a22 * a31);
    }

    /** @throws ArithmeticException if it is singular */
    Matrix3 inverse() {
        double d = determinant();
        if (!(Math.abs(d) > 1e-15)) {
            throw new ArithmeticException("determinant " + d);
        }
        return new Matrix3(
                (a22 * a33 - a23 * a32) / d,
                (a13 * a32 - a12 * a33) / d,
                (a12 * a23 - a13 * a22) / d,
                (a23 * a31 - a21 * a33) / d,
                (a11 * a33 - a13 * a31) / d,
                (a13 * a21 - a11 * a23) / d,
                (a21 * a32 - a22 * a31) / d,
                (a12 * a31 - a11 * a32) / d,
                (a11 * a22 - a12 * a21) / d);
    }
}

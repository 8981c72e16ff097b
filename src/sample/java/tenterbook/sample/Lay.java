package tenterbook.sample;

import java.util.Random;
import tenterbook.sample.Scene.View;

/** How the cloth lies or hangs before the camera: scale, turn, ripples, sag between the pegs. */
final class Lay {
    final double pixelsPerMm;
    final double turn;
    /** Where the pegs hold, as shares of the cloth's width; empty when it lies. */
    final double[] pegs;

    private final Scene scene;
    private final DyedCloth cloth;
    private final double middleX;
    private final double middleY;
    private final double centreX;
    private final double centreY;
    private final Field slopeX;
    private final Field slopeY;

    Lay(Scene scene, Arrangement arrangement, double clothWidthMm, double clothHeightMm, Motif motif, DyedCloth cloth) {
        this.scene = scene;
        this.cloth = cloth;
        Random random = new Random(scene.photoSeed() * 7919 + 3);
        double w = scene.width();
        double h = scene.height();
        this.pegs = scene.hung()
                ? (scene.across() > 2 ? new double[] {0.02, 0.36, 0.66, 0.98} : new double[] {0.03, 0.5, 0.97})
                : new double[0];
        this.turn = Math.toRadians(random.nextGaussian() * (scene.hung() ? 0.25 : whole(scene) ? 0.9 : 2.2));
        int[] panel = scene.panelOf(Math.min(scene.layer(), scene.across() * scene.down()));
        switch (scene.view()) {
            case FRONT, BACK -> {
                this.pixelsPerMm = arrangement.zoom() * Math.min(w * 0.86 / clothWidthMm, h * 0.84 / clothHeightMm);
                this.middleX = clothWidthMm / 2 - DyedCloth.MARGIN_MM;
                this.middleY = clothHeightMm / 2 - DyedCloth.MARGIN_MM;
                this.centreX = w * (0.5 + arrangement.right() + 0.008 * random.nextGaussian());
                this.centreY = h * (arrangement.down() + (scene.hung() ? 0.515 : 0.49));
            }
            case LAYER -> {
                this.pixelsPerMm = Math.min(w * 0.94 / motif.widthMm(), h * 0.94 / motif.heightMm());
                this.middleX = (panel[0] + 0.5) * motif.widthMm();
                this.middleY = (panel[1] + 0.5) * motif.heightMm();
                this.centreX = w * 0.5;
                this.centreY = h * 0.5;
            }
            case DETAIL -> {
                this.pixelsPerMm = 1.28 * Math.min(w / motif.widthMm(), h / motif.heightMm());
                this.middleX = (panel[0] + 0.62) * motif.widthMm();
                this.middleY = (panel[1] + 0.56) * motif.heightMm();
                this.centreX = w * 0.5;
                this.centreY = h * 0.5;
            }
            default -> {
                this.pixelsPerMm = w / 250;
                this.middleX = clothWidthMm - DyedCloth.MARGIN_MM * 2 - 78;
                this.middleY = clothHeightMm - DyedCloth.MARGIN_MM * 2 - 62;
                this.centreX = w * 0.5;
                this.centreY = h * 0.5;
            }
        }
        this.slopeX = new Field(scene.width() / 4 + 1, scene.height() / 4 + 1);
        this.slopeY = new Field(scene.width() / 4 + 1, scene.height() / 4 + 1);
        ripple(new Noise(scene.photoSeed() + 55), clothWidthMm, clothHeightMm);
    }

    private static boolean whole(Scene scene) {
        return scene.view() == View.FRONT || scene.view() == View.BACK;
    }

    private void ripple(Noise noise, double clothWidth, double clothHeight) {
        double[] p = new double[2];
        for (int y = 0; y < slopeX.height; y++) {
            for (int x = 0; x < slopeX.width; x++) {
                flat(x * 4.0, y * 4.0, p);
                double e = 2;
                double h = height(noise, p[0], p[1], clothWidth, clothHeight);
                slopeX.values[y * slopeX.width + x] =
                        (float) ((height(noise, p[0] + e, p[1], clothWidth, clothHeight) - h) / e);
                slopeY.values[y * slopeX.width + x] =
                        (float) ((height(noise, p[0], p[1] + e, clothWidth, clothHeight) - h) / e);
            }
        }
    }

    /** Height of the cloth towards the camera, mm. */
    private double height(Noise noise, double x, double y, double clothWidth, double clothHeight) {
        if (!scene.hung()) {
            double wrinkle = noise.at(x / 240 + y / 420, y / 330 - x / 700);
            double ridge = Math.abs(noise.at(x / 320 + 9, y / 250 + x / 600));
            return 5.5 * wrinkle
                    + 3.6 * noise.at(x / 95, y / 120)
                    + 0.5 * noise.at(x / 30, y / 26)
                    - 8 * Math.sqrt(ridge * ridge + 0.003);
        }
        double t = Math.max(0, y / clothHeight);
        double wave = Math.max(135, clothWidth / (2.2 * pegs.length));
        double phase = x / wave + 0.9 * noise.at(x / 330, y / 900 + 3) + 0.2 * t;
        double swing = Math.cos(2 * Math.PI * phase) + 0.5 * Math.cos(2 * Math.PI * phase * 0.47 + 1.1);
        return swing * (2.2 + 5.5 * t) * wave / 150
                + 2.4 * noise.at(x / 110, y / 260)
                + 2 * noise.at(x / 60 + y / 90, y / 120);
    }

    /** Cloth mm of a picture place, were the cloth perfectly flat. */
    void flat(double px, double py, double[] mm) {
        double dx = (px - centreX) / pixelsPerMm;
        double dy = (py - centreY) / pixelsPerMm;
        double c = Math.cos(turn);
        double s = Math.sin(turn);
        mm[0] = middleX + dx * c + dy * s;
        mm[1] = middleY - dx * s + dy * c;
    }

    /** Picture place of a cloth mm, were the cloth perfectly flat. */
    double[] picture(double x, double y) {
        double c = Math.cos(turn);
        double s = Math.sin(turn);
        double dx = x - middleX;
        double dy = y - middleY;
        return new double[] {centreX + (dx * c - dy * s) * pixelsPerMm, centreY + (dx * s + dy * c) * pixelsPerMm};
    }

    double slopeX(double px, double py) {
        return slopeX.sample(px / 4 + 0.5, py / 4 + 0.5);
    }

    double slopeY(double px, double py) {
        return slopeY.sample(px / 4 + 0.5, py / 4 + 0.5);
    }

    /** Cloth mm of a picture place, with ripples, sag and drawn-in sides. */
    void cloth(double px, double py, double gx, double gy, double[] mm) {
        flat(px, py, mm);
        mm[0] += gx * 13;
        mm[1] += gy * 13;
        if (pegs.length > 0) {
            double t = (mm[0] + DyedCloth.MARGIN_MM) / (cloth.widthMm + 2 * DyedCloth.MARGIN_MM);
            double down = mm[1] / cloth.heightMm;
            mm[1] -= sag(t) * Math.exp(-Math.max(0, mm[1]) / 260);
            mm[1] += gx * 15 * Math.max(0, down);
            mm[0] += (t - 0.5) * 16 * Math.max(0, down) * (1.2 - down);
        }
    }

    /** mm that the upper edge hangs below the pegs. */
    double sag(double t) {
        for (int i = 0; i + 1 < pegs.length; i++) {
            if (t >= pegs[i] && t <= pegs[i + 1]) {
                double u = (t - pegs[i]) / (pegs[i + 1] - pegs[i]);
                return 62 * (pegs[i + 1] - pegs[i]) * Math.sin(Math.PI * u);
            }
        }
        return 4;
    }
}

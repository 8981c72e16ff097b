package tenterbook.web.colour;

import static tenterbook.web.page.Words.w;

import tenterbook.imaging.ClothTable;
import tenterbook.imaging.LookingBehind;

/** How far the program has come with looking for the cloth on photographs, for pages whose colours are incomplete meanwhile. */
public final class LookingForCloth {
    private LookingForCloth() {}

    /** In a sentence; empty where nothing is being looked for. */
    public static String sentence(ClothTable cloths) {
        LookingBehind.Looking far = cloths.progress();
        return far.all() == 0 ? "" : w("pieces.looking", "done", far.done(), "all", far.all());
    }
}

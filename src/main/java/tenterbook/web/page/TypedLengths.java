package tenterbook.web.page;

import java.util.function.Supplier;
import tenterbook.measure.LengthUnits;

/** The units of lengths typed without one, for the request that this thread answers. */
public final class TypedLengths {
    private static final ThreadLocal<Supplier<LengthUnits>> NOW =
            ThreadLocal.withInitial(() -> () -> LengthUnits.CM_AND_MM);

    private TypedLengths() {}

    /** Before each request. Asked only where a form is shown or read. */
    public static void are(Supplier<LengthUnits> units) {
        NOW.set(units);
    }

    public static LengthUnits now() {
        return NOW.get().get();
    }
}

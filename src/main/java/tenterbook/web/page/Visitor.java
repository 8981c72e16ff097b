package tenterbook.web.page;

import java.util.Optional;
import java.util.function.Predicate;

/**
 * Who sent the request that this thread answers: somebody at this computer, a paired device, or a stranger who is shown nothing
 * of the archive.
 *
 * @param device its identifier; empty for somebody at this computer and for a stranger
 * @param may whether a page may be opened, by its path
 * @param watches whether the page looks now and then for what devices add
 */
public record Visitor(String device, Predicate<String> may, boolean watches) {
    public static final Visitor STRANGER = new Visitor("", path -> false, false);

    /** At this computer, while no device can reach it. */
    public static final Visitor MAKER = new Visitor("", path -> true, false);

    /** At this computer, while devices can reach it. */
    public static final Visitor WATCHING_MAKER = new Visitor("", path -> true, true);

    private static final String DRAFTS = "device/";

    private static final ThreadLocal<Visitor> NOW = ThreadLocal.withInitial(() -> STRANGER);

    public static Visitor now() {
        return NOW.get();
    }

    /** With each request, before anything else. */
    public static void is(Visitor visitor) {
        NOW.set(visitor);
    }

    /** Whether a link is worth showing. */
    public static boolean opens(String path) {
        return now().may.test(path);
    }

    public boolean onDevice() {
        return !device.isEmpty();
    }

    /** The name under which this visitor's unsaved typing is kept: a device has its own, so that two forms never become one. */
    public String own(String draft) {
        return onDevice() ? DRAFTS + device + "/" + draft : draft;
    }

    /** A draft's name without what {@link #own} adds; empty where it belongs to somebody else. */
    public Optional<String> named(String kept) {
        String before = own("");
        return kept.startsWith(before) && (onDevice() || !kept.startsWith(DRAFTS))
                ? Optional.of(kept.substring(before.length()))
                : Optional.empty();
    }
}

package tenterbook.web.server;

import io.javalin.http.Context;
import java.util.Set;
import java.util.regex.Pattern;
import tenterbook.ledger.file.ReadOnlyArchive;

/**
 * What a read-only archive answers: everything that only looks. A request that could write, and the form for one, is refused
 * with 403 (RFC 9110, 15.5.4) whoever sends it.
 */
final class ReadOnlyRoutes {
    /** Requests that are sent as forms and change nothing in the archive. */
    private static final Set<String> LOOKING = Set.of(
            "/language",
            "/by-picture",
            "/verify",
            "/clampings/figures",
            "/studio/check",
            "/studio/pack",
            "/api/recognition",
            "/api/colour/picture");

    private static final Pattern LOOKING_TOO =
            Pattern.compile("/(work|recognition)/[^/]+/stop|/photos/[0-9a-f]{64}/recognition");

    private static final Pattern FORM = Pattern.compile("/.*/(new|edit)");

    private ReadOnlyRoutes() {}

    static void check(Context ctx) {
        String path = ctx.path();
        boolean looking = Guard.changing(ctx)
                ? LOOKING.contains(path) || LOOKING_TOO.matcher(path).matches()
                : !FORM.matcher(path).matches();
        if (!looking) {
            throw new ReadOnlyArchive();
        }
    }
}

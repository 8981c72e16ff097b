package tenterbook.web.page;

import io.javalin.http.Context;

/** Sends bytes that a browser is not to keep, since the next request may get others. */
public final class Uncached {
    private Uncached() {}

    public static void send(Context ctx, String mediaType, byte[] bytes) {
        ctx.contentType(mediaType);
        ctx.header("Cache-Control", "no-store");
        ctx.result(bytes);
    }

    /** A PDF to be shown, under this name where it is saved. */
    public static void pdf(Context ctx, String name, byte[] pdf) {
        ctx.header("Content-Disposition", "inline; filename=\"" + name + ".pdf\"");
        send(ctx, "application/pdf", pdf);
    }
}

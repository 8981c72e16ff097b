package tenterbook.web;

import io.javalin.http.Context;
import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;

/** Carries one sentence over a redirect to the next page. */
public final class Said {
    private Said() {}

    /** Sends the browser to {@code path}, where {@code sentence} will be shown. */
    public static void andGo(Context ctx, String sentence, String path) {
        ctx.cookie("said", URLEncoder.encode(sentence, StandardCharsets.UTF_8), 60);
        ctx.redirect(path, io.javalin.http.HttpStatus.SEE_OTHER);
    }

    /** Empty where it is not ours: cookies are shared by all ports of this computer. */
    static String decoded(String cookie) {
        try {
            return URLDecoder.decode(cookie, StandardCharsets.UTF_8);
        } catch (IllegalArgumentException e) {
            return "";
        }
    }
}

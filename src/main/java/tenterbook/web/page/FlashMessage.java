package tenterbook.web.page;

import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.SameSite;
import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;

/** Carries one sentence over a redirect to the next page. */
public final class FlashMessage {
    private FlashMessage() {}

    /** Redirects to {@code path}, given unescaped, where {@code sentence} is shown. */
    public static void andGo(Context ctx, String sentence, String path) {
        String value = URLEncoder.encode(sentence, StandardCharsets.UTF_8);
        ctx.cookie(new Cookie("said", value, "/", 60, false, true, null, SameSite.LAX));
        ctx.redirect(ascii(path), io.javalin.http.HttpStatus.SEE_OTHER);
    }

    /** A header holds only ASCII, but a record may be named ‘É24-001’ or ‘版-1’ (RFC 3987, 3.1). */
    private static String ascii(String path) {
        StringBuilder plain = new StringBuilder();
        path.codePoints().forEach(letter -> {
            String text = Character.toString(letter);
            plain.append(letter < 128 ? text : URLEncoder.encode(text, StandardCharsets.UTF_8));
        });
        return plain.toString();
    }

    /** Empty where it is not ours: cookies are shared by all ports of this computer. */
    public static String decoded(String cookie) {
        try {
            return URLDecoder.decode(cookie, StandardCharsets.UTF_8);
        } catch (IllegalArgumentException e) {
            return "";
        }
    }
}

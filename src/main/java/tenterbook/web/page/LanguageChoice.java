package tenterbook.web.page;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.HttpStatus;
import io.javalin.http.SameSite;
import java.net.URI;
import java.time.Duration;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tenterbook.words.Language;

/** Which language a browser reads: the one chosen at the foot of a page, kept in a cookie; until then what the browser asks for. */
public final class LanguageChoice {
    private static final String COOKIE = "language";

    private LanguageChoice() {}

    public static void routes(RoutesConfig routes) {
        routes.post("/language", LanguageChoice::choose);
    }

    /** Cookies are shared by all ports of this computer, so one may hold anything. */
    public static Language of(Context ctx) {
        return Language.of(Objects.requireNonNullElse(ctx.cookie(COOKIE), ""))
                .orElseGet(() -> Language.preferred(Objects.requireNonNullElse(ctx.header("Accept-Language"), "")));
    }

    /** Of the page that this thread writes. */
    public static Language current() {
        return Language.of(Words.conventions().language().getLanguage()).orElseThrow();
    }

    private static void choose(Context ctx) {
        Language.of(Objects.requireNonNullElse(ctx.formParam("language"), "")).ifPresent(language -> {
            int year = (int) Duration.ofDays(365).toSeconds();
            ctx.cookie(new Cookie(COOKIE, language.code(), "/", year, false, true, null, SameSite.LAX));
        });
        ctx.redirect(pageBefore(ctx.header("Referer")), HttpStatus.SEE_OTHER);
    }

    /** The page on which the language was chosen, never one of another server. */
    private static String pageBefore(@Nullable String referer) {
        if (referer == null) {
            return "/";
        }
        try {
            URI page = URI.create(referer);
            String path =
                    "/" + Objects.requireNonNullElse(page.getRawPath(), "").replaceFirst("^[/\\\\]+", "");
            return page.getRawQuery() == null ? path : path + "?" + page.getRawQuery();
        } catch (IllegalArgumentException e) {
            return "/";
        }
    }
}

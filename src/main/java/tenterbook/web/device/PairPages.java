package tenterbook.web.device;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.HttpStatus;
import io.javalin.http.SameSite;
import java.io.IOException;
import java.security.GeneralSecurityException;
import java.time.Duration;
import java.util.Map;
import java.util.Objects;
import tenterbook.network.PairingCode;
import tenterbook.web.page.Html;
import tenterbook.web.page.NotFound;
import tenterbook.web.page.Visitor;
import tenterbook.words.Message;

/** The page on which a device is paired. It shows nothing of the archive. */
public final class PairPages {
    private static final int LONGEST_NAME = 60;

    /** The longest that browsers keep a cookie (RFC 6265bis, 5.5); a device pairs again after it. */
    private static final int COOKIE_SECONDS = (int) Duration.ofDays(400).toSeconds();

    private final StudioNetwork network;

    public PairPages(StudioNetwork network) {
        this.network = network;
    }

    public void routes(RoutesConfig routes) {
        routes.get("/pair", this::ask);
        routes.post("/pair", this::pair);
        routes.get("/pair/authority.crt", this::certificate);
    }

    private void certificate(Context ctx) throws IOException, GeneralSecurityException {
        onTheNetwork(ctx);
        DevicePages.certificate(ctx, network);
    }

    /** Nobody is paired over loopback: the cookie would be of another kind. */
    private static void onTheNetwork(Context ctx) {
        if (!Visitor.now().onDevice() && !Visitor.now().equals(Visitor.STRANGER)) {
            throw new NotFound(Message.of("not-here.page", "path", ctx.path()));
        }
    }

    private void ask(Context ctx) {
        onTheNetwork(ctx);
        if (Visitor.now().onDevice()) {
            ctx.redirect("/phone", HttpStatus.SEE_OTHER);
        } else {
            show(ctx, 200, Objects.requireNonNullElse(ctx.queryParam("code"), ""), "", "");
        }
    }

    private void show(Context ctx, int status, String code, String name, String problem) {
        ctx.status(status);
        Html.show(
                ctx, "pair", Map.of("code", code, "name", name, "problem", problem, "encrypted", network.encrypted()));
    }

    private void pair(Context ctx) throws IOException {
        onTheNetwork(ctx);
        String typed = Objects.requireNonNullElse(ctx.formParam("code"), "");
        String name = Objects.requireNonNullElse(ctx.formParam("name"), "")
                .replaceAll("[\\p{C}\\s]+", " ")
                .strip();
        if (name.isEmpty() || name.length() > LONGEST_NAME) {
            show(ctx, 422, typed, name, w("device.name-needed", "most", LONGEST_NAME));
            return;
        }
        PairingCode code = network.code();
        PairingCode.Outcome outcome = code == null
                ? PairingCode.Outcome.OVER
                : code.attempt(typed, ctx.req().getRemoteAddr(), network.now());
        switch (outcome) {
            case PAIRED -> {
                String token = network.devices().pair(name, code.rights(), network.encrypted(), network.now());
                ctx.cookie(new Cookie(
                        network.cookie(),
                        token,
                        "/",
                        COOKIE_SECONDS,
                        network.encrypted(),
                        true,
                        null,
                        SameSite.STRICT));
                ctx.redirect("/phone", HttpStatus.SEE_OTHER);
            }
            case TOO_SOON -> show(ctx, 429, typed, name, w("device.too-soon"));
            case WRONG -> show(ctx, 422, typed, name, w("device.wrong-code"));
            case OVER -> show(ctx, 422, "", name, w("device.code-over"));
        }
    }
}

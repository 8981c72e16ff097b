package tenterbook.web.server;

import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import java.net.URI;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.eclipse.jetty.server.HttpConfiguration;
import tenterbook.archive.Author;
import tenterbook.web.device.NetworkGuard;
import tenterbook.web.device.StudioNetwork;
import tenterbook.web.page.Visitor;
import tenterbook.words.Explained;
import tenterbook.words.Message;
import tenterbook.words.Written;

/**
 * Keeps other web pages out, and decides by the connector: what comes over the studio network is for {@link NetworkGuard}. The
 * server listens on loopback, but a page from elsewhere in the same browser could still
 * reach it; so a request must name a loopback host (against DNS rebinding), and one that changes something must come from
 * our own page.
 */
public final class Guard {
    private static final Set<String> LOOPBACK = Set.of("127.0.0.1", "localhost", "[::1]");
    private static final Set<HandlerType> CHANGING =
            Set.of(HandlerType.POST, HandlerType.PUT, HandlerType.PATCH, HandlerType.DELETE);

    /** What a browser may load: our own files, and nothing inline. */
    static final Map<String, String> HEADERS = Map.of(
            "Content-Security-Policy",
            "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob: data:; font-src 'self'; "
                    + "connect-src 'self'; frame-src 'self'; object-src 'none'; form-action 'self'; base-uri 'none'; "
                    + "frame-ancestors 'self'",
            "X-Content-Type-Options",
            "nosniff",
            "Referrer-Policy",
            "same-origin",
            "Cross-Origin-Opener-Policy",
            "same-origin",
            "Cross-Origin-Resource-Policy",
            "same-origin",
            "Permissions-Policy",
            "geolocation=(), microphone=()");

    /** Marks requests over loopback. A request without it is one of the studio network. */
    private static final String LOOPBACK_CONNECTOR = Guard.class.getName();

    private final StudioNetwork network;
    private final NetworkGuard others;

    Guard(StudioNetwork network) {
        this.network = network;
        this.others = new NetworkGuard(network);
    }

    /** To be set on the connector that listens on loopback alone. */
    static void mark(HttpConfiguration loopback) {
        loopback.addCustomizer((request, headers) -> {
            request.setAttribute(LOOPBACK_CONNECTOR, true);
            return request;
        });
    }

    /** Whether a request may change something. */
    public static boolean changing(Context ctx) {
        return CHANGING.contains(ctx.method());
    }

    void check(Context ctx) {
        HEADERS.forEach(ctx::header);
        if (ctx.req().getAttribute(LOOPBACK_CONNECTOR) == null) {
            String scheme = network.encrypted() ? "https" : "http";
            Message refusal = others.refusal(ctx, changing(ctx), (origin, host) -> ours(scheme, origin, host));
            if (refusal != null) {
                throw new Refused(403, refusal);
            }
            return;
        }
        Author.isTheMaker();
        Visitor.is(network.isOpen() ? Visitor.WATCHING_MAKER : Visitor.MAKER);
        checkLoopback(ctx);
    }

    /** Of a request over loopback: that it names this computer and, where it may change something, comes from our own page. */
    static void checkLoopback(Context ctx) {
        String host = ctx.header("Host");
        if (host == null || !LOOPBACK.contains(withoutPort(host))) {
            throw new Refused(421, Message.of("failure.other-address", "host", String.valueOf(host)));
        }
        if (changing(ctx)) {
            String origin = ctx.header("Origin");
            String site = ctx.header("Sec-Fetch-Site");
            boolean foreign = origin != null
                    ? !ours("http", origin, host)
                    : site != null && !Set.of("same-origin", "none").contains(site);
            if (foreign) {
                throw new Refused(403, Message.of("failure.other-page"));
            }
        }
    }

    private static String withoutPort(String host) {
        return host.toLowerCase(Locale.ROOT).replaceFirst(":\\d+$", "");
    }

    private static boolean ours(String scheme, String origin, String host) {
        try {
            URI uri = URI.create(origin);
            return scheme.equals(uri.getScheme()) && host.equalsIgnoreCase(uri.getAuthority());
        } catch (IllegalArgumentException e) {
            return false;
        }
    }

    /** A request turned away, with its status and a sentence. */
    static final class Refused extends RuntimeException implements Explained {
        private static final long serialVersionUID = 1L;
        private final int status;
        private final transient Written explanation;

        Refused(int status, Written explanation) {
            super(explanation.inEnglish());
            this.status = status;
            this.explanation = explanation;
        }

        @Override
        public Written explanation() {
            return explanation;
        }

        int status() {
            return status;
        }
    }
}

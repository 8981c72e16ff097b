package tenterbook.web.device;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.Handler;
import java.io.IOException;
import java.security.GeneralSecurityException;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.slf4j.LoggerFactory;
import tenterbook.labelling.paper.SquareCode;
import tenterbook.network.Device;
import tenterbook.network.PairingCode;
import tenterbook.network.Rights;
import tenterbook.web.Site;
import tenterbook.web.page.FlashMessage;
import tenterbook.web.page.Html;
import tenterbook.web.page.NotFound;
import tenterbook.web.page.Visitor;
import tenterbook.web.record.Choices;
import tenterbook.words.Message;

/** Opening the studio network, pairing devices and revoking them: on this computer alone. */
public final class DevicePages {
    /** Without any connection for so long, something keeps the device from the computer. */
    static final Duration NOBODY = Duration.ofMinutes(1);

    private static final String PATH = "/studio/devices";

    private final Site site;
    private final StudioNetwork network;

    public DevicePages(Site site, StudioNetwork network) {
        this.site = site;
        this.network = network;
    }

    public void routes(RoutesConfig routes) {
        routes.get(PATH, here(this::show));
        routes.post(PATH + "/open", here(this::open));
        routes.post(PATH + "/close", here(ctx -> {
            network.close();
            FlashMessage.andGo(ctx, w("device.closed"), PATH);
        }));
        routes.post(PATH + "/code", here(this::begin));
        routes.post(PATH + "/code/end", here(ctx -> {
            network.endCode();
            FlashMessage.andGo(ctx, w("device.code-ended"), PATH);
        }));
        routes.get(PATH + "/code", here(this::code));
        routes.post(PATH + "/revoke", here(this::revoke));
        routes.get(PATH + "/authority.crt", here(ctx -> certificate(ctx, network)));
    }

    /** The guard keeps devices away; this holds where it should ever let one through. */
    private static Handler here(Handler handler) {
        return ctx -> {
            if (Visitor.now().onDevice() || Visitor.now().equals(Visitor.STRANGER)) {
                throw new NotFound(Message.of("not-here.page", "path", ctx.path()));
            }
            handler.handle(ctx);
        };
    }

    /**
     * @param fingerprint of the authority's certificate; empty while the network is closed or is not encrypted
     * @param code null where none was begun
     */
    public record DevicesView(
            boolean open,
            boolean encrypted,
            List<String> urls,
            String fingerprint,
            CodeView code,
            List<Device> devices,
            List<Choices.Choice> rights) {}

    /**
     * A code on the screen.
     *
     * @param digits in two groups of four
     * @param url that the square holds, with the code
     * @param square the dark modules as the path of an SVG
     * @param modules across the square, with its blank margin
     * @param state what happened so far, in a sentence
     */
    public record CodeView(String digits, String url, String square, int modules, State state) {
        public boolean going() {
            return state == State.WAITING || state == State.NOBODY || state == State.CONNECTED || state == State.OPENED;
        }
    }

    /** How far the pairing is. */
    public enum State {
        WAITING,
        NOBODY,
        CONNECTED,
        OPENED,
        PAIRED,
        OVER
    }

    private State state(PairingCode code) {
        if (code.used()) {
            return State.PAIRED;
        }
        if (code.over(network.now())) {
            return State.OVER;
        }
        return switch (network.reached()) {
            case PAGE -> State.OPENED;
            case CONNECTION -> State.CONNECTED;
            case NOTHING -> network.now().isBefore(code.begun().plus(NOBODY)) ? State.WAITING : State.NOBODY;
        };
    }

    private CodeView codeView() {
        PairingCode code = network.code();
        List<String> urls = network.urls();
        if (code == null || urls.isEmpty()) {
            return null;
        }
        String url = urls.get(0) + "/pair?code=" + code.digits();
        SquareCode square = new SquareCode(url);
        return new CodeView(
                code.digits().substring(0, 4) + " " + code.digits().substring(4),
                url,
                square.path(),
                square.modulesWithMargin(),
                state(code));
    }

    private void show(Context ctx) throws IOException, GeneralSecurityException {
        DevicesView view = new DevicesView(
                network.isOpen(),
                network.encrypted(),
                network.isOpen() ? network.urls() : List.of(),
                network.isOpen() && network.encrypted() ? network.authority().fingerprint() : "",
                network.isOpen() ? codeView() : null,
                network.devices().all(),
                Stream.of(Rights.values())
                        .map(each -> new Choices.Choice(each.toString(), w(each)))
                        .toList());
        Html.show(ctx, "devices", Map.of("page", site.page(ctx, w("device.title"), "studio"), "view", view));
    }

    private void open(Context ctx) {
        boolean plain = "plain".equals(ctx.formParam("how"));
        if (plain && ctx.formParam("understood") == null) {
            FlashMessage.andGo(ctx, w("device.plain-not-understood"), PATH);
            return;
        }
        try {
            if (plain) {
                network.openPlain(StudioNetwork.USUAL_PORT);
            } else {
                network.openEncrypted(StudioNetwork.USUAL_PORT);
            }
            FlashMessage.andGo(ctx, w("device.opened"), PATH);
        } catch (IOException | GeneralSecurityException e) {
            LoggerFactory.getLogger(DevicePages.class).warn("The studio network was not opened", e);
            FlashMessage.andGo(ctx, w("device.not-opened", "why", String.valueOf(e.getMessage())), PATH);
        }
    }

    private void begin(Context ctx) {
        Rights.of(Objects.requireNonNullElse(ctx.formParam("rights"), ""))
                .filter(rights -> network.isOpen())
                .ifPresentOrElse(
                        rights -> {
                            network.begin(rights);
                            ctx.redirect(PATH + "#code", io.javalin.http.HttpStatus.SEE_OTHER);
                        },
                        () -> FlashMessage.andGo(ctx, w("device.choose-rights"), PATH));
    }

    private void code(Context ctx) {
        CodeView code = codeView();
        if (code == null) {
            ctx.status(204);
        } else {
            Html.show(ctx, "part/pairing", Map.of("code", code));
        }
    }

    private void revoke(Context ctx) throws IOException {
        network.devices().revoke(Objects.requireNonNullElse(ctx.formParam("device"), ""));
        FlashMessage.andGo(ctx, w("device.revoked"), PATH);
    }

    /** In DER, which phones install. */
    static void certificate(Context ctx, StudioNetwork network) throws IOException, GeneralSecurityException {
        ctx.contentType("application/x-x509-ca-cert");
        ctx.header("Content-Disposition", "attachment; filename=\"tenterbook-authority.crt\"");
        ctx.header("Cache-Control", "no-store");
        ctx.result(network.authority().root().getEncoded());
    }
}

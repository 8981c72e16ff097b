package tenterbook.web.device;

import io.javalin.http.Context;
import java.util.Optional;
import java.util.function.BiPredicate;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Author;
import tenterbook.network.Device;
import tenterbook.network.LocalAddresses;
import tenterbook.network.Rights;
import tenterbook.web.page.Visitor;
import tenterbook.words.Message;

/** Decides about a request that did not come over loopback. Everything that is not let in gets one sentence. */
public final class NetworkGuard {
    private final StudioNetwork network;

    public NetworkGuard(StudioNetwork network) {
        this.network = network;
    }

    /**
     * Says who is visiting, and lets in a paired device to what it has the right to, anybody to the page on which one pairs.
     *
     * @param changes whether the request may change something
     * @param ours whether an Origin with a Host is that of our own page
     * @return why it is turned away; null where it is let in
     */
    public @Nullable Message refusal(Context ctx, boolean changes, BiPredicate<String, String> ours) {
        Visitor.is(Visitor.STRANGER);
        Author.isTheMaker();
        if (!LocalAddresses.local(ctx.req().getRemoteAddr())) {
            return Message.of("device.refused.from-outside");
        }
        String host = ctx.header("Host");
        if (host == null || !LocalAddresses.named(host, network.addresses())) {
            return Message.of("device.refused.other-name");
        }
        if (changes && foreign(ctx, host, ours)) {
            return Message.of("failure.other-page");
        }
        network.asked();
        String path = ctx.path();
        Device device = device(ctx).orElse(null);
        if (device == null) {
            return PathRights.stranger(path) ? null : Message.of("device.refused.not-paired");
        }
        network.devices().seen(device, network.now());
        Rights rights = device.rights();
        Visitor.is(new Visitor(device.id(), page -> PathRights.may(rights, "GET", page), false));
        Author.is(device.name());
        return PathRights.may(rights, ctx.method().name(), path)
                ? null
                : Message.of("device.refused.no-right", "rights", rights.word());
    }

    private Optional<Device> device(Context ctx) {
        String token = ctx.cookie(network.cookie());
        return token == null || token.isEmpty()
                ? Optional.empty()
                : network.devices().sending(token, network.encrypted());
    }

    private static boolean foreign(Context ctx, String host, BiPredicate<String, String> ours) {
        String origin = ctx.header("Origin");
        String site = ctx.header("Sec-Fetch-Site");
        return origin != null
                ? !ours.test(origin, host)
                : site != null && !site.equals("same-origin") && !site.equals("none");
    }
}

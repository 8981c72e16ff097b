package tenterbook.web.device;

import java.io.IOException;
import java.net.InetAddress;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Timer;
import java.util.TimerTask;
import org.eclipse.jetty.server.Server;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tenterbook.network.Authority;
import tenterbook.network.Devices;
import tenterbook.network.LocalAddresses;
import tenterbook.network.NetworkFolder;
import tenterbook.network.PairingCode;
import tenterbook.network.Rights;

/**
 * The local network as a way to this program: closed at each start, opened and closed while the server runs. Thread-safe.
 *
 * <p>The addresses of the computer are read anew every quarter of a minute while it is open; where they changed the server gets
 * another certificate.
 */
public final class StudioNetwork implements AutoCloseable {
    public static final int USUAL_PORT = 7118;

    private static final Logger LOG = LoggerFactory.getLogger(StudioNetwork.class);

    private static final Duration LOOK_EVERY = Duration.ofSeconds(15);

    private final NetworkFolder folder;
    private final Clock clock;
    private final Devices devices;
    private @Nullable Server server;
    private volatile @Nullable NetworkConnection connection;
    private volatile boolean encrypted = true;
    private volatile List<InetAddress> addresses = List.of();
    private volatile @Nullable PairingCode code;
    private volatile Instant reached = Instant.MIN;
    private volatile Instant asked = Instant.MIN;
    private @Nullable Timer looking;

    private StudioNetwork(NetworkFolder folder, Clock clock, Devices devices) {
        this.folder = folder;
        this.clock = clock;
        this.devices = devices;
    }

    /** @param archive its folder; a list of devices that cannot be read lets none in */
    public static StudioNetwork of(Path archive, Clock clock) {
        NetworkFolder folder = new NetworkFolder(archive);
        try {
            return new StudioNetwork(folder, clock, Devices.in(folder));
        } catch (IOException e) {
            LOG.warn("The list of paired devices cannot be read; none is let in", e);
            return new StudioNetwork(folder, clock, Devices.none(folder));
        }
    }

    /** Before it can be opened: the server that then answers. */
    public synchronized void answeredBy(Server running) {
        server = running;
    }

    /** @param port the next free one from here on; 0 for any */
    public synchronized void openEncrypted(int port) throws IOException, GeneralSecurityException {
        List<InetAddress> present = LocalAddresses.present();
        open(present, authority().server(present, now()), port);
    }

    /** Everybody on the network can then read along, the cookies of the devices too. */
    public synchronized void openPlain(int port) throws IOException {
        open(LocalAddresses.present(), null, port);
    }

    private void open(List<InetAddress> present, @Nullable KeyStore keys, int port) throws IOException {
        if (server == null) {
            throw new IllegalStateException("No server answers yet");
        }
        close();
        addresses = present;
        encrypted = keys != null;
        connection = NetworkConnection.open(server, keys, port, () -> reached = now());
        Timer timer = new Timer("addresses", true);
        timer.schedule(
                new TimerTask() {
                    @Override
                    public void run() {
                        look();
                    }
                },
                LOOK_EVERY.toMillis(),
                LOOK_EVERY.toMillis());
        looking = timer;
    }

    /** Whether the addresses are others now. */
    private synchronized void look() {
        NetworkConnection open = connection;
        if (open == null) {
            return;
        }
        try {
            List<InetAddress> present = LocalAddresses.present();
            if (!present.equals(addresses)) {
                if (encrypted) {
                    open.renew(authority().server(present, now()));
                }
                addresses = present;
            }
        } catch (IOException | GeneralSecurityException e) {
            LOG.warn("The addresses of this computer were not read anew", e);
        }
    }

    /** Connections that are open end; paired devices stay paired. */
    @Override
    public synchronized void close() throws IOException {
        if (looking != null) {
            looking.cancel();
            looking = null;
        }
        NetworkConnection open = connection;
        code = null;
        if (open != null) {
            connection = null;
            devices.keep(now());
            open.close();
        }
    }

    public boolean isOpen() {
        return connection != null;
    }

    /** 0 while it is closed. */
    public int port() {
        NetworkConnection open = connection;
        return open == null ? 0 : open.port();
    }

    public boolean encrypted() {
        return encrypted;
    }

    /** The prefix has browsers refuse a cookie of this name that is not Secure or not of this host alone (RFC 6265bis). */
    String cookie() {
        return encrypted ? "__Host-device" : "device";
    }

    /** Of this computer, when last looked at. */
    List<InetAddress> addresses() {
        return addresses;
    }

    /** Where another device reaches the program, the likeliest first; this computer's own loopback where it has no other. */
    public List<String> urls() {
        List<InetAddress> known = addresses;
        List<InetAddress> others =
                known.stream().filter(each -> !each.isLoopbackAddress()).toList();
        return (others.isEmpty() ? known : others)
                .stream()
                        .filter(each ->
                                !each.isLinkLocalAddress() || others.stream().allMatch(InetAddress::isLinkLocalAddress))
                        .map(each -> (encrypted ? "https://" : "http://") + LocalAddresses.inUrl(each) + ":" + port())
                        .toList();
    }

    Authority authority() throws IOException, GeneralSecurityException {
        return Authority.of(folder, now());
    }

    Devices devices() {
        return devices;
    }

    Instant now() {
        return clock.instant();
    }

    PairingCode begin(Rights rights) {
        PairingCode begun = PairingCode.begin(rights, now());
        reached = Instant.MIN;
        asked = Instant.MIN;
        code = begun;
        return begun;
    }

    void endCode() {
        code = null;
    }

    /** The one that was begun last, which may be over. */
    @Nullable
    PairingCode code() {
        return code;
    }

    /** A device asked for a page. */
    void asked() {
        asked = now();
    }

    /** How far a device came since the code was begun. */
    enum Reached {
        NOTHING,
        CONNECTION,
        PAGE
    }

    Reached reached() {
        return asked.isAfter(Instant.MIN)
                ? Reached.PAGE
                : reached.isAfter(Instant.MIN) ? Reached.CONNECTION : Reached.NOTHING;
    }
}

package tenterbook.network;

import java.net.Inet4Address;
import java.net.Inet6Address;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.net.UnknownHostException;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * Addresses of the local network: private ones (RFC 1918, RFC 4193), link-local ones (RFC 3927, RFC 4291) and loopback. An address
 * that the whole internet can reach is none.
 */
public final class LocalAddresses {
    /** As in a certificate. */
    static final List<String> RANGES = List.of(
            "10.0.0.0/8",
            "172.16.0.0/12",
            "192.168.0.0/16",
            "169.254.0.0/16",
            "127.0.0.0/8",
            "fc00::/7",
            "fe80::/10",
            "::1/128");

    private static final Pattern HOST =
            Pattern.compile("(?:\\d{1,3}(?:\\.\\d{1,3}){3}|\\[[0-9a-f:.]+\\])(?::\\d{1,5})?");

    private LocalAddresses() {}

    public static boolean local(InetAddress address) {
        boolean uniqueLocal = address instanceof Inet6Address && (address.getAddress()[0] & 0xfe) == 0xfc;
        return address.isLoopbackAddress()
                || address.isLinkLocalAddress()
                || uniqueLocal
                || address instanceof Inet4Address && address.isSiteLocalAddress();
    }

    /** This computer's own at this moment, loopback among them; those first that another device can most likely use. */
    public static List<InetAddress> present() throws SocketException {
        return Collections.list(NetworkInterface.getNetworkInterfaces()).stream()
                .flatMap(NetworkInterface::inetAddresses)
                .filter(LocalAddresses::local)
                .sorted(Comparator.comparingInt(LocalAddresses::order).thenComparing(InetAddress::getHostAddress))
                .toList();
    }

    private static int order(InetAddress address) {
        return address.isLoopbackAddress()
                ? 3
                : address.isLinkLocalAddress() ? 2 : address instanceof Inet6Address ? 1 : 0;
    }

    /** Without the interface that Java adds to some. */
    static String text(InetAddress address) {
        return address.getHostAddress().replaceFirst("%.*$", "").toLowerCase(Locale.ROOT);
    }

    /** As it stands in an address of a page. */
    public static String inUrl(InetAddress address) {
        return address instanceof Inet6Address ? "[" + text(address) + "]" : text(address);
    }

    /** Whether the Host of a request is one of these addresses. A name is none, so no name server is asked. */
    public static boolean named(String host, Collection<InetAddress> addresses) {
        String lower = host.toLowerCase(Locale.ROOT);
        if (!HOST.matcher(lower).matches()) {
            return false;
        }
        String address = lower.startsWith("[") ? lower.replaceFirst("\\].*$", "]") : lower.replaceFirst(":.*$", "");
        try {
            String asked = text(InetAddress.getByName(address));
            return addresses.stream().anyMatch(each -> text(each).equals(asked));
        } catch (UnknownHostException e) {
            return false;
        }
    }

    /** Whether a request from this address comes from the local network or this computer. */
    public static boolean local(String remote) {
        try {
            return local(InetAddress.getByName(remote));
        } catch (UnknownHostException e) {
            return false;
        }
    }
}

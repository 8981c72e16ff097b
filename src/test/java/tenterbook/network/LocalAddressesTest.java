package tenterbook.network;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The ranges are those of RFC 1918 (3), RFC 3927, RFC 4193 and RFC 4291, at their ends. */
class LocalAddressesTest {
    @ParameterizedTest
    @ValueSource(
            strings = {
                "10.0.0.1",
                "10.255.255.255",
                "172.16.0.0",
                "172.31.255.255",
                "192.168.0.1",
                "169.254.7.7",
                "127.0.0.1",
                "fc00::1",
                "fdff::1",
                "fe80::1",
                "febf::1",
                "::1"
            })
    void addressesOfTheLocalNetworkAreLocal(String address) {
        assertThat(LocalAddresses.local(address)).isTrue();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "9.255.255.255",
                "11.0.0.1",
                "172.15.255.255",
                "172.32.0.0",
                "192.167.255.255",
                "192.169.0.0",
                "169.253.0.1",
                "8.8.8.8",
                "0.0.0.0",
                "2001:db8::1",
                "fbff::1",
                "fec0::1",
                "::ffff:8.8.8.8"
            })
    void allOthersAreNot(String address) {
        assertThat(LocalAddresses.local(address)).isFalse();
    }

    @Test
    void aHostIsOneOfTheAddressesAndNeverAName() throws UnknownHostException {
        List<InetAddress> ours = List.of(InetAddress.getByName("192.168.1.5"), InetAddress.getByName("fe80::1:2"));
        for (String host : List.of("192.168.1.5", "192.168.1.5:7118", "[fe80::1:2]:7118", "[FE80::0001:2]")) {
            assertThat(LocalAddresses.named(host, ours)).as(host).isTrue();
        }
        for (String host : List.of(
                "192.168.1.6",
                "192.168.1.5.evil.example",
                "evil.example",
                "localhost",
                "3232235781",
                "192.168.261",
                "0300.0250.1.5",
                "[fe80::1:3]",
                "fe80::1:2",
                "192.168.1.5:7118@evil.example",
                "")) {
            assertThat(LocalAddresses.named(host, ours)).as(host).isFalse();
        }
    }
}

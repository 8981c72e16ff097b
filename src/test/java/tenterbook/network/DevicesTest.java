package tenterbook.network;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DevicesTest {
    private static final Instant NOW = Instant.parse("2024-09-30T16:20:00Z");

    @TempDir
    Path archive;

    @Test
    void aDeviceIsKnownByWhatItSendsUntilItIsRevokedAndTheFileDoesNotHoldThat() throws IOException {
        NetworkFolder folder = new NetworkFolder(archive);
        Devices devices = Devices.in(folder);
        String token = devices.pair("Tomé’s phone", Rights.LOOK, true, NOW);
        String other = devices.pair("tablet", Rights.EVERYTHING, true, NOW);
        assertThat(token).matches("[0-9a-f]{64}").isNotEqualTo(other);
        assertThat(Files.readString(archive.resolve("network/devices.json"))).doesNotContain(token, other);

        Devices again = Devices.in(folder);
        Device phone = again.sending(token, true).orElseThrow();
        assertThat(phone.name()).isEqualTo("Tomé’s phone");
        assertThat(phone.rights()).isEqualTo(Rights.LOOK);
        assertThat(again.sending(token, false))
                .as("over a connection of another kind")
                .isEmpty();
        assertThat(again.sending(phone.tokenDigest(), true)).as("its digest").isEmpty();

        again.seen(phone, NOW.plusSeconds(60));
        again.keep(NOW.plusSeconds(60));
        again.revoke(again.sending(other, true).orElseThrow().id());
        assertThat(again.sending(other, true)).isEmpty();
        assertThat(Devices.in(folder).all())
                .singleElement()
                .extracting(Device::lastSeen)
                .isEqualTo(NOW.plusSeconds(60));
    }
}

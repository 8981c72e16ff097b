package tenterbook.network;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import org.slf4j.LoggerFactory;

/** The paired devices, in the file {@code devices.json}. Thread-safe. */
public final class Devices {
    private static final String FILE = "devices.json";
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final SecureRandom RANDOM = new SecureRandom();
    private static final HexFormat HEX = HexFormat.of();

    /** When a device was last seen is written no more often. */
    private static final Duration WRITTEN_EVERY = Duration.ofHours(1);

    private final NetworkFolder folder;
    private List<Device> devices = List.of();
    private Instant written = Instant.EPOCH;

    private Devices(NetworkFolder folder) {
        this.folder = folder;
    }

    /** @throws IOException where the file is there and cannot be read; no device is then known */
    public static Devices in(NetworkFolder folder) throws IOException {
        Devices devices = new Devices(folder);
        Optional<byte[]> bytes = folder.read(FILE);
        if (bytes.isPresent()) {
            devices.devices = read(JSON.readTree(bytes.get()));
        }
        return devices;
    }

    /** Where the list cannot be read; the next one to be paired begins a new one. */
    public static Devices none(NetworkFolder folder) {
        return new Devices(folder);
    }

    public synchronized List<Device> all() {
        return devices;
    }

    /** What a new device sends from now on; only its digest is kept. */
    public synchronized String pair(String name, Rights rights, boolean encrypted, Instant now) throws IOException {
        byte[] secret = new byte[32];
        RANDOM.nextBytes(secret);
        byte[] id = new byte[6];
        RANDOM.nextBytes(id);
        String token = HEX.formatHex(secret);
        List<Device> more = new ArrayList<>(devices);
        more.add(new Device(HEX.formatHex(id), name, rights, digest(token), encrypted, now, now));
        write(more);
        return token;
    }

    /** The device that sends this, over a connection of the kind it was paired over. */
    public synchronized Optional<Device> sending(String token, boolean encrypted) {
        byte[] digest = digest(token).getBytes(StandardCharsets.US_ASCII);
        return devices.stream()
                .filter(each -> each.encrypted() == encrypted
                        && MessageDigest.isEqual(digest, each.tokenDigest().getBytes(StandardCharsets.US_ASCII)))
                .findFirst();
    }

    /** Notes that the device was there; written once an hour, since each request is one. */
    public synchronized void seen(Device device, Instant now) {
        devices = devices.stream()
                .map(each -> each.id().equals(device.id()) ? each.seen(now) : each)
                .toList();
        if (written.plus(WRITTEN_EVERY).isBefore(now)) {
            keep(now);
        }
    }

    /** Writes when each was last seen. A disk that does not take it is only logged: nothing depends on it. */
    public synchronized void keep(Instant now) {
        written = now;
        try {
            write(devices);
        } catch (IOException e) {
            LoggerFactory.getLogger(Devices.class).warn("When a device was last seen was not written", e);
        }
    }

    /** From now on it is a stranger. */
    public synchronized void revoke(String id) throws IOException {
        write(devices.stream().filter(each -> !each.id().equals(id)).toList());
    }

    private void write(List<Device> after) throws IOException {
        ArrayNode list = JSON.createArrayNode();
        for (Device each : after) {
            list.addObject()
                    .put("id", each.id())
                    .put("name", each.name())
                    .put("rights", each.rights().toString())
                    .put("tokenDigest", each.tokenDigest())
                    .put("encrypted", each.encrypted())
                    .put("paired", each.paired().toString())
                    .put("lastSeen", each.lastSeen().toString());
        }
        folder.write(FILE, JSON.writerWithDefaultPrettyPrinter().writeValueAsBytes(list));
        devices = List.copyOf(after);
    }

    private static List<Device> read(JsonNode list) throws IOException {
        List<Device> read = new ArrayList<>();
        try {
            for (JsonNode each : list) {
                read.add(new Device(
                        each.required("id").textValue(),
                        each.required("name").textValue(),
                        Rights.of(each.required("rights").textValue()).orElseThrow(),
                        each.required("tokenDigest").textValue(),
                        each.required("encrypted").booleanValue(),
                        Instant.parse(each.required("paired").textValue()),
                        Instant.parse(each.required("lastSeen").textValue())));
            }
        } catch (IllegalArgumentException | DateTimeException | java.util.NoSuchElementException e) {
            throw new IOException(FILE, e);
        }
        return List.copyOf(read);
    }

    private static String digest(String token) {
        try {
            return HEX.formatHex(Authority.digest(token.getBytes(StandardCharsets.UTF_8)));
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("Every Java has SHA-256", e);
        }
    }
}

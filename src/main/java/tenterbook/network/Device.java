package tenterbook.network;

import java.time.Instant;

/**
 * A paired device.
 *
 * @param id short and without meaning; not a secret
 * @param name given on the device; the author of what is written from it
 * @param tokenDigest SHA-256 of what the device sends with each request, in hexadecimal
 * @param encrypted whether it was paired over the encrypted connection; it may use the other kind never
 */
public record Device(
        String id,
        String name,
        Rights rights,
        String tokenDigest,
        boolean encrypted,
        Instant paired,
        Instant lastSeen) {
    Device seen(Instant at) {
        return new Device(id, name, rights, tokenDigest, encrypted, paired, at);
    }
}

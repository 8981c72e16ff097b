package tenterbook.exchange.bag;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Collection;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Several checksums of one file from one reading.
 *
 * @param bytes length of the file
 * @param hex lower-case hexadecimal by the bag's name of the algorithm, as in {@code sha512}
 */
public record Sums(long bytes, Map<String, String> hex) {
    private static final int CHUNK = 1 << 18;

    /** Java's name for a bag's algorithm; the bag's name is lower case without punctuation (RFC 8493, 2.4). */
    static final Map<String, String> KNOWN = Map.of(
            "md5", "MD5",
            "sha1", "SHA-1",
            "sha224", "SHA-224",
            "sha256", "SHA-256",
            "sha384", "SHA-384",
            "sha512", "SHA-512",
            "sha3256", "SHA3-256",
            "sha3512", "SHA3-512");

    public Sums {
        hex = Map.copyOf(hex);
    }

    static String plain(String algorithm) {
        return algorithm.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]", "");
    }

    /** Reads a file without keeping it. */
    public static Sums of(Path file, Collection<String> algorithms, Pace pace) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            return of(in, OutputStream.nullOutputStream(), algorithms, pace);
        }
    }

    /** Copies a file into a new one, synced. */
    public static void copy(Path from, Path to, Pace pace) throws IOException {
        copying(from, to, List.of(), pace);
    }

    /** Copies a file into a new one, synced, and sums what was read. */
    static Sums copying(Path from, Path to, Collection<String> algorithms, Pace pace) throws IOException {
        try (InputStream in = Files.newInputStream(from);
                FileChannel out = FileChannel.open(to, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
            Sums sums = of(in, Channels.newOutputStream(out), algorithms, pace);
            out.force(true);
            return sums;
        }
    }

    /**
     * Reads a stream to its end into another, and sums what was read; closes neither.
     *
     * @param to {@link OutputStream#nullOutputStream} where only the sums are wanted
     */
    public static Sums of(InputStream in, OutputStream to, Collection<String> algorithms, Pace pace)
            throws IOException {
        Map<String, MessageDigest> digests = new LinkedHashMap<>();
        algorithms.forEach(name -> digests.put(name, digest(name)));
        byte[] buffer = new byte[CHUNK];
        long bytes = 0;
        for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
            for (MessageDigest digest : digests.values()) {
                digest.update(buffer, 0, read);
            }
            to.write(buffer, 0, read);
            bytes += read;
            pace.passed(read);
        }
        Map<String, String> hex = new LinkedHashMap<>();
        digests.forEach((name, digest) -> hex.put(name, HexFormat.of().formatHex(digest.digest())));
        return new Sums(bytes, hex);
    }

    private static MessageDigest digest(String name) {
        try {
            return MessageDigest.getInstance(KNOWN.get(name));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("This Java has no " + KNOWN.get(name), e);
        }
    }
}

package tenterbook.measure;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.regex.Pattern;
import tenterbook.words.Refusal;

/**
 * A SHA-256 digest (FIPS 180-4), which names a photograph, a stored file or a revision; not an {@link Identifier}, so that it
 * cannot be passed as one.
 *
 * @param hex 64 lower-case hexadecimal digits
 */
public record Digest(String hex) implements Comparable<Digest> {
    private static final Pattern FORM = Pattern.compile("[0-9a-f]{64}");

    /** @throws Refusal if {@code hex} is not 64 lower-case hexadecimal digits */
    public Digest {
        if (hex == null || !FORM.matcher(hex).matches()) {
            throw Refusal.of("measure.digest", "found", String.valueOf(hex));
        }
    }

    public static Digest of(byte[] bytes) {
        return new Digest(HexFormat.of().formatHex(sha256().digest(bytes)));
    }

    /** The digest held by a finished {@link MessageDigest}; the message digest is reset. */
    public static Digest of(MessageDigest finished) {
        return new Digest(HexFormat.of().formatHex(finished.digest()));
    }

    /** A new SHA-256; every Java platform has one. */
    public static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("This Java has no SHA-256, which every Java must have", e);
        }
    }

    /** The first ten digits, enough to distinguish two on a page. */
    public String brief() {
        return hex.substring(0, 10);
    }

    @Override
    public int compareTo(Digest other) {
        return hex.compareTo(other.hex);
    }

    @Override
    public String toString() {
        return hex;
    }
}

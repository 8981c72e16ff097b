package tenterbook.imaging.file;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;

/** The accepted picture formats, recognised by a file's first bytes and never by its name. */
public enum MediaType {
    JPEG("image/jpeg", "jpg", true),
    PNG("image/png", "png", true),
    TIFF("image/tiff", "tif", true),
    WEBP("image/webp", "webp", true),
    /** Kept, and its metadata read; shown where a decoder is installed on the computer. */
    HEIC("image/heic", "heic", false),
    /** Kept like {@link #HEIC}. */
    AVIF("image/avif", "avif", false);

    /** Bytes from the start that suffice to recognise a format. */
    public static final int HEAD = 64;

    private static final int[] BIG_LITTLE = {'I', 'I', 43, 0, 8, 0};
    private static final int[] BIG_BIG = {'M', 'M', 0, 43, 0, 8};

    private final String mime;
    private final String extension;
    private final boolean decodable;

    MediaType(String mime, String extension, boolean decodable) {
        this.mime = mime;
        this.extension = extension;
        this.decodable = decodable;
    }

    /** The registered name, such as {@code image/jpeg}. */
    public String mime() {
        return mime;
    }

    /** The extension that originals of this kind are kept under, without the dot. */
    public String extension() {
        return extension;
    }

    /** Whether this program decodes pictures of this kind itself. */
    public boolean decodable() {
        return decodable;
    }

    /**
     * The kind of picture that starts with these bytes; empty for anything else.
     *
     * @see "ITU-T T.81 (JPEG), ISO/IEC 15948 (PNG), TIFF 6.0 and BigTIFF (version 43, offsets of 8 bytes), RFC 9649 (WebP), ISO/IEC 23008-12 (HEIF brands)"
     */
    public static Optional<MediaType> of(byte[] head) {
        if (starts(head, 0xff, 0xd8, 0xff)) {
            return Optional.of(JPEG);
        }
        if (starts(head, 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n')) {
            return Optional.of(PNG);
        }
        if (starts(head, 'I', 'I', 42, 0)
                || starts(head, 'M', 'M', 0, 42)
                || starts(head, BIG_LITTLE)
                || starts(head, BIG_BIG)) {
            return Optional.of(TIFF);
        }
        if (ascii(head, 0).equals("RIFF") && ascii(head, 8).equals("WEBP")) {
            return Optional.of(WEBP);
        }
        return ascii(head, 4).equals("ftyp") ? byBrand(head) : Optional.empty();
    }

    /** The same of a file. */
    public static Optional<MediaType> of(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            return of(in.readNBytes(HEAD));
        }
    }

    /** The major brand stands at byte 8, the compatible ones from byte 16 to the end of the box. */
    private static Optional<MediaType> byBrand(byte[] head) {
        boolean heif = false;
        int end = Math.min(head.length, (head[2] & 0xff) << 8 | head[3] & 0xff);
        for (int at = 8; at + 4 <= end; at += at == 8 ? 8 : 4) {
            switch (ascii(head, at)) {
                case "avif", "avis" -> {
                    return Optional.of(AVIF);
                }
                case "heic", "heix", "heim", "heis", "hevc", "hevx", "mif1", "msf1" -> heif = true;
                default -> {}
            }
        }
        return heif ? Optional.of(HEIC) : Optional.empty();
    }

    private static boolean starts(byte[] head, int... bytes) {
        if (head.length < bytes.length) {
            return false;
        }
        for (int i = 0; i < bytes.length; i++) {
            if ((head[i] & 0xff) != bytes[i]) {
                return false;
            }
        }
        return true;
    }

    private static String ascii(byte[] head, int at) {
        return at + 4 > head.length
                ? ""
                : new String(Arrays.copyOfRange(head, at, at + 4), StandardCharsets.ISO_8859_1);
    }
}

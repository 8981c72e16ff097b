package tenterbook.exchange;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;

/**
 * Makes bags by hand, and makes them bad. Written from RFC 8493 without the classes under test, so that a mistake in
 * those is not made twice.
 */
public final class BadBag {
    private final Path folder;

    public BadBag(Path folder) {
        this.folder = folder;
    }

    /** A small good bag, version 1.0, with two files and SHA-256 and SHA-512 manifests. */
    public static BadBag good(Path folder) throws IOException {
        BadBag bag = new BadBag(folder);
        Files.createDirectories(folder.resolve("data/woad"));
        bag.write("bagit.txt", "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n");
        bag.write("bag-info.txt", "Source-Organization: Oficina Valderim\nPayload-Oxum: 11.2\n");
        bag.write("data/dips.txt", "6 dips");
        bag.write("data/woad/vat.txt", "pH 10");
        return bag.manifests();
    }

    public Path folder() {
        return folder;
    }

    public BadBag write(String path, String text) throws IOException {
        Files.writeString(folder.resolve(path), text);
        return this;
    }

    public BadBag append(String path, String text) throws IOException {
        return write(path, Files.readString(folder.resolve(path)) + text);
    }

    public BadBag replace(String path, String from, String to) throws IOException {
        String text = Files.readString(folder.resolve(path));
        if (!text.contains(from)) {
            throw new IllegalArgumentException(path + " has no " + from);
        }
        return write(path, text.replace(from, to));
    }

    public BadBag delete(String path) throws IOException {
        Files.delete(folder.resolve(path));
        return this;
    }

    public BadBag flipBit(String path) throws IOException {
        byte[] bytes = Files.readAllBytes(folder.resolve(path));
        bytes[bytes.length / 2] ^= 1;
        Files.write(folder.resolve(path), bytes);
        return this;
    }

    /** Writes both payload manifests and both tag manifests anew, so that they agree with what is there. */
    public BadBag manifests() throws IOException {
        for (String algorithm : List.of("sha256", "sha512")) {
            write("manifest-" + algorithm + ".txt", listing(algorithm, "data"));
        }
        return tagManifests();
    }

    public BadBag tagManifests() throws IOException {
        for (String algorithm : List.of("sha256", "sha512")) {
            StringBuilder text = new StringBuilder();
            try (Stream<Path> files = Files.list(folder)) {
                for (Path file : files.filter(Files::isRegularFile).sorted().toList()) {
                    String name = file.getFileName().toString();
                    if (!name.startsWith("tagmanifest")) {
                        text.append(sum(algorithm, name))
                                .append("  ")
                                .append(name)
                                .append('\n');
                    }
                }
            }
            write("tagmanifest-" + algorithm + ".txt", text.toString());
        }
        return this;
    }

    private String listing(String algorithm, String under) throws IOException {
        StringBuilder text = new StringBuilder();
        try (Stream<Path> files = Files.walk(folder.resolve(under))) {
            for (Path file : files.filter(Files::isRegularFile).sorted().toList()) {
                String name = folder.relativize(file).toString();
                String encoded = name.replace("%", "%25").replace("\n", "%0A").replace("\r", "%0D");
                text.append(sum(algorithm, name)).append("  ").append(encoded).append('\n');
            }
        }
        return text.toString();
    }

    public String sum(String algorithm, String path) throws IOException {
        String name = algorithm.equals("md5") ? "MD5" : algorithm.replace("sha", "SHA-");
        try {
            return HexFormat.of()
                    .formatHex(MessageDigest.getInstance(name).digest(Files.readAllBytes(folder.resolve(path))));
        } catch (java.security.NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    public byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}

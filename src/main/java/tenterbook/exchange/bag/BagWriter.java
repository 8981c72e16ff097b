package tenterbook.exchange.bag;

import gov.loc.repository.bagit.domain.Manifest;
import gov.loc.repository.bagit.domain.Metadata;
import gov.loc.repository.bagit.domain.Version;
import gov.loc.repository.bagit.hash.StandardSupportedAlgorithms;
import gov.loc.repository.bagit.hash.SupportedAlgorithm;
import gov.loc.repository.bagit.writer.BagitFileWriter;
import gov.loc.repository.bagit.writer.ManifestWriter;
import gov.loc.repository.bagit.writer.MetadataWriter;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import tenterbook.ledger.file.Progress;

/**
 * Fills a new folder as a BagIt 1.0 bag with SHA-256 and SHA-512 manifests. The tag files are written by the BagIt
 * library; the checksums are taken here, both in the one reading that also copies.
 */
public final class BagWriter {
    private static final Map<String, SupportedAlgorithm> ALGORITHMS =
            Map.of("sha256", StandardSupportedAlgorithms.SHA256, "sha512", StandardSupportedAlgorithms.SHA512);
    private static final Version VERSION = new Version(1, 0);

    private final Path root;
    private final Map<String, Sums> payload = new TreeMap<>();

    /** @param root an empty folder */
    public BagWriter(Path root) throws IOException {
        this.root = root;
        Files.createDirectory(root.resolve("data"));
    }

    /** Where a payload file is to be written by the caller, who then calls {@link #written}. */
    public Path place(String path) throws IOException {
        Path file = root.resolve("data").resolve(path);
        Files.createDirectories(file.getParent());
        return file;
    }

    /** Takes in a file that the caller has written and closed. */
    public void written(String path, Pace pace) throws IOException {
        Path file = place(path);
        sync(file);
        payload.put(path, Sums.of(file, ALGORITHMS.keySet(), pace));
    }

    /** Copies a file in; the answer holds its {@code sha256}. */
    public Sums copy(Path from, String path, Pace pace) throws IOException {
        Sums sums = Sums.copying(from, place(path), ALGORITHMS.keySet(), pace);
        payload.put(path, sums);
        return sums;
    }

    /** Takes a payload file out again. */
    public void remove(String path) throws IOException {
        Files.delete(place(path));
        payload.remove(path);
    }

    public long files() {
        return payload.size();
    }

    public long bytes() {
        return payload.values().stream().mapToLong(Sums::bytes).sum();
    }

    /**
     * Writes the tag files. {@code Payload-Oxum} is added.
     *
     * @param info labels and values in order; a value is one line
     */
    public void finish(List<Map.Entry<String, String>> info) throws IOException {
        BagitFileWriter.writeBagitFile(VERSION, StandardCharsets.UTF_8, root);
        Metadata metadata = new Metadata();
        info.forEach(entry -> metadata.add(entry.getKey(), oneLine(entry.getValue())));
        metadata.add("Payload-Oxum", bytes() + "." + files());
        MetadataWriter.writeBagMetadata(metadata, VERSION, root, StandardCharsets.UTF_8);
        Map<Path, Sums> data = new TreeMap<>();
        payload.forEach((path, sums) -> data.put(root.resolve("data").resolve(path), sums));
        ManifestWriter.writePayloadManifests(manifests(data), root, root, StandardCharsets.UTF_8);
        Map<Path, Sums> tags = new TreeMap<>();
        try (Stream<Path> files = Files.list(root)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                tags.put(file, Sums.of(file, ALGORITHMS.keySet(), new Pace(Progress.UNWATCHED, 0)));
            }
        }
        ManifestWriter.writeTagManifests(manifests(tags), root, root, StandardCharsets.UTF_8);
        try (Stream<Path> files = Files.list(root)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                sync(file);
            }
        }
    }

    private static Set<Manifest> manifests(Map<Path, Sums> files) {
        Set<Manifest> manifests = new LinkedHashSet<>();
        ALGORITHMS.forEach((name, algorithm) -> {
            Map<Path, String> sums = new TreeMap<>();
            files.forEach((file, found) -> sums.put(file, found.hex().get(name)));
            Manifest manifest = new Manifest(algorithm);
            manifest.setFileToChecksumMap(sums);
            manifests.add(manifest);
        });
        return manifests;
    }

    private static String oneLine(String value) {
        return value.replaceAll("[\\p{Cntrl}\\u2028\\u2029]+", " ").strip();
    }

    private static void sync(Path file) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
            channel.force(true);
        }
    }
}

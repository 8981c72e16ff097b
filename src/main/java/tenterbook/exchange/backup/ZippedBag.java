package tenterbook.exchange.backup;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import tenterbook.exchange.bag.Pace;
import tenterbook.exchange.bag.Sums;
import tenterbook.exchange.openpgp.MessageDamaged;

/** A bag as one ZIP file. */
final class ZippedBag {
    private ZippedBag() {}

    /** @param out stays open */
    static void write(Path bag, OutputStream out, Pace pace) throws IOException {
        List<Path> files;
        try (Stream<Path> all = Files.walk(bag)) {
            files = all.filter(Files::isRegularFile).sorted().toList();
        }
        ZipOutputStream zip = new ZipOutputStream(out);
        for (Path file : files) {
            zip.putNextEntry(new ZipEntry(bag.relativize(file).toString().replace('\\', '/')));
            try (InputStream in = Files.newInputStream(file)) {
                Sums.of(in, zip, List.of(), pace);
            }
            zip.closeEntry();
        }
        zip.finish();
    }

    /**
     * Unpacks one; where the bag is whole is for its own check to say.
     *
     * @param to an empty folder
     * @throws MessageDamaged if it is no ZIP file, or would write outside the folder
     */
    static void read(InputStream in, Path to, Pace pace) throws IOException {
        Path folder = to.toAbsolutePath().normalize();
        try {
            ZipInputStream zip = new ZipInputStream(in);
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                Path file = folder.resolve(entry.getName()).normalize();
                if (entry.isDirectory() || file.equals(folder) || !file.startsWith(folder)) {
                    throw new MessageDamaged(null);
                }
                Files.createDirectories(file.getParent());
                try (OutputStream out = Files.newOutputStream(file)) {
                    Sums.of(zip, out, List.of(), pace);
                }
            }
        } catch (ZipException | IllegalArgumentException e) {
            throw new MessageDamaged(e);
        }
    }
}

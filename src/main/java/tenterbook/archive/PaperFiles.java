package tenterbook.archive;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import tenterbook.ledger.ArchiveProblem;
import tenterbook.ledger.HashedFiles;
import tenterbook.measure.Digest;
import tenterbook.words.Message;

/** The PDF files of issued papers: {@code papers/ab/abcd….pdf}. The folder is made when the first is stored. */
public final class PaperFiles {
    private static final String EXTENSION = "pdf";

    private final Path folder;
    private HashedFiles files;

    PaperFiles(Path folder) {
        this.folder = folder;
    }

    /** Synced into place when this returns, so that a record may name it. */
    public IssuedPaper.Pdf store(byte[] pdf) throws IOException {
        Digest digest = Digest.of(pdf);
        HashedFiles open = opened();
        Path part = open.arriving();
        try {
            try (FileChannel out = FileChannel.open(part, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
                ByteBuffer bytes = ByteBuffer.wrap(pdf);
                while (bytes.hasRemaining()) {
                    out.write(bytes);
                }
                out.force(true);
            }
            open.place(part, digest, EXTENSION);
            return new IssuedPaper.Pdf(digest, pdf.length);
        } finally {
            Files.deleteIfExists(part);
        }
    }

    /** Once, since opening clears what is on its way in. */
    private synchronized HashedFiles opened() throws IOException {
        if (files == null) {
            files = new HashedFiles(folder);
        }
        return files;
    }

    /** @throws ArchiveProblem where it is missing or is no longer the file that was stored */
    public byte[] read(IssuedPaper.Pdf pdf) throws IOException {
        String name = pdf.digest().hex();
        String found;
        try {
            byte[] bytes = Files.readAllBytes(HashedFiles.path(folder, pdf.digest(), EXTENSION));
            if (Digest.of(bytes).equals(pdf.digest())) {
                return bytes;
            }
            found = "changed";
        } catch (NoSuchFileException e) {
            found = "missing";
        }
        throw new ArchiveProblem(
                Message.of("archive.paper-not-sent", "start", name.substring(0, 2), "name", name, "found", found));
    }
}

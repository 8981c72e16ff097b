package tenterbook.archive;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.HashedFiles;
import tenterbook.measure.Digest;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** The PDF files of issued papers: {@code papers/ab/abcd….pdf}. The folder is made when the first is stored. */
public final class PaperFiles {
    private static final String EXTENSION = "pdf";

    private final Path folder;
    private HashedFiles files;

    PaperFiles(Path folder) {
        this.folder = folder;
    }

    /** Stores a file; it is synced when this returns, so that a record may refer to it. */
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

    /** Opened once, since opening deletes part files. */
    private synchronized HashedFiles opened() throws IOException {
        if (files == null) {
            files = new HashedFiles(folder);
        }
        return files;
    }

    /** @throws ArchiveProblem where it is missing or is no longer the file that was stored */
    public byte[] read(IssuedPaper.Pdf pdf) throws IOException {
        String name = pdf.digest().hex();
        Path file = HashedFiles.path(folder, pdf.digest(), EXTENSION);
        String found;
        try {
            if (Files.isDirectory(file)) {
                throw new NoSuchFileException(file.toString());
            }
            byte[] bytes = Files.readAllBytes(file);
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

    /** Why the stored file of a paper cannot be sent; empty where it can, and where none is stored. */
    public Optional<Written> trouble(IssuedPaper paper) {
        if (paper.pdf() == null) {
            return Optional.empty();
        }
        try {
            read(paper.pdf());
            return Optional.empty();
        } catch (ArchiveProblem e) {
            return Optional.of(e.explanation());
        } catch (IOException e) {
            return Optional.of(Message.of(
                    "archive.paper-not-read",
                    "name",
                    paper.pdf().digest().hex(),
                    "why",
                    String.valueOf(e.getMessage())));
        }
    }
}

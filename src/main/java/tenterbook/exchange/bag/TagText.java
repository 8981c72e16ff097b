package tenterbook.exchange.bag;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import tenterbook.words.Message;

/** Reads a whole tag file, with a limit of size and strict about its encoding. */
final class TagText {
    /** About 400,000 payload files with SHA-512. */
    static final long LIMIT_BYTES = 64L << 20;

    private TagText() {}

    /** The text, or empty with a finding that says why not. */
    static Optional<String> read(BagListing listing, String name, Charset charset, Findings findings) {
        Path file = listing.files().get(name).path();
        try {
            long size = Files.size(file);
            if (size > LIMIT_BYTES) {
                findings.add(name, Message.of("bag.too-long", "found", size, "most", LIMIT_BYTES));
                return Optional.empty();
            }
            return Optional.of(charset.newDecoder()
                    .onMalformedInput(CodingErrorAction.REPORT)
                    .onUnmappableCharacter(CodingErrorAction.REPORT)
                    .decode(ByteBuffer.wrap(Files.readAllBytes(file)))
                    .toString());
        } catch (CharacterCodingException e) {
            findings.add(name, Message.of("bag.not-in-encoding", "encoding", charset.name()));
        } catch (IOException e) {
            findings.add(name, Message.of("bag.not-read", "why", e.toString()));
        }
        return Optional.empty();
    }

    /** Lines as RFC 8493 ends them: LF, CR or CR LF. */
    static List<String> lines(String text) {
        return text.lines().toList();
    }
}

package tenterbook.exchange.sheet.file;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** In which encoding a text file is: by its byte order mark; UTF-8 where all of it is valid as that; else Windows-1252. */
final class TextEncoding {
    private static final Charset WINDOWS_1252 = Charset.forName("windows-1252");

    private TextEncoding() {}

    /** Whether the first bytes can belong to a text; one in UTF-16 begins with its mark. */
    static boolean isText(byte[] first) {
        if (utf16(first)) {
            return true;
        }
        for (byte each : first) {
            if (each == 0) {
                return false;
            }
        }
        return true;
    }

    private static boolean utf16(byte[] first) {
        return first.length > 1
                && ((first[0] & 0xFF) == 0xFF && (first[1] & 0xFF) == 0xFE
                        || (first[0] & 0xFF) == 0xFE && (first[1] & 0xFF) == 0xFF);
    }

    static Charset of(Path file) throws IOException {
        try (var in = Files.newInputStream(file)) {
            if (utf16(in.readNBytes(2))) {
                return StandardCharsets.UTF_16;
            }
        }
        char[] some = new char[1 << 16];
        try (Reader reader = new InputStreamReader(
                Files.newInputStream(file),
                StandardCharsets.UTF_8
                        .newDecoder()
                        .onMalformedInput(CodingErrorAction.REPORT)
                        .onUnmappableCharacter(CodingErrorAction.REPORT))) {
            while (reader.read(some) >= 0) {
                // Only whether all of it can be read.
            }
            return StandardCharsets.UTF_8;
        } catch (CharacterCodingException e) {
            return WINDOWS_1252;
        }
    }
}

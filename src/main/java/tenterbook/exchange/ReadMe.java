package tenterbook.exchange;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;

/** The explanation in a bag, for a reader without this program. */
final class ReadMe {
    private ReadMe() {}

    static String text(Map<String, String> values) throws IOException {
        try (InputStream in = ReadMe.class.getResourceAsStream("read-me-first.txt")) {
            if (in == null) {
                throw new IllegalStateException("The program is incomplete: read-me-first.txt is not in it");
            }
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            for (Map.Entry<String, String> value : values.entrySet()) {
                text = text.replace("{{" + value.getKey() + "}}", value.getValue());
            }
            return text;
        }
    }
}

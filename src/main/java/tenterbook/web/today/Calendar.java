package tenterbook.web.today;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;

/** Whole days for a calendar program, by RFC 5545. */
final class Calendar {
    /** Octets of a line without its end (3.1). */
    private static final int LONGEST = 75;

    private static final DateTimeFormatter STAMP = DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmmss'Z'");

    private final List<String> lines = new ArrayList<>();
    private final String stamp;

    Calendar(Instant now) {
        stamp = STAMP.format(now.atOffset(ZoneOffset.UTC));
        lines.add("BEGIN:VCALENDAR");
        lines.add("VERSION:2.0");
        lines.add("PRODID:-//Tenterbook//EN");
    }

    /** @param uid the same for the same thing each time, so that a changed day moves it */
    void add(String uid, LocalDate day, String summary) {
        lines.add("BEGIN:VEVENT");
        lines.add("UID:" + text(uid) + "@tenterbook");
        lines.add("DTSTAMP:" + stamp);
        lines.add("DTSTART;VALUE=DATE:" + DateTimeFormatter.BASIC_ISO_DATE.format(day));
        lines.add("SUMMARY:" + text(summary));
        lines.add("TRANSP:TRANSPARENT");
        lines.add("END:VEVENT");
    }

    /** The whole, with folded lines. */
    String written() {
        StringBuilder all = new StringBuilder();
        lines.forEach(line -> all.append(folded(line)).append("\r\n"));
        return all.append("END:VCALENDAR\r\n").toString();
    }

    /** TEXT of 3.3.11. */
    private static String text(String plain) {
        return plain.replace("\\", "\\\\")
                .replace(";", "\\;")
                .replace(",", "\\,")
                .replaceAll("\\R", "\\\\n");
    }

    /** Folded by octets, never inside a character (3.1). */
    private static String folded(String line) {
        StringBuilder folded = new StringBuilder();
        int octets = 0;
        for (int i = 0; i < line.length(); ) {
            int letter = line.codePointAt(i);
            String one = Character.toString(letter);
            int size = one.getBytes(StandardCharsets.UTF_8).length;
            if (octets + size > LONGEST) {
                folded.append("\r\n ");
                octets = 1;
            }
            folded.append(one);
            octets += size;
            i += one.length();
        }
        return folded.toString();
    }
}

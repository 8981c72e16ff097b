package tenterbook.exchange.bag;

import java.text.Normalizer;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import tenterbook.words.Message;

/** Which paths a manifest may have, and which of them are equal on some disks. */
final class BagPath {
    private static final Pattern ENCODED = Pattern.compile("%(0[AaDd]|25)");
    private static final Pattern ENCODED_BEFORE_1_0 = Pattern.compile("%(0[AaDd])");
    private static final Pattern ANY_ENCODED = Pattern.compile("%([0-7][0-9A-Fa-f])");
    private static final Pattern DRIVE = Pattern.compile("[A-Za-z]:.*|(?i:file:).*", Pattern.DOTALL);

    private BagPath() {}

    /** Decodes CR, LF and (from 1.0) the percent sign, and nothing else (RFC 8493, 2.1.3). */
    static String decoded(String raw, boolean since1) {
        return (since1 ? ENCODED : ENCODED_BEFORE_1_0).matcher(raw).replaceAll(BagPath::character);
    }

    /** Why no file may be looked for under this name; empty where it is a plain path inside the bag. */
    static Optional<Message> danger(String path) {
        if (path.isEmpty()) {
            return Optional.of(Message.of("bag.path.empty"));
        }
        if (path.startsWith("/")) {
            return Optional.of(Message.of("bag.path.absolute"));
        }
        if (path.startsWith("~")) {
            return Optional.of(Message.of("bag.path.home"));
        }
        if (DRIVE.matcher(path).matches()) {
            return Optional.of(Message.of("bag.path.drive"));
        }
        if (path.indexOf('\\') >= 0) {
            return Optional.of(Message.of("bag.path.backslash"));
        }
        if (path.chars().anyMatch(c -> Character.isISOControl(c) && c != '\n' && c != '\r')) {
            return Optional.of(Message.of("bag.path.control"));
        }
        for (String part : path.split("/", -1)) {
            if (part.equals("..")) {
                return Optional.of(Message.of("bag.path.climbs"));
            }
            if (part.isEmpty() || part.equals(".")) {
                return Optional.of(Message.of("bag.path.step"));
            }
        }
        return hidden(path);
    }

    /** A name that would become dangerous in a program that decodes more than the standard asks for. */
    private static Optional<Message> hidden(String path) {
        String opened = ANY_ENCODED.matcher(path).replaceAll(BagPath::character);
        if (opened.equals(path)) {
            return Optional.empty();
        }
        boolean climbs = ("/" + opened + "/").contains("/../");
        boolean separates = opened.chars().filter(c -> c == '/').count()
                        != path.chars().filter(c -> c == '/').count()
                || opened.indexOf('\\') >= 0
                || opened.indexOf('\0') >= 0;
        return climbs || separates ? Optional.of(Message.of("bag.path.hidden")) : Optional.empty();
    }

    private static String character(MatchResult found) {
        char c = (char) Integer.parseInt(found.group(1), 16);
        return c == '\\' ? "\\\\" : c == '$' ? "\\$" : String.valueOf(c);
    }

    /** Equal for names that some file systems cannot tell apart: same letters but for case or Unicode form. */
    static String sameOnSomeDisks(String path) {
        return composed(composed(path).toUpperCase(Locale.ROOT).toLowerCase(Locale.ROOT));
    }

    static String composed(String path) {
        return Normalizer.normalize(path, Normalizer.Form.NFC);
    }

    /** For a message: control characters shown, long names shortened. */
    static String shown(String path) {
        StringBuilder text = new StringBuilder();
        path.codePoints()
                .limit(200)
                .forEach(c -> text.append(
                        Character.isISOControl(c) || Character.getType(c) == Character.FORMAT
                                ? "\\u%04x".formatted(c)
                                : Character.toString(c)));
        return text + (path.codePointCount(0, path.length()) > 200 ? "…" : "");
    }
}

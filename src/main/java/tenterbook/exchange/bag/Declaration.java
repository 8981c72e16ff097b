package tenterbook.exchange.bag;

import java.nio.charset.Charset;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.StandardCharsets;
import java.nio.charset.UnsupportedCharsetException;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tenterbook.words.Message;

/**
 * What {@code bagit.txt} says (RFC 8493, 2.1.1).
 *
 * @param since1 whether the rules of 1.0 hold; before it a payload file needed to be in one manifest only
 * @param charset of the other tag files
 */
record Declaration(boolean since1, Charset charset) {
    static final String NAME = "bagit.txt";
    static final Declaration USUAL = new Declaration(true, StandardCharsets.UTF_8);

    private static final Set<String> VERSIONS = Set.of("0.93", "0.94", "0.95", "0.96", "0.97", "1.0");
    private static final Pattern VERSION = Pattern.compile("BagIt-Version: (\\d+\\.\\d+)");
    private static final Pattern OLD_VERSION = Pattern.compile("BagIt-Version\\s*:\\s*(0\\.\\d+)\\s*");
    private static final Pattern ENCODING = Pattern.compile("Tag-File-Character-Encoding: (\\S+)");
    private static final Pattern OLD_ENCODING = Pattern.compile("Tag-File-Character-Encoding\\s*:\\s*(\\S+)\\s*");

    /** Reads it; where it is wrong, adds a finding and assumes the usual values, so that the rest can be checked too. */
    static Declaration read(BagListing listing, Findings findings) {
        if (!listing.has(NAME)) {
            findings.add(NAME, Message.of("bag.declaration-missing"));
            return USUAL;
        }
        Optional<String> text = TagText.read(listing, NAME, StandardCharsets.UTF_8, findings);
        return text.map(content -> read(content, findings)).orElse(USUAL);
    }

    private static Declaration read(String text, Findings findings) {
        String content = text;
        if (content.startsWith("\uFEFF")) {
            findings.add(NAME, Message.of("bag.byte-order-mark"));
            content = content.substring(1);
        }
        List<String> lines = TagText.lines(content);
        if (lines.size() != 2) {
            findings.add(NAME, Message.of("bag.two-lines", "found", lines.size()));
        }
        String version = lines.isEmpty() ? "" : lines.get(0);
        Matcher now = VERSION.matcher(version);
        Matcher before = OLD_VERSION.matcher(version);
        boolean old = !now.matches() && before.matches();
        String number = now.matches() ? now.group(1) : old ? before.group(1) : "";
        if (!VERSIONS.contains(number)) {
            findings.add(NAME, Message.of("bag.version", "found", BagPath.shown(version)));
        }
        String encoding = lines.size() < 2 ? "" : lines.get(1);
        Matcher named = (number.startsWith("0.") ? OLD_ENCODING : ENCODING).matcher(encoding);
        Charset charset = StandardCharsets.UTF_8;
        if (named.matches()) {
            charset = charset(named.group(1), findings);
        } else {
            findings.add(NAME, Message.of("bag.encoding", "found", BagPath.shown(encoding)));
        }
        return new Declaration(!number.startsWith("0."), charset);
    }

    private static Charset charset(String name, Findings findings) {
        try {
            return Charset.forName(name);
        } catch (IllegalCharsetNameException | UnsupportedCharsetException e) {
            findings.add(NAME, Message.of("bag.encoding-unknown", "found", BagPath.shown(name)));
            return StandardCharsets.UTF_8;
        }
    }
}

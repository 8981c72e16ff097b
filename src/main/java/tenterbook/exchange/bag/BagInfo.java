package tenterbook.exchange.bag;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tenterbook.words.Message;

/** What {@code bag-info.txt} says (RFC 8493, 2.2.2). */
final class BagInfo {
    static final String NAME = "bag-info.txt";
    private static final Pattern OXUM = Pattern.compile("(\\d{1,18})\\.(\\d{1,18})");

    private BagInfo() {}

    /** Values by lower-case label, in order; empty where there is no such file. */
    static Map<String, List<String>> read(BagListing listing, Declaration declaration, Findings findings) {
        Map<String, List<String>> info = new LinkedHashMap<>();
        if (!listing.has(NAME)) {
            return info;
        }
        List<String> values = null;
        String text =
                TagText.read(listing, NAME, declaration.charset(), findings).orElse("");
        for (String line : TagText.lines(text)) {
            int colon = line.indexOf(':');
            if (line.isBlank()) {
                continue;
            }
            if (Character.isWhitespace(line.charAt(0)) && values != null) {
                int last = values.size() - 1;
                values.set(last, (values.get(last) + " " + line.strip()).strip());
            } else if (colon > 0) {
                String label = line.substring(0, colon).strip().toLowerCase(Locale.ROOT);
                values = info.computeIfAbsent(label, missing -> new ArrayList<>());
                values.add(line.substring(colon + 1).strip());
            } else {
                findings.add(NAME, Message.of("bag.no-label", "line", BagPath.shown(line)));
            }
        }
        return info;
    }

    /** Compares {@code Payload-Oxum}, where it is given, with the files: bytes, a full stop, number of files. */
    static void oxum(Map<String, List<String>> info, BagListing listing, Findings findings) {
        List<String> stated = info.getOrDefault("payload-oxum", List.of());
        if (stated.size() > 1) {
            findings.add(NAME, Message.of("bag.oxum-several", "count", stated.size()));
        }
        for (String oxum : stated) {
            Matcher form = OXUM.matcher(oxum);
            String found = listing.payloadBytes() + "." + listing.payload().size();
            if (!form.matches()) {
                findings.add(NAME, Message.of("bag.oxum-form", "found", BagPath.shown(oxum)));
            } else if (Long.parseLong(form.group(1)) != listing.payloadBytes()
                    || Long.parseLong(form.group(2)) != listing.payload().size()) {
                findings.add(NAME, Message.of("bag.oxum-differs", "stated", oxum, "found", found));
            }
        }
    }
}

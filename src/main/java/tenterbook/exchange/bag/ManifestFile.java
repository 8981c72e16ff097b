package tenterbook.exchange.bag;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tenterbook.words.Message;

/**
 * One manifest, payload or tag, matched with the files that are there (RFC 8493, 2.1.3 and 2.2.1).
 *
 * @param name of the manifest's own file
 * @param algorithm by the bag's plain name
 * @param sums by the name of a file that is there, lower-case hexadecimal
 */
record ManifestFile(String name, String algorithm, Map<String, String> sums) {
    private static final Pattern NAME = Pattern.compile("(tag)?manifest-([^/]+)\\.txt");
    private static final Pattern LINE = Pattern.compile("([0-9A-Fa-f]+)[ \\t]+\\*?(\\S.*)");

    boolean ofTags() {
        return name.startsWith("tag");
    }

    static boolean named(String name) {
        return NAME.matcher(name).matches();
    }

    /** @param composed the bag's file names by composed form */
    static Optional<ManifestFile> read(
            String name, BagListing listing, Map<String, String> composed, Declaration declaration, Findings findings) {
        Matcher parts = NAME.matcher(name);
        if (!parts.matches()) {
            return Optional.empty();
        }
        String algorithm = Sums.plain(parts.group(2));
        if (!Sums.KNOWN.containsKey(algorithm)) {
            findings.add(
                    name,
                    Message.of(
                            "bag.checksum-unknown",
                            "found",
                            BagPath.shown(parts.group(2)),
                            "known",
                            String.join(
                                    ", ", Sums.KNOWN.keySet().stream().sorted().toList())));
            return Optional.empty();
        }
        Map<String, String> sums = new TreeMap<>();
        boolean tags = parts.group(1) != null;
        String text =
                TagText.read(listing, name, declaration.charset(), findings).orElse("");
        int number = 0;
        for (String line : TagText.lines(text)) {
            number++;
            if (line.isBlank()) {
                continue;
            }
            Matcher entry = LINE.matcher(line);
            if (!entry.matches()) {
                findings.add(name, Message.of("bag.line", "line", number, "found", BagPath.shown(line)));
                continue;
            }
            String raw = entry.group(2);
            String path = BagPath.decoded(raw, declaration.since1());
            Optional<Message> danger = BagPath.danger(raw).or(() -> BagPath.danger(path));
            if (danger.isPresent()) {
                findings.add(
                        name,
                        Message.of(
                                "bag.line-leads-out", "line", number, "path", BagPath.shown(raw), "why", danger.get()));
            } else if (!tags && !path.startsWith("data/")) {
                findings.add(name, Message.of("bag.line-not-in-data", "line", number, "path", BagPath.shown(raw)));
            } else {
                place(name, number, raw, path, entry.group(1), listing, composed, sums, findings);
            }
        }
        return Optional.of(new ManifestFile(name, algorithm, sums));
    }

    private static void place(
            String name,
            int number,
            String raw,
            String path,
            String sum,
            BagListing listing,
            Map<String, String> composed,
            Map<String, String> sums,
            Findings findings) {
        // Some writers leave the percent sign as it is, so the raw name counts where the decoded one is not there.
        String written = listing.has(raw) ? raw : composed.get(BagPath.composed(path));
        String file = listing.has(path) ? path : written;
        if (file == null) {
            findings.add(name, Message.of("bag.line-no-file", "line", number, "path", BagPath.shown(path)));
        } else if (sums.putIfAbsent(file, sum.toLowerCase(Locale.ROOT)) != null) {
            findings.add(name, Message.of("bag.line-twice", "line", number, "path", BagPath.shown(file)));
        }
    }
}

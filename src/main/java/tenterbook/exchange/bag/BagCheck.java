package tenterbook.exchange.bag;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.Progress;
import tenterbook.words.Joined;
import tenterbook.words.Message;
import tenterbook.words.Written;

/**
 * Finds everything that keeps a folder from being a complete and valid bag.
 *
 * <p>Versions 0.93 to 0.97 are read by their own rule (a payload file is in at least one manifest), since common tools
 * still write them; 1.0 by RFC 8493 (every payload file in every manifest). Each file is read once for all of its
 * checksums. Refused although the standard allows them: links, and {@code fetch.txt}, because nothing is ever fetched.
 */
public final class BagCheck {
    private final Findings findings = new Findings();
    private final Progress progress;

    private BagCheck(Progress progress) {
        this.progress = progress;
    }

    /**
     * Looks at every file; changes nothing.
     *
     * @throws IOException if the folder cannot be listed at all
     * @throws Progress.Cancelled if asked to stop
     */
    public static Checked run(Path bag, Progress progress) throws IOException {
        if (Files.isRegularFile(bag)) {
            return notABag(bag, Message.of("bag.is-a-file"));
        }
        if (!Files.isDirectory(bag)) {
            return notABag(bag, Message.of("bag.not-there"));
        }
        return new BagCheck(progress).check(bag.toRealPath());
    }

    private static Checked notABag(Path bag, Message what) {
        return new Checked(List.of(new Finding(bag.toString(), what)), new TreeMap<>(), Map.of(), 0);
    }

    private Checked check(Path root) throws IOException {
        progress.at(0, 0, Message.of("bag.listing"));
        BagListing listing = BagListing.of(root, findings, progress);
        Declaration declaration = Declaration.read(listing, findings);
        if (!Files.isDirectory(root.resolve("data"), java.nio.file.LinkOption.NOFOLLOW_LINKS)) {
            findings.add("data/", Message.of("bag.no-payload"));
        }
        fetch(listing, declaration);
        Map<String, List<String>> info = BagInfo.read(listing, declaration, findings);
        BagInfo.oxum(info, listing, findings);
        List<ManifestFile> manifests = manifests(listing, declaration);
        complete(listing, declaration, manifests);
        tagManifests(declaration, manifests);
        sums(listing, manifests);
        TreeMap<String, Path> payload = new TreeMap<>();
        listing.payload().forEach((name, entry) -> payload.put(name, entry.path()));
        return new Checked(findings.all(), payload, info, listing.payloadBytes());
    }

    private void fetch(BagListing listing, Declaration declaration) {
        if (!listing.has("fetch.txt")) {
            return;
        }
        String text = TagText.read(listing, "fetch.txt", declaration.charset(), findings)
                .orElse("");
        List<String> lines =
                TagText.lines(text).stream().filter(line -> !line.isBlank()).toList();
        findings.add(
                "fetch.txt",
                Message.of(
                        "bag.fetch",
                        "count",
                        lines.size(),
                        "files",
                        lines.stream().limit(10).map(BagPath::shown).collect(Collectors.joining("; ")),
                        "more",
                        lines.size() > 10));
    }

    private List<ManifestFile> manifests(BagListing listing, Declaration declaration) {
        Map<String, String> composed = listing.byComposedName();
        List<ManifestFile> manifests = new ArrayList<>();
        for (String name : listing.files().keySet()) {
            if (ManifestFile.named(name)) {
                ManifestFile.read(name, listing, composed, declaration, findings)
                        .ifPresent(manifests::add);
            }
        }
        if (manifests.stream().allMatch(ManifestFile::ofTags)) {
            findings.add(Message.of("bag.the-bag"), Message.of("bag.no-manifest"));
        }
        return manifests;
    }

    private void complete(BagListing listing, Declaration declaration, List<ManifestFile> manifests) {
        List<ManifestFile> ofPayload =
                manifests.stream().filter(manifest -> !manifest.ofTags()).toList();
        for (String name : listing.payload().keySet()) {
            List<String> without = ofPayload.stream()
                    .filter(manifest -> !manifest.sums().containsKey(name))
                    .map(ManifestFile::name)
                    .toList();
            if (without.isEmpty()) {
                continue;
            }
            if (without.size() == ofPayload.size()) {
                findings.add(name, Message.of("bag.in-no-manifest"));
            } else if (declaration.since1()) {
                findings.add(name, Message.of("bag.not-in-every-manifest", "manifests", String.join(", ", without)));
            }
        }
    }

    private void tagManifests(Declaration declaration, List<ManifestFile> manifests) {
        if (!declaration.since1()) {
            return;
        }
        for (ManifestFile manifest : manifests) {
            if (!manifest.ofTags()) {
                continue;
            }
            for (ManifestFile other : manifests) {
                boolean listed = manifest.sums().containsKey(other.name());
                if (!other.ofTags() && !listed) {
                    findings.add(manifest.name(), Message.of("bag.tag-manifest-lacks", "manifest", other.name()));
                }
                if (other.ofTags() && listed) {
                    findings.add(manifest.name(), Message.of("bag.tag-manifest-lists", "manifest", other.name()));
                }
            }
        }
    }

    private void sums(BagListing listing, List<ManifestFile> manifests) {
        Set<String> listed = new TreeSet<>();
        manifests.forEach(manifest -> listed.addAll(manifest.sums().keySet()));
        long total = listed.stream()
                .mapToLong(name -> listing.files().get(name).bytes())
                .sum();
        Pace pace = new Pace(progress, total);
        for (String name : listed) {
            List<ManifestFile> of = manifests.stream()
                    .filter(manifest -> manifest.sums().containsKey(name))
                    .toList();
            Set<String> algorithms =
                    of.stream().map(ManifestFile::algorithm).collect(Collectors.toCollection(LinkedHashSet::new));
            pace.begin(Message.of("bag.checking", "file", BagPath.shown(name)));
            try {
                Sums found = Sums.of(listing.files().get(name).path(), algorithms, pace);
                List<Written> differing = new ArrayList<>();
                for (ManifestFile manifest : of) {
                    String expected = manifest.sums().get(name);
                    String got = found.hex().get(manifest.algorithm());
                    if (!expected.equals(got)) {
                        differing.add(Message.of(
                                "bag.sum",
                                "manifest",
                                manifest.name(),
                                "expected",
                                BagPath.shown(expected),
                                "found",
                                got));
                    }
                }
                if (!differing.isEmpty()) {
                    findings.add(name, Message.of("bag.sum-differs", "sums", new Joined("; ", differing)));
                }
            } catch (IOException e) {
                findings.add(name, Message.of("bag.not-to-end", "why", e.toString()));
            }
        }
    }
}

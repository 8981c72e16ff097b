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
import tenterbook.ledger.Finding;
import tenterbook.ledger.Progress;

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
            return notABag(
                    bag,
                    "is a file; expected a bag's folder. Bags inside ZIP or TAR files are not read yet: unpack it first, then give the folder.");
        }
        if (!Files.isDirectory(bag)) {
            return notABag(bag, "is not there; expected a bag's folder. Check the path.");
        }
        return new BagCheck(progress).check(bag.toRealPath());
    }

    private static Checked notABag(Path bag, String what) {
        return new Checked(List.of(new Finding(bag.toString(), what)), new TreeMap<>(), Map.of(), 0);
    }

    private Checked check(Path root) throws IOException {
        progress.at(0, 0, "listing the bag");
        BagListing listing = BagListing.of(root, findings, progress);
        Declaration declaration = Declaration.read(listing, findings);
        if (!Files.isDirectory(root.resolve("data"), java.nio.file.LinkOption.NOFOLLOW_LINKS)) {
            findings.add("data/", "is missing; a bag keeps its payload there.");
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
                "asks for %d file(s) to be fetched: %s%s. Nothing is ever fetched; complete the bag with another tool first.",
                lines.size(),
                lines.stream().limit(10).map(BagPath::shown).collect(Collectors.joining("; ")),
                lines.size() > 10 ? "; and more" : "");
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
            findings.add(
                    "the bag", "has no payload manifest that can be used; expected manifest-sha512.txt or the like.");
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
                findings.add(name, "is in no manifest. It was added after the bag was made: take it out.");
            } else if (declaration.since1()) {
                findings.add(
                        name,
                        "is not in %s; since 1.0 every manifest lists every payload file.",
                        String.join(", ", without));
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
                    findings.add(manifest.name(), "does not list %s, as a tag manifest must.", other.name());
                }
                if (other.ofTags() && listed) {
                    findings.add(manifest.name(), "lists %s; a tag manifest lists no tag manifest.", other.name());
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
            pace.begin("checking " + BagPath.shown(name));
            try {
                Sums found = Sums.of(listing.files().get(name).path(), algorithms, pace);
                for (ManifestFile manifest : of) {
                    String expected = manifest.sums().get(name);
                    String got = found.hex().get(manifest.algorithm());
                    if (!expected.equals(got)) {
                        findings.add(
                                name,
                                "is not what it was when the bag was made: %s expects %s, found %s. Copy it again from where the bag came.",
                                manifest.name(),
                                BagPath.shown(expected),
                                got);
                    }
                }
            } catch (IOException e) {
                findings.add(name, "cannot be read to its end: %s.", e);
            }
        }
    }
}

package tenterbook.web.record;

import java.text.Normalizer;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tenterbook.archive.Kinds;
import tenterbook.archive.NewIdentifier;
import tenterbook.ledger.revision.Kind;
import tenterbook.web.Site;
import tenterbook.web.form.Form;

/** Proposes the short name of a new record from its name; one that was ever given is not proposed again. */
final class ShortCodes {
    /** Of a proposal; a short name may have 40 characters, and a number may follow. */
    private static final int LONGEST = 30;

    private ShortCodes() {}

    /** Fills in the short name that was left empty where the form has a name. */
    static void fill(Site site, Kind<?> kind, Form form) {
        String name = form.text(kind.equals(Kinds.BOARD_PAIR) ? "image" : "name");
        boolean named =
                Stream.of(Kinds.BOARD_PAIR, Kinds.CLOTH, Kinds.LOT, Kinds.PARTY).anyMatch(kind::equals);
        if (named && !form.has("id") && !name.isEmpty()) {
            form.put("id", proposed(site, kind, name));
        }
    }

    /** As in SH for silk habotai, B08 for a board after B07, weld-2026 for a lot, sala-vermia for a person. */
    static String proposed(Site site, Kind<?> kind, String name) {
        List<String> used = site.ledger().allIdsEverUsed(kind);
        if (kind.equals(Kinds.BOARD_PAIR)) {
            int greatest = used.stream()
                    .filter(id -> id.matches("B\\d{1,4}"))
                    .mapToInt(id -> Integer.parseInt(id.substring(1)))
                    .max()
                    .orElse(0);
            return String.format(Locale.ROOT, "B%02d", greatest + 1);
        }
        String start = kind.equals(Kinds.CLOTH) ? initials(name) : plain(name);
        if (kind.equals(Kinds.LOT)) {
            start += "-" + site.year();
        }
        String proposal = start;
        for (int i = 2; taken(used, proposal); i++) {
            proposal = start + (Character.isDigit(start.charAt(start.length() - 1)) ? "-" : "") + i;
        }
        return proposal;
    }

    private static boolean taken(List<String> used, String id) {
        return id.equals(NewIdentifier.RESERVED) || used.stream().anyMatch(id::equalsIgnoreCase);
    }

    private static String initials(String name) {
        List<String> words = Stream.of(plain(name).split("-")).toList();
        String letters = words.size() > 1
                ? words.stream().map(word -> word.substring(0, 1)).collect(Collectors.joining())
                : words.get(0).substring(0, Math.min(2, words.get(0).length()));
        return letters.toUpperCase(Locale.ROOT);
    }

    /** Words without accents, in small letters, with hyphens; 'x' where nothing is left of a name. */
    private static String plain(String name) {
        String bare = Normalizer.normalize(name, Normalizer.Form.NFD)
                .replaceAll("\\p{M}", "")
                .toLowerCase(Locale.ROOT)
                .replaceAll("[^\\p{L}\\p{N}]+", "-")
                .replaceAll("^-|-$", "");
        String cut = bare.substring(0, Math.min(LONGEST, bare.length())).replaceAll("-$", "");
        return cut.isEmpty() ? "x" : cut;
    }
}

package tenterbook.archive;

import java.text.Normalizer;
import java.util.Locale;
import java.util.function.Function;
import java.util.function.Predicate;

/** An identifier that is made from a name, as in {@code ines-valderim} and {@code ines-valderim-2}. */
public final class NewIdentifier {
    /** The last part of the address of a new record's form; no record may have this name. */
    public static final String RESERVED = "new";

    private static final int LONGEST = 30;

    private NewIdentifier() {}

    /**
     * @param otherwise where the name has no letter or digit
     * @param used whether an identifier with a beginning was ever used
     */
    public static String of(String name, String otherwise, Function<String, Predicate<String>> used) {
        String plain = Normalizer.normalize(name, Normalizer.Form.NFD)
                .replaceAll("\\p{M}", "")
                .toLowerCase(Locale.ROOT)
                .replaceAll("[^\\p{L}\\p{N}]+", "-")
                .replaceAll("^-+|-+$", "");
        String start = plain.isEmpty() ? otherwise : plain.substring(0, Math.min(LONGEST, plain.length()));
        Predicate<String> taken = used.apply(start);
        String id = start;
        for (int i = 2; taken.test(id); i++) {
            id = start + "-" + i;
        }
        return id;
    }
}

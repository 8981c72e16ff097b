package tenterbook.ledger.revision;

import java.security.SecureRandom;
import java.util.Collection;
import java.util.HexFormat;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Supplier;

/** The kinds of record of a ledger, and the source of its salts and handles. */
public final class KnownKinds {
    private static final int SALT_BYTES = 16;
    private final Map<String, Kind<?>> kinds = new TreeMap<>();
    private final Supplier<String> salts;

    /** @param salts supplies 128 random bits or more in hex, new each time */
    public KnownKinds(Collection<? extends Kind<?>> kinds, Supplier<String> salts) {
        kinds.forEach(kind -> this.kinds.put(kind.name(), kind));
        this.kinds.put(Erasure.KIND.name(), Erasure.KIND);
        this.salts = salts;
    }

    public static Supplier<String> randomSalts() {
        SecureRandom random = new SecureRandom();
        return () -> {
            byte[] salt = new byte[SALT_BYTES];
            random.nextBytes(salt);
            return HexFormat.of().formatHex(salt);
        };
    }

    public Optional<Kind<?>> kind(String name) {
        return Optional.ofNullable(kinds.get(name));
    }

    public Privacy privacy(String kind) {
        return kind(kind).map(Kind::privacy).orElse(Privacy.UNKNOWN);
    }

    public String salt() {
        return salts.get();
    }
}

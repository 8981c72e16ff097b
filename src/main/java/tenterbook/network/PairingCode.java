package tenterbook.network;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;

/**
 * A code of eight digits that pairs one device: for five minutes, for five wrong tries at most, and once. Whoever guesses has five
 * tries in a hundred million. Thread-safe.
 */
public final class PairingCode {
    public static final Duration VALID = Duration.ofMinutes(5);

    static final int WRONG_TRIES = 5;

    private static final SecureRandom RANDOM = new SecureRandom();

    private final String digits;
    private final Rights rights;
    private final Instant begun;
    private final Map<String, Wrong> wrong = new HashMap<>();
    private int tries;
    private boolean used;

    private PairingCode(String digits, Rights rights, Instant begun) {
        this.digits = digits;
        this.rights = rights;
        this.begun = begun;
    }

    private record Wrong(int tries, Instant last) {
        /** One second after the first wrong try, then two, four, eight. */
        Instant until() {
            return last.plusSeconds(1L << (tries - 1));
        }
    }

    /** What became of a try. */
    public enum Outcome {
        PAIRED,
        WRONG,
        /** Too soon after a wrong one from the same address; the code was not looked at. */
        TOO_SOON,
        /** Its time is over, it was used, or too many tries were wrong. */
        OVER
    }

    public static PairingCode begin(Rights rights, Instant now) {
        return new PairingCode(String.format(Locale.ROOT, "%08d", RANDOM.nextInt(100_000_000)), rights, now);
    }

    /** For showing it on the computer alone. */
    public String digits() {
        return digits;
    }

    public Rights rights() {
        return rights;
    }

    public Instant begun() {
        return begun;
    }

    public synchronized boolean used() {
        return used;
    }

    public synchronized boolean over(Instant now) {
        return used || tries >= WRONG_TRIES || !now.isBefore(begun.plus(VALID));
    }

    /** @param address of the device that tries; spaces and hyphens in what was typed do not count */
    public synchronized Outcome attempt(String typed, String address, Instant now) {
        if (over(now)) {
            return Outcome.OVER;
        }
        Wrong before = wrong.get(address);
        if (before != null && now.isBefore(before.until())) {
            return Outcome.TOO_SOON;
        }
        String given = typed.replaceAll("[\\s-]", "");
        if (MessageDigest.isEqual(given.getBytes(StandardCharsets.UTF_8), digits.getBytes(StandardCharsets.US_ASCII))) {
            used = true;
            return Outcome.PAIRED;
        }
        tries++;
        wrong.put(address, new Wrong(before == null ? 1 : before.tries() + 1, now));
        return over(now) ? Outcome.OVER : Outcome.WRONG;
    }
}

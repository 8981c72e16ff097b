package tenterbook.exchange.openpgp;

import java.text.Normalizer;
import tenterbook.words.Refusal;

/** What opens encrypted backups. Never written anywhere; its text is not shown by {@link #toString}. */
public final class Passphrase {
    /** Fewest characters of one that is chosen. */
    public static final int SHORTEST = 12;

    private final String text;

    private Passphrase(String text) {
        this.text = text;
    }

    /**
     * One that a person types to open a backup, as it is: in Unicode's composed form (NFC), as keyboards give it, so that any OpenPGP
     * program gets the same bytes from the same keys.
     */
    public static Passphrase of(String typed) {
        return new Passphrase(Normalizer.normalize(typed, Normalizer.Form.NFC));
    }

    /**
     * One that is chosen.
     *
     * @param again typed a second time
     * @throws Refusal if the two differ, or it is shorter than {@link #SHORTEST}, or it has what is lost when it is copied from paper
     */
    public static Passphrase chosen(String typed, String again) {
        int length = typed.codePointCount(0, typed.length());
        if (length < SHORTEST) {
            throw Refusal.of("backup.passphrase.short", "least", SHORTEST, "found", length);
        }
        if (!typed.equals(again)) {
            throw Refusal.of("backup.passphrase.differ");
        }
        if (!typed.equals(typed.strip()) || typed.chars().anyMatch(Character::isISOControl)) {
            throw Refusal.of("backup.passphrase.edges");
        }
        return of(typed);
    }

    char[] characters() {
        return text.toCharArray();
    }

    @Override
    public String toString() {
        return "Passphrase";
    }
}

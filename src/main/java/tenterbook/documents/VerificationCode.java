package tenterbook.documents;

import java.util.Locale;
import tenterbook.measure.Digest;
import tenterbook.words.Refusal;

/**
 * The beginning of a revision's hash in the ledger, by which a certificate can be compared with the record it was made from. 64
 * bits: enough against an error or a changed record, but not a signature.
 *
 * @param hex 16 lower-case hexadecimal digits
 */
public record VerificationCode(String hex) {
    private static final int DIGITS = 16;

    public VerificationCode {
        if (!hex.matches("[0-9a-f]{" + DIGITS + "}")) {
            throw Refusal.of("document.refused.code-digits", "digits", DIGITS, "found", hex);
        }
    }

    public static VerificationCode of(Digest hash) {
        return new VerificationCode(hash.hex().substring(0, DIGITS));
    }

    /**
     * Reads what a person typed: spaces and hyphens do not matter, nor does case.
     *
     * @throws IllegalArgumentException with a sentence for that person
     */
    public static VerificationCode read(String text) {
        String plain = text.toLowerCase(Locale.ROOT).replaceAll("[\\s\\p{Z}\\p{Pd}]", "");
        if (!plain.matches("[0-9a-f]{" + DIGITS + "}")) {
            throw Refusal.of(
                    "document.refused.code",
                    "entered",
                    text.strip().length() > 60 ? text.strip().substring(0, 60) + "…" : text.strip(),
                    "digits",
                    DIGITS);
        }
        return new VerificationCode(plain);
    }

    public boolean begins(Digest hash) {
        return hash.hex().startsWith(hex);
    }

    /** In groups of four, as printed. */
    @Override
    public String toString() {
        return hex.replaceAll("(.{4})(?=.)", "$1 ");
    }
}

package tenterbook.measure;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Currency;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * An amount of money in one currency.
 *
 * @param amount in whole currency units, not negative, with the currency's own number of decimals
 * @param currency an ISO 4217 code
 */
public record Money(BigDecimal amount, Currency currency) {
    private static final Map<String, String> SIGNS = Map.of("€", "EUR", "$", "USD", "£", "GBP", "¥", "JPY");
    private static final Pattern FORM = Pattern.compile(
            "(?<before>[€$£¥]|[A-Za-z]{3})?\\s*(?<number>\\d[\\d., '’]*)\\s*(?<after>[€$£¥]|[A-Za-z]{3})?");

    /** Plain digits, or groups of three with one kind of mark between them; then a decimal mark of another kind. */
    private static final Pattern WHOLE = Pattern.compile(
            "(?<whole>\\d+|\\d{1,3}(?:(?<mark>[., '’])\\d{3})(?:\\k<mark>\\d{3})*)(?:(?!\\k<mark>)[.,](?<decimals>\\d{0,2}|\\d{4,}))?");

    private static final int LONGEST = 40;

    public Money {
        if (amount.signum() < 0) {
            throw new IllegalArgumentException("A price is not negative; found " + amount);
        }
        amount = amount.setScale(Math.max(0, currency.getDefaultFractionDigits()), RoundingMode.UNNECESSARY);
    }

    /**
     * Reads '180', '€ 180', '180.50 EUR' or '180,50 €'.
     *
     * @param usual the currency meant where the text names none
     * @return null for blank text
     * @throws IllegalArgumentException with a sentence for the person who typed it
     */
    public static @Nullable Money read(String text, Currency usual) {
        if (text == null || text.isBlank()) {
            return null;
        }
        if (text.strip().length() > LONGEST) {
            throw refusal(text.strip().substring(0, LONGEST) + "…", "it is too long");
        }
        Matcher form = FORM.matcher(text.replaceAll("[\\s\\p{Z}]+", " ").strip());
        if (!form.matches() || form.group("before") != null && form.group("after") != null) {
            throw refusal(text, "it is not one amount");
        }
        String sign = form.group("before") != null ? form.group("before") : form.group("after");
        Currency currency = usual;
        if (sign != null) {
            try {
                currency = Currency.getInstance(SIGNS.getOrDefault(sign, sign.toUpperCase(Locale.ROOT)));
            } catch (IllegalArgumentException e) {
                throw refusal(text, "“" + sign + "” is not a currency code");
            }
        }
        String digits = form.group("number").strip();
        Matcher whole = WHOLE.matcher(digits);
        if (whole.matches()) {
            String decimals = whole.group("decimals") == null ? "" : "." + whole.group("decimals");
            digits = whole.group("whole").replaceAll("\\D", "") + decimals;
        } else {
            throw refusal(text, "“" + digits + "” is not one number");
        }
        try {
            return new Money(new BigDecimal(digits), currency);
        } catch (ArithmeticException | NumberFormatException e) {
            throw refusal(text, "it has too many decimals for " + currency.getCurrencyCode());
        }
    }

    private static IllegalArgumentException refusal(String text, String why) {
        return new IllegalArgumentException(
                "“%s” was not understood as a price: %s. Expected something like ‘180’ or ‘180.50 EUR’."
                        .formatted(text.strip(), why));
    }

    /** As in '€180' or '€180.50'; currencies without a sign here stand in code, as in '180 SEK'. */
    @Override
    public String toString() {
        String number = amount.remainder(BigDecimal.ONE).signum() == 0
                ? amount.setScale(0, RoundingMode.UNNECESSARY).toPlainString()
                : amount.toPlainString();
        for (var sign : SIGNS.entrySet()) {
            if (sign.getValue().equals(currency.getCurrencyCode())) {
                return sign.getKey() + number;
            }
        }
        return number + "\u00a0" + currency.getCurrencyCode();
    }
}

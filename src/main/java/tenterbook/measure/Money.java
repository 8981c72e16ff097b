package tenterbook.measure;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Currency;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import tenterbook.words.Conventions;
import tenterbook.words.Message;
import tenterbook.words.Refusal;
import tenterbook.words.Written;

/**
 * An amount of money in one currency.
 *
 * @param amount in whole currency units, not negative, with the currency's own number of decimals
 * @param currency an ISO 4217 code
 */
public record Money(BigDecimal amount, Currency currency) implements Written {
    private static final Map<String, String> SIGNS = Map.of("€", "EUR", "$", "USD", "£", "GBP", "¥", "JPY");
    private static final Pattern FORM = Pattern.compile(
            "(?<before>[€$£¥]|[A-Za-z]{3})?\\s*(?<number>\\d[\\d., '’]*)\\s*(?<after>[€$£¥]|[A-Za-z]{3})?");

    /** Plain digits, or groups of three with one kind of mark between them; then a decimal mark of another kind. */
    private static final Pattern WHOLE = Pattern.compile(
            "(?<whole>\\d+|\\d{1,3}(?:(?<mark>[., '’])\\d{3})(?:\\k<mark>\\d{3})*)(?:(?!\\k<mark>)[.,](?<decimals>\\d{0,2}|\\d{4,}))?");

    /** As {@link #WHOLE}, in a currency of three decimals or more. */
    private static final Pattern FINE =
            Pattern.compile("(?<whole>\\d+|\\d{1,3}(?:(?<mark>[., '’])\\d{3})(?:\\k<mark>\\d{3})*)"
                    + "(?:(?!\\k<mark>)[.,](?<decimals>\\d*))?");

    private static final Pattern ONE_MARK = Pattern.compile("(?<whole>\\d+)[.,](?<decimals>\\d*)");

    /** A comma that could mark thousands or decimals; '0,250' has no thousands. */
    private static final Pattern COMMA = Pattern.compile("(?<whole>[1-9]\\d{0,2}),(?<decimals>\\d{3})");

    /** The stored form of an amount. */
    private static final Pattern PLAIN = Pattern.compile("-?[0-9]{1,40}(?:\\.[0-9]{1,40})?");

    private static final int LONGEST = 40;

    /** Digits before the point and decimals: more than a text of {@value #LONGEST} characters can hold. */
    private static final int MOST_DIGITS = 40;

    public Money {
        if (amount.signum() < 0) {
            throw Refusal.of("measure.money.negative", "amount", amount);
        }
        // A long, since the scale can reach the ends of int; computed before scaling, which writes every digit out.
        long digits = (long) amount.precision() - amount.scale();
        if (digits > MOST_DIGITS || amount.scale() > MOST_DIGITS) {
            throw Refusal.of("measure.money.too-many-digits", "most", MOST_DIGITS);
        }
        int decimals = Math.max(0, currency.getDefaultFractionDigits());
        try {
            amount = amount.setScale(decimals, RoundingMode.UNNECESSARY);
        } catch (ArithmeticException e) {
            throw new Refusal(
                    Message.of("measure.money.decimals-of", "currency", currency, "most", decimals, "amount", amount),
                    e);
        }
    }

    /**
     * An amount as it is stored: digits and a point, as in '180.50'.
     *
     * @throws Refusal for anything else, such as an exponent or more than {@value #MOST_DIGITS} digits on a side
     */
    public static BigDecimal amount(String text) {
        if (!PLAIN.matcher(text).matches()) {
            throw Refusal.of(
                    "measure.money.plain-digits",
                    "most",
                    MOST_DIGITS,
                    "found",
                    text.length() > LONGEST ? text.substring(0, LONGEST) + "…" : text);
        }
        return new BigDecimal(text);
    }

    /**
     * Reads '180', '€ 180', '180.50 EUR' or '180,50 €'.
     *
     * @param usual the currency where the text names none
     * @return null for blank text
     * @throws Refusal with a sentence for the person who typed it
     */
    public static @Nullable Money read(String text, Currency usual) {
        if (text == null || text.isBlank()) {
            return null;
        }
        if (text.strip().length() > LONGEST) {
            throw refusal(text.strip().substring(0, LONGEST) + "…", Message.of("measure.money.too-long"));
        }
        Matcher form = FORM.matcher(text.replaceAll("[\\s\\p{Z}]+", " ").strip());
        if (!form.matches() || form.group("before") != null && form.group("after") != null) {
            throw refusal(text, Message.of("measure.money.not-one"));
        }
        String sign = form.group("before") != null ? form.group("before") : form.group("after");
        Currency currency = usual;
        if (sign != null) {
            try {
                currency = Currency.getInstance(SIGNS.getOrDefault(sign, sign.toUpperCase(Locale.ROOT)));
            } catch (IllegalArgumentException e) {
                throw refusal(text, Message.of("measure.money.no-currency", "sign", sign));
            }
        }
        String digits = form.group("number").strip();
        Matcher whole = whole(text, digits, currency);
        if (whole.matches()) {
            String decimals = whole.group("decimals") == null ? "" : "." + whole.group("decimals");
            digits = whole.group("whole").replaceAll("\\D", "") + decimals;
        } else {
            throw refusal(text, Message.of("measure.money.not-one-number", "digits", digits));
        }
        try {
            return new Money(new BigDecimal(digits), currency);
        } catch (IllegalArgumentException e) {
            throw refusal(text, Message.of("measure.money.decimals", "currency", currency));
        }
    }

    /** Three digits behind one mark are thousands, but not in a currency of three decimals: there a point is the decimal mark. */
    private static Matcher whole(String text, String digits, Currency currency) {
        if (currency.getDefaultFractionDigits() < 3) {
            return WHOLE.matcher(digits);
        }
        Matcher comma = COMMA.matcher(digits);
        if (comma.matches()) {
            String decimals = comma.group("decimals");
            throw refusal(
                    text,
                    Message.of(
                            "measure.money.two-readings",
                            "currency",
                            currency,
                            "decimal",
                            comma.group("whole") + "." + decimals,
                            "thousands",
                            comma.group("whole") + decimals + ".000"));
        }
        Matcher oneMark = ONE_MARK.matcher(digits);
        return oneMark.matches() ? oneMark : FINE.matcher(digits);
    }

    private static Refusal refusal(String text, Message why) {
        return Refusal.of("measure.money.unreadable", "entered", text.strip(), "why", why);
    }

    /** As in '180 EUR' or '180.50 EUR'. ISO 4217 codes, never signs, since '$' and '¥' are signs of several currencies. */
    @Override
    public String in(Conventions conventions) {
        BigDecimal shown =
                amount.remainder(BigDecimal.ONE).signum() == 0 ? amount.setScale(0, RoundingMode.UNNECESSARY) : amount;
        return NumberWords.decimals(shown).in(conventions) + NumberWords.UNIT_SPACE + currency.getCurrencyCode();
    }

    @Override
    public String toString() {
        return inEnglish();
    }
}

package tenterbook.exchange.sheet;

import java.text.Normalizer;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVRecord;
import tenterbook.archive.field.Plain;
import tenterbook.archive.field.Reading;
import tenterbook.measure.LengthUnits;
import tenterbook.measure.OwnTable;
import tenterbook.words.Conventions;
import tenterbook.words.Language;

/** Which field the name of a column means: by the labels of forms in every language, and by a table of names in use. */
final class ColumnNames {
    private static final Pattern BRACKET =
            Pattern.compile("(?<name>.*\\S)\\s*[(\\[](?<unit>[^()\\[\\]]{1,12})[)\\]]\\s*");

    /** What a name means, with the unit of bare numbers below it; empty for the usual one. */
    record Meaning(String path, String unit) {}

    private final SheetKind kind;
    private final Map<String, Meaning> meanings = new HashMap<>();

    ColumnNames(SheetKind kind) {
        this.kind = kind;
        for (SheetColumn column : kind.columns()) {
            meanings.put(plain(column.path()), new Meaning(column.path(), ""));
        }
        for (CSVRecord row : OwnTable.rows("/tenterbook/exchange/column-names.csv")) {
            if (row.get("kind").equals(kind.toString())) {
                for (String name : row.get("names").split("\\|")) {
                    meanings.put(name, new Meaning(row.get("field"), row.get("unit")));
                }
            }
        }
        // Last, since an export is headed by the labels.
        for (Language language : Language.values()) {
            Conventions conventions = Conventions.english().in(language);
            for (SheetColumn column : kind.columns()) {
                meanings.put(plain(column.label().in(conventions)), new Meaning(column.path(), ""));
            }
        }
    }

    Optional<Meaning> meaning(String heading) {
        Meaning whole = meanings.get(plain(heading));
        if (whole != null) {
            return Optional.of(whole);
        }
        Matcher bracket = BRACKET.matcher(heading);
        if (!bracket.matches()) {
            return Optional.empty();
        }
        Meaning named = meanings.get(plain(bracket.group("name")));
        return Optional.ofNullable(named)
                .map(meaning -> new Meaning(meaning.path(), unit(meaning, bracket.group("unit"))));
    }

    /** The text in brackets where a number followed by it can be read as a value of that field. */
    private String unit(Meaning meaning, String text) {
        return kind.column(meaning.path())
                .filter(column -> isUnit(column, text.strip()))
                .map(column -> text.strip())
                .orElse(meaning.unit());
    }

    private static boolean isUnit(SheetColumn column, String text) {
        if (column.value() instanceof Plain<?> || text.matches(".*\\d.*")) {
            return false;
        }
        try {
            return column.value()
                            .parse(
                                    "1 " + text,
                                    new Reading(java.util.Currency.getInstance("EUR"), LengthUnits.CM_AND_MM))
                    != null;
        } catch (IllegalArgumentException e) {
            return false;
        }
    }

    /** Letters and digits in lower case without accents, single spaces between them (Unicode NFKD). */
    static String plain(String name) {
        return Normalizer.normalize(name, Normalizer.Form.NFKD)
                .replaceAll("\\p{M}", "")
                .toLowerCase(Locale.ROOT)
                .replaceAll("[^\\p{L}\\p{N}%]+", " ")
                .strip();
    }
}

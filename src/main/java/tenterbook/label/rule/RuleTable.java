package tenterbook.label.rule;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import tenterbook.piece.Category;

/**
 * One market's rules as data, from {@code /label/<market>.json}.
 *
 * @param version kept with every label that is issued
 * @param notice shown wherever the rules' outcome is shown
 * @param percent how a share is written, a format of number and fibre
 * @param otherBelow shares under this percentage are not named; 0 where all are
 * @param functional purposes for which a small share is named
 * @param home names of the market's own country, lower case, where its origin rule is known
 */
public record RuleTable(
        Market market,
        String name,
        String version,
        String language,
        String notice,
        String percent,
        boolean capitals,
        double otherBelow,
        String otherOne,
        String otherMany,
        List<String> alwaysNamed,
        List<String> functional,
        List<String> decorative,
        double decorativeAtMost,
        String decorationPhrase,
        List<String> animalWords,
        String animalPhrase,
        String partialTagPhrase,
        List<String> home,
        String homeWhole,
        String homeImported,
        String homeName,
        boolean businessName,
        boolean fahrenheitFirst,
        String dryClean,
        Map<String, Rule> rules,
        Map<Category, Rule> coverage,
        List<Misnomer> misnomers) {
    /** A word that looks like a fibre and is none. */
    record Misnomer(String word, String fix) {}

    private static final Map<Market, RuleTable> READ = new EnumMap<>(Market.class);

    static synchronized RuleTable of(Market market) {
        return READ.computeIfAbsent(market, RuleTable::read);
    }

    private static RuleTable read(Market market) {
        String file = "/label/" + market.name().toLowerCase(Locale.ROOT) + ".json";
        try (InputStream in = RuleTable.class.getResourceAsStream(file)) {
            return new ObjectMapper()
                    .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
                    .readValue(in, RuleTable.class);
        } catch (IOException e) {
            throw new UncheckedIOException("The rule table %s cannot be read".formatted(file), e);
        }
    }

    /** @throws IllegalArgumentException where the table has no such rule */
    public Rule rule(String id) {
        Rule rule = rules.get(id);
        if (rule == null) {
            throw new IllegalArgumentException("The rules of %s have none called '%s'".formatted(name, id));
        }
        return rule;
    }
}

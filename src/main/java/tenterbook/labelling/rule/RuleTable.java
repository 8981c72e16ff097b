package tenterbook.labelling.rule;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import tenterbook.piece.Category;

/**
 * One market's rules as data, from {@code /label/<market>.json}. Values it leaves out are those of the table that it names as
 * its base.
 *
 * @param version stored with every issued label
 * @param notice shown wherever the rules' outcome is shown
 * @param namesOf the market whose fibre names are used
 * @param percent how a share is written, a format of number and fibre
 * @param otherBelow shares under this percentage are not named; 0 where all are
 * @param otherLocal 'other fibre' in another language, by language tag, where its source was read
 * @param functional purposes for which a small share is named
 * @param animalWords words of parts of animal origin, as read; {@code animalUnread} as remembered
 * @param animalUnlike words before one of these that negate it, as in 'imitation'
 * @param plainTrims words of parts that are known not to come from animals
 * @param home names of the market's own country, lower case, where its origin rule is known
 * @param members names of the member states, lower case, for a union
 * @param standing doubts that go with every statement for this market
 */
public record RuleTable(
        Market market,
        String name,
        String version,
        String language,
        String notice,
        Market namesOf,
        String percent,
        boolean capitals,
        double otherBelow,
        String otherOne,
        String otherMany,
        Map<String, String> otherLocal,
        List<String> alwaysNamed,
        List<String> functional,
        List<String> decorative,
        double decorativeAtMost,
        String decorationPhrase,
        List<String> animalWords,
        List<String> animalUnread,
        List<String> animalUnlike,
        List<String> plainTrims,
        String animalPhrase,
        String partialTagPhrase,
        OriginWords.When originWhen,
        List<String> home,
        String homeWhole,
        String homeImported,
        String homeName,
        List<String> members,
        MakerNeeds maker,
        Language.Use otherUse,
        List<Language> otherLanguages,
        boolean fahrenheitFirst,
        String dryClean,
        boolean ironWords,
        String cannotBeCleaned,
        CareNeeds careNeeds,
        String symbolsNote,
        Map<String, Rule> rules,
        Map<Category, Rule> coverage,
        List<Misnomer> misnomers,
        List<Standing> standing) {
    /** A word that looks like a fibre but is not. */
    record Misnomer(String word, String fix) {}

    /** A doubt that goes with every statement. */
    record Standing(String asks, String rule) {}

    /**
     * Which particulars of the maker a label carries.
     *
     * @param ways each is a set of particulars that does; the first that is recorded whole is printed
     * @param always particulars printed beside, where recorded
     * @param refuse whether a label without them is refused; otherwise they are asked for
     * @param onLabel whether they stand on the sewn label too, not only on a tag
     */
    record MakerNeeds(
            String rule,
            List<List<MakerLines.Particular>> ways,
            List<MakerLines.Particular> always,
            boolean refuse,
            boolean onLabel) {}

    /**
     * For which pieces care must be stated.
     *
     * @param washing whether a washing instruction is needed; otherwise dry cleaning does as well
     */
    public record CareNeeds(List<Category> categories, boolean washing, String fix) {}

    private static final Map<Market, RuleTable> READ = new EnumMap<>(Market.class);
    private static final ObjectMapper MAPPER = new ObjectMapper()
            .enable(
                    DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES,
                    DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES);

    static synchronized RuleTable of(Market market) {
        return READ.computeIfAbsent(market, RuleTable::read);
    }

    private static RuleTable read(Market market) {
        String table = market.name().toLowerCase(Locale.ROOT);
        try {
            return MAPPER.treeToValue(tree(table), RuleTable.class);
        } catch (IOException e) {
            throw new UncheckedIOException("The rule table of %s cannot be read".formatted(table), e);
        }
    }

    private static ObjectNode tree(String table) throws IOException {
        try (InputStream in = RuleTable.class.getResourceAsStream("/label/" + table + ".json")) {
            ObjectNode own = (ObjectNode) MAPPER.readTree(Objects.requireNonNull(in, table));
            JsonNode base = own.remove("base");
            return base == null ? own : laidOver(tree(base.textValue()), own);
        }
    }

    private static ObjectNode laidOver(ObjectNode below, ObjectNode above) {
        above.properties().forEach(field -> {
            if (field.getValue() instanceof ObjectNode own
                    && below.get(field.getKey()) instanceof ObjectNode inherited
                    && !field.getKey().equals("coverage")) {
                laidOver(inherited, own);
            } else {
                below.set(field.getKey(), field.getValue());
            }
        });
        return below;
    }

    /** Whether the maker's particulars stand on the sewn label too, not only on a tag. */
    public boolean makerOnLabel() {
        return maker.onLabel();
    }

    /** @throws IllegalStateException where the table has no such rule */
    public Rule rule(String id) {
        Rule rule = rules.get(id);
        if (rule == null) {
            throw new IllegalStateException("The rules of %s have none called '%s'".formatted(name, id));
        }
        return rule;
    }
}

package tenterbook.labelling.rule;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import tenterbook.material.FibreShare;
import tenterbook.piece.Category;
import tenterbook.piece.label.ComponentKind;
import tenterbook.words.Message;

/**
 * One market's rules as data, from {@code /label/<market>.json} and {@code /label/rules.csv}. Values it leaves out are those of the table that it names as
 * its base.
 *
 * @param version stored with every issued label
 * @param notice shown wherever the rules' outcome is shown
 * @param namesOf the market whose fibre names are used
 * @param percent how a share is written, a format of number and fibre
 * @param otherLocal 'other fibre' in another language, by language tag, where its source was read
 * @param functional purposes for which a small share is named
 * @param animalWords words of parts of animal origin, as read; {@code animalUnread} as remembered
 * @param animalUnlike words before one of these that negate it, as in 'imitation'
 * @param plainTrims words of parts that are known not to come from animals
 * @param home names of the market's own country, lower case, where its origin rule is known
 * @param members names of the member states, lower case, for a union
 * @param hardToState terms that may stand for a whole composition that is hard to state
 * @param woolTable the table whose rules stand in place of these where there is wool in the piece; may be empty
 * @param parts when a part besides the cloth is left out of the statement, by its kind; a kind that is not there is asked about
 * @param languagesOf tags of the official languages of member states other than English, by their names, lower case
 * @param rules by name; see {@link #rule}
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
        String otherOne,
        String otherMany,
        Map<String, String> otherLocal,
        List<String> alwaysNamed,
        List<String> functional,
        List<String> decorative,
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
        List<String> hardToState,
        String woolTable,
        Map<ComponentKind, List<PartsBesideCloth.LeftOut>> parts,
        Map<String, List<String>> languagesOf,
        Map<String, Rule> rules,
        List<Misnomer> misnomers) {
    /** A word that looks like a fibre but is not. */
    record Misnomer(String word, String fix) {}

    /**
     * Which particulars of the maker a label carries.
     *
     * @param ways each is a set of particulars that does; the first that is recorded whole is printed
     * @param always particulars printed beside, where recorded
     * @param refuse whether a label without them is refused; otherwise they are asked for
     * @param onLabel whether they stand on the sewn label too, not only on a tag
     * @param outside the rule on pieces dyed outside the market's members; empty for none
     */
    record MakerNeeds(
            String rule,
            List<List<MakerLines.Particular>> ways,
            List<MakerLines.Particular> always,
            boolean refuse,
            boolean onLabel,
            String outside) {}

    /**
     * For which pieces care must be stated.
     *
     * @param washing whether a washing instruction is needed; otherwise dry cleaning does as well
     */
    public record CareNeeds(List<Category> categories, boolean washing, String fix) {}

    private static final Map<String, ObjectNode> FILES = new ConcurrentHashMap<>();
    private static final Map<String, RuleTable> READ = new HashMap<>();
    private static final ObjectMapper MAPPER = new ObjectMapper()
            .enable(
                    DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES,
                    DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES);

    static RuleTable of(Market market) {
        return named(market.name().toLowerCase(Locale.ROOT));
    }

    /** The version of a market's table, without reading its rules. */
    static String versionOf(Market market) {
        return inherited(market, "version").textValue();
    }

    /** Whether a market's table holds in this country, or at a place in it, without reading its rules. */
    static boolean sells(Market market, String country) {
        return inherited(market, "members")
                        .valueStream()
                        .anyMatch(name -> name.textValue().equals(place(country)))
                || OriginWords.home(
                        inherited(market, "home")
                                .valueStream()
                                .map(JsonNode::textValue)
                                .toList(),
                        country);
    }

    /** What a market's table says of itself in this field, or else the nearest table that it rests on. */
    private static JsonNode inherited(Market market, String field) {
        ObjectNode own = own(market.name().toLowerCase(Locale.ROOT));
        while (!own.has(field)) {
            own = own(own.get("base").textValue());
        }
        return own.get(field);
    }

    /** A table as it stands in its file, not to be changed. */
    private static ObjectNode own(String table) {
        return FILES.computeIfAbsent(table, RuleTable::json);
    }

    private static ObjectNode json(String table) {
        try (InputStream in = RuleTable.class.getResourceAsStream("/label/" + table + ".json")) {
            return (ObjectNode) MAPPER.readTree(Objects.requireNonNull(in, table));
        } catch (IOException e) {
            throw new UncheckedIOException("The rule table of %s cannot be read".formatted(table), e);
        }
    }

    /** By the name of its file. */
    static synchronized RuleTable named(String table) {
        RuleTable known = READ.get(table);
        if (known == null) {
            known = read(table);
            READ.put(table, known);
        }
        return known;
    }

    private static RuleTable read(String table) {
        try {
            return MAPPER.treeToValue(tree(table), RuleTable.class);
        } catch (IOException e) {
            throw new UncheckedIOException("The rule table of %s cannot be read".formatted(table), e);
        }
    }

    private static ObjectNode tree(String table) {
        ObjectNode own = own(table).deepCopy();
        JsonNode base = own.remove("base");
        JsonNode retainedAs = own.remove("retainedAs");
        ObjectNode rules = RuleRows.of(table);
        if (base != null) {
            ObjectNode below = tree(base.textValue());
            ObjectNode inherited = (ObjectNode) below.get("rules");
            if (retainedAs != null) {
                RuleRows.retain(inherited, RuleRows.of("common"), retainedAs.textValue());
            }
            RuleRows.layOver(inherited, rules);
            rules = inherited;
            own = laidOver(below, own);
        }
        own.set("rules", rules);
        return own;
    }

    private static ObjectNode laidOver(ObjectNode below, ObjectNode above) {
        above.properties().forEach(field -> {
            if (field.getValue() instanceof ObjectNode own
                    && below.get(field.getKey()) instanceof ObjectNode inherited) {
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

    /** The rules for these cloths: those on wool where one has wool in it and the market has such. */
    public RuleTable of(List<Component> components) {
        boolean wool = !woolTable.isEmpty()
                && components.stream().flatMap(c -> c.content().stream()).anyMatch(this::alwaysNamed);
        return wool ? named(woolTable) : this;
    }

    private boolean alwaysNamed(FibreShare share) {
        return FibreNames.entered(Rule.plain(share.fibre()))
                .filter(fibre -> alwaysNamed.contains(fibre.fibre()))
                .isPresent();
    }

    /** Shares under this percentage are not named; 0 where all are. */
    double otherBelow() {
        return rule("small").figure(0);
    }

    /** The greatest percentage of the fibre weight that counts as decoration; 0 where nothing is left out. */
    double decorativeAtMost() {
        return rule("decoration").figure(0);
    }

    /** The country of a place as the tables write it, as in 'portugal' for 'Porto Sarelho, Portugal'. */
    static String place(String place) {
        String plain = place.toLowerCase(Locale.ROOT).strip();
        return plain.substring(plain.lastIndexOf(',') + 1).strip();
    }

    /** Whether this kind of piece is covered; empty where that is not known. */
    Optional<Rule> coverage(Category category) {
        return Optional.ofNullable(
                rules.get("covers." + category.name().toLowerCase(Locale.ROOT).replace('_', '-')));
    }

    /** The questions of all rules that look for words at this place and find one. */
    public List<Question> asked(String place, String text) {
        String plain = Rule.plain(text);
        return rules.values().stream()
                .flatMap(rule -> rule.askedAt(place, plain).stream())
                .toList();
    }

    /**
     * Whether an offer must say that the piece is made in the market's own country, imported, or both; empty where the market has
     * no such rule, or where it is not known.
     */
    public Optional<Message> imported(String dyedIn, List<Component> components) {
        boolean known = !dyedIn.isBlank()
                && !components.isEmpty()
                && components.stream().noneMatch(c -> c.wovenIn().isEmpty());
        if (home.isEmpty() || !rules.containsKey("offer") || !known) {
            return Optional.empty();
        }
        boolean homeDyed = OriginWords.home(this, dyedIn);
        boolean anyWovenHome = components.stream().anyMatch(c -> OriginWords.home(this, c.wovenIn()));
        boolean allWovenHome = components.stream().allMatch(c -> OriginWords.home(this, c.wovenIn()));
        if (homeDyed && allWovenHome) {
            return Optional.empty();
        }
        return Optional.of(
                homeDyed || anyWovenHome
                        ? Message.of("rules.offer.both", "home", homeWhole)
                        : Message.of("rules.offer.imported"));
    }
}

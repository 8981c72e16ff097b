package tenterbook.ledger.revision;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;

class TwoPartsTest {
    private static final String[] NAMES = {"a", "b", "c/d", "e~f", "", "é", "0"};

    @Provide
    Arbitrary<JsonNode> trees() {
        Arbitrary<JsonNode> leaves = Arbitraries.oneOf(
                Arbitraries.strings()
                        .ofMaxLength(5)
                        .filter(TwoPartsTest::wellFormed)
                        .map(JsonNodeFactory.instance::textNode),
                Arbitraries.doubles().map(JsonNodeFactory.instance::numberNode),
                Arbitraries.integers().map(JsonNodeFactory.instance::numberNode),
                Arbitraries.of(true, false).map(JsonNodeFactory.instance::booleanNode),
                Arbitraries.just(JsonNodeFactory.instance.nullNode()));
        Arbitrary<JsonNode> tree = leaves;
        for (int depth = 0; depth < 3; depth++) {
            Arbitrary<JsonNode> inner = tree;
            tree = Arbitraries.oneOf(leaves, lists(inner), objects(inner).map(node -> (JsonNode) node));
        }
        return objects(tree).map(node -> (JsonNode) node);
    }

    private static boolean wellFormed(String text) {
        return new String(
                        text.getBytes(java.nio.charset.StandardCharsets.UTF_8), java.nio.charset.StandardCharsets.UTF_8)
                .equals(text);
    }

    private static Arbitrary<JsonNode> lists(Arbitrary<JsonNode> inner) {
        return inner.list().ofMaxSize(12).map(nodes -> {
            ArrayNode list = JsonNodeFactory.instance.arrayNode();
            list.addAll(nodes);
            return list;
        });
    }

    private static Arbitrary<ObjectNode> objects(Arbitrary<JsonNode> inner) {
        return Arbitraries.maps(Arbitraries.of(NAMES), inner).ofMaxSize(5).map(map -> {
            ObjectNode object = JsonNodeFactory.instance.objectNode();
            map.forEach(object::set);
            return object;
        });
    }

    @Provide
    Arbitrary<List<String>> paths() {
        return Arbitraries.of("a", "b", "c/d", "e~f", "é", "0", "*")
                .list()
                .ofMinSize(1)
                .ofMaxSize(4)
                .map(tokens -> String.join(".", tokens))
                .list()
                .ofMaxSize(5);
    }

    @Property(tries = 300)
    void splitAndMergedGivesTheSameText(@ForAll("trees") JsonNode tree, @ForAll("paths") List<String> paths) {
        String text = Canonical.json(tree);

        TwoParts parts = TwoParts.split(text, Privacy.of(paths.toArray(String[]::new)));

        assertThat(parts.merged()).isEqualTo(text);
        List<String> pointers = new ArrayList<>();
        RecordCodec.parsed(parts.fields()).fieldNames().forEachRemaining(pointers::add);
        assertThat(TwoParts.split(text, pointers)).isEqualTo(parts);
        for (String one : pointers) {
            assertThat(pointers).noneMatch(other -> other.startsWith(one + "/"));
        }
    }

    /** The published canonicalizer reads the text; ours writes the tree. */
    @Property(tries = 300)
    void aTreeIsWrittenAsThePublishedCanonicalizerWritesItsText(@ForAll("trees") JsonNode tree, @ForAll String one) {
        ObjectNode object = (ObjectNode) tree.deepCopy();
        String text = (one + "\b\t\n\f\r\"\\/\u0000\u001f\u007f\u2028é€😀").replaceAll("[\\ud800-\\udfff]", "x");
        object.put(text, text);
        object.putArray("numbers")
                .add(1L << 53)
                .add((1L << 53) + 1)
                .add(Long.MIN_VALUE)
                .add(0.1f)
                .add(-0.0)
                .add(1e21)
                .add(1e-7)
                .add(Double.MIN_VALUE)
                .add(new java.math.BigDecimal("3.10"))
                .add(new java.math.BigInteger("123456789012345678901234567890"))
                .add((short) 7);

        assertThat(Canonical.json(object)).isEqualTo(Canonical.json(object.toString()));
    }

    @Test
    void aNumberThatNoDoubleHoldsIsRefused() {
        ObjectNode object = JsonNodeFactory.instance.objectNode();

        assertThatThrownBy(() -> Canonical.json(object.put("n", Double.NaN)))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Canonical.json(object.put("n", new java.math.BigDecimal("1e400"))))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void whatIsPrivateIsNotInThePublicPart() {
        TwoParts parts = TwoParts.split(
                Canonical.json(
                        "{\"holder\":\"h\",\"events\":[{\"party\":\"p\",\"what\":\"sold\"},{\"what\":\"shown\"}],\"tags\":[\"x\",\"y\"]}"),
                Privacy.of("holder", "events.*.party", "tags.*", "absent.*.b"));

        assertThat(parts.shown())
                .isEqualTo("{\"events\":[{\"what\":\"sold\"},{\"what\":\"shown\"}],\"tags\":[null,null]}");
        assertThat(parts.fields())
                .isEqualTo("{\"/events/0/party\":\"p\",\"/holder\":\"h\",\"/tags/0\":\"x\",\"/tags/1\":\"y\"}");
    }

    @Test
    void aKindThatIsNotKnownIsPrivateAsAWhole() {
        TwoParts parts = TwoParts.split("{\"a\":1,\"b\":[2]}", Privacy.UNKNOWN);

        assertThat(parts).isEqualTo(new TwoParts("{}", "{\"/a\":1,\"/b\":[2]}"));
    }

    @Test
    void partsThatDoNotBelongTogetherAreRefused() {
        assertThatThrownBy(() -> new TwoParts("{\"events\":[]}", "{\"/events/0/party\":\"p\"}").merged())
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("its private field /events/0/party has no place in its public part");
    }
}

package tenterbook.ledger.revision;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Against the examples printed in RFC 8785, and the test data of its author (cyberphone/json-canonicalization). */
class CanonicalTest {
    @ParameterizedTest
    @CsvFileSource(resources = "rfc8785-appendix-b.csv", numLinesToSkip = 3)
    void numbersAreWrittenAsInAppendixB(String bits, String json) {
        double value = Double.longBitsToDouble(Long.parseUnsignedLong(bits, 16));

        String exact = value == 0 ? Double.toString(value) : new BigDecimal(value).toString();

        assertThat(Canonical.json("[" + exact + "]")).isEqualTo("[" + json + "]");
        assertThat(Canonical.json("[" + value + "]")).isEqualTo("[" + json + "]");
    }

    /** Sections 3.2.2 (the sample), 3.2.3 (its result) and 3.2.4 (its bytes). */
    @Test
    void theSampleOfSection322GivesTheBytesOfSection324() {
        String sample = """
                {
                  "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
                  "string": "\\u20ac$\\u000F\\u000aA'\\u0042\\u0022\\u005c\\\\\\"\\/",
                  "literals": [null, true, false]
                }""";

        String canonical = Canonical.json(sample);

        assertThat(canonical)
                .isEqualTo("{\"literals\":[null,true,false],\"numbers\":[333333333.3333333,1e+30,4.5,0.002,1e-27],"
                        + "\"string\":\"€$\\u000f\\nA'B\\\"\\\\\\\\\\\"/\"}");
        assertThat(HexFormat.ofDelimiter(" ").formatHex(canonical.getBytes(StandardCharsets.UTF_8)))
                .isEqualTo("7b 22 6c 69 74 65 72 61 6c 73 22 3a 5b 6e 75 6c 6c 2c 74 72 "
                        + "75 65 2c 66 61 6c 73 65 5d 2c 22 6e 75 6d 62 65 72 73 22 3a "
                        + "5b 33 33 33 33 33 33 33 33 33 2e 33 33 33 33 33 33 33 2c 31 "
                        + "65 2b 33 30 2c 34 2e 35 2c 30 2e 30 30 32 2c 31 65 2d 32 37 "
                        + "5d 2c 22 73 74 72 69 6e 67 22 3a 22 e2 82 ac 24 5c 75 30 30 "
                        + "30 66 5c 6e 41 27 42 5c 22 5c 5c 5c 5c 5c 22 2f 22 7d");
    }

    /** Section 3.2.3: names are ordered by UTF-16 code units, so a smiley stands before a Hebrew presentation form. */
    @Test
    void namesAreOrderedAsInSection323() {
        String canonical = Canonical.json("""
                {
                  "\\u20ac": "Euro Sign",
                  "\\r": "Carriage Return",
                  "\\ufb33": "Hebrew Letter Dalet With Dagesh",
                  "1": "One",
                  "\\ud83d\\ude00": "Emoji: Grinning Face",
                  "\\u0080": "Control",
                  "\\u00f6": "Latin Small Letter O With Diaeresis"
                }""");

        assertThat(canonical)
                .isEqualTo("{\"\\r\":\"Carriage Return\",\"1\":\"One\",\"\u0080\":\"Control\","
                        + "\"ö\":\"Latin Small Letter O With Diaeresis\",\"€\":\"Euro Sign\","
                        + "\"\ud83d\ude00\":\"Emoji: Grinning Face\",\"\ufb33\":\"Hebrew Letter Dalet With Dagesh\"}");
    }

    /** cyberphone/json-canonicalization, testdata: structures, arrays and unicode. */
    @Test
    void structuresArraysAndUnicodeAreWrittenAsInTheAuthorsTestData() {
        assertThat(Canonical.json("""
                {
                  "1": {"f": {"f": "hi","F": 5} ,"\\n": 56.0},
                  "10": { },
                  "": "empty",
                  "a": { },
                  "111": [ { } ],
                  "A": { }
                }"""))
                .isEqualTo(
                        "{\"\":\"empty\",\"1\":{\"\\n\":56,\"f\":{\"F\":5,\"f\":\"hi\"}},\"10\":{},\"111\":[{}],\"A\":{},\"a\":{}}");
        assertThat(Canonical.json("[ 56, { \"d\": true, \"10\": null, \"1\": [ ] } ]"))
                .isEqualTo("[56,{\"1\":[],\"10\":null,\"d\":true}]");
        // Not normalized: what was typed stays what was typed.
        assertThat(Canonical.json("{\"Unnormalized Unicode\":\"\\u1e0d\\u0307\"}"))
                .isEqualTo("{\"Unnormalized Unicode\":\"\u1e0d\u0307\"}");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "{", "{\"a\":1}x", "[1e400]", "[NaN]", "{\"a\":1,\"a\":2}", "plain words"})
    void whatIsNotJsonIsRefused(String text) {
        assertThatThrownBy(() -> Canonical.json(text))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("This text is not JSON that RFC 8785 can put in order");
    }

    @Property
    void doingItAgainChangesNothingAndEveryDoubleComesBack(@ForAll double value) {
        String once = Canonical.json("[" + value + "]");

        assertThat(Canonical.json(once)).isEqualTo(once);
        assertThat(Double.parseDouble(once.substring(1, once.length() - 1))).isEqualTo(value == 0 ? 0.0 : value);
    }
}

package tenterbook.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DateTextTest {
    @ParameterizedTest
    @CsvSource(
            nullValues = "-",
            value = {
                "2024-03-05, 2024-03-05, 2024-03-05",
                "2024-3-5, 2024-03-05, 2024-03-05",
                "5 March 2024, 2024-03-05, 2024-03-05",
                "5th of March 2024, 2024-03-05, 2024-03-05",
                "'March 5, 2024', 2024-03-05, 2024-03-05",
                "5 Mar. 2024, 2024-03-05, 2024-03-05",
                "05.03.2024, 2024-03-05, 2024-03-05",
                "25/12/2024, 2024-12-25, 2024-12-25",
                "12/25/2024, 2024-12-25, 2024-12-25",
                "5/5/2024, 2024-05-05, 2024-05-05",
                "March 2024, 2024-03-01, 2024-03-31",
                "Sept 2023, 2023-09-01, 2023-09-30",
                "2024-02, 2024-02-01, 2024-02-29",
                "2023-02, 2023-02-01, 2023-02-28",
                "spring 2021, 2021-03-01, 2021-05-31",
                "fall 2021, 2021-09-01, 2021-11-30",
                "winter 2023, 2023-12-01, 2024-02-29",
                "2019, 2019-01-01, 2019-12-31",
                "1990s, 1990-01-01, 1999-12-31",
                "the 1990s, 1990-01-01, 1999-12-31",
                "2019 to 2021, 2019-01-01, 2021-12-31",
                "2019-2021, 2019-01-01, 2021-12-31",
                "2019–2021, 2019-01-01, 2021-12-31",
                "2019/2021, 2019-01-01, 2021-12-31",
                "May 2020 - June 2020, 2020-05-01, 2020-06-30",
                "before 2020, -, 2019-12-31",
                "after 2020, 2021-01-01, -",
                "since 2020, 2020-01-01, -",
                "forgot, -, -"
            })
    void aDateIsKnownAsFarAsItWasSaid(String text, LocalDate from, LocalDate to) {
        PartialDate date = DateText.read(text);

        assertThat(date.from()).isEqualTo(from);
        assertThat(date.to()).isEqualTo(to);
        assertThat(date.entered()).isEqualTo(text);
        assertThat(date.recorded()).isTrue();
        assertThat(date.about()).isFalse();
    }

    @ParameterizedTest
    @ValueSource(strings = {"about 2019", "circa 2019", "ca. 2019", "c. 2019", "~2019", "maybe 2019"})
    void aboutIsKept(String text) {
        PartialDate date = DateText.read(text);

        assertThat(date.about()).isTrue();
        assertThat(date.year()).isEqualTo(2019);
        assertThat(date.entered()).isEqualTo(text);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "2024-02-30 | there is no such day",
                "30 February 2024 | there is no such day",
                "2024-13 | there is no such day",
                "3/4/2024 | it can be read in two ways",
                "decade 2020 | “decade” is not a month or a season",
                "mayhem 2024 | “mayhem” is not a month or a season",
                "5/3/24 | was not understood as a date. Expected",
                "yesterday | was not understood as a date. Expected",
                "24 | was not understood as a date. Expected"
            })
    void whatIsNoDateOrTwoDatesIsRefused(String text, String why) {
        assertThatThrownBy(() -> DateText.read(text))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining(why);
    }

    @ParameterizedTest
    @ValueSource(strings = {"2021 to 2019", "June 2020 - May 2020"})
    void aRangeThatRunsBackwardsIsRefused(String text) {
        assertThatThrownBy(() -> DateText.read(text))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("runs forwards");
    }

    @Provide
    Arbitrary<String> texts() {
        Arbitrary<String> pieces = Arbitraries.of(
                "2024", "19", "5", "31", "13", "0", "-", "–", "/", ".", " ", " to ", "March", "feb", "winter",
                "spring ", "about ", "before ", "after ", "since ", "0s", "th", ",", "the ", "\u2009", "forgot");
        return Arbitraries.oneOf(
                pieces.list().ofMinSize(1).ofMaxSize(7).map(parts -> String.join("", parts)),
                pieces.list().ofMinSize(1).ofMaxSize(5).map(parts -> String.join(" ", parts)),
                Arbitraries.strings().all().ofMaxLength(300),
                Arbitraries.strings().ascii().ofMaxLength(30));
    }

    @Property(tries = 10_000)
    void anyTextIsReadAsItStandsOrRefused(@ForAll("texts") String text) {
        PartialDate date;
        try {
            date = DateText.read(text);
        } catch (IllegalArgumentException refused) {
            assertThat(refused.getClass()).isEqualTo(tenterbook.words.Refusal.class);
            assertThat(refused.getMessage()).isNotBlank();
            return;
        }
        assertThat(date.entered()).isEqualTo(text.strip());
        if (date.from() != null && date.to() != null) {
            assertThat(date.from()).isBeforeOrEqualTo(date.to());
        }
    }

    @org.junit.jupiter.api.Test
    void aRefusalSaysWhatIsWrongOnce() {
        org.assertj.core.api.Assertions.assertThatThrownBy(() -> DateText.read("the 3rd"))
                .hasMessage(
                        "“the 3rd” was not understood as a date. Expected something like ‘2024-03-05’, ‘March 2024’, ‘about 2019’ or ‘forgot’.");
    }

    @Property
    boolean aDayWrittenAsIsoIsThatDay(@ForAll("days") LocalDate day) {
        return DateText.read(day.toString()).equals(PartialDate.of(day));
    }

    @Provide
    Arbitrary<LocalDate> days() {
        return Arbitraries.longs().between(-365_000 / 2, 365_000).map(LocalDate::ofEpochDay);
    }
}

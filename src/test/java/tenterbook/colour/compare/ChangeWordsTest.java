package tenterbook.colour.compare;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tenterbook.colour.space.Ciede2000;
import tenterbook.colour.space.Interval;
import tenterbook.colour.space.Lab;

/** A verdict comes from where a change may lie, whatever its middle value. */
class ChangeWordsTest {
    private static RegionChange change(Interval lightness, Interval a, Interval b, Interval ciede2000) {
        Lab before = new Lab(40, 0, -20);
        return new RegionChange(before, before, ColourChange.between(before, before), lightness, ciede2000, null, a, b);
    }

    @ParameterizedTest
    @CsvSource({
        "0, 7.2, no change can be seen: between none and a plain one",
        "0.7, 3, no change can be seen: between hardly any and a noticeable one",
        "0, 0.3, no change can be seen",
        "0.6, 0.9, no change can be seen: hardly any at most",
        "2.1, 3.4, a noticeable one",
        "4, 12, between a clear one and a great one"
    })
    void aChangeWhoseLowEndAnEyeDoesNotSeeIsNotCalledOne(double low, double high, String words) {
        assertThat(ChangeWords.size(new Interval(low, high))).hasToString(words);
        Interval none = new Interval(0, 0);
        assertThat(ChangeWords.visible(change(none, none, none, new Interval(low, high))))
                .isEqualTo(low >= 1);
    }

    @Test
    void onlyWhatIsLargerThanItsOwnDoubtIsNamed() {
        RegionChange change = change(new Interval(4, 6), new Interval(-1, 2), new Interval(2, 4), new Interval(3, 6));
        assertThat(ChangeWords.directions(change, 0)).hasToString("[paler, yellower]");
        assertThat(ChangeWords.directions(change, 2.5))
                .as("the calibrations may be off by 2.5")
                .hasToString("[paler]");
        assertThat(ChangeWords.directions(change, 5)).isEmpty();
    }

    @Test
    void theSignsHaveTheirOwnWordsAndAHairsBreadthHasNone() {
        RegionChange change =
                change(new Interval(-6, -4), new Interval(-3, -2), new Interval(-0.3, -0.1), new Interval(3, 6));
        assertThat(ChangeWords.directions(change, 0)).hasToString("[darker, greener]");
    }

    /** Two lights of a grey: ΔE00 worked out by the formula, the limit a hair's breadth above and below it. */
    @Test
    void aDifferenceIsNotToBeToldApartUpToWhatTwoPhotographsOfOneClothDifferByAndNotBeyond() {
        Lab one = new Lab(50, 0, 0);
        Lab two = new Lab(56, 0, 0);
        double difference = Ciede2000.difference(one, two);
        Interval none = new Interval(0, 0);
        RegionChange change =
                new RegionChange(one, two, ColourChange.between(one, two), none, new Interval(0, 12), null, none, none);
        assertThat(difference).isBetween(5.0, 7.0);
        assertThat(ChangeWords.notApart(change, difference + 1e-6)).isTrue();
        assertThat(ChangeWords.notApart(change, difference)).isTrue();
        assertThat(ChangeWords.notApart(change, difference - 1e-6)).isFalse();
        assertThat(ChangeWords.notApart(change, 0)).as("nothing is known").isFalse();
    }
}

package tenterbook.colour.target;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tenterbook.colour.palette.Pixels;
import tenterbook.colour.palette.Region;
import tenterbook.colour.space.Ciede2000;
import tenterbook.colour.space.Lab;
import tenterbook.colour.space.LinearRgb;

class CorrectionTest {
    private static final Region CARD = Region.rectangle(0.05, 0.1, 0.2, 0.35);
    private static final Region DARK_CARD = Region.rectangle(0.05, 0.6, 0.2, 0.9);
    /** Grounds of the sample studio's cloths, all invented, within what sRGB can show. */
    private static final List<Lab> CLOTHS = List.of(
            new Lab(62, -7, -18), new Lab(56, -18, 12), new Lab(43, 39, 27), new Lab(49, 16, 24), new Lab(31, 4, 9));

    @ParameterizedTest
    @CsvSource({"1,1,1", "1.09,1,0.86", "0.7,1,1.3", "1.25,0.9,0.55", "0.45,0.45,0.45", "1.3,1.3,1.3"})
    void aGreyCardTakesOutAnyCastAndExposure(double r, double g, double b) {
        Pixels picture = scene().seen(CardScene.gains(r, g, b), 1.5);
        Correction correction = Correction.byGrey(CardReading.of(picture, CARD), KnownCard.grey18());
        for (int i = 0; i < CLOTHS.size(); i++) {
            MeasuredColour found = correction.measure(picture, cloth(i), WhitePoint.D65);
            assertThat(Ciede2000.difference(found.lab(), CLOTHS.get(i)))
                    .as("%s under gains %s/%s/%s", CLOTHS.get(i), r, g, b)
                    .isLessThan(1);
            assertThat(found.how()).isEqualTo(Calibration.GREY_CARD);
            assertThat(found.likelyError())
                    .isGreaterThanOrEqualTo(
                            StatedError.of(Calibration.GREY_CARD).nineInTen());
        }
    }

    @Property(tries = 40)
    void whateverTheGainsTheCardItselfComesOutAsItsSheetSays(
            @ForAll @DoubleRange(min = 0.5, max = 1.6) double r,
            @ForAll @DoubleRange(min = 0.5, max = 1.6) double g,
            @ForAll @DoubleRange(min = 0.5, max = 1.6) double b) {
        KnownCard sheet = new KnownCard("own card", WhitePoint.D50.adapt(new Lab(58, -1.2, 2.1), WhitePoint.D65));
        Pixels picture = new CardScene(80, 60, new Lab(80, 0, 0))
                .paint(CARD, sheet.lab())
                .seen(CardScene.gains(r, g, b), 1);
        MeasuredColour card =
                Correction.byGrey(CardReading.of(picture, CARD), sheet).measure(picture, CARD, WhitePoint.D50);
        assertThat(Ciede2000.difference(card.lab(), new Lab(58, -1.2, 2.1))).isLessThan(0.5);
        assertThat(card.white()).isEqualTo(WhitePoint.D50);
    }

    @Test
    void whiteAndBlackTakeOutStrayLightAsWell() {
        KnownCard white = KnownCard.neutral("white", 0.8);
        KnownCard black = KnownCard.neutral("black", 0.04);
        UnaryOperator<LinearRgb> hazy =
                c -> new LinearRgb(0.9 * c.red() + 0.03, 0.85 * c.green() + 0.035, 0.7 * c.blue() + 0.05);
        Pixels picture =
                scene().paint(CARD, white.lab()).paint(DARK_CARD, black.lab()).seen(hazy, 1.5);
        Correction both = Correction.byWhiteAndBlack(
                CardReading.of(picture, CARD), white, CardReading.of(picture, DARK_CARD), black);
        Correction one = Correction.byGrey(CardReading.of(picture, CARD), white);
        for (int i = 0; i < CLOTHS.size(); i++) {
            Lab found = both.measure(picture, cloth(i), WhitePoint.D65).lab();
            assertThat(Ciede2000.difference(found, CLOTHS.get(i)))
                    .as("%s", CLOTHS.get(i))
                    .isLessThan(1);
        }
        Lab dark = one.measure(picture, cloth(4), WhitePoint.D65).lab();
        assertThat(Ciede2000.difference(dark, CLOTHS.get(4)))
                .as("one card is not enough")
                .isGreaterThan(3);
        assertThatThrownBy(() -> Correction.byWhiteAndBlack(
                        CardReading.of(picture, DARK_CARD), white, CardReading.of(picture, CARD), black))
                .isInstanceOf(CardRefused.class)
                .hasMessageContaining("Mark the white one first");
    }

    @Test
    void aClippedCardIsRefusedWithItsShare() {
        Pixels picture = scene().shade(
                        Region.rectangle(0.05, 0.1, 0.2, 0.16), (x, y, old) -> new LinearRgb(1.2, 1.2, 1.2))
                .seen(CardScene.gains(1, 1, 1), 1);
        CardReading reading = CardReading.of(picture, CARD);
        assertThat(reading.tooBright()).isCloseTo(0.24, within(0.02));
        assertThatThrownBy(() -> Correction.byGrey(reading, KnownCard.grey18()))
                .isInstanceOf(CardRefused.class)
                .hasMessageMatching(
                        "The card is too bright: 2[345]\u00a0% of its pixels are clipped; photograph it again a "
                                + "little darker\\.");
    }

    @Test
    void aBlackCardIsRefusedAsTooDark() {
        Pixels picture = scene().seen(CardScene.gains(0.001, 0.001, 0.001), 0);
        assertThat(CardReading.of(picture, CARD).fault())
                .hasValueSatisfying(s -> assertThat(s.inEnglish())
                        .contains("too dark: 100\u00a0%")
                        .contains("more light"));
    }

    @Test
    void aCardHalfInShadowOrWithAGradientIsRefused() {
        Pixels shadow = scene().shade(Region.rectangle(0.05, 0.1, 0.12, 0.35), (x, y, old) -> old.times(0.7))
                .seen(CardScene.gains(1, 1, 1), 1);
        Pixels gradient = scene().shade(CARD, (x, y, old) -> old.times(1 + 2.5 * (x - 0.125)))
                .seen(CardScene.gains(1, 1, 1), 1);
        for (Pixels picture : List.of(shadow, gradient)) {
            assertThatThrownBy(() -> Correction.byGrey(CardReading.of(picture, CARD), KnownCard.grey18()))
                    .isInstanceOf(CardRefused.class)
                    .hasMessageContaining("lit unevenly")
                    .hasMessageContaining("without shadow");
        }
        Pixels slight = scene().shade(CARD, (x, y, old) -> old.times(1 + 0.4 * (x - 0.125)))
                .seen(CardScene.gains(1, 1, 1), 1);
        CardReading reading = CardReading.of(slight, CARD);
        assertThat(reading.fault()).isEmpty();
        assertThat(Correction.byGrey(reading, KnownCard.grey18()).likelyError())
                .isGreaterThan(StatedError.of(Calibration.GREY_CARD).nineInTen() + 0.01);
    }

    @Test
    void aColouredThingMarkedAsTheCardIsRefused() {
        Pixels picture = scene().paint(CARD, new Lab(40, 50, 35)).seen(CardScene.gains(1, 1, 1), 1);
        assertThatThrownBy(() -> Correction.byGrey(CardReading.of(picture, CARD), KnownCard.grey18()))
                .hasMessageContaining("is no \"18 % grey card\"")
                .hasMessageContaining("Mark the card itself");
    }

    @Test
    void aCardOfAFewPixelsAndCrossedCornersAreRefused() {
        Pixels picture = scene().seen(CardScene.gains(1, 1, 1), 1);
        assertThatThrownBy(() -> CardReading.of(picture, Region.rectangle(0.1, 0.1, 0.11, 0.12)))
                .hasMessageContaining("60 pixels or more are needed");
        List<Region.Corner> crossed = new ArrayList<>(CARD.corners());
        crossed.add(crossed.remove(1));
        assertThatThrownBy(() -> new CardOutline(crossed)).hasMessageContaining("lines that cross");
        assertThatThrownBy(() -> new CardOutline(CARD.corners().subList(0, 3))).hasMessageContaining("3 corners");
    }

    @Test
    void anUncalibratedColourSaysSoOnEveryNumber() {
        Pixels picture = scene().seen(CardScene.gains(1.09, 1, 0.86), 1);
        MeasuredColour raw = Correction.NONE.measure(picture, cloth(0), WhitePoint.D65);
        assertThat(raw.likelyError()).isNull();
        assertThat(raw.text()).contains("D65").contains("2°").contains("uncalibrated");
        assertThat(raw.note()).startsWith("Uncalibrated:");
        MeasuredColour measured = Correction.byGrey(CardReading.of(picture, CARD), KnownCard.grey18())
                .measure(picture, cloth(0), WhitePoint.D50);
        assertThat(measured.text()).contains("D50").contains("one grey card; likely within ΔE00 8.");
        assertThatThrownBy(() ->
                        new MeasuredColour(raw.lab(), WhitePoint.D65, "2°", 0, 1, null, Calibration.GREY_CARD, ""))
                .hasMessageContaining("likely error");
    }

    @Test
    void clippedClothIsSaidBesideTheNumber() {
        Pixels picture = scene().seen(CardScene.gains(1, 1, 1), 0);
        Pixels burnt = scene().paint(cloth(0), new Lab(100, 0, 0)).seen(CardScene.gains(1, 1, 1), 0);
        Correction correction = Correction.byGrey(CardReading.of(picture, CARD), KnownCard.grey18());
        assertThat(correction.measure(picture, cloth(0), WhitePoint.D65).note()).isEmpty();
        assertThat(correction.measure(burnt, cloth(0), WhitePoint.D65).note())
                .contains("100\u00a0% of the measured pixels");
    }

    @Test
    void knownCardsAreNeutralAndImpossibleOnesAreRefused() {
        // Y 0.18 is L* 49.50: 116 · 0.18^(1/3) − 16 (CIE 15).
        assertThat(KnownCard.grey18().lab().lightness()).isCloseTo(49.496, within(0.001));
        assertThat(KnownCard.grey18().lab().chroma()).isLessThan(1e-9);
        assertThatThrownBy(() -> KnownCard.neutral("18", 18)).hasMessageContaining("18\u00a0% is 0.18");
        assertThatThrownBy(() -> new KnownCard("none", new Lab(0, 0, 0))).hasMessageContaining("data sheet");
    }

    private static CardScene scene() {
        CardScene scene = new CardScene(400, 200, new Lab(75, 1, 6))
                .paint(CARD, KnownCard.grey18().lab());
        for (int i = 0; i < CLOTHS.size(); i++) {
            scene.paint(cloth(i), CLOTHS.get(i));
        }
        return scene;
    }

    private static Region cloth(int i) {
        return Region.rectangle(0.25 + 0.15 * i, 0.2, 0.38 + 0.15 * i, 0.8);
    }
}

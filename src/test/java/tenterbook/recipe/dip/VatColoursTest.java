package tenterbook.recipe.dip;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import tenterbook.colour.space.Ciede2000;
import tenterbook.colour.space.Lab;

class VatColoursTest {
    private final VatColours blues = new VatColours(
            List.of(new Lab(36, -2, -27), new Lab(62, -6, -18), new Lab(26, 0, -22), new Lab(48, -5, -24)));

    @Test
    void aPieceOfTheVatLiesOnTheWayItself() {
        assertThat(blues.beside(new Lab(36, -2, -27))).isZero();
        assertThat(blues.at(42)).isEqualTo(new Lab(42, -3.5, -25.5));
    }

    @Test
    void bluesBetweenBesideAndBeyondThePiecesArePlausible() {
        assertThat(blues.passNear(new Lab(42, -3, -26))).isTrue();
        assertThat(blues.passNear(new Lab(76, -4, -11))).isTrue();
        assertThat(blues.passNear(new Lab(20, 1, -15))).isTrue();
        assertThat(blues.passNear(new Lab(95, 0, 0))).isTrue();
    }

    @Test
    void redYellowAndGreenAreNot() {
        for (Lab other : List.of(new Lab(44, 41, 31), new Lab(60, 0, 70), new Lab(46, -40, 20))) {
            assertThat(blues.passNear(other)).isFalse();
            assertThat(blues.beside(other)).isEqualTo(Ciede2000.difference(other, blues.at(other.lightness())));
        }
    }

    @Test
    void onePieceIsEnoughAndNoneIsRefused() {
        assertThat(new VatColours(List.of(new Lab(40, -4, -24))).passNear(new Lab(70, -2, -12)))
                .isTrue();
        assertThatThrownBy(() -> new VatColours(List.of())).hasMessageContaining("at least one piece");
    }
}

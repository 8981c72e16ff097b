package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import tenterbook.archive.Kinds;
import tenterbook.colour.compare.DepthOfShade;
import tenterbook.colour.space.Lab;
import tenterbook.colour.space.LinearRgb;
import tenterbook.imaging.Photo;
import tenterbook.material.Cloth;
import tenterbook.material.ClothId;
import tenterbook.material.Lot;
import tenterbook.material.LotId;
import tenterbook.material.Role;
import tenterbook.measure.Digest;
import tenterbook.measure.QuantityText;
import tenterbook.measure.Unit;
import tenterbook.piece.ColourRegion;
import tenterbook.piece.ColourRole;
import tenterbook.piece.MadeIn;
import tenterbook.piece.PhotoRole;
import tenterbook.piece.Piece;
import tenterbook.piece.PieceNumber;
import tenterbook.piece.PiecePhoto;
import tenterbook.recipe.Charge;
import tenterbook.recipe.Clamping;
import tenterbook.recipe.ClampingId;
import tenterbook.recipe.Cut;
import tenterbook.recipe.DipSeries;
import tenterbook.recipe.Step;
import tenterbook.recipe.StepKind;

/** The question of dips over HTTP, on pieces whose grounds lie on a known curve. */
class DipsTest extends Scenario {
    /** Reference curve: A = 18, b = 0.22, c = 0.35 (computed; the figures below are K/S for these dips). */
    private static final int[] DIPS = {1, 2, 3, 4, 6, 8, 10, 12};

    private static final double[] KS = {3.905, 6.757, 9.047, 10.884, 13.542, 15.253, 16.356, 17.065};

    @BeforeEach
    void fill() {
        wiring.archive().ledger().write("test", act -> {
            act.create(
                    Kinds.CLOTH,
                    new Cloth(
                            new ClothId("SH"),
                            "silk habotai",
                            null,
                            "",
                            null,
                            null,
                            "",
                            "",
                            "",
                            "",
                            null,
                            null,
                            null,
                            ""));
            return act.create(
                    Kinds.LOT,
                    new Lot(new LotId("weld-1"), Role.DYE, "weld", null, "", "", "", "", "", null, null, null, ""));
        });
    }

    private static Lab ground(double ks) {
        return new LinearRgb(DepthOfShade.reflectance(ks), 0.25, 0.45).lab();
    }

    private void piece(String number, String dips, Lab ground, String bathOf) {
        Digest photo = Digest.of(number.getBytes(StandardCharsets.UTF_8));
        ClampingId clamping = new ClampingId("C-" + number);
        Step dipping = new Step(
                StepKind.DIPS,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                "Mare",
                null,
                new DipSeries(QuantityText.read(dips, Unit.COUNT), null, null, null),
                "");
        Step bath = new Step(
                StepKind.BATH,
                null,
                List.of(new Charge(new LotId("weld-1"), null, null)),
                null,
                null,
                null,
                null,
                null,
                "",
                null,
                null,
                "");
        ColourRegion region = new ColourRegion(ColourRole.GROUND, "", ground, 0.6, List.of(), false);
        wiring.archive().ledger().write("test", act -> {
            act.create(
                    Kinds.PHOTO,
                    new Photo(
                            photo,
                            number,
                            1,
                            "image/jpeg",
                            1,
                            1,
                            1,
                            null,
                            null,
                            null,
                            null,
                            false,
                            true,
                            List.of(),
                            List.of(),
                            Photo.UNCALIBRATED,
                            List.of()));
            act.create(
                    Kinds.CLAMPING,
                    new Clamping(
                            clamping,
                            "",
                            null,
                            null,
                            null,
                            List.of(new Cut(new ClothId("SH"), null, null, null, null)),
                            bathOf.isEmpty() ? List.of(dipping) : List.of(bath, dipping),
                            null,
                            "",
                            "",
                            "",
                            "",
                            null));
            return act.create(
                    Kinds.PIECE,
                    new Piece(
                            new PieceNumber(number),
                            "",
                            "",
                            null,
                            null,
                            null,
                            null,
                            null,
                            "",
                            List.of(new MadeIn(clamping, null, "")),
                            null,
                            null,
                            "",
                            null,
                            "",
                            List.of(new PiecePhoto(photo, PhotoRole.FRONT, "", 1, List.of(region))),
                            null,
                            null,
                            null,
                            ""));
        });
    }

    private static String query(Lab lab) {
        return String.format(Locale.ROOT, "%.6f,%.6f,%.6f", lab.lightness(), lab.a(), lab.b());
    }

    @Test
    void piecesOnAKnownCurveGiveBackTheCurveAndTheDipsOfATarget() throws IOException {
        for (int i = 0; i < DIPS.length; i++) {
            piece("V24-00" + (i + 1), Integer.toString(DIPS[i]), ground(KS[i]), "");
        }
        piece("V24-100", "5", new Lab(50, -20, 30), "weld");
        piece("V24-101", "forgot", ground(9), "");

        JsonNode answer = client.get("/api/dips?cloth=SH&vat=Mare&target=" + query(ground(12)))
                .json();

        assertThat(answer.get("points")).hasSize(8);
        assertThat(answer.get("uncalibrated").intValue()).isEqualTo(8);
        // Grounds pass through CIELAB and the figures have three decimals, so the fit is near, not exact.
        assertThat(answer.at("/A/value").doubleValue()).isCloseTo(18, within(0.1));
        assertThat(answer.at("/b/value").doubleValue()).isCloseTo(0.22, within(0.005));
        assertThat(answer.get("targetDepth").doubleValue()).isCloseTo(12, within(0.01));
        assertThat(answer.at("/dips/verdict").textValue()).isEqualTo("within");
        assertThat(answer.at("/dips/best").doubleValue()).isCloseTo(4.736, within(0.02));
        assertThat(answer.at("/dips/evidence").get(0).textValue()).isEqualTo("V24-004");

        JsonNode deep =
                client.get("/api/dips?cloth=SH&target=" + query(ground(25))).json();
        assertThat(deep.at("/dips/verdict").textValue()).isEqualTo("not reachable");
        JsonNode more = client.get("/api/dips?cloth=SH&from=V24-002&target=" + query(ground(12)))
                .json();
        assertThat(more.at("/moreDips/best").doubleValue()).isCloseTo(4.736 - 2, within(0.03));
        JsonNode mute = client.get("/api/dips?cloth=SH&from=V24-100&target=" + query(ground(12)))
                .json();
        assertThat(mute.get("moreRefused").textValue()).contains("V24-100", "one vat alone");
        assertThat(client.get("/dips?cloth=SH&target=" + query(ground(12))).words())
                .contains("About 4.7 dips");
    }

    @Test
    void aTargetThatIsNoColourIsToldBesideItsFieldAndKept() throws IOException {
        for (int i = 0; i < DIPS.length; i++) {
            piece("V24-00" + (i + 1), Integer.toString(DIPS[i]), ground(KS[i]), "");
        }
        Answer answer = client.get("/dips?cloth=SH&vat=Mare&target=dark&from=v24-099");
        assertThat(answer.status()).isEqualTo(400);
        assertThat(answer.field("target")).isEqualTo("dark");
        assertThat(answer.field("from")).isEqualTo("v24-099");
        assertThat(answer.field("cloth")).isEqualTo("SH");
        assertThat(answer.text()).contains("id=\"target-problem\"", "id=\"from-problem\"");
        assertThat(answer.words()).contains("three numbers were expected", "There is no piece “v24-099”");
        assertThat(client.get("/api/dips?cloth=SH&target=dark").status()).isEqualTo(400);

        Answer fine = client.get("/dips?cloth=SH&target=2f4f7f&from=v24-002");
        assertThat(fine.status()).isEqualTo(200);
        assertThat(fine.text()).contains("href=\"/pieces/V24-002\"").doesNotContain("-problem\"");
    }

    @Test
    void underFourDistinctCountsThereIsNoCurveAndTheReasonIsGiven() throws IOException {
        for (int i = 0; i < 3; i++) {
            piece("V24-00" + (i + 1), Integer.toString(DIPS[i]), ground(KS[i]), "");
        }
        JsonNode answer = client.get("/api/dips?cloth=SH&target=36,-3,-26").json();
        assertThat(answer.get("refused").textValue()).contains("3 distinct dip counts", "four");
        assertThat(answer.has("dips")).isFalse();
        assertThat(client.get("/dips?cloth=SH&target=36,-3,-26").words()).contains("needs four");
    }

    @Test
    void aColourThatTheVatDoesNotGiveGetsNoDipsButTheNearestPiece() throws IOException {
        for (int i = 0; i < DIPS.length; i++) {
            piece("V24-00" + (i + 1), Integer.toString(DIPS[i]), ground(KS[i]), "");
        }
        // A madder red has a depth too, and the curve alone would name dips for it.
        JsonNode red = client.get("/api/dips?cloth=SH&vat=Mare&target=44,41,31").json();
        assertThat(red.has("dips")).isFalse();
        assertThat(red.get("targetRefused").textValue()).contains("do not pass near this one");
        assertThat(red.get("nearest").get("difference").doubleValue()).isGreaterThan(20);
        assertThat(client.get("/dips?cloth=SH&vat=Mare&target=44,41,31").words())
                .contains("No dips are named", "Nearest measured piece: ")
                .doesNotContain("About ");
        JsonNode blue = client.get("/api/dips?cloth=SH&vat=Mare&target=" + query(ground(6.7)))
                .json();
        assertThat(blue.get("nearest").get("piece").textValue()).isEqualTo("V24-002");
        assertThat(blue.get("nearest").get("difference").doubleValue()).isLessThan(1);
        assertThat(blue.get("dips").get("verdict").textValue()).isEqualTo("within");
    }
}

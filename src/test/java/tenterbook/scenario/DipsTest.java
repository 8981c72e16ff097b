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
    private static final int[] DIPS = {1, 2, 3, 4, 6, 8, 10, 12};

    /** 6 (1 − e^(−0.12 n)), computed: about the depths of the sample archive's silk. */
    private static final double[] KS = {0.678, 1.280, 1.814, 2.287, 3.079, 3.703, 4.193, 4.578};

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
                    new Lot(
                            new LotId("weld-1"),
                            Role.DYE,
                            "weld",
                            null,
                            "",
                            "",
                            "",
                            "",
                            "",
                            null,
                            null,
                            null,
                            "",
                            null));
        });
    }

    /** A blue of this depth: CIELAB of a grey of the same luminance, made bluer. */
    private static Lab ground(double ks) {
        double y = DepthOfShade.reflectance(ks);
        return new Lab(new LinearRgb(y, y, y).lab().lightness(), -4, -24);
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
                            null,
                            null,
                            null,
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
                            "",
                            null));
        });
    }

    private static String query(Lab lab) {
        return String.format(Locale.ROOT, "%.6f,%.6f,%.6f", lab.lightness(), lab.a(), lab.b());
    }

    private void pieces(int count) {
        for (int i = 0; i < count; i++) {
            piece("V24-00" + (i + 1), Integer.toString(DIPS[i]), ground(KS[i]), "");
        }
    }

    @Test
    void piecesOnAKnownCurveGiveTheDipsOfATarget() throws IOException {
        pieces(DIPS.length);
        piece("V24-100", "5", new Lab(50, -20, 30), "weld");
        piece("V24-101", "forgot", ground(3), "");

        // 6 (1 − e^(−0.12 n)) is 2.7 at 4.98 dips.
        JsonNode answer = client.get("/api/dips?cloth=SH&vat=Mare&target=" + query(ground(2.7)))
                .json();

        assertThat(answer.get("points")).hasSize(8);
        assertThat(answer.get("uncalibrated").intValue()).isEqualTo(8);
        assertThat(answer.get("spread").doubleValue()).isLessThan(0.05);
        assertThat(answer.get("averageError").doubleValue()).isBetween(1.0, 1.1);
        assertThat(answer.get("targetDepth").doubleValue()).isCloseTo(2.7, within(0.01));
        assertThat(answer.at("/dips/verdict").textValue()).isEqualTo("within");
        assertThat(answer.at("/dips/best").doubleValue()).isCloseTo(4.98, within(0.1));
        assertThat(answer.at("/dips/low").doubleValue()).isLessThan(4.98);
        assertThat(answer.at("/dips/high").doubleValue()).isBetween(4.98, 7.0);
        assertThat(answer.at("/dips/evidence").get(0).textValue()).isIn("V24-004", "V24-005");

        JsonNode more = client.get("/api/dips?cloth=SH&from=V24-002&target=" + query(ground(2.7)))
                .json();
        assertThat(more.at("/moreDips/best").doubleValue()).isCloseTo(4.98 - 2, within(0.2));
        JsonNode mute = client.get("/api/dips?cloth=SH&from=V24-100&target=" + query(ground(2.7)))
                .json();
        assertThat(mute.get("moreRefused").textValue()).contains("V24-100", "one vat alone");
        assertThat(client.get("/dips?cloth=SH&target=" + query(ground(2.7))).words())
                .contains("About 5.0 dips", "Average prediction error", "Spread around the curve");
    }

    @Test
    void outsideTheMeasuredDepthsAnAnswerIsAnExtrapolationOrNone() throws IOException {
        pieces(6);
        JsonNode deeper =
                client.get("/api/dips?cloth=SH&target=" + query(ground(4.4))).json();
        assertThat(deeper.at("/dips/verdict").textValue()).isEqualTo("beyond seen");
        assertThat(deeper.at("/dips/sentence").textValue()).contains("extrapolation");
        JsonNode never =
                client.get("/api/dips?cloth=SH&target=" + query(ground(15))).json();
        assertThat(never.at("/dips/verdict").textValue()).isEqualTo("not reachable");
        assertThat(never.at("/dips").has("best")).isFalse();
        JsonNode pale =
                client.get("/api/dips?cloth=SH&target=" + query(ground(0.1))).json();
        assertThat(pale.at("/dips/sentence").textValue()).contains("Lighter than one dip");
    }

    @Test
    void aPieceThatTheOthersContradictLiesInTheIntervalAndIsNamed() throws IOException {
        pieces(DIPS.length);
        // Said to have had two dips, and as deep as eight or more.
        piece("V24-050", "2", new Lab(38.3, -4, -24), "");
        String asked = "cloth=SH&target=38.3,-4,-24";
        JsonNode answer = client.get("/api/dips?" + asked).json();
        assertThat(answer.at("/nearest/piece").textValue()).isEqualTo("V24-050");
        assertThat(answer.at("/nearest/disagrees").booleanValue()).isTrue();
        assertThat(answer.at("/dips/best").doubleValue()).isGreaterThan(3.4);
        assertThat(answer.at("/dips/low").doubleValue()).isLessThanOrEqualTo(2);
        assertThat(client.get("/dips?" + asked).words()).contains("far from the estimate");
    }

    @Test
    void aClothThatWasNeverInTheVatBorrowsFromNoOther() throws IOException {
        pieces(DIPS.length);
        wiring.archive()
                .ledger()
                .write(
                        "test",
                        act -> act.create(
                                Kinds.CLOTH,
                                new Cloth(
                                        new ClothId("WC"),
                                        "wool challis",
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
                                        "")));
        for (String asked : new String[] {"cloth=WC", "cloth=WC&vat=Mare", "cloth=SH&vat=Other"}) {
            JsonNode answer = client.get("/api/dips?" + asked + "&target=" + query(ground(2.7)))
                    .json();
            assertThat(answer.get("refused").textValue()).as(asked).contains("no measured piece of this cloth");
            assertThat(answer.has("dips")).as(asked).isFalse();
            Answer page = client.get("/dips?" + asked + "&target=" + query(ground(2.7)));
            assertThat(page.words())
                    .as(asked)
                    .contains("no measured piece of this cloth")
                    .doesNotContain("About ");
        }
        assertThat(client.get("/dips?cloth=WC&vat=Mare").text()).contains("<option value=\"WC\" selected");
    }

    @Test
    void aClothThatIsNotInTheArchiveIsRefused() throws IOException {
        pieces(DIPS.length);
        Answer answer = client.get("/api/dips?cloth=XX&target=" + query(ground(2.7)));
        assertThat(answer.status()).isEqualTo(400);
        assertThat(answer.text()).contains("no bolt of cloth", "XX");
        assertThat(client.get("/dips?cloth=XX").status()).isEqualTo(400);
    }

    @Test
    void aTargetThatIsNoColourIsToldBesideItsFieldAndKept() throws IOException {
        pieces(DIPS.length);
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
        pieces(3);
        JsonNode answer = client.get("/api/dips?cloth=SH&target=36,-3,-26").json();
        assertThat(answer.get("refused").textValue()).contains("at least 4 different numbers of dips", "here are 3");
        assertThat(answer.has("dips")).isFalse();
        assertThat(client.get("/dips?cloth=SH&target=36,-3,-26").words())
                .contains("at least 4 different numbers of dips");
    }

    @Test
    void aColourThatTheVatDoesNotGiveGetsNoDipsButTheNearestPiece() throws IOException {
        pieces(DIPS.length);
        // A madder red has a depth too, and the curve alone would name dips for it.
        JsonNode red = client.get("/api/dips?cloth=SH&vat=Mare&target=44,41,31").json();
        assertThat(red.has("dips")).isFalse();
        assertThat(red.get("targetRefused").textValue()).contains("do not pass near this one");
        assertThat(red.get("nearest").get("difference").doubleValue()).isGreaterThan(20);
        assertThat(client.get("/dips?cloth=SH&vat=Mare&target=44,41,31").words())
                .contains("No dips are named", "Nearest measured piece: ")
                .doesNotContain("About ");
        JsonNode blue = client.get("/api/dips?cloth=SH&vat=Mare&target=" + query(ground(1.28)))
                .json();
        assertThat(blue.get("nearest").get("piece").textValue()).isEqualTo("V24-002");
        assertThat(blue.get("nearest").get("difference").doubleValue()).isLessThan(1);
        assertThat(blue.get("dips").get("verdict").textValue()).isEqualTo("within");
    }
}

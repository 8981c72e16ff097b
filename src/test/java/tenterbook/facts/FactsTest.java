package tenterbook.facts;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import tenterbook.archive.Kinds;
import tenterbook.colour.palette.PaletteColour;
import tenterbook.colour.palette.Region;
import tenterbook.colour.space.Lab;
import tenterbook.imaging.Photo;
import tenterbook.imaging.SeenCloth;
import tenterbook.imaging.cloth.ClothOutline;
import tenterbook.imaging.cloth.ClothOutline.Edge;
import tenterbook.ledger.revision.Kind;
import tenterbook.material.Cloth;
import tenterbook.measure.Digest;
import tenterbook.piece.Piece;
import tenterbook.piece.Status;
import tenterbook.piece.Studio;
import tenterbook.piece.condition.Examination;
import tenterbook.recipe.Clamping;

class FactsTest {
    private static <T> T read(Kind<T> kind, String json) {
        return kind.codec().fromText(json.replace('\'', '"'));
    }

    private static Piece piece(String more) {
        return read(Kinds.PIECE, "{'number': 'V24-001'" + more + "}");
    }

    private static String event(String kind, String day, String more) {
        return "{'kind': '%s', 'when': {'entered': '%2$s', 'from': '%2$s', 'to': '%2$s'}%3$s}"
                .formatted(kind, day, more);
    }

    private static Whereabouts whereabouts(String more, String... events) {
        return Whereabouts.of(piece(more + ", 'events': [" + String.join(", ", events) + "]"));
    }

    // ---- where it is

    @Test
    void aTypedStatusStandsAndItsContradictionIsKeptBesideIt() {
        Whereabouts now = whereabouts(", 'status': 'in stock'", event("sold", "2024-05-01", ", 'party': 'sala'"));

        assertThat(now.status()).isEqualTo(Status.IN_STOCK);
        assertThat(now.disagreement().orElseThrow().inEnglish())
                .isEqualTo("The status is “in stock”, but the newest event is “sold” of 2024-05-01.");
        assertThat(now.holder()).isEmpty();
    }

    @Test
    void whereNothingIsTypedTheNewestEventSaysStatusAndHolder() {
        Whereabouts lent = whereabouts(
                "",
                event("lent", "2024-09-01", ", 'party': 'museu'"),
                event("returned", "2024-03-01", ""),
                event("washed", "2024-12-01", ""));

        assertThat(lent.status()).isEqualTo(Status.ON_LOAN);
        assertThat(lent.statusFrom().orElseThrow().inEnglish()).isEqualTo("from the event “lent” of 2024-09-01");
        assertThat(lent.holder())
                .hasValueSatisfying(id -> assertThat(id.value()).isEqualTo("museu"));
        assertThat(lent.disagreement()).isEmpty();
        assertThat(whereabouts("").statusInWords()).isEmpty();
    }

    @Test
    void aHolderToWhomItWentBeforeItCameBackIsAskedAbout() {
        assertThat(whereabouts(
                                ", 'holder': 'sala', 'status': 'in stock'",
                                event("returned", "2024-06-01", ", 'party': 'sala'"))
                        .holderDisagreement()
                        .orElseThrow()
                        .inEnglish())
                .contains("return from there of 2024-06-01");
        assertThat(whereabouts(", 'holder': 'sala'", event("lent", "2024-06-01", ", 'party': 'museu'"))
                        .holderDisagreement()
                        .orElseThrow()
                        .inEnglish())
                .contains("another than in the newest event");
    }

    // ---- cloth

    private static Clamping cut(String id, String... cloths) {
        return read(
                Kinds.CLAMPING,
                "{'id': '%s', 'cuts': [%s]}"
                        .formatted(
                                id,
                                Stream.of(cloths)
                                        .map(cloth -> "{'cloth': '" + cloth + "'}")
                                        .collect(Collectors.joining(", "))));
    }

    private static Cloths cloths(Clamping... clampings) {
        return Cloths.of(
                List.of(clampings),
                Stream.of(
                                read(
                                        Kinds.CLOTH,
                                        "{'id': 'SH', 'name': 'silk habotai', 'content': [{'fibre': 'silk', 'percent': 100}], 'contentEvidence': 'burn test'}"),
                                read(Kinds.CLOTH, "{'id': 'LV', 'name': 'linen voile'}"))
                        .collect(Collectors.toMap(Cloth::id, Function.identity())));
    }

    @Test
    void aPieceIsOfTheClothThatAllItsClampingsShareWithWhoSaysWhatItIs() {
        Cloths both = cloths(cut("C1", "LV", "SH"), cut("C2"), cut("C3", "SH"));

        assertThat(both.inWords()).isEqualTo("silk habotai (100\u00a0%\u00a0silk)");
        assertThat(both.evidence()).isEqualTo("silk habotai: burn test");
        assertThat(both.disagreement()).isEmpty();
    }

    @Test
    void clampingsThatShareNoClothAreAllGivenAndSaidToDisagree() {
        Cloths both = cloths(cut("C1", "LV"), cut("C2", "SH"));

        assertThat(both.inWords()).isEqualTo("linen voile (fibres not recorded); silk habotai (100\u00a0%\u00a0silk)");
        assertThat(both.disagreement().orElseThrow().inEnglish())
                .isEqualTo("The clampings name different cloths: clamping C1 names LV; clamping C2 names SH.");
    }

    // ---- condition

    private static Examination report(String day, String seen) {
        return read(
                Kinds.EXAMINATION,
                "{'id': 'E%s', 'piece': 'V24-001', 'when': {'entered': '%1$s', 'from': '%1$s', 'to': '%1$s'}, 'overall': 'fair', 'observations': [%s]}"
                        .formatted(day, seen));
    }

    @Test
    void theLastReportNotTheFaultsAloneSaysTheConditionAndWhatCameAfterIt() {
        Condition condition = Condition.of(
                piece(", 'events': ["
                        + event("washed", "2024-02-01", "") + ", "
                        + event("mended", "2024-11-02", ", 'note': 'darned'") + ", "
                        + event("other", "2024-12-02", ", 'note': 'a tear that Brites made'") + "]"),
                List.of(
                        report("2024-03-01", ""),
                        report("2024-09-01", "{'number': 1, 'what': 'stain', 'zone': 'front'}")));

        assertThat(condition.inWords())
                .isEqualTo(
                        "Examined 2024-09-01: fair. Seen: stain (front). Since then: mended 2024-11-02: darned; damage noted 2024-12-02: tear.");
    }

    @Test
    void aNoteWithoutAReportIsAnExaminationToo() {
        Condition condition = Condition.of(
                piece(", 'events': [" + event("examined", "2024-10-01", ", 'note': 'as it was'") + "]"), List.of());

        assertThat(condition.inWords()).isEqualTo("No fault is recorded. Examined 2024-10-01: as it was.");
        assertThat(Denial.NEVER.of(condition)).isEmpty();
        assertThat(condition.lastLooked())
                .hasValueSatisfying(day -> assertThat(day.year()).isEqualTo(2024));
    }

    // ---- colours

    private static final Photo PHOTO = new Photo(
            new Digest("a".repeat(64)),
            "a.jpg",
            1,
            "image/jpeg",
            4,
            3,
            1,
            "",
            "",
            "",
            "",
            false,
            true,
            List.of(),
            List.of(new PaletteColour(new Lab(90, 0, 5), 1)),
            Photo.UNCALIBRATED,
            List.of());

    private static final SeenCloth BLUE = new SeenCloth(
            new ClothOutline(Edge.FOUND, Region.rectangle(0.1, 0.1, 0.9, 0.9).corners(), 1),
            List.of(new PaletteColour(new Lab(40, -4, -23), 1)));

    private static Colours colours(String made, String regions) {
        return colours(made, regions, BLUE);
    }

    private static Colours colours(String made, String regions, SeenCloth seen) {
        Piece piece = piece(", 'made': [%s], 'photos': [{'photo': '%s', 'role': 'front', 'state': 1, 'regions': [%s]}]"
                .formatted(made, "a".repeat(64), regions));
        return new PieceFacts(
                        Studio.UNNAMED,
                        piece,
                        List.of(),
                        Map.of(),
                        Map.of(),
                        Map.of(),
                        Map.of(),
                        Map.of(PHOTO.digest(), PHOTO),
                        () -> Map.of(PHOTO.digest(), seen),
                        List.of(),
                        List::of,
                        null)
                .colours();
    }

    private static final String GROUND =
            "{'role': 'ground', 'name': 'heron blue', 'colour': {'lightness': 40, 'a': -4, 'b': -23}, 'share': 0.5}";

    @Test
    void namedColoursGoBeforeThoseOfTheClothInThePhotograph() {
        assertThat(colours("", GROUND).shown()).extracting(PieceColour::name).containsExactly("heron blue");
        assertThat(colours("", GROUND).all()).extracting(PieceColour::share).containsExactly(null, 1.0);
        assertThat(colours("", "").from()).isEqualTo(Colours.From.CLOTH);
        assertThat(colours("", "").shown()).extracting(PieceColour::name).containsExactly("");
    }

    @Test
    void theWallIsNoColourOfThePieceButCanBeAskedFor() {
        Lab wall = new Lab(90, 0, 5);

        assertThat(colours("", "").all()).extracting(PieceColour::colour).doesNotContain(wall);
        assertThat(colours("", "").anything()).extracting(PieceColour::colour).contains(wall);
        assertThat(colours("", "").doubt()).isNull();
    }

    @Test
    void aDoubtfulEdgeColoursNothing() {
        SeenCloth ragged = new SeenCloth(new ClothOutline(Edge.RAGGED, List.of(), 1.6), List.of());
        Colours colours = colours("", "", ragged);

        assertThat(colours.from()).isEqualTo(Colours.From.NOTHING);
        assertThat(colours.all()).isEmpty();
        assertThat(colours.doubt()).isEqualTo(new Colours.Doubt(Edge.RAGGED, PHOTO.digest()));
        assertThat(colours("", GROUND, ragged).shown())
                .extracting(PieceColour::name)
                .containsExactly("heron blue");
    }

    @Test
    void coloursOfAnEarlierStateAreShownAsSuchAndNeverPrintedAsTodays() {
        Colours before = colours("{'clamping': 'C1'}, {'clamping': 'C2'}", GROUND);

        assertThat(before.shown()).hasSize(1);
        assertThat(before.now()).isFalse();
        assertThat(before.state()).isEqualTo(1);
        assertThat(before.ofToday()).isEmpty();
    }

    @Test
    void aChargeWhoseLotIsNotRecordedIsNoLotAndNoFailure() {
        Clamping clamping =
                read(Kinds.CLAMPING, "{'id': 'C24-001', 'steps': [{'kind': 'bath', 'charges': [{'wof': null}]}]}");
        assertThat(Denial.NO_DYES.contradictedBy(clamping)).containsExactly("a step");
    }
}

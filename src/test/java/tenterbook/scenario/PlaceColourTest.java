package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.io.IOException;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import tenterbook.colour.space.Ciede2000;
import tenterbook.colour.space.ColourText;
import tenterbook.colour.space.Lab;

/** A colour to search by, from a place in a photograph; without scripts. */
class PlaceColourTest extends Scenario {
    private static final Color WALL = new Color(0xe0d6c6);
    private static final Color CLOTH = new Color(0x345a94);
    private String page;

    @BeforeEach
    void aPieceHungBeforeAWall() throws IOException {
        String digest = client.postFiles(
                        "/photos", List.of(new Client.Part("files", "a.jpg", Pictures.hung(WALL, CLOTH))))
                .json()
                .get(0)
                .get("digest")
                .textValue();
        saved(
                "/pieces",
                "number",
                "V24-001",
                "photos.0.photo",
                digest,
                "photos.0.role",
                "front",
                "photos.0.state",
                "1");
        page = "/pieces/V24-001/photos/" + digest + "/place";
    }

    private static Lab searched(Answer answer) {
        Matcher link = Pattern.compile("/\\?colour=([-0-9.,]+)&amp;within=15").matcher(answer.text());
        assertThat(link.find()).as(answer.words()).isTrue();
        return ColourText.read(link.group(1));
    }

    private static double apart(Lab found, Color colour) {
        return Ciede2000.difference(found, ColourText.read("#%06x".formatted(colour.getRGB() & 0xffffff)));
    }

    @Test
    void aTouchedPlaceGivesItsColourAndASearchThatFindsThePiece() throws IOException {
        // The picture is 280 pixels wide as a button and 210 high: this is its middle.
        Answer touched = client.get(page + "?at.x=140&at.y=105&across=&down=");
        Lab found = searched(touched);
        assertThat(apart(found, CLOTH)).isLessThan(2);
        assertThat(touched.words()).contains("not calibrated").contains("15").doesNotContain("outside the cloth");
        assertThat(client.get("/?colour=" + found.text(2).replace(" ", "") + "&within=15")
                        .words())
                .contains("V24-001");
    }

    @Test
    void aTypedPlaceBesideTheClothIsSearchedInWholePhotographs() throws IOException {
        Answer typed = client.get(page + "?across=5&down=50,5");
        assertThat(apart(searched(typed), WALL)).isLessThan(2);
        assertThat(typed.words()).contains("outside the cloth");
        assertThat(typed.text()).contains("in=photograph");
        // Pressed by a key, an image button says it was touched at 0, 0.
        assertThat(apart(searched(client.get(page + "?at.x=0&at.y=0&across=50&down=50")), CLOTH))
                .isLessThan(2);
    }

    @Test
    void whatIsNoPlaceIsToldBesideItsField() throws IOException {
        Answer wrong = client.get(page + "?across=120&down=x");
        assertThat(wrong.status()).isEqualTo(422);
        assertThat(wrong.text()).contains("across-problem").contains("down-problem");
        assertThat(client.get(page).status()).isEqualTo(200);
        assertThat(client.get("/pieces/V24-001").text()).contains(page);
    }
}

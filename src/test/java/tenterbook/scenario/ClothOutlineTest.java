package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import tenterbook.archive.Kinds;
import tenterbook.imaging.Photo;
import tenterbook.ledger.Saved;

/** The cloth on a photograph: what counts, and how a person corrects it, without scripts. */
class ClothOutlineTest extends Scenario {
    private static final String WALL = "/api/pieces?colour=%23e0d6c6&within=8";
    private static final String BLUE = "/api/pieces?colour=%23345a94&within=8";
    private String digest;
    private String page;

    @BeforeEach
    void aPieceHungBeforeAWall() throws IOException {
        byte[] picture = Pictures.hung(new Color(0xe0d6c6), new Color(0x345a94));
        digest = client.postFiles("/photos", List.of(new Client.Part("files", "a.jpg", picture)))
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
        page = "/pieces/V24-001/photos/" + digest;
    }

    private long found(String address) throws IOException {
        return client.get(address).json().get("total").longValue();
    }

    private Saved<Photo> photo() {
        return wiring.archive().ledger().find(Kinds.PHOTO, digest).orElseThrow();
    }

    @Test
    void theWallIsFoundOnlyWhereAnythingInThePhotographIsAskedFor() throws IOException {
        assertThat(found(BLUE + "&share=0.9")).isEqualTo(1);
        assertThat(found(WALL)).isZero();
        assertThat(found(WALL + "&share=0.5&in=photograph")).isEqualTo(1);
        assertThat(found(WALL + "&in=cloth")).isZero();
        assertThat(client.get(WALL + "&in=sky").status()).isEqualTo(400);
        assertThat(client.get("/?colour=%23e0d6c6&in=photograph").words()).contains("anything in the photograph");
        assertThat(photo().version())
                .as("nothing is written for what the program finds")
                .isEqualTo(1);
        String shown = client.get(page).text();
        assertThat(shown).contains("The edge of the cloth was found").contains("class=\"cloth-edge\"");
    }

    @Test
    void whatAPersonOutlinesGoesBeforeTheGuessAndCanBeTakenBack() throws IOException {
        saved(page + "/cloth", "act", "drawn", "cloth", "2,2 20,2 20,98 2,98");
        assertThat(photo().record().cloth()).hasSize(4);
        assertThat(found(WALL + "&share=0.9")).isEqualTo(1);
        assertThat(found(BLUE)).isZero();
        assertThat(client.get(page).words()).contains("A person outlined the cloth");

        saved(page + "/cloth", "act", "whole");
        assertThat(found(WALL + "&share=0.6")).isEqualTo(1);
        assertThat(found(BLUE + "&share=0.2")).isEqualTo(1);

        saved(page + "/cloth", "act", "found");
        assertThat(photo().record().cloth()).isEmpty();
        assertThat(found(WALL)).isZero();
        assertThat(photo().version()).isEqualTo(4);
    }

    @Test
    void anOutlineThatIsNoneIsToldBesideItsFieldAndChangesNothing() throws IOException {
        for (String wrong : List.of("", "10,10", "10,10 20,20", "a,b c,d e,f")) {
            Answer answer = client.post(page + "/cloth", "act", "drawn", "cloth", wrong);
            assertThat(answer.status()).as(wrong).isEqualTo(422);
            assertThat(answer.text()).as(wrong).contains("cloth-corners-problem");
        }
        assertThat(photo().version()).isEqualTo(1);
    }
}

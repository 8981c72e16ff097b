package tenterbook.words;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import org.junit.jupiter.api.Test;

class PaperLanguageTest {
    private static final Conventions PORTUGUESE = Conventions.english().in(Language.PORTUGUESE);
    private static final Message PIECE = Message.of("document.piece", "number", "V24-001");

    @Test
    void aPaperHasItsLanguageAndWhatComesAfterItHasTheOneOfBefore() {
        String within = PaperLanguage.write(PORTUGUESE, () -> {
            String other = PaperLanguage.write(Conventions.english(), PIECE::onPaper);
            return other + " / " + PIECE.onPaper();
        });
        assertThat(within).isEqualTo("Piece V24-001 / Peça V24-001");
        assertThat(PIECE.onPaper()).isEqualTo("Piece V24-001");
    }

    @Test
    void aPaperThatFailsLeavesNoLanguageBehind() {
        assertThatThrownBy(() -> PaperLanguage.write(PORTUGUESE, () -> {
                    throw new IOException("full");
                }))
                .isInstanceOf(IOException.class);
        assertThat(PaperLanguage.language()).isEqualTo(Language.ENGLISH);
    }
}

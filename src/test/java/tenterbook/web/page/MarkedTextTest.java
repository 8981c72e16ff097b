package tenterbook.web.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import gg.jte.html.OwaspHtmlTemplateOutput;
import gg.jte.output.StringOutput;
import org.junit.jupiter.api.Test;
import tenterbook.words.Conventions;
import tenterbook.words.Message;

class MarkedTextTest {
    private static String html(Object... namesAndValues) {
        StringOutput output = new StringOutput();
        new MarkedText(Message.of("example.linked", namesAndValues), Conventions.english())
                .writeTo(new OwaspHtmlTemplateOutput(output));
        return output.toString();
    }

    @Test
    void aLinkStandsWhereThePatternHasIt() {
        assertThat(html("name", "V24-001", "edit", "/pieces/V24-001?a=1&b=2"))
                .isEqualTo("<b>V24-001</b> has no photograph. <a href=\"/pieces/V24-001?a=1&amp;b=2\">Add one</a>.");
    }

    @Test
    void markupInAValueIsText() {
        assertThat(html("name", "<b>x</b> & <edit>", "edit", "javascript:alert(1)"))
                .startsWith("<b>&lt;b&gt;x&lt;/b&gt; &amp; &lt;edit&gt;</b> has")
                .doesNotContain("javascript:");
    }

    @Test
    void aLinkWithoutAnAddressIsAnError() {
        assertThatThrownBy(() -> html("name", "x")).hasMessageContaining("<edit>");
    }
}

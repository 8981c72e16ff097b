package tenterbook.web.print;

import java.nio.charset.StandardCharsets;
import java.util.List;
import tenterbook.documents.DocumentDraft;
import tenterbook.documents.DocumentSettings;
import tenterbook.labelling.LabelText;
import tenterbook.labelling.PrintSettings;
import tenterbook.measure.Digest;

/**
 * A short code of what a page showed before it is issued, as a button sends it. What would be issued otherwise is shown once more
 * instead.
 */
final class Preview {
    /** Name of the parameter. */
    static final String SHOWN = "shown";

    private static final int DIGITS = 16;

    private Preview() {}

    static String of(PrintSettings settings, List<LabelText> texts) {
        return code(settings + "\n" + texts);
    }

    static String of(DocumentSettings settings, List<DocumentDraft> drafts) {
        return code(settings.page() + "\n" + settings.language() + "\n"
                + drafts.stream().map(draft -> draft.text().words()).toList());
    }

    private static String code(String shown) {
        return Digest.of(shown.getBytes(StandardCharsets.UTF_8)).hex().substring(0, DIGITS);
    }

    /** Whether it was shown as it is; a program that was shown nothing sends no code. */
    static boolean isShown(List<String> sent, String code) {
        return sent == null || sent.isEmpty() || sent.get(0).equals(code);
    }
}

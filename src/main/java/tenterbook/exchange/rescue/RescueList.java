package tenterbook.exchange.rescue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import tenterbook.ledger.file.Finding;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** What a rescue found: whole, missing and doubtful. */
public final class RescueList {
    private final List<Written> whole = new ArrayList<>();
    private final List<Finding> missing = new ArrayList<>();
    private final List<Finding> doubtful = new ArrayList<>();

    void whole(Message sentence) {
        whole.add(sentence);
    }

    void missing(Finding finding) {
        missing.add(finding);
    }

    void doubtful(Finding finding) {
        doubtful.add(finding);
    }

    /** Sentences about what came over as it was. */
    public List<Written> whole() {
        return List.copyOf(whole);
    }

    /** What the archive had and the new one has not. */
    public List<Finding> missing() {
        return List.copyOf(missing);
    }

    /** What came over and is not, or cannot be shown to be, as it was written. */
    public List<Finding> doubtful() {
        return List.copyOf(doubtful);
    }

    /** Everything, a line each, under three headings. */
    public List<Written> lines() {
        List<Written> lines = new ArrayList<>();
        lines.add(Message.of("rescue.whole"));
        lines.addAll(whole);
        lines.add(Message.of("rescue.missing", "count", missing.size()));
        lines.addAll(missing);
        lines.add(Message.of("rescue.doubtful", "count", doubtful.size()));
        lines.addAll(doubtful);
        return lines;
    }

    String text(Path from) {
        StringBuilder text =
                new StringBuilder(Message.of("rescue.title", "from", from).inEnglish()).append('\n');
        lines().forEach(line -> text.append(line.inEnglish()).append('\n'));
        return text.toString();
    }
}

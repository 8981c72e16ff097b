package tenterbook.labelling.issue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jdbi.v3.core.JdbiException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tenterbook.archive.Archive;
import tenterbook.facts.PieceFacts;
import tenterbook.facts.PieceReader;
import tenterbook.words.Explained;

/** Finds the status of pieces' tags. Shared records are cached, so a finder serves one batch and is then dropped. Thread-safe. */
final class TagFinder {
    private static final Logger LOG = LoggerFactory.getLogger(TagFinder.class);
    private final PieceReader reader;
    private final HangTagStatus tags;

    private TagFinder(Archive archive, HangTagStatus tags) {
        this.reader = new PieceReader(archive);
        this.tags = tags;
    }

    /** @param many whether most pieces will be asked for, so that reading every paper once is faster */
    static TagFinder of(Archive archive, boolean many) {
        return new TagFinder(archive, many ? HangTagStatus.ofAll(archive) : HangTagStatus.ofFew(archive));
    }

    /** By number, without withdrawn pieces and unreadable ones, which are logged. */
    Map<String, List<HangTagStatus.Standing>> of(List<String> numbers) {
        try {
            return together(numbers);
        } catch (JdbiException e) {
            // The disk fails, not a record.
            throw e;
        } catch (RuntimeException e) {
            if (numbers.size() == 1) {
                if (e instanceof Explained) {
                    LOG.error(
                            "The tag status of piece {} is unknown until its record is corrected: {}",
                            numbers.get(0),
                            e.getMessage());
                } else {
                    LOG.error("The tag status of piece {} is unknown until its record is corrected", numbers.get(0), e);
                }
                return Map.of();
            }
            // One of them cannot be read; read one by one, the others can.
            Map<String, List<HangTagStatus.Standing>> found = new LinkedHashMap<>();
            numbers.forEach(number -> found.putAll(of(List.of(number))));
            return found;
        }
    }

    private Map<String, List<HangTagStatus.Standing>> together(List<String> numbers) {
        Map<String, List<HangTagStatus.Standing>> found = new LinkedHashMap<>();
        for (PieceFacts facts : reader.named(numbers)) {
            found.put(facts.piece().number().value(), tags.of(facts));
        }
        return found;
    }
}

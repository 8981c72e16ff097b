package tenterbook.documents.kind;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.documents.Block;
import tenterbook.facts.Denial;
import tenterbook.ledger.Saved;
import tenterbook.piece.condition.Comparison;
import tenterbook.piece.condition.Examination;
import tenterbook.piece.condition.Observation;
import tenterbook.words.Joined;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** The observations of a condition report, and their comparison with the earlier examination. */
final class ConditionObservations {
    private final Archive archive;
    private final Examination examination;

    ConditionObservations(Archive archive, Examination examination) {
        this.archive = archive;
        this.examination = examination;
    }

    /** The table of observations; a note where there are none. */
    Block seen() {
        return Denial.NOTHING_WAS_NOTED
                .of(examination)
                .or(() -> Denial.NOTHING_LISTED.of(examination))
                .<Block>map(DocumentWords::note)
                .orElseGet(this::observations);
    }

    private Block observations() {
        boolean again = examination.earlier() != null;
        List<Block.Column> columns = new ArrayList<>(List.of(
                DocumentWords.numberColumn("document.column.no", 0.5),
                DocumentWords.column("document.column.what", 1.5),
                DocumentWords.column("document.column.where", 2),
                DocumentWords.column("document.column.extent", 1.4),
                DocumentWords.column("document.column.how-bad", 1.6)));
        if (again) {
            columns.add(new Block.Column(
                    Message.of("document.column.since", "examination", examination.earlier())
                            .onPaper(),
                    1.3,
                    false));
        }
        columns.add(DocumentWords.column("document.column.note", 2.2));
        return new Block.Table(
                columns,
                examination.observations().stream()
                        .map(each -> row(each, again))
                        .toList());
    }

    private static Block.TableRow row(Observation seen, boolean again) {
        List<String> cells = new ArrayList<>(List.of(
                Integer.toString(seen.number()),
                seen.what(),
                seen.where(),
                seen.size(),
                DocumentWords.joined(
                        ", ", DocumentWords.choice(seen.severity()), DocumentWords.choice(seen.stability()))));
        if (again) {
            cells.add(
                    seen.standing() == null
                            ? DocumentWords.words("document.condition.new")
                            : seen.standing().onPaper());
        }
        cells.add(seen.note());
        return new Block.TableRow(null, cells);
    }

    /** Adds what changed since the earlier examination, where this one was compared with one. */
    void addChanges(List<Block> blocks) {
        if (examination.earlier() == null) {
            return;
        }
        Optional<Examination> before = archive.ledger()
                .find(Kinds.EXAMINATION, examination.earlier().value())
                .map(Saved::record);
        if (before.isEmpty()) {
            blocks.add(DocumentWords.missing(
                    Message.of("document.condition.no-earlier", "examination", examination.earlier())
                            .onPaper()));
            return;
        }
        Comparison comparison = Comparison.of(before.get(), examination);
        blocks.add(new Block.Heading(
                2,
                Message.of(
                                "document.condition.since",
                                "examination",
                                examination.earlier(),
                                "day",
                                before.get().when())
                        .onPaper()));
        blocks.add(new Block.Paragraph(
                Written.stop(Written.capital(comparison.inWords().onPaper()))));
        if (!comparison.changes().isEmpty()) {
            blocks.add(new Block.Table(
                    List.of(
                            DocumentWords.numberColumn("document.column.no", 0.5),
                            DocumentWords.column("document.column.what", 2),
                            DocumentWords.column("document.column.became", 1.3),
                            DocumentWords.column("document.column.written-otherwise", 5)),
                    comparison.changes().stream()
                            .map(change -> new Block.TableRow(
                                    null,
                                    List.of(
                                            Integer.toString(change.number()),
                                            change.last().what(),
                                            change.kind().onPaper(),
                                            DocumentWords.joined(
                                                    ". ",
                                                    new Joined("; ", change.differs()).onPaper(),
                                                    change.doubt() == null
                                                            ? ""
                                                            : change.doubt().onPaper()))))
                            .toList()));
        }
    }
}

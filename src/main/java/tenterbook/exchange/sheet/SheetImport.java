package tenterbook.exchange.sheet;

import java.nio.file.Path;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Consumer;
import tenterbook.archive.Archive;
import tenterbook.archive.field.Part;
import tenterbook.exchange.sheet.file.SheetFile;
import tenterbook.ledger.file.Progress;
import tenterbook.ledger.revision.Kind;
import tenterbook.words.Message;

/** Bringing in one sheet: a verdict for every row, then, if the maker wants, writing what has one. The sheet is read once for each. */
public final class SheetImport {
    /** Records of one transaction; what was written before a stop stays, and can be undone. */
    private static final int BATCH = 200;

    /** In the note of every revision of an import; stored, so it never changes. */
    static final String NOTE = "import ";

    private final Archive archive;
    private final SheetFile file;
    private final SheetKind kind;
    private final ColumnPlan plan;
    private final ImportChoices choices;
    private final int headRow;

    /**
     * @throws tenterbook.words.Refusal where the file is no sheet or the plan does not fit
     */
    public SheetImport(Archive archive, Path file, SheetKind kind, ColumnPlan plan, ImportChoices choices) {
        this.archive = archive;
        this.file = SheetFile.of(file);
        this.kind = kind;
        this.plan = plan;
        this.choices = choices;
        plan.check(kind);
        this.headRow = SheetHead.of(this.file, kind).row();
    }

    /** How many rows have each verdict. */
    public record Counts(Map<Verdict, Integer> byVerdict) {
        public int of(Verdict verdict) {
            return byVerdict.getOrDefault(verdict, 0);
        }

        public int all() {
            return byVerdict.values().stream().mapToInt(count -> count).sum();
        }
    }

    /** How many rows have each verdict, in a sentence. */
    public static Message summary(Counts counts, boolean onlyJudged) {
        return Message.of(
                onlyJudged ? "import.summary-judged" : "import.summary-written",
                "new",
                counts.of(Verdict.NEW),
                "updated",
                counts.of(Verdict.UPDATED),
                "unchanged",
                counts.of(Verdict.UNCHANGED),
                "left",
                counts.of(Verdict.LEFT),
                "refused",
                counts.of(Verdict.REFUSED));
    }

    /** The verdict of every row; nothing is written. */
    public Counts judge(Progress progress, Consumer<JudgedRow<?>> each) {
        return run(judging(kind.kind()), 0, progress, each, false, "");
    }

    /**
     * Writes every row that is new or changes something.
     *
     * @param id of the import, see {@link ImportUndo}
     * @param rows how many there are, for the progress; 0 where not known
     * @throws Progress.Cancelled where the person stopped it; the batches before were written
     */
    public Counts write(String id, int rows, Progress progress, Consumer<JudgedRow<?>> each) {
        return run(judging(kind.kind()), rows, progress, each, true, NOTE + id);
    }

    @SuppressWarnings("unchecked")
    private <T> RowJudge<T> judging(Kind<T> of) {
        return switch (kind) {
            case SALES -> (RowJudge<T>) new SaleRows(archive, choices);
            case PHOTOGRAPHS -> (RowJudge<T>) new PhotographRows(archive, choices);
            default -> new RecordRows<>(archive, kind, of, (Part<T>) kind.part(), choices);
        };
    }

    private <T> Counts run(
            RowJudge<T> judge, int rows, Progress progress, Consumer<JudgedRow<?>> each, boolean writes, String note) {
        Map<Verdict, Integer> counts = new EnumMap<>(Verdict.class);
        Map<String, JudgedRow<T>> batch = new LinkedHashMap<>();
        RowTexts texts = new RowTexts(plan);
        Message doing = Message.of(writes ? "import.writing" : "import.judging");
        int[] done = {0};
        file.rows(kind.sheetNames(), row -> {
            if (row.number() <= headRow || row.blank()) {
                return true;
            }
            progress.orStop();
            JudgedRow<T> judged = judge.judge(row.number(), texts.of(row));
            counts.merge(judged.verdict(), 1, Integer::sum);
            each.accept(judged);
            if (writes && judged.writes()) {
                batch.put(judged.id(), judged);
                if (batch.size() == BATCH) {
                    write(judge, batch, note);
                }
            }
            if (++done[0] % 50 == 0) {
                progress.at(done[0], rows, doing);
            }
            return true;
        });
        write(judge, batch, note);
        return new Counts(counts);
    }

    private <T> void write(RowJudge<T> judge, Map<String, JudgedRow<T>> batch, String note) {
        if (!batch.isEmpty()) {
            archive.ledger().write(archive.author(), act -> {
                batch.values().forEach(row -> {
                    judge.people.write(act, judge.kind.references().apply(row.record()), note);
                    act.save(judge.kind, row.record(), row.version(), note);
                });
                return null;
            });
            batch.clear();
            judge.written();
        }
    }
}

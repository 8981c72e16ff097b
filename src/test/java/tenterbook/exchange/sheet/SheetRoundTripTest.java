package tenterbook.exchange.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Archive;
import tenterbook.exchange.RestoredSample;
import tenterbook.exchange.sheet.ColumnPlan.Chosen;
import tenterbook.exchange.sheet.file.SheetFile;
import tenterbook.exchange.sheet.file.SheetWriter;
import tenterbook.ledger.file.Progress;
import tenterbook.words.Conventions;
import tenterbook.words.Language;

/** What is exported and imported again changes nothing: every kind, CSV and xlsx, in every language of the headings. */
class SheetRoundTripTest {
    @TempDir
    Path folder;

    private static SheetWriter.Rows rows(SheetExport export, Archive archive, Language language) {
        return to -> {
            to.accept(export.headings(Conventions.english().in(language)));
            export.rows(archive, to);
        };
    }

    private static ColumnPlan plan(SheetKind kind, Path file) {
        return new ColumnProposal(kind, SheetHead.of(SheetFile.of(file), kind)).plan();
    }

    private static void changesNothing(Archive archive, SheetKind kind, Path file) {
        assertThat(plan(kind, file).columns())
                .as("%s in %s", kind, file)
                .extracting(Chosen::path)
                .containsExactlyElementsOf(
                        kind.columns().stream().map(SheetColumn::path).toList());
        List<String> changed = new ArrayList<>();
        SheetImport.Counts counts = new SheetImport(archive, file, kind, plan(kind, file), ImportChoices.USUAL)
                .judge(Progress.UNWATCHED, row -> {
                    if (row.verdict() != Verdict.UNCHANGED) {
                        changed.add(kind + " " + row);
                    }
                });
        assertThat(changed).isEmpty();
        assertThat(counts.all()).as(kind.toString()).isPositive();
    }

    @Test
    void theSampleArchiveGoesOutAndComesInUnchanged() throws IOException {
        Path studio = folder.resolve("studio");
        RestoredSample.copyTo(studio);
        try (Archive archive = Archive.open(studio, Clock.systemUTC())) {
            for (Language language : Language.values()) {
                Map<String, SheetWriter.Rows> all = new LinkedHashMap<>();
                for (SheetKind kind : SheetKind.values()) {
                    SheetWriter.Rows rows = rows(new SheetExport(kind, true), archive, language);
                    all.put(kind.in(Conventions.english().in(language)), rows);
                    Path csv = folder.resolve(kind + language.code() + ".csv");
                    try (OutputStream out = Files.newOutputStream(csv)) {
                        SheetWriter.csv(out, rows);
                    }
                    changesNothing(archive, kind, csv);
                }
                Path xlsx = folder.resolve(language.code() + ".xlsx");
                try (OutputStream out = Files.newOutputStream(xlsx)) {
                    SheetWriter.xlsx(out, all);
                }
                for (SheetKind kind : SheetKind.values()) {
                    changesNothing(archive, kind, xlsx);
                }
            }
        }
    }

    /** Into an empty archive: the people, cloths, lots and boards of the sample, and again out. */
    @Test
    void whatWasExportedMakesTheSameExportElsewhere() throws IOException {
        Path studio = folder.resolve("studio");
        RestoredSample.copyTo(studio);
        try (Archive from = Archive.open(studio, Clock.systemUTC());
                Archive to = Archive.open(folder.resolve("empty"), Clock.systemUTC())) {
            for (SheetKind kind : List.of(SheetKind.PEOPLE, SheetKind.CLOTHS, SheetKind.LOTS, SheetKind.BOARDS)) {
                Path csv = folder.resolve(kind + ".csv");
                try (OutputStream out = Files.newOutputStream(csv)) {
                    SheetWriter.csv(out, rows(new SheetExport(kind, true), from, Language.ENGLISH));
                }
                new SheetImport(to, csv, kind, plan(kind, csv), ImportChoices.USUAL)
                        .write(kind.toString(), 0, Progress.UNWATCHED, row -> {});
                List<List<String>> before = new ArrayList<>();
                new SheetExport(kind, true).rows(from, before::add);
                List<List<String>> after = new ArrayList<>();
                new SheetExport(kind, true).rows(to, after::add);
                assertThat(after).as(kind.toString()).isEqualTo(before);
            }
        }
    }
}

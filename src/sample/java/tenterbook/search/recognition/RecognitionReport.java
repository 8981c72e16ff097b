package tenterbook.search.recognition;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import tenterbook.ledger.file.Progress;
import tenterbook.measure.Digest;
import tenterbook.sample.RecognitionScene;
import tenterbook.search.recognition.Recognition.Candidate;
import tenterbook.search.recognition.Recognition.Level;

/**
 * How well rendered photographs are put to their pieces and boards, beside what is aimed at. {@link Limits} were fixed on the set
 * 'tuning'; figures are those of the set 'reporting', whose photographs and twins are others. Twins that showed limits to be too low went
 * from the second set to the first and were replaced. No picture is compared with itself.
 */
public final class RecognitionReport {
    /** Boards whose pattern is a regular lattice, so that its parts are like those of other lattices. */
    private static final Set<String> LATTICES = Set.of("B04");

    /** The same boards and recipe with other random numbers: so many of a cloth, photographed twice. */
    private record Twins(String cloth, int count, long archived, long asked) {}

    private static final List<Twins> TUNED_ON = List.of(
            new Twins("V24-004", 8, 11, 12),
            new Twins("V24-013", 8, 11, 12),
            new Twins("V24-003", 15, 31, 32),
            new Twins("V24-016", 15, 31, 32));

    private static final List<Twins> REPORTED =
            List.of(new Twins("V24-007", 15, 41, 42), new Twins("V24-015", 15, 41, 42));

    private final Path folder;
    private final boolean tuning;
    private final boolean each;
    private final String only;

    private RecognitionReport(Path folder, boolean tuning, boolean each, String only) {
        this.folder = folder;
        this.tuning = tuning;
        this.each = each;
        this.only = only;
    }

    /** @param arguments the folder for rendered photographs; 'tuning' or 'reporting'; 'each' for a line each; how the lines wanted begin */
    public static void main(String[] arguments) throws IOException {
        if (arguments.length < 2) {
            System.err.println("Expected a folder for rendered photographs, and 'tuning' or 'reporting'; found "
                    + arguments.length + " arguments");
            System.exit(2);
        }
        new RecognitionReport(
                        Path.of(arguments[0]),
                        arguments[1].equals("tuning"),
                        arguments.length > 2 && arguments[2].equals("each"),
                        arguments.length > 3 ? arguments[3] : "")
                .run();
    }

    private void run() throws IOException {
        long seed = tuning ? 1 : 2;
        System.out.printf(
                "rendered photographs, set '%s'; shares of the pictures asked%n", tuning ? "tuning" : "reporting");
        System.out.printf(
                "%-40s %5s %6s %6s %6s %7s %8s %6s%n",
                "pictures", "asked", "piece", "pair", "this", "wrongly", "unknown", "chosen");
        RenderedSet sample = new RenderedSet(folder).with(RecognitionScene.archived());
        List<RecognitionScene> others = RecognitionScene.others(seed);
        ask("other photographs, whole", sample, part(others, false), Leave.NOTHING, Change.NONE);
        ask("other photographs, close", sample, part(others, true), Leave.NOTHING, Change.NONE);
        ask("the same mirrored and turned, whole", sample, some(part(others, false)), Leave.NOTHING, Change.MIRRORED);
        ask("half of a close view, degraded", sample, some(part(others, true)), Leave.NOTHING, Change.HALF);
        ask("a quarter of a close view, degraded", sample, some(part(others, true)), Leave.NOTHING, Change.QUARTER);
        List<RecognitionScene> strangers =
                others.stream().filter(scene -> !lattice(scene)).toList();
        ask("strangers: board left out, whole", sample, part(strangers, false), Leave.BOARD, Change.NONE);
        ask("strangers: board left out, close", sample, part(strangers, true), Leave.BOARD, Change.NONE);
        ask(
                "strangers: lattices",
                sample,
                others.stream().filter(RecognitionReport::lattice).toList(),
                Leave.BOARD,
                Change.NONE);
        List<RecognitionScene> asked = new ArrayList<>();
        RenderedSet twins = new RenderedSet(folder).with(RecognitionScene.archived());
        for (Twins each : tuning ? TUNED_ON : REPORTED) {
            for (boolean close : new boolean[] {false, true}) {
                twins.with(RecognitionScene.twins(each.cloth, each.count, close, each.archived));
                asked.addAll(RecognitionScene.twins(each.cloth, each.count, close, each.asked));
            }
        }
        for (boolean close : new boolean[] {false, true}) {
            String view = close ? "close" : "whole";
            ask("new twins, " + view, twins, part(asked, close), Leave.NOTHING, Change.NONE);
            ask("new twins, the piece left out, " + view, twins, part(asked, close), Leave.PIECE, Change.NONE);
        }
    }

    private static boolean lattice(RecognitionScene scene) {
        return LATTICES.contains(scene.board());
    }

    private static List<RecognitionScene> part(List<RecognitionScene> scenes, boolean close) {
        return scenes.stream().filter(scene -> scene.close() == close).toList();
    }

    private static List<RecognitionScene> some(List<RecognitionScene> scenes) {
        List<RecognitionScene> some = new ArrayList<>();
        for (int i = 0; i < scenes.size(); i += 2) {
            some.add(scenes.get(i));
        }
        return some;
    }

    private enum Leave {
        NOTHING,
        PIECE,
        BOARD;

        Collection<Digest> out(RenderedSet set, RecognitionScene scene) {
            return switch (this) {
                case NOTHING -> List.of();
                case PIECE -> set.ofPiece(scene);
                case BOARD -> set.ofPair(scene);
            };
        }
    }

    private enum Change {
        NONE,
        MIRRORED,
        HALF,
        QUARTER;

        private PhotoFeatures of(RenderedSet set, RecognitionScene scene, int number) throws IOException {
            if (this == NONE) {
                return set.features(scene);
            }
            BufferedImage picture = set.picture(scene);
            boolean lying = picture.getWidth() > picture.getHeight();
            return FeatureFinder.of(RenderedSet.pixels(
                    switch (this) {
                        case MIRRORED -> RenderedSet.mirroredAndTurned(picture, 20 + 47 * number % 320);
                        case HALF -> RenderedSet.degraded(picture, lying ? 2 : 1, lying ? 1 : 2, number);
                        default -> RenderedSet.degraded(picture, 2, 2, number);
                    }));
        }
    }

    private static final class Tally {
        int asked;
        int piece;
        int pair;
        int right;
        int wrong;
        int unknown;
        int chosen;
    }

    private void ask(String what, RenderedSet set, List<RecognitionScene> scenes, Leave leave, Change change)
            throws IOException {
        if (!what.startsWith(only)) {
            return;
        }
        Tally tally = new Tally();
        for (RecognitionScene scene : scenes) {
            Set<Digest> without = new HashSet<>(leave.out(set, scene));
            PhotoFeatures picture = change.of(set, scene, tally.asked);
            Recognition answer = new Recogniser(set, () -> {}).recognise(picture, without, Progress.UNWATCHED);
            boolean chosen = set.preselection().of(picture, Recogniser.TRIED, without, Progress.UNWATCHED).stream()
                    .anyMatch(photo -> set.ofPiece(scene).contains(photo.photo()));
            count(tally, answer, scene, chosen);
            if (each) {
                print(scene, answer);
            }
        }
        double all = Math.max(1, tally.asked);
        System.out.printf(
                Locale.ROOT,
                "%-40s %5d %6.3f %6.3f %6.3f %7.3f %8.3f %6.3f%n",
                what,
                tally.asked,
                tally.piece / all,
                tally.pair / all,
                tally.right / all,
                tally.wrong / all,
                tally.unknown / all,
                tally.chosen / all);
    }

    private static void count(Tally tally, Recognition answer, RecognitionScene scene, boolean chosen) {
        tally.asked++;
        boolean piece = !answer.pieces().isEmpty()
                && answer.pieces().get(0).piece().value().equals(scene.piece());
        tally.piece += piece ? 1 : 0;
        tally.pair +=
                !answer.boards().isEmpty() && answer.boards().get(0).board().equals(RenderedSet.board(scene)) ? 1 : 0;
        if (answer.level() == Level.THIS_PIECE) {
            tally.right += piece ? 1 : 0;
            tally.wrong += piece ? 0 : 1;
        }
        tally.unknown += answer.level() == Level.UNKNOWN ? 1 : 0;
        tally.chosen += chosen ? 1 : 0;
    }

    private static void print(RecognitionScene scene, Recognition answer) {
        StringBuilder line = new StringBuilder(scene.file()).append(' ').append(answer.level());
        for (Candidate candidate :
                answer.pieces().subList(0, Math.min(3, answer.pieces().size()))) {
            boolean board = candidate.boards().contains(RenderedSet.board(scene));
            line.append(String.format(
                    Locale.ROOT,
                    " | %s %s %.4f %.3f n%d of %d r%.2f",
                    candidate.piece().value(),
                    candidate.piece().value().equals(scene.piece()) ? "PIECE" : board ? "pair" : "-",
                    candidate.evidence().score(),
                    candidate.evidence().share(),
                    candidate.evidence().matches(),
                    candidate.evidence().visible(),
                    candidate.evidence().residualPixels()));
        }
        System.out.println("  " + line);
    }
}

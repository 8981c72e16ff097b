package tenterbook.web.recognition;

import static tenterbook.web.page.Words.w;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import tenterbook.archive.Kinds;
import tenterbook.measure.NumberWords;
import tenterbook.recipe.BoardUse;
import tenterbook.search.recognition.Recognition;
import tenterbook.search.recognition.Recognition.Candidate;
import tenterbook.search.recognition.Recognition.Evidence;
import tenterbook.search.recognition.Recognition.Level;
import tenterbook.search.recognition.Recognition.Place;
import tenterbook.web.Site;
import tenterbook.web.page.Address;

/**
 * An answer for a page.
 *
 * @param sentence what may be said
 * @param pieces the most alike first
 */
public record RecognitionView(
        String token, Level level, String sentence, List<Line> pieces, int compared, int waiting) {
    /** More pieces than these are not shown. */
    private static final int MOST = 5;

    /** From here on a tenth means nothing. */
    private static final double MANY_TIMES = 10;

    /** Less would be written as nothing at all. */
    private static final double LEAST_OFF = 0.05;

    /** More places than these cannot be told apart on a picture. */
    private static final int DOTS = 60;

    /**
     * A piece that it may be.
     *
     * @param label number and title
     * @param boards board pairs with their states, in words
     * @param photo its photograph that is most like the picture, as hexadecimal digits
     * @param evidence sentences
     * @param places some of the places found in both
     */
    public record Line(
            String number,
            String label,
            String address,
            String boards,
            String photo,
            List<String> evidence,
            List<Place> places) {}

    static RecognitionView of(Site site, RunningRecognition run, Recognition answer) {
        List<Line> lines = answer.pieces().stream()
                .limit(MOST)
                .map(each -> line(site, each))
                .toList();
        return new RecognitionView(
                run.token(), answer.level(), sentence(site, answer), lines, answer.compared(), answer.waiting());
    }

    static String sentence(Site site, Recognition answer) {
        return switch (answer.level()) {
            case THIS_PIECE ->
                w("recognition.this-piece", "piece", label(site, answer.pieces().get(0)));
            case THIS_BOARD_PAIR ->
                w(
                        "recognition.this-board-pair",
                        "board",
                        board(answer.boards().get(0).board()),
                        "count",
                        answer.pieces().size());
            case UNKNOWN -> w("recognition.unknown", "waiting", answer.waiting());
        };
    }

    static String board(BoardUse use) {
        return w(
                "recognition.board", "board", use.board(), "known", !use.state().isEmpty(), "state", use.state());
    }

    static Line line(Site site, Candidate candidate) {
        return new Line(
                candidate.piece().value(),
                label(site, candidate),
                (kept(site, candidate) ? "/pieces/" : "/history/piece/")
                        + Address.encoded(candidate.piece().value()),
                candidate.boards().stream().map(RecognitionView::board).collect(Collectors.joining("; ")),
                candidate.photo().hex(),
                evidence(candidate.evidence()),
                some(candidate.evidence().places()));
    }

    private static String label(Site site, Candidate candidate) {
        String number = candidate.piece().value();
        if (!kept(site, candidate)) {
            return w("recognition.withdrawn", "piece", number);
        }
        String title = site.ledger()
                .find(Kinds.PIECE, number)
                .map(saved -> saved.record().title())
                .orElse("");
        return title.isEmpty() ? number : number + ", " + title;
    }

    /** False where its record was withdrawn after the comparison. */
    private static boolean kept(Site site, Candidate candidate) {
        return site.ledger().find(Kinds.PIECE, candidate.piece().value()).isPresent();
    }

    private static List<String> evidence(Evidence evidence) {
        java.util.ArrayList<String> sentences = new java.util.ArrayList<>();
        sentences.add(w(
                "recognition.places",
                "count",
                evidence.matches(),
                "share",
                NumberWords.percent(Math.min(1, evidence.share()), 0)));
        double times = evidence.timesStrangers();
        sentences.add(w("recognition.strangers", "times", NumberWords.decimals(times, times < MANY_TIMES ? 1 : 0)));
        sentences.add(
                evidence.residualMm() == null
                        ? w("recognition.off-pixels", "off", off(evidence.residualPixels()))
                        : w("recognition.off-mm", "off", off(evidence.residualMm())));
        if (evidence.mirrored()) {
            sentences.add(w("recognition.mirrored"));
        }
        return sentences;
    }

    private static Object off(double distance) {
        return distance < LEAST_OFF ? w("recognition.hardly-off") : NumberWords.decimals(distance, 1);
    }

    /** Evenly taken from all. */
    private static List<Place> some(List<Place> places) {
        int step = Math.max(1, (places.size() + DOTS - 1) / DOTS);
        return java.util.stream.IntStream.range(0, places.size())
                .filter(i -> i % step == 0)
                .mapToObj(places::get)
                .toList();
    }

    /** A coordinate as SVG reads it. */
    public static String at(double part) {
        return String.format(Locale.ROOT, "%.4f", part);
    }
}

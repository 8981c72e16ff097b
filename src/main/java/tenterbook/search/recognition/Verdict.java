package tenterbook.search.recognition;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tenterbook.measure.Digest;
import tenterbook.piece.PieceNumber;
import tenterbook.recipe.BoardUse;
import tenterbook.search.recognition.Recognition.BoardCandidate;
import tenterbook.search.recognition.Recognition.Candidate;
import tenterbook.search.recognition.Recognition.Level;

/** Says how much may be said, by {@link Limits}. */
final class Verdict {
    private record Ranked(Digest photo, Shown shown, Likeness likeness) {
        Candidate candidate() {
            return new Candidate(
                    photo,
                    shown.piece(),
                    shown.state(),
                    shown.boards(),
                    likeness.evidence(shown.longerSideMm().get()));
        }
    }

    private Verdict() {}

    static Recognition of(Map<Digest, Likeness> alike, Map<Digest, List<Shown>> shown, int waiting) {
        List<Ranked> ranked = new ArrayList<>();
        alike.forEach((photo, likeness) -> {
            if (likeness.count() >= Limits.BOARD_MATCHES && likeness.share >= Limits.BOARD_SHARE) {
                shown.get(photo).forEach(each -> ranked.add(new Ranked(photo, each, likeness)));
            }
        });
        ranked.sort(Comparator.comparingDouble((Ranked each) -> -each.likeness.score)
                .thenComparing(each -> each.photo.hex()));
        Map<PieceNumber, Ranked> pieces = new LinkedHashMap<>();
        Map<BoardUse, Ranked> boards = new LinkedHashMap<>();
        for (Ranked each : ranked) {
            pieces.putIfAbsent(each.shown.piece(), each);
            each.shown.boards().forEach(board -> boards.putIfAbsent(board, each));
        }
        return new Recognition(
                level(List.copyOf(pieces.values()), boards.isEmpty()),
                pieces.values().stream().map(Ranked::candidate).toList(),
                boards.entrySet().stream()
                        .map(each -> new BoardCandidate(
                                each.getKey(), each.getValue().candidate()))
                        .toList(),
                alike.size(),
                waiting);
    }

    private static Level level(List<Ranked> pieces, boolean noBoard) {
        if (pieces.isEmpty()) {
            return Level.UNKNOWN;
        }
        Likeness first = pieces.get(0).likeness;
        double next = pieces.size() == 1 ? 0 : pieces.get(1).likeness.score;
        boolean high = first.score >= Limits.PIECE_SCORE && first.score >= Limits.PIECE_BEFORE_NEXT * next;
        boolean clear =
                next > 0 && first.score >= Limits.CLEAR_SCORE && first.score >= Limits.CLEARLY_BEFORE_NEXT * next;
        if (first.count() >= Limits.PIECE_MATCHES && (high || clear)) {
            return Level.THIS_PIECE;
        }
        return noBoard ? Level.UNKNOWN : Level.THIS_BOARD_PAIR;
    }
}

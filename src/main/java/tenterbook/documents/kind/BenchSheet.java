package tenterbook.documents.kind;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tenterbook.board.BoardPair;
import tenterbook.documents.Block;
import tenterbook.documents.DocumentSettings;
import tenterbook.documents.DocumentText;
import tenterbook.facts.Denial;
import tenterbook.material.Cloth;
import tenterbook.measure.QuantityWords;
import tenterbook.measure.Unit;
import tenterbook.recipe.BoardUse;
import tenterbook.recipe.Cautions;
import tenterbook.recipe.Clamping;
import tenterbook.recipe.Cut;
import tenterbook.recipe.Fold;
import tenterbook.recipe.LayerMap;
import tenterbook.recipe.RecipeFigures;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** How a piece was made, set out so that it can be made again at the bench, with room to write what is done this time. */
final class BenchSheet {
    /** More panels are too small to be read. */
    private static final int MOST_PANELS = 96;

    private final DocumentFacts subject;

    /** What was drawn for an earlier clamping is not drawn again. */
    private final Set<Block> drawn = new HashSet<>();

    private BenchSheet(DocumentFacts subject) {
        this.subject = subject;
    }

    static DocumentText of(DocumentFacts subject, DocumentSettings request) {
        BenchSheet sheet = new BenchSheet(subject);
        List<Block> blocks = new ArrayList<>();
        subject.photos().stream()
                .limit(2)
                .forEach(photo -> blocks.add(
                        new Block.Photograph(photo.photo(), Block.Extent.HALF, photo.caption(), "", List.of())));
        List<Clamping> clampings = subject.facts().clampings();
        Denial.NOTHING_TO_REPEAT.of(subject.facts()).ifPresent(text -> blocks.add(DocumentWords.missing(text)));
        for (int i = 0; i < clampings.size(); i++) {
            sheet.clamping(blocks, clampings.get(i), clampings.size() > 1);
        }
        if (!clampings.isEmpty()) {
            blocks.add(DocumentWords.note(Cautions.DEFERS.onPaper()));
        }
        return new DocumentText(
                request.kind().code(),
                request.kind().template(),
                subject.shown() + "  " + subject.title(),
                subject.shown().value(),
                request.kind().onPaper(),
                List.of(new DocumentText.DocumentSection(subject.number(), blocks)));
    }

    private void clamping(List<Block> blocks, Clamping clamping, boolean several) {
        if (several) {
            blocks.add(new Block.Heading(
                    1,
                    DocumentWords.joined(
                            ", ",
                            Message.of("document.bench.clamping", "clamping", clamping.id())
                                    .onPaper(),
                            clamping.title())));
        }
        RecipeFigures figures = RecipeFigures.of(clamping, subject.facts().cloths());
        blocks.add(DocumentWords.heading(2, "document.heading.fold-and-clamp"));
        cautions(blocks, Cautions.ofClamping());
        List<Block.Fact> facts = new ArrayList<>();
        facts.add(DocumentWords.fact(
                "document.fact.boards",
                clamping.boards().stream().map(this::board).collect(Collectors.joining("; "))));
        facts.add(DocumentWords.fact(
                "document.fact.cloth", clamping.cuts().stream().map(this::cut).collect(Collectors.joining("; "))));
        facts.add(DocumentWords.fact(
                "document.fact.fold",
                DocumentWords.joined(
                        ". ",
                        clamping.fold().inWords().onPaper(),
                        layers(clamping, figures),
                        clamping.fold().note())));
        facts.add(DocumentWords.fact(
                "document.fact.clamp",
                DocumentWords.joined(", ", clamping.pressure(), BenchStep.entered(clamping.clamped()))));
        facts.add(DocumentWords.fact("document.fact.water", clamping.water()));
        if (!clamping.lesson().isEmpty()) {
            facts.add(DocumentWords.fact("document.fact.lesson", clamping.lesson()));
        }
        blocks.add(new Block.Facts(facts));
        blocks.add(DocumentWords.blank("document.blank.today-cloth-dry", 1));
        List<Block> maps = Stream.concat(
                        layerMap(clamping).stream(),
                        clamping.boards().stream().map(this::holePlan).flatMap(Optional::stream))
                .filter(drawn::add)
                .toList();
        if (!maps.isEmpty()) {
            blocks.add(DocumentWords.heading(2, "document.heading.maps"));
            blocks.addAll(maps);
        }
        Denial.NO_STEP.of(clamping).ifPresent(text -> blocks.add(DocumentWords.missing(text)));
        for (int i = 0; i < clamping.steps().size(); i++) {
            new BenchStep(subject, clamping.steps().get(i), figures.steps().get(i)).addTo(blocks, i + 1);
        }
    }

    /** Where the folds are known and make more than one layer, of so many at most as can be read. */
    private static Optional<Block> layerMap(Clamping clamping) {
        List<Fold> folds = clamping.fold().folds();
        long panels = folds.stream().mapToLong(Fold::panels).reduce(1, (a, b) -> a * b);
        if (folds.isEmpty() || panels < 2 || panels > MOST_PANELS) {
            return Optional.empty();
        }
        LayerMap map = LayerMap.of(folds);
        return Optional.of(new Block.Layers(
                map.columns(),
                map.opened().stream()
                        .map(cell -> new Block.Panel(
                                cell.layer(), cell.faceUp(), cell.mirroredLength(), cell.mirroredWidth()))
                        .toList(),
                DocumentWords.words("document.bench.layer-map")));
    }

    /** Of the state used, where its holes and the board's sides are measured. */
    private Optional<Block> holePlan(BoardUse use) {
        Optional<BoardPair> board = subject.facts().board(use.board());
        if (board.isEmpty()
                || !board.get().length().known()
                || !board.get().width().known()) {
            return Optional.empty();
        }
        List<Block.HolePlace> holes = board.get().state(use.state()).stream()
                .flatMap(state -> state.holes().stream())
                .filter(hole -> hole.acrossMm() != null && hole.downMm() != null)
                .map(hole -> new Block.HolePlace(hole.name(), hole.acrossMm(), hole.downMm()))
                .toList();
        return holes.isEmpty()
                ? Optional.empty()
                : Optional.of(new Block.Holes(
                        board.get().length().in(Unit.MILLIMETRE).high(),
                        board.get().width().in(Unit.MILLIMETRE).high(),
                        holes,
                        Message.of("document.bench.hole-plan", "board", board(use))
                                .onPaper()));
    }

    private static String layers(Clamping clamping, RecipeFigures figures) {
        if (!figures.layers().refused()) {
            return Message.of(
                            "document.bench.layers",
                            "count",
                            QuantityWords.value(figures.layers().value()))
                    .onPaper();
        }
        boolean folded = !clamping.fold().inWords().onPaper().isEmpty();
        return folded ? DocumentWords.words("document.bench.layers-not-known") : "";
    }

    private String board(BoardUse use) {
        Optional<BoardPair> board = subject.facts().board(use.board());
        String title = subject.facts().boardTitle(use.board());
        Message words = use.state().isEmpty()
                ? Message.of("label.made.board-without-state", "board", title)
                : Message.of("label.made.board", "board", title, "state", use.state());
        boolean recut = board.isPresent()
                && !use.state().isEmpty()
                && !board.get().newest().name().equals(use.state());
        return (recut
                        ? Message.of(
                                "document.bench.recarved",
                                "board",
                                words,
                                "state",
                                board.get().newest().name())
                        : words)
                .onPaper();
    }

    private String cut(Cut cut) {
        String name = Denial.NO_CLOTH_OF_CUT.unless(
                cut,
                () -> Optional.ofNullable(subject.facts().cloths().get(cut.cloth()))
                        .map(Cloth::title)
                        .orElseGet(() -> cut.cloth().value()));
        return DocumentWords.joined(
                ", ",
                name,
                cut.count().recorded()
                        ? Message.of("document.bench.cuts", "count", BenchStep.entered(cut.count()))
                                .onPaper()
                        : "",
                DocumentWords.side(cut.length()) + " × " + DocumentWords.side(cut.width()),
                BenchStep.entered(cut.weighed()));
    }

    /** Without the closing sentence, which is printed once at the end. */
    static void cautions(List<Block> blocks, List<Written> cautions) {
        cautions.stream()
                .filter(text -> !text.equals(Cautions.DEFERS))
                .forEach(text -> blocks.add(DocumentWords.caution(text.onPaper())));
    }
}

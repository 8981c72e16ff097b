package tenterbook.search.index;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tenterbook.board.BoardPair;
import tenterbook.colour.space.ColourWords;
import tenterbook.facts.PieceColour;
import tenterbook.facts.PieceFacts;
import tenterbook.material.Cloth;
import tenterbook.material.FibreShare;
import tenterbook.material.Lot;
import tenterbook.piece.CareTest;
import tenterbook.piece.Event;
import tenterbook.piece.Fault;
import tenterbook.piece.Particulars;
import tenterbook.piece.Party;
import tenterbook.piece.Piece;
import tenterbook.piece.condition.Examination;
import tenterbook.piece.condition.Observation;
import tenterbook.piece.label.PieceComponent;
import tenterbook.recipe.Clamping;
import tenterbook.recipe.Step;
import tenterbook.words.Message;

/** The words of a record, each passage with the name of its place. Contacts of parties are not among them. */
public final class PieceTexts {
    private PieceTexts() {}

    /** @param label as in 'lesson' */
    public record Passage(String label, String text) {}

    static List<Passage> of(PieceFacts facts, List<PieceColour> colours) {
        List<Passage> texts = new ArrayList<>();
        Piece piece = facts.piece();
        add(texts, label("other-title"), piece.otherTitle());
        add(texts, label("notes"), piece.notes());
        add(texts, label("kept-at"), piece.place());
        add(texts, label("trims"), piece.trims());
        for (PieceComponent part : piece.label().components()) {
            String fibres = part.fibres().stream().map(FibreShare::fibre).collect(Collectors.joining(" "));
            add(
                    texts,
                    label("trims"),
                    part.name(),
                    part.kind() == null ? "" : part.kind().toString(),
                    fibres);
        }
        add(texts, label("sold-in"), piece.label().soldIn());
        add(texts, label("edition"), piece.edition(), piece.inEdition().name());
        Particulars more = piece.particulars();
        add(texts, label("maker"), more.maker(), more.helpers());
        add(texts, label("marks"), more.inscriptions(), more.features());
        add(texts, label("rights"), more.creditLine(), more.imageRights());
        add(texts, label("handling"), more.hanging(), more.packing());
        add(texts, label("treatments"), more.treatments(), more.residues());
        facts.holder().ifPresent(holder -> add(texts, label("holder"), holder.title()));
        for (Fault fault : piece.faults()) {
            add(texts, label("fault"), fault.kind(), fault.where(), fault.note());
        }
        facts.examinations().forEach(examination -> examination(texts, examination));
        for (Event event : piece.events()) {
            String party = facts.party(event.party()).map(Party::title).orElse("");
            if (!event.note().isEmpty() || !party.isEmpty()) {
                add(texts, event.kind().toString(), party, event.note());
            }
        }
        for (CareTest test : piece.tests()) {
            add(texts, label("test", "kind", test.kind()), test.method(), test.result());
        }
        piece.photos().forEach(photo -> add(texts, label("photograph"), photo.caption()));
        piece.made().forEach(made -> add(texts, label("made"), made.note()));
        facts.clampings().forEach(clamping -> clamping(texts, clamping));
        facts.boardUses().forEach(use -> board(texts, facts.boards().get(use.board()), use.state()));
        facts.cloth().cloths().forEach(cloth -> cloth(texts, cloth));
        facts.lotsUsed().forEach(lot -> lot(texts, lot));
        String names = colours.stream()
                .flatMap(colour -> Stream.of(colour.name(), ColourWords.of(colour.colour())))
                .filter(name -> !name.isEmpty())
                .distinct()
                .collect(Collectors.joining(", "));
        add(texts, label("colours"), names);
        if (facts.whereabouts().status() != null) {
            add(texts, label("status"), facts.whereabouts().status().toString());
        }
        if (piece.category() != null) {
            add(texts, label("kind-of-piece"), piece.category().toString());
        }
        return texts.stream().distinct().toList();
    }

    /** What was seen; what is gone is marked so. */
    private static void examination(List<Passage> texts, Examination examination) {
        String label = label("examined", "when", examination.when().recorded() ? examination.when() : examination.id());
        add(texts, label, examination.examiner(), examination.summary());
        for (Observation seen : examination.observations()) {
            add(
                    texts,
                    label,
                    seen.gone() ? label("gone", "what", seen.what()) : seen.what(),
                    seen.where(),
                    seen.note());
        }
        add(texts, label, examination.notes());
    }

    private static void clamping(List<Passage> texts, Clamping clamping) {
        add(texts, label("clamping"), clamping.id().value(), clamping.title());
        add(texts, label("lesson"), clamping.lesson());
        add(texts, label("clamping-notes"), clamping.notes());
        add(texts, label("fold"), clamping.fold().note());
        add(texts, label("water"), clamping.water());
        add(
                texts,
                label("dyed-at"),
                clamping.where().dyer(),
                clamping.where().place(),
                clamping.where().country());
        add(texts, label("pressure"), clamping.pressure());
        for (Step step : clamping.steps()) {
            add(texts, label("vat"), step.vat());
            add(texts, step.kind().toString(), step.notes());
        }
    }

    private static void board(List<Passage> texts, BoardPair board, String state) {
        if (board != null) {
            add(texts, label("board"), board.title(), board.wood());
            add(texts, label("board-notes"), board.notes());
            board.state(state).ifPresent(of -> add(texts, label("board-state", "state", of.name()), of.change()));
        }
    }

    private static void cloth(List<Passage> texts, Cloth cloth) {
        String fibres = cloth.content().stream().map(FibreShare::fibre).collect(Collectors.joining(" "));
        add(texts, label("cloth"), cloth.title(), fibres, cloth.weave(), cloth.lot(), cloth.notes());
    }

    private static void lot(List<Passage> texts, Lot lot) {
        add(
                texts,
                lot.role().toString(),
                lot.id().value(),
                lot.name(),
                lot.organism(),
                lot.part(),
                lot.form(),
                lot.lot(),
                lot.notes());
    }

    /** In English, as in the index. */
    private static String label(String key, Object... namesAndValues) {
        return Message.of("search.passage." + key, namesAndValues).inEnglish();
    }

    private static void add(List<Passage> texts, String label, String... parts) {
        String text = Stream.of(parts)
                .filter(Objects::nonNull)
                .filter(part -> !part.isBlank())
                .distinct()
                .collect(Collectors.joining(", "));
        if (!text.isEmpty()) {
            texts.add(new Passage(label, text));
        }
    }
}

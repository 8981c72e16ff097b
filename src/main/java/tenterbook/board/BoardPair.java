package tenterbook.board;

import java.util.List;
import java.util.Optional;
import tenterbook.measure.PartialDate;
import tenterbook.measure.Quantity;
import tenterbook.words.Refusal;

/**
 * Two boards between which folded cloth is clamped; the raised parts of one meet those of the other.
 *
 * @param image what is carved
 * @param wood the wood, and its finish if any
 * @param length along the grain or the longer side, as a length
 * @param width the other side, as a length
 * @param thickness of one board, as a length
 * @param usualLayers layers of cloth the pair usually takes
 * @param kept where the pair is kept
 * @param states in order of time, at least one
 * @param notes anything else
 */
public record BoardPair(
        BoardId id,
        String image,
        String wood,
        Quantity length,
        Quantity width,
        Quantity thickness,
        Quantity usualLayers,
        String kept,
        List<BoardState> states,
        String notes) {
    public BoardPair {
        image = image == null ? "" : image.strip();
        wood = wood == null ? "" : wood.strip();
        length = length == null ? Quantity.UNRECORDED : length;
        width = width == null ? Quantity.UNRECORDED : width;
        thickness = thickness == null ? Quantity.UNRECORDED : thickness;
        usualLayers = usualLayers == null ? Quantity.UNRECORDED : usualLayers;
        kept = kept == null ? "" : kept.strip();
        states = states == null || states.isEmpty()
                ? List.of(new BoardState(
                        "I", PartialDate.UNRECORDED, "", Quantity.UNRECORDED, Quantity.UNRECORDED, List.of()))
                : List.copyOf(states);
        notes = notes == null ? "" : notes.strip();
        if (states.stream().map(BoardState::name).distinct().count() < states.size()) {
            throw Refusal.of("board.two-states-alike", "board", id);
        }
    }

    public Optional<BoardState> state(String name) {
        return states.stream().filter(state -> state.name().equals(name)).findFirst();
    }

    public BoardState newest() {
        return states.get(states.size() - 1);
    }

    /** The pair's name and image, as in 'B02 Heron weir'. */
    public String title() {
        return image.isEmpty() ? id.value() : id.value() + " " + image;
    }
}

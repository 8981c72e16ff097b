package tenterbook.piece;

import java.util.List;
import tenterbook.piece.cost.PieceCost;
import tenterbook.piece.edition.InEdition;
import tenterbook.piece.label.LabelFacts;

/**
 * What papers state of a piece beside its recipe, in the maker's own words. Every text is empty where not recorded.
 *
 * @param maker who made it, where that is not the maker of its clampings or of the studio
 * @param helpers who helped
 * @param inscriptions inscriptions, signatures and marks on it, and where they are
 * @param features distinguishing features, by which it is known among pieces of the same board
 * @param creditLine as it is to stand beside the piece or its picture
 * @param imageRights who owns the rights in its pictures
 * @param hanging how it is hung or mounted
 * @param packing how it is packed and carried
 * @param packedSize size as folded or rolled
 * @param commodityCode for customs, as the maker entered it; no rule of the program finds it
 * @param treatments treatments and pests it had, with their dates
 * @param residues residues of mordants or other chemicals that are known or suspected
 * @param label what the rules of labels ask
 * @param cost what went into it; for the maker alone
 * @param laterNumbers that it was given after its first one, in order; the last is the one it has now
 * @param edition the edition or set it belongs to
 */
public record Particulars(
        String maker,
        String helpers,
        String inscriptions,
        String features,
        String creditLine,
        String imageRights,
        String hanging,
        String packing,
        String packedSize,
        String commodityCode,
        String treatments,
        String residues,
        LabelFacts label,
        PieceCost cost,
        List<PieceNumber> laterNumbers,
        InEdition edition) {
    public static final Particulars NONE = new Particulars(
            "", "", "", "", "", "", "", "", "", "", "", "", LabelFacts.NONE, PieceCost.NONE, List.of(), InEdition.NONE);

    public Particulars {
        maker = stripped(maker);
        helpers = stripped(helpers);
        inscriptions = stripped(inscriptions);
        features = stripped(features);
        creditLine = stripped(creditLine);
        imageRights = stripped(imageRights);
        hanging = stripped(hanging);
        packing = stripped(packing);
        packedSize = stripped(packedSize);
        commodityCode = stripped(commodityCode);
        treatments = stripped(treatments);
        residues = stripped(residues);
        label = label == null ? LabelFacts.NONE : label;
        cost = cost == null ? PieceCost.NONE : cost;
        laterNumbers = laterNumbers == null ? List.of() : List.copyOf(laterNumbers);
        edition = edition == null ? InEdition.NONE : edition;
    }

    public Particulars with(LabelFacts other) {
        return with(other, laterNumbers, edition);
    }

    Particulars with(List<PieceNumber> numbers) {
        return with(label, numbers, edition);
    }

    Particulars with(InEdition other) {
        return with(label, laterNumbers, other);
    }

    private Particulars with(LabelFacts other, List<PieceNumber> numbers, InEdition belongs) {
        return new Particulars(
                maker,
                helpers,
                inscriptions,
                features,
                creditLine,
                imageRights,
                hanging,
                packing,
                packedSize,
                commodityCode,
                treatments,
                residues,
                other,
                cost,
                numbers,
                belongs);
    }

    private static String stripped(String text) {
        return text == null ? "" : text.strip();
    }
}

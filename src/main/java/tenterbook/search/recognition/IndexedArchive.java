package tenterbook.search.recognition;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.colour.palette.Region.Corner;
import tenterbook.facts.PieceFacts;
import tenterbook.facts.PieceReader;
import tenterbook.imaging.Photo;
import tenterbook.imaging.SeenCloth;
import tenterbook.imaging.cloth.ClothOutline.Edge;
import tenterbook.measure.Digest;
import tenterbook.measure.Quantity;
import tenterbook.measure.Unit;
import tenterbook.piece.PhotoRole;
import tenterbook.piece.PiecePhoto;

/** The photographs of an archive, and what its records say they are of. */
final class IndexedArchive implements Indexed {
    private final Archive archive;
    private final FeatureTable table;

    IndexedArchive(Archive archive, FeatureTable table) {
        this.archive = archive;
        this.table = table;
    }

    @Override
    public Preselection preselection() {
        return table.preselection();
    }

    @Override
    public Map<Digest, PhotoFeatures> features(Collection<Digest> photos) {
        table.hurry();
        return table.of(photos);
    }

    @Override
    public int waiting() {
        return table.left();
    }

    @Override
    public Map<Digest, List<Shown>> shown(Collection<Digest> photos) {
        Map<String, List<String>> pieces = archive.ledger()
                .referencedBy(
                        Kinds.PIECE,
                        Kinds.PHOTO,
                        photos.stream().map(Digest::hex).toList());
        List<String> numbers =
                pieces.values().stream().flatMap(List::stream).distinct().toList();
        Map<Digest, List<Shown>> shown = new HashMap<>();
        for (PieceFacts facts : new PieceReader(archive).named(numbers)) {
            for (PiecePhoto photo : facts.piece().photos()) {
                if (photos.contains(photo.photo()) && PieceFacts.ofThePiece(photo)) {
                    shown.computeIfAbsent(photo.photo(), any -> new ArrayList<>())
                            .add(new Shown(
                                    facts.piece().number(),
                                    photo.state(),
                                    facts.boardUses(photo.state()),
                                    () -> longerSideMm(facts, photo)));
                }
            }
        }
        return shown;
    }

    /** Known where the photograph shows the whole cloth before something else, and the cloth's size is recorded. */
    private @Nullable Double longerSideMm(PieceFacts facts, PiecePhoto shown) {
        Photo photo = facts.photos().get(shown.photo());
        Quantity length = facts.piece().length().in(Unit.CENTIMETRE);
        Quantity width = facts.piece().width().in(Unit.CENTIMETRE);
        if (photo == null
                || photo.width() == null
                || photo.height() == null
                || shown.role() != PhotoRole.FRONT
                || !length.bounded()
                || !width.bounded()) {
            return null;
        }
        SeenCloth cloth = archive.cloths().known(List.of(photo)).get(photo.digest());
        Edge edge = cloth.outline().edge();
        if (edge != Edge.FOUND && edge != Edge.DRAWN) {
            return null;
        }
        double longer = Math.max(photo.width(), photo.height());
        double across =
                extent(cloth.outline().corners().stream().mapToDouble(Corner::x).toArray()) * photo.width();
        double down =
                extent(cloth.outline().corners().stream().mapToDouble(Corner::y).toArray()) * photo.height();
        double area = across * down / (longer * longer);
        return 10 * Math.sqrt(length.middle() * width.middle() / area);
    }

    private static double extent(double[] values) {
        double least = Double.MAX_VALUE;
        double most = -Double.MAX_VALUE;
        for (double value : values) {
            least = Math.min(least, value);
            most = Math.max(most, value);
        }
        return most - least;
    }
}

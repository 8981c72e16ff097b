package tenterbook.web.api;

import java.util.Locale;
import java.util.Objects;
import tenterbook.colour.Lab;
import tenterbook.measure.DateText;
import tenterbook.measure.PartialDate;
import tenterbook.measure.Quantity;
import tenterbook.measure.QuantityText;
import tenterbook.measure.Unit;
import tenterbook.piece.ColourRegion;
import tenterbook.piece.Layers;
import tenterbook.piece.Piece;
import tenterbook.web.page.RecordView;

/**
 * Whether the numbers of a piece that another program wrote make sense: a length in grams cannot be searched or printed, and
 * where the text entered says something else than the numbers beside it, nobody can tell which is true.
 */
final class PieceSense {
    /** More than any piece measures, in any unit. */
    private static final double MOST = 1e9;

    private PieceSense() {}

    /** @throws IllegalArgumentException with a sentence that names the field */
    static void check(Piece piece) {
        if (piece.number() != null && piece.number().value().equals(RecordView.RESERVED)) {
            throw refusal("number", "is “new”, which no piece can be called");
        }
        quantity("length", piece.length(), Unit.CENTIMETRE);
        quantity("width", piece.width(), Unit.CENTIMETRE);
        quantity("mass", piece.mass(), Unit.GRAM);
        date("finished", piece.finished());
        piece.made().forEach(made -> layers(made.layers()));
        piece.tests().forEach(test -> {
            date("tests.when", test.when());
            quantity("tests.temperature", test.temperature(), Unit.CELSIUS);
        });
        piece.events().forEach(event -> {
            date("events.when", event.when());
            date("events.until", event.until());
        });
        piece.photos().forEach(photo -> photo.regions().forEach(PieceSense::region));
    }

    private static void quantity(String field, Quantity found, Unit usual) {
        if (found.known()) {
            if (found.unit().dimension() != usual.dimension()) {
                throw refusal(
                        field,
                        "is a %s and is not given in %s"
                                .formatted(usual.dimension().name().toLowerCase(Locale.ROOT), found.unit()));
            }
            double least = usual == Unit.CELSIUS ? -MOST : 0;
            if (outside(found.low(), least) || outside(found.high(), least)) {
                throw refusal(field, "is too large or below nothing");
            }
        }
        if (!found.entered().isBlank()) {
            Quantity read = QuantityText.read(found.entered(), found.known() ? found.unit() : usual);
            if (!same(found, read)) {
                throw refusal(field, "was entered as “%s”, which its numbers do not say".formatted(found.entered()));
            }
        }
    }

    private static boolean outside(Double value, double least) {
        return value != null && !(value >= least && value <= MOST);
    }

    private static boolean same(Quantity found, Quantity read) {
        return Objects.equals(found.low(), read.low())
                && Objects.equals(found.high(), read.high())
                && found.unit() == read.unit();
    }

    private static void date(String field, PartialDate found) {
        if (found.recorded() && !found.equals(DateText.read(found.entered()))) {
            throw refusal(field, "was entered as “%s”, which its days do not say".formatted(found.entered()));
        }
    }

    private static void layers(Layers found) {
        if (!found.equals(Layers.read(found.entered()))) {
            throw refusal(
                    "made.layers", "was entered as “%s”, which its numbers do not say".formatted(found.entered()));
        }
    }

    private static void region(ColourRegion region) {
        Lab colour = region.colour();
        // A measured white may lie a rounding above 100.
        if (!(colour.lightness() >= -0.01 && colour.lightness() <= 100.01)
                || !(Math.abs(colour.a()) <= 150 && Math.abs(colour.b()) <= 150)) {
            throw refusal("photos.regions.colour", "has L from 0 to 100 and a and b within 150 of zero");
        }
        for (ColourRegion.Corner corner : region.corners()) {
            if (!(corner.across() >= 0 && corner.across() <= 1 && corner.down() >= 0 && corner.down() <= 1)) {
                throw refusal("photos.regions.corners", "lie within the picture, each part 0 to 1");
            }
        }
    }

    private static IllegalArgumentException refusal(String field, String why) {
        return new IllegalArgumentException(
                "The piece was not understood: ‘%s’ %s. Nothing was changed.".formatted(field, why));
    }
}

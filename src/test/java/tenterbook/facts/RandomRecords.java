package tenterbook.facts;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.colour.palette.PaletteColour;
import tenterbook.colour.space.Lab;
import tenterbook.imaging.Photo;
import tenterbook.ledger.LedgerTransaction;
import tenterbook.ledger.Saved;
import tenterbook.ledger.revision.Kind;
import tenterbook.measure.Digest;
import tenterbook.piece.Piece;
import tenterbook.piece.condition.Examination;

/** An archive into which pieces of any traits are written. */
final class RandomRecords implements AutoCloseable {
    private static final String DAY = "{\"entered\": \"%1$s\", \"from\": \"%1$s\", \"to\": \"%1$s\"}";
    final Archive archive;
    private int made;

    RandomRecords(Path folder) {
        archive = Archive.open(folder, Clock.systemUTC());
        archive.ledger().write("test", act -> {
            create(act, Kinds.LOT, "{\"id\": \"weld\", \"role\": \"dye\", \"name\": \"weld\"}");
            create(act, Kinds.CLOTH, "{\"id\": \"LV\", \"name\": \"linen voile\"}");
            create(
                    act,
                    Kinds.CLOTH,
                    "{\"id\": \"SH\", \"name\": \"silk habotai\", \"content\": [{\"fibre\": \"silk\", \"percent\": 100}]}");
            create(act, Kinds.BOARD_PAIR, "{\"id\": \"B02\", \"name\": \"Heron weir\"}");
            create(act, Kinds.PARTY, "{\"id\": \"sala\", \"name\": \"Sala Vermia\", \"kind\": \"gallery\"}");
            return act.create(Kinds.PHOTO, photo());
        });
    }

    private static Photo photo() {
        return new Photo(
                Digest.of("a photograph".getBytes(StandardCharsets.UTF_8)),
                "a.jpg",
                1000,
                "image/jpeg",
                400,
                300,
                1,
                "",
                "",
                "",
                "",
                false,
                true,
                List.of(),
                List.of(new PaletteColour(new Lab(40, -4, -23), 1)),
                Photo.UNCALIBRATED,
                List.of());
    }

    private static <T> Saved<T> create(LedgerTransaction act, Kind<T> kind, String json) {
        return act.create(kind, kind.codec().fromText(json));
    }

    /** A new piece of which exactly this is recorded. */
    Saved<Piece> piece(Set<Trait> of) {
        Set<Trait> traits = Trait.whole(of);
        int number = ++made;
        return archive.ledger().write("test", act -> {
            List<String> clampings = new ArrayList<>();
            if (traits.contains(Trait.CLAMPING)) {
                clampings.add("C" + number);
                create(act, Kinds.CLAMPING, clamping("C" + number, traits));
            }
            if (traits.contains(Trait.DYED_AGAIN)) {
                clampings.add("D" + number);
                create(act, Kinds.CLAMPING, clamping("D" + number, traits));
            }
            Saved<Piece> piece = create(act, Kinds.PIECE, piece("P" + number, traits, clampings));
            if (traits.contains(Trait.KIN)) {
                create(act, Kinds.PIECE, piece("K" + number, Set.of(), clampings));
            }
            if (traits.contains(Trait.VALUE_AGREED)) {
                create(
                        act,
                        Kinds.AGREEMENT,
                        ("{\"id\": \"A%1$d\", \"kind\": \"consignment\", \"party\": \"sala\", \"pieces\": [{\"piece\": \"P%1$d\","
                                        + " \"value\": {\"amount\": \"280\", \"currency\": \"EUR\"}}]}")
                                .formatted(number));
            }
            if (traits.contains(Trait.EARLIER_REPORT)) {
                create(act, Kinds.EXAMINATION, report("E" + number, "P" + number, "2024-03-01", Set.of()));
            }
            if (traits.contains(Trait.REPORT)) {
                create(act, Kinds.EXAMINATION, report("F" + number, "P" + number, "2024-09-01", traits));
            }
            return piece;
        });
    }

    /** The latest report of a piece. */
    Optional<Saved<Examination>> report(Saved<Piece> piece) {
        return PieceReader.of(archive, piece.record())
                .condition()
                .last()
                .flatMap(last ->
                        archive.ledger().find(Kinds.EXAMINATION, last.id().value()));
    }

    private static String piece(String number, Set<Trait> traits, List<String> clampings) {
        List<String> events = new ArrayList<>();
        event(events, traits, Trait.PHOTOGRAPHED, "photographed", "2024-01-02", "");
        event(events, traits, Trait.NOTED_EXAMINATION, "examined", "2024-05-05", "");
        event(events, traits, Trait.WASHED, "washed", "2024-10-01", ", \"note\": \"cold\"");
        event(events, traits, Trait.DAMAGED, "other", "2024-10-02", ", \"note\": \"a tear at the hem\"");
        event(
                events,
                traits,
                Trait.LENT,
                "lent",
                "2024-11-01",
                traits.contains(Trait.PRICE_OF_LOAN)
                        ? ", \"price\": {\"amount\": \"300\", \"currency\": \"EUR\"}"
                        : "");
        event(events, traits, Trait.SOLD, "sold", "2024-12-01", ", \"party\": \"sala\"");
        String photo = photo().digest().hex();
        List<String> photos = new ArrayList<>();
        int state = Math.max(1, clampings.size());
        if (traits.contains(Trait.PHOTO_OF_STATE_ONE)) {
            photos.add("{\"photo\": \"%s\", \"role\": \"front\", \"state\": 1}".formatted(photo));
        }
        if (traits.contains(Trait.PHOTO_OF_TODAY)) {
            String regions = traits.contains(Trait.NAMED_COLOUR)
                    ? ", \"regions\": [{\"role\": \"ground\", \"name\": \"heron blue\", \"colour\": {\"lightness\": 40, \"a\": -4, \"b\": -23}}]"
                    : "";
            photos.add("{\"photo\": \"%s\", \"role\": \"front\", \"state\": %d%s}".formatted(photo, state, regions));
        }
        return "{\"number\": \"%s\"%s%s%s%s%s, \"made\": [%s], \"events\": [%s], \"photos\": [%s]}"
                .formatted(
                        number,
                        traits.contains(Trait.FAULT) ? ", \"faults\": [{\"kind\": \"leak\"}]" : "",
                        traits.contains(Trait.STATUS_SOLD) ? ", \"status\": \"sold\"" : "",
                        traits.contains(Trait.HOLDER) ? ", \"holder\": \"sala\"" : "",
                        traits.contains(Trait.ASKED) ? ", \"price\": {\"amount\": \"320\", \"currency\": \"EUR\"}" : "",
                        traits.contains(Trait.WASH_TEST)
                                ? ", \"tests\": [{\"kind\": \"hand wash\", \"passed\": true}]"
                                : "",
                        String.join(
                                ", ",
                                clampings.stream()
                                        .map(id -> "{\"clamping\": \"" + id + "\"}")
                                        .toList()),
                        String.join(", ", events),
                        String.join(", ", photos));
    }

    private static void event(
            List<String> events, Set<Trait> traits, Trait trait, String kind, String day, String more) {
        if (traits.contains(trait)) {
            events.add("{\"kind\": \"%s\", \"when\": %s%s}".formatted(kind, DAY.formatted(day), more));
        }
    }

    private static String clamping(String id, Set<Trait> traits) {
        String number = traits.contains(Trait.DIPS_TYPED)
                ? "\"count\": {\"entered\": \"8\", \"low\": 8, \"high\": 8, \"unit\": \"count\"}"
                : "\"count\": {\"entered\": \"forgot\"}";
        String timed = traits.contains(Trait.DIPS_TIMED)
                ? ", \"dips\": [{\"in\": \"2024-05-04T10:00:00\", \"out\": \"2024-05-04T10:05:00\"}]"
                : "";
        String step = "{\"kind\": \"dips\", \"vat\": \"Mare\"%s, \"dips\": {%s%s}}"
                .formatted(traits.contains(Trait.DYE) ? ", \"charges\": [{\"lot\": \"weld\"}]" : "", number, timed);
        return "{\"id\": \"%s\", \"boards\": [%s], \"cuts\": [%s], \"steps\": [%s]}"
                .formatted(
                        id,
                        traits.contains(Trait.BOARD) ? "{\"board\": \"B02\", \"state\": \"I\"}" : "",
                        traits.contains(Trait.CLOTH)
                                ? "{\"cloth\": \"%s\"}".formatted(traits.contains(Trait.FIBRES) ? "SH" : "LV")
                                : "",
                        traits.contains(Trait.STEPS) ? step : "");
    }

    private static String report(String id, String piece, String day, Set<Trait> traits) {
        List<String> seen = new ArrayList<>();
        if (traits.contains(Trait.SEEN)) {
            seen.add("{\"number\": 1, \"what\": \"stain\", \"zone\": \"front\"}");
        }
        if (traits.contains(Trait.GONE)) {
            seen.add("{\"number\": 2, \"what\": \"crease\", \"standing\": \"gone\"}");
        }
        return "{\"id\": \"%s\", \"piece\": \"%s\", \"when\": %s%s%s%s, \"observations\": [%s]}"
                .formatted(
                        id,
                        piece,
                        DAY.formatted(day),
                        traits.contains(Trait.SUMMARY) ? ", \"summary\": \"Marked at the hem\"" : "",
                        traits.contains(Trait.JUDGED) ? ", \"overall\": \"fair\"" : "",
                        traits.contains(Trait.EXAMINER) ? ", \"examiner\": \"Tomé Quarral\"" : "",
                        String.join(", ", seen));
    }

    @Override
    public void close() {
        archive.close();
    }
}

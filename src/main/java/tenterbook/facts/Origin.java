package tenterbook.facts;

import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tenterbook.measure.PartialDate;
import tenterbook.piece.EarlierStudio;
import tenterbook.piece.Piece;
import tenterbook.piece.Studio;
import tenterbook.recipe.Clamping;
import tenterbook.recipe.WhereDyed;
import tenterbook.words.Listing;

/**
 * Where and by whom a piece was made, for papers and pages: as the piece and its clampings record it, otherwise the studio's
 * particulars of the day. Two clampings of different places give both.
 *
 * @param maker the person's name; empty where not recorded, like all of these
 * @param studio its name
 * @param place town and country
 * @param dyedIn country of the dyeing
 */
public record Origin(String maker, String studio, String place, String dyedIn) {
    static Origin of(Studio studio, Piece piece, List<Clamping> clampings) {
        PartialDate end = piece.finished();
        String maker = piece.particulars().maker();
        if (clampings.isEmpty()) {
            EarlierStudio then = studio.on(end);
            return new Origin(first(maker, then.maker()), then.name(), then.place(), then.dyedIn());
        }
        return new Origin(
                first(maker, each(clampings, end, studio, WhereDyed::dyer, EarlierStudio::maker)),
                each(clampings, end, studio, where -> "", EarlierStudio::name),
                each(clampings, end, studio, WhereDyed::place, EarlierStudio::place),
                each(clampings, end, studio, WhereDyed::country, EarlierStudio::dyedIn));
    }

    /** Over all clampings, in order; empty where it is not known of one of them. */
    private static String each(
            List<Clamping> clampings,
            PartialDate finished,
            Studio studio,
            Function<WhereDyed, String> recorded,
            Function<EarlierStudio, String> otherwise) {
        List<String> all = clampings.stream()
                .map(clamping -> first(
                        recorded.apply(clamping.where()),
                        otherwise.apply(studio.on(clamping.when().known() ? clamping.when() : finished))))
                .distinct()
                .toList();
        return all.contains("") ? "" : Listing.and(all).onPaper();
    }

    private static String first(String recorded, String otherwise) {
        return recorded.isEmpty() ? otherwise : recorded;
    }

    /** As in 'Inês Valderim, Oficina Valderim, Porto Sarelho'; empty where nothing is recorded. */
    public String inFull() {
        return joined(maker, studio, place);
    }

    /** As in 'Oficina Valderim, Porto Sarelho'; empty where neither is recorded. */
    public String house() {
        return joined(studio, place);
    }

    /** The person, else the studio; empty where neither is recorded. */
    public String named() {
        return maker.isEmpty() ? studio : maker;
    }

    /** Shown beside {@link #named}: studio and place where the person is named, else the place. */
    public String beside() {
        return maker.isEmpty() ? place : house();
    }

    private static String joined(String... parts) {
        return Stream.of(parts).filter(part -> !part.isEmpty()).collect(Collectors.joining(", "));
    }
}

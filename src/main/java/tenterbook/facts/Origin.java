package tenterbook.facts;

import java.util.stream.Collectors;
import java.util.stream.Stream;
import tenterbook.piece.Studio;

/**
 * Where and by whom a piece was made, for papers and pages: at present the studio's particulars for every piece.
 *
 * @param maker the person's name; empty where not recorded, like all of these
 * @param studio its name
 * @param place town and country
 * @param dyedIn country of the dyeing
 */
public record Origin(String maker, String studio, String place, String dyedIn) {
    public static Origin of(Studio studio) {
        return new Origin(studio.maker(), studio.name(), studio.place(), studio.dyedIn());
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

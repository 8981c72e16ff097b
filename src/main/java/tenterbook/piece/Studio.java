package tenterbook.piece;

import java.util.Currency;

/**
 * The studio itself: what stands on paper, and how pieces are numbered.
 *
 * @param name of the studio
 * @param maker the maker's name as on labels
 * @param place town and country as on labels
 * @param dyedIn country where the dyeing is done
 * @param contact what a label must say about the responsible person; printed only where a rule asks for it
 * @param careLine what the care pointer on a tag says beyond the recorded tests, or empty
 * @param numbers how new pieces are numbered
 * @param currency meant where a price names none
 * @param notice shown at the head of every page, as in 'Sample archive: all invented'; empty for none
 */
public record Studio(
        String name,
        String maker,
        String place,
        String dyedIn,
        String contact,
        String careLine,
        NumberScheme numbers,
        Currency currency,
        String notice) {
    public static final Studio UNNAMED = new Studio(null, null, null, null, null, null, null, null, null);

    public Studio {
        name = name == null ? "" : name.strip();
        maker = maker == null ? "" : maker.strip();
        place = place == null ? "" : place.strip();
        dyedIn = dyedIn == null ? "" : dyedIn.strip();
        contact = contact == null ? "" : contact.strip();
        careLine = careLine == null ? "" : careLine.strip();
        numbers = numbers == null ? new NumberScheme("") : numbers;
        currency = currency == null ? Currency.getInstance("EUR") : currency;
        notice = notice == null ? "" : notice.strip();
    }
}

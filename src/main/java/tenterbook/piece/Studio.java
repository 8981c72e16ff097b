package tenterbook.piece;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Currency;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tenterbook.measure.LengthUnits;
import tenterbook.measure.PartialDate;
import tenterbook.piece.label.SellingFacts;
import tenterbook.words.Conventions;
import tenterbook.words.Conventions.DateOrder;
import tenterbook.words.Refusal;

/**
 * The studio: its particulars as printed, and how pieces are numbered.
 *
 * @param name of the studio
 * @param maker the maker's name as on labels
 * @param place town and country as on labels
 * @param dyedIn country where the dyeing is done
 * @param contact how the studio is reached, in the maker's own words; kept, not printed
 * @param careLine added to the care line of a tag, beyond the recorded tests; may be empty
 * @param numbers how new pieces are numbered
 * @param currency of a price that names none
 * @param notice shown at the head of every page, as in 'Sample archive: all invented'; empty for none
 * @param postalAddress street, place and country where post arrives; printed only where a market's rule requires it
 * @param online e-mail or web address; likewise
 * @param phone likewise
 * @param rn registered number of the United States, digits alone
 * @param caNumber identification number of Canada, digits alone
 * @param responsible the responsible person in the European Union of a maker outside it: name, postal and electronic address
 * @param dateOrder in which dates are written on pages and documents; null for the usual one
 * @param timeZone in which instants are shown, wherever the archive is opened; null for that of the computer
 * @param names words that labels need in other languages, as entered
 * @param earlier particulars of former times, in any order; the present ones hold after the last of them
 * @param selling what the rules of labels ask beside these
 * @param lengths units of lengths typed without one; null where none were chosen, see {@link #lengthUnits}
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
        String notice,
        String postalAddress,
        String online,
        String phone,
        String rn,
        String caNumber,
        String responsible,
        @Nullable DateOrder dateOrder,
        @Nullable ZoneId timeZone,
        List<LocalName> names,
        List<EarlierStudio> earlier,
        SellingFacts selling,
        @Nullable LengthUnits lengths) {
    public static final Studio UNNAMED =
            new Studio("", "", "", "", "", "", new NumberScheme(""), Currency.getInstance("EUR"), "");

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
        postalAddress = postalAddress == null ? "" : postalAddress.strip();
        online = online == null ? "" : online.strip();
        phone = phone == null ? "" : phone.strip();
        rn = rn(rn);
        caNumber = caNumber(caNumber);
        responsible = responsible == null ? "" : responsible.strip();
        names = names == null ? List.of() : List.copyOf(names);
        earlier = earlier == null ? List.of() : List.copyOf(earlier);
        selling = selling == null ? SellingFacts.NONE : selling;
    }

    /** A studio without particulars for labels. */
    public Studio(
            String name,
            String maker,
            String place,
            String dyedIn,
            String contact,
            String careLine,
            NumberScheme numbers,
            Currency currency,
            String notice) {
        this(
                name,
                maker,
                place,
                dyedIn,
                contact,
                careLine,
                numbers,
                currency,
                notice,
                "",
                "",
                "",
                "",
                "",
                "",
                null,
                null,
                List.of(),
                List.of(),
                SellingFacts.NONE,
                null);
    }

    public LengthUnits lengthUnits() {
        return lengths == null ? LengthUnits.CM_AND_MM : lengths;
    }

    /**
     * The particulars that held on a day. Where the day is not known well enough to tell, each one that may have differed is
     * empty.
     */
    public EarlierStudio on(PartialDate day) {
        List<EarlierStudio> eras = new ArrayList<>(earlier);
        eras.sort(Comparator.comparing(era -> firstDay(era.until(), LocalDate.MIN)));
        eras.add(until(PartialDate.UNRECORDED));
        List<EarlierStudio> possible = new ArrayList<>();
        LocalDate begun = LocalDate.MIN;
        for (EarlierStudio era : eras) {
            LocalDate ended = firstDay(era.until(), LocalDate.MAX);
            boolean startedBefore = day.from() == null || day.from().isBefore(ended);
            boolean endedAfter = day.to() == null || !day.to().isBefore(begun);
            if (startedBefore && endedAfter) {
                possible.add(era);
            }
            begun = era.until().known() ? ended : begun;
        }
        return new EarlierStudio(
                PartialDate.UNRECORDED,
                agreed(possible, EarlierStudio::name),
                agreed(possible, EarlierStudio::maker),
                agreed(possible, EarlierStudio::place),
                agreed(possible, EarlierStudio::dyedIn));
    }

    /** What of this studio may differ with time. */
    public EarlierStudio until(PartialDate day) {
        return new EarlierStudio(day, name, maker, place, dyedIn);
    }

    /** The same with one more record of former particulars. */
    public Studio after(EarlierStudio former) {
        List<EarlierStudio> more = new ArrayList<>(earlier);
        more.add(former);
        return with(more, selling);
    }

    public Studio with(SellingFacts other) {
        return with(earlier, other);
    }

    private Studio with(List<EarlierStudio> former, SellingFacts sale) {
        return new Studio(
                name,
                maker,
                place,
                dyedIn,
                contact,
                careLine,
                numbers,
                currency,
                notice,
                postalAddress,
                online,
                phone,
                rn,
                caNumber,
                responsible,
                dateOrder,
                timeZone,
                names,
                former,
                sale,
                lengths);
    }

    private static LocalDate firstDay(PartialDate date, LocalDate otherwise) {
        return date.from() != null ? date.from() : date.to() != null ? date.to() : otherwise;
    }

    private static String agreed(List<EarlierStudio> eras, Function<EarlierStudio, String> particular) {
        List<String> values = eras.stream().map(particular).distinct().toList();
        return values.size() == 1 ? values.get(0) : "";
    }

    /** How numbers, dates and instants are written for this studio. */
    public Conventions conventions() {
        Conventions usual = Conventions.english();
        return new Conventions(
                usual.language(),
                usual.decimalMark(),
                dateOrder == null ? usual.dateOrder() : dateOrder,
                timeZone == null ? usual.zone() : timeZone);
    }

    /**
     * The digits of a registered number, with or without its letters.
     *
     * @throws IllegalArgumentException where there is more than digits
     */
    public static String rn(@Nullable String text) {
        return digits(text, "RN", "piece.number-rn");
    }

    /** The digits of a Canadian identification number; otherwise as {@link #rn}. */
    public static String caNumber(@Nullable String text) {
        return digits(text, "CA", "piece.number-ca");
    }

    private static String digits(@Nullable String text, String letters, String refusal) {
        String plain = text == null
                ? ""
                : text.strip()
                        .replaceFirst("(?i)^" + letters + "\\s*#?\\s*", "")
                        .replaceAll("\\s", "");
        if (!plain.matches("\\d{0,9}")) {
            throw Refusal.of(refusal, "found", text);
        }
        return plain;
    }
}

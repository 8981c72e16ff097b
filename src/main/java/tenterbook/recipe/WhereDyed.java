package tenterbook.recipe;

/**
 * Where and by whom a clamping was made. Every text is empty where not recorded; then the studio's particulars of its day
 * hold.
 *
 * @param dyer who did the work
 * @param place town, or town and country
 * @param country country of the dyeing
 */
public record WhereDyed(String dyer, String place, String country) {
    public static final WhereDyed UNRECORDED = new WhereDyed("", "", "");

    public WhereDyed {
        dyer = dyer == null ? "" : dyer.strip();
        place = place == null ? "" : place.strip();
        country = country == null ? "" : country.strip();
    }
}

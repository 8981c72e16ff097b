package tenterbook.piece;

/**
 * A gallery, buyer, borrower, museum or helper. Private: leaves the archive only by explicit choice.
 *
 * @param name as it is written on paper
 * @param kind in the maker's words, as in 'gallery' or 'buyer'
 * @param contact address, telephone, mail; never printed or exported unless chosen
 */
public record Party(PartyId id, String name, String kind, String contact, String notes) {
    public Party {
        name = name == null ? "" : name.strip();
        kind = kind == null ? "" : kind.strip();
        contact = contact == null ? "" : contact.strip();
        notes = notes == null ? "" : notes.strip();
    }

    public String title() {
        return name.isEmpty() ? id.value() : name;
    }
}

package tenterbook.label.document.kind;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.label.Gathering;
import tenterbook.label.LabelFacts;
import tenterbook.ledger.Revision;
import tenterbook.ledger.Saved;
import tenterbook.measure.Digest;
import tenterbook.piece.Party;
import tenterbook.piece.PartyId;
import tenterbook.piece.PhotoRole;
import tenterbook.piece.Piece;
import tenterbook.piece.PieceNumber;
import tenterbook.piece.PiecePhoto;

/**
 * A piece and all that the archive tells of it for a document.
 *
 * @param newest the newest revision of its record
 * @param parties those that its events and holder name
 * @param kin other pieces out of the same clampings
 */
record Told(Saved<Piece> saved, LabelFacts facts, Revision newest, Map<PartyId, Party> parties, List<PieceNumber> kin) {
    /** What shows a piece itself, best first. */
    private static final List<PhotoRole> OF_THE_PIECE = List.of(
            PhotoRole.FRONT, PhotoRole.BACK, PhotoRole.DETAIL, PhotoRole.FAULT, PhotoRole.LAYER, PhotoRole.OTHER);

    static Told of(Archive archive, Saved<Piece> saved) {
        Piece piece = saved.record();
        Map<PartyId, Party> parties = new TreeMap<>(java.util.Comparator.comparing(PartyId::value));
        Stream.concat(Stream.ofNullable(piece.holder()), piece.events().stream().map(event -> event.party()))
                .filter(java.util.Objects::nonNull)
                .distinct()
                .forEach(id -> archive.party(id.value()).ifPresent(party -> parties.put(id, party)));
        List<PieceNumber> kin = archive.clampingsOf(piece).stream()
                .flatMap(clamping -> archive.piecesOf(clamping).stream())
                .filter(number -> !number.equals(piece.number()))
                .distinct()
                .toList();
        List<Revision> history =
                archive.ledger().history(Kinds.PIECE.key(piece.number().value()));
        return new Told(saved, Gathering.of(archive, piece), history.get(history.size() - 1), parties, kin);
    }

    Piece piece() {
        return saved.record();
    }

    PieceNumber number() {
        return piece().number();
    }

    /** Its title; 'untitled' where it has none. */
    String title() {
        return piece().title().isEmpty() ? "untitled" : piece().title();
    }

    /** Its number and, where that is short enough for a running head, its title. */
    String running() {
        String whole = number() + "  " + piece().title();
        return whole.length() <= 60 ? whole.strip() : number().value();
    }

    /** @param buyers whether a buyer is named too; otherwise it is a private owner */
    String named(PartyId id, boolean buyers) {
        Party party = parties.get(id);
        boolean told = party != null && !party.kind().toLowerCase(Locale.ROOT).contains("buyer");
        return told || buyers ? party == null ? id.value() : party.title() : "a private owner";
    }

    /**
     * Photographs of the piece as it now is: one of each role, the best role first, then the others. Those of work, paper and
     * places are left out.
     */
    List<PiecePhoto> photos() {
        List<PiecePhoto> first = new ArrayList<>();
        List<PiecePhoto> others = new ArrayList<>();
        for (PhotoRole role : OF_THE_PIECE) {
            List<PiecePhoto> ofRole = piece().photos().stream()
                    .filter(photo -> photo.state() == piece().state() && rank(photo) == role)
                    .toList();
            ofRole.stream().limit(1).forEach(first::add);
            ofRole.stream().skip(1).forEach(others::add);
        }
        first.addAll(others);
        return first;
    }

    /** One of which nobody recorded what it shows stands with the last. */
    private static PhotoRole rank(PiecePhoto photo) {
        return photo.role() == null ? PhotoRole.OTHER : photo.role();
    }

    Optional<Digest> photo() {
        return photos().stream().findFirst().map(PiecePhoto::photo);
    }

    String seen() {
        return photos().stream().findFirst().map(PiecePhoto::caption).orElse("");
    }

    /** The cloths by name with their fibres, as in 'silk habotai (100% silk)'. */
    String cloths() {
        String cloths = facts.cloths().stream()
                .map(part -> part.cloth())
                .map(cloth -> {
                    String fibres = cloth.content().stream()
                            .map(share -> share.percent() == null
                                    ? share.fibre()
                                    : Say.number(share.percent()) + "%\u00a0" + share.fibre())
                            .collect(Collectors.joining(", "));
                    String name = cloth.name().isEmpty() ? "cloth " + cloth.id() : cloth.name();
                    return name + (fibres.isEmpty() ? " (fibres not recorded)" : " (" + fibres + ")");
                })
                .distinct()
                .collect(Collectors.joining("; "));
        return cloths.isEmpty() ? "cloth not recorded" : cloths;
    }

    String maker() {
        String made = Stream.of(
                        facts.studio().maker(),
                        facts.studio().name(),
                        facts.studio().place())
                .filter(text -> !text.isEmpty())
                .collect(Collectors.joining(", "));
        return made.isEmpty() ? Say.NOT_RECORDED : made;
    }
}

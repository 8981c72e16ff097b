package tenterbook.label.document.kind;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.facts.Denial;
import tenterbook.label.document.Block;
import tenterbook.label.document.DocumentDraft;
import tenterbook.label.document.DocumentKind;
import tenterbook.label.document.DocumentOrigin;
import tenterbook.label.document.DocumentSettings;
import tenterbook.label.document.DocumentText;
import tenterbook.label.document.PageSize;
import tenterbook.ledger.Saved;
import tenterbook.photo.Photo;
import tenterbook.piece.PartyId;
import tenterbook.piece.Piece;
import tenterbook.piece.condition.Comparison;
import tenterbook.piece.condition.Examination;
import tenterbook.piece.condition.ExaminedPhoto;
import tenterbook.piece.condition.Observation;
import tenterbook.piece.condition.Signatory;
import tenterbook.words.Joined;

/**
 * A condition report of one examination, as it passes between maker, museum, gallery and carrier: what the piece is, who looked
 * how and at what, advice to who will lift it next, the photographs with numbered marks, the same numbers told in a table, what
 * changed since the examination before, and lines to sign.
 *
 * @see "EN 16095:2012, Conservation of cultural property, Condition recording for movable cultural heritage: its parts from
 *     memory"
 */
public final class ConditionReport {
    private final Archive archive;
    private final Told told;
    private final Examination examination;

    private ConditionReport(Archive archive, Told told, Examination examination) {
        this.archive = archive;
        this.told = told;
        this.examination = examination;
    }

    /** @throws IllegalArgumentException where the piece is not the examination's */
    public static DocumentDraft of(Archive archive, Saved<Examination> saved, Saved<Piece> piece, PageSize page) {
        Examination examination = saved.record();
        if (!examination.piece().equals(piece.record().number())) {
            throw new IllegalArgumentException("The examination %s is of %s and not of %s"
                    .formatted(
                            examination.id(),
                            examination.piece(),
                            piece.record().number()));
        }
        Told told = Told.of(archive, piece);
        ConditionReport report = new ConditionReport(archive, told, examination);
        DocumentText text = new DocumentText(
                DocumentKind.CONDITION_REPORT.code(),
                DocumentKind.CONDITION_REPORT.template(),
                "Condition report",
                told.running(),
                told.house(),
                List.of(new DocumentText.Part(told.number(), report.blocks(saved.version()))));
        return new DocumentDraft(
                text,
                List.of(piece),
                DocumentSettings.of(DocumentKind.CONDITION_REPORT).on(page),
                new DocumentOrigin(null, examination.id().value(), saved.version()));
    }

    private List<Block> blocks(int version) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Heading(1, told.number() + "  " + told.title()));
        lacking().forEach(lack -> blocks.add(Say.missing(lack)));
        blocks.add(new Block.Facts(identification(version)));
        blocks.add(new Block.Heading(2, "Examination"));
        blocks.add(new Block.Facts(circumstances()));
        blocks.add(new Block.Heading(2, "State of the whole"));
        blocks.add(new Block.Paragraph(state()));
        blocks.add(new Block.Heading(2, "How far it was looked at"));
        blocks.add(zones());
        advice(blocks);
        photographs(blocks);
        blocks.add(new Block.Heading(2, "What was seen"));
        blocks.add(seen());
        changes(blocks);
        hands(blocks);
        blocks.add(Say.note(Light.sources(List.of(told.facts()))));
        blocks.add(
                Say.note(
                        "The parts of this report follow EN 16095:2012, Condition recording for movable cultural heritage, from memory; the words for what was seen are common practice. What is not recorded was not looked at or not written down, and is no finding of soundness."));
        return blocks;
    }

    private List<String> lacking() {
        List<String> lacking = new ArrayList<>();
        if (examination.photos().isEmpty()) {
            lacking.add("Missing: a photograph. Without one nobody can show later what was there on this day.");
        }
        Denial.NO_EXAMINER.of(examination).ifPresent(lacking::add);
        if (!examination.when().known()) {
            lacking.add("Missing: the day of the examination.");
        }
        return lacking;
    }

    private List<Block.Fact> identification(int version) {
        Piece piece = told.piece();
        return List.of(
                Say.fact("Report", examination.id() + ", version " + version),
                Say.fact("Object", piece.category()),
                Say.fact("Maker", told.maker()),
                Say.fact("Cloth", told.cloths()),
                Say.fact("Size on record", Say.size(piece)),
                Say.fact("Size at examination", sizeThen()),
                Say.fact("Inscriptions, trims", piece.trims()));
    }

    private String sizeThen() {
        boolean any = examination.length().recorded() || examination.width().recorded();
        return any
                ? "length " + Say.side(examination.length()) + ", width " + Say.side(examination.width())
                : "not measured, or not recorded";
    }

    private List<Block.Fact> circumstances() {
        return List.of(
                Say.fact("Day", examination.when()),
                Say.fact("Reason", said(examination.reason())),
                Say.fact("Place", examination.place()),
                Say.fact("Examined by", person(examination.examiner(), examination.party())),
                Say.fact("Means", examination.means()),
                Say.fact(
                        "Made against",
                        examination.earlier() != null
                                ? examination.earlier()
                                : Denial.NO_EARLIER_EXAMINATION.unless(
                                        told.facts().condition().before(examination),
                                        () -> "none; it was not compared with an earlier one")));
    }

    private static String said(@Nullable Enum<?> word) {
        return word == null ? "" : word.toString();
    }

    private String person(String name, PartyId party) {
        String title = party == null
                ? ""
                : archive.party(party.value()).map(of -> of.title()).orElse(party.value());
        return name.equals(title) ? name : Say.joined(", ", name, title);
    }

    private String state() {
        String state = Denial.NOT_JUDGED.unless(examination, () -> Say.capital(said(examination.overall())) + ".");
        return Say.joined(" ", state, Say.stop(examination.summary()));
    }

    // ---- photographs

    /** Marked ones large, each with its legend; the others side by side. */
    private void photographs(List<Block> blocks) {
        if (examination.photos().isEmpty()) {
            return;
        }
        blocks.add(new Block.Heading(2, "Photographs"));
        List<Block.Photograph> shown =
                examination.photos().stream().map(this::photograph).toList();
        shown.stream().filter(photo -> !photo.marks().isEmpty()).forEach(blocks::add);
        shown.stream().filter(photo -> photo.marks().isEmpty()).forEach(blocks::add);
    }

    private Block.Photograph photograph(ExaminedPhoto photo) {
        List<Block.Mark> marks = examination.observations().stream()
                .flatMap(seen -> seen.marks().stream()
                        .filter(mark -> mark.photo().equals(photo.photo()))
                        .map(mark -> new Block.Mark(
                                seen.number(),
                                mark.left(),
                                mark.top(),
                                Say.joined(
                                        ", ",
                                        seen.what(),
                                        seen.gone() ? "gone" : seen.size(),
                                        mark.area() ? "over an area" : ""),
                                mark.right(),
                                mark.bottom())))
                .toList();
        return new Block.Photograph(
                photo.photo(),
                marks.isEmpty() ? Block.Extent.HALF : Block.Extent.WHOLE,
                photo.caption().isEmpty() ? photo.shows() + " of the piece" : photo.caption(),
                caption(photo),
                marks);
    }

    private String caption(ExaminedPhoto photo) {
        String taken = archive.ledger()
                .find(Kinds.PHOTO, photo.photo().hex())
                .map(Saved::record)
                .map(Photo::taken)
                .filter(text -> text.length() >= 10)
                .map(text -> "Taken " + text.substring(0, 10) + ".")
                .orElse("When it was taken is not recorded.");
        return Say.joined(" ", Say.stop(Say.capital(photo.shows())), Say.stop(photo.caption()), taken);
    }

    // ---- observations

    private Block seen() {
        return Denial.NOTHING_WAS_NOTED
                .of(examination)
                .or(() -> Denial.NOTHING_LISTED.of(examination))
                .<Block>map(Say::note)
                .orElseGet(this::observations);
    }

    private Block observations() {
        boolean again = examination.earlier() != null;
        List<Block.Column> columns = new ArrayList<>(List.of(
                new Block.Column("No.", 0.5, true),
                new Block.Column("What", 1.5, false),
                new Block.Column("Where", 2, false),
                new Block.Column("Extent", 1.4, false),
                new Block.Column("How bad", 1.6, false)));
        if (again) {
            columns.add(new Block.Column("Since " + examination.earlier(), 1.3, false));
        }
        columns.add(new Block.Column("Note", 2.2, false));
        return new Block.Table(
                columns,
                examination.observations().stream()
                        .map(each -> row(each, again))
                        .toList());
    }

    private static Block.Row row(Observation seen, boolean again) {
        List<String> cells = new ArrayList<>(List.of(
                Integer.toString(seen.number()),
                seen.what(),
                seen.where(),
                seen.size(),
                Say.joined(", ", said(seen.severity()), said(seen.stability()))));
        if (again) {
            cells.add(seen.standing() == null ? "new" : seen.standing().toString());
        }
        cells.add(seen.note());
        return new Block.Row(null, cells);
    }

    private void changes(List<Block> blocks) {
        if (examination.earlier() == null) {
            return;
        }
        Optional<Examination> before = archive.ledger()
                .find(Kinds.EXAMINATION, examination.earlier().value())
                .map(Saved::record);
        if (before.isEmpty()) {
            blocks.add(Say.missing("Missing: the examination %s, so nothing is said of what changed since."
                    .formatted(examination.earlier())));
            return;
        }
        Comparison comparison = Comparison.of(before.get(), examination);
        blocks.add(new Block.Heading(
                2, "Since %s, %s".formatted(examination.earlier(), before.get().when())));
        blocks.add(new Block.Paragraph(Say.stop(Say.capital(comparison.inWords().inEnglish()))));
        if (!comparison.changes().isEmpty()) {
            blocks.add(new Block.Table(
                    List.of(
                            new Block.Column("No.", 0.5, true),
                            new Block.Column("What", 2, false),
                            new Block.Column("Became", 1.3, false),
                            new Block.Column("Written otherwise", 5, false)),
                    comparison.changes().stream()
                            .map(change -> new Block.Row(
                                    null,
                                    List.of(
                                            Integer.toString(change.number()),
                                            change.last().what(),
                                            change.kind().toString(),
                                            Say.joined(
                                                    ". ",
                                                    new Joined("; ", change.differs()).inEnglish(),
                                                    change.doubt() == null
                                                            ? ""
                                                            : change.doubt().inEnglish()))))
                            .toList()));
        }
    }

    private Block zones() {
        if (examination.zones().isEmpty()) {
            return Say.note("Not recorded.");
        }
        return new Block.Facts(examination.zones().stream()
                .map(zone -> Say.fact(Say.capital(zone.zone()), Say.joined("; ", said(zone.seen()), zone.note())))
                .toList());
    }

    // ---- advice and hands

    private void advice(List<Block> blocks) {
        blocks.add(new Block.Heading(2, "Handling, light and packing"));
        blocks.add(new Block.Facts(List.of(
                Say.fact("Handling", examination.handling()),
                Say.fact("Light, showing", examination.light()),
                Say.fact("Packing", examination.packing()))));
        blocks.add(Say.caution("Light for planning: " + Light.caution(told.facts())));
        blocks.add(
                Say.caution(
                        "Lift it with clean dry hands or gloves, and fully supported. Treat stains, mould and insects only with a textile conservator; mould and old pesticides harm people too. Local rules and the borrower’s conservator go before this advice."));
    }

    private void hands(List<Block> blocks) {
        blocks.add(new Block.Heading(2, "Handing over"));
        blocks.add(
                new Block.Paragraph(
                        "Who signs has seen the piece beside this report and found the report true on the day of signing, but for what is written here:"));
        blocks.add(new Block.Blank("Remarks", 2));
        blocks.add(new Block.Signatures(
                Stream.of(hand("Handed over by", examination.handedOver()), hand("Received by", examination.received()))
                        .toList()));
    }

    private String hand(String role, Signatory signatory) {
        String who = person(signatory.name(), signatory.party());
        String when = signatory.when().recorded() ? signatory.when().toString() : "";
        return Say.joined(", ", who.isEmpty() ? role : role + " " + who, when.isEmpty() ? "date and signature" : when);
    }
}

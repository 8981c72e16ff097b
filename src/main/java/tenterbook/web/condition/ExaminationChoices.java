package tenterbook.web.condition;

import java.util.ArrayList;
import java.util.List;
import tenterbook.archive.arrival.PhotoRegistration;
import tenterbook.piece.Piece;
import tenterbook.piece.PiecePhoto;
import tenterbook.piece.condition.ChangeSinceLast;
import tenterbook.piece.condition.ConditionWords;
import tenterbook.piece.condition.ConditionWords.Word;
import tenterbook.piece.condition.ExtentExamined;
import tenterbook.piece.condition.NextExamination;
import tenterbook.piece.condition.Overall;
import tenterbook.piece.condition.PhotoView;
import tenterbook.piece.condition.Reason;
import tenterbook.piece.condition.Severity;
import tenterbook.piece.condition.Stability;
import tenterbook.web.Site;
import tenterbook.web.form.Form;
import tenterbook.web.record.Choices;

/** What the form of an examination offers: words, photographs, and the next free number of an observation. */
public final class ExaminationChoices {
    private final Site site;
    private final PhotoRegistration registration;
    private final Piece piece;

    ExaminationChoices(Site site, PhotoRegistration registration, Piece piece) {
        this.site = site;
        this.registration = registration;
        this.piece = piece;
    }

    public Piece piece() {
        return piece;
    }

    /** The next free number of an observation on this piece. */
    public int next() {
        return NextExamination.number(site.archive().examinationsOf(piece.number()));
    }

    public List<MarkedPhotograph.NumberedRow> numbered(Form form) {
        return MarkedPhotograph.numbered(form, next());
    }

    public List<MarkedPhotograph> plates(Form form, List<MarkedPhotograph.NumberedRow> rows) {
        return MarkedPhotograph.of(form, rows, registration::find);
    }

    /** The photographs a mark can stand on. */
    public static List<Choices.Choice> choices(List<MarkedPhotograph> plates) {
        return plates.stream()
                .map(plate -> new Choices.Choice(plate.digest(), plate.label()))
                .toList();
    }

    /** The piece's photographs that are not in the form. */
    public List<PiecePhoto> further(Form form) {
        List<String> there =
                form.rows("photos").stream().map(row -> row.text("photo")).toList();
        return piece.photos().stream()
                .filter(photo -> !there.contains(photo.photo().hex()))
                .toList();
    }

    public List<Choices.Choice> parties() {
        return Choices.parties(site);
    }

    public List<Choices.Choice> reasons() {
        return Choices.words(Reason.values());
    }

    public List<Choices.Choice> states() {
        return Choices.words(Overall.values());
    }

    public List<Choices.Choice> views() {
        return Choices.words(PhotoView.values());
    }

    public List<Choices.Choice> seen() {
        return Choices.words(ExtentExamined.values());
    }

    public List<Choices.Choice> severities() {
        return Choices.words(Severity.values());
    }

    public List<Choices.Choice> stabilities() {
        return Choices.words(Stability.values());
    }

    public List<Choices.Choice> standings() {
        return Choices.words(ChangeSinceLast.values());
    }

    public List<Choices.Choice> what() {
        return words(ConditionWords.what());
    }

    public List<Choices.Choice> zones() {
        return words(ConditionWords.zones());
    }

    public List<Choices.Choice> means() {
        return words(ConditionWords.means());
    }

    private static List<Choices.Choice> words(List<Word> words) {
        List<Choices.Choice> choices = new ArrayList<>();
        words.forEach(word -> choices.add(new Choices.Choice(word.word(), word.meaning())));
        return choices;
    }
}

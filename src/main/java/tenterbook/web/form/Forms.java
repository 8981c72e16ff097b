package tenterbook.web.form;

import java.util.Currency;
import java.util.List;
import java.util.Set;
import java.util.function.Supplier;
import tenterbook.archive.Kinds;
import tenterbook.archive.record.AgreementRecord;
import tenterbook.archive.record.BoardPairRecord;
import tenterbook.archive.record.FairRecord;
import tenterbook.archive.record.MaterialRecords;
import tenterbook.archive.record.StudioRecords;
import tenterbook.board.BoardPair;
import tenterbook.ledger.revision.Kind;
import tenterbook.material.Cloth;
import tenterbook.material.Lot;
import tenterbook.piece.Party;
import tenterbook.piece.Piece;
import tenterbook.piece.Studio;
import tenterbook.piece.agreement.Agreement;
import tenterbook.piece.fair.Fair;

/** The form of every kind of record that people fill in. */
public final class Forms {
    private final List<RecordForm<?>> all;
    private final Supplier<Currency> currency;

    /** @param currency of a price that names none */
    public Forms(Supplier<Currency> currency) {
        this.currency = currency;
        this.all = List.of(
                pieces(),
                clampings(),
                boards(),
                cloths(),
                lots(),
                people(),
                examinations(),
                agreements(),
                fairs(),
                studio(),
                new LabelSheetForm());
    }

    /** The form of a kind, or null where people fill in none. */
    @SuppressWarnings("unchecked")
    public <T> RecordForm<T> of(Kind<T> kind) {
        return (RecordForm<T>) all.stream()
                .filter(form -> form.kind().name().equals(kind.name()))
                .findFirst()
                .orElse(null);
    }

    /** Colours named on a photograph are not in the form of a piece; they stay with their photograph. */
    public RecordForm<Piece> pieces() {
        return new PieceForm(currency);
    }

    public RecordForm<BoardPair> boards() {
        return new RecordForm<>(Kinds.BOARD_PAIR, BoardPairRecord.BOARD_PAIR, Set.of(), currency);
    }

    public RecordForm<Cloth> cloths() {
        return new RecordForm<>(Kinds.CLOTH, MaterialRecords.CLOTH, Set.of(), currency);
    }

    public RecordForm<Lot> lots() {
        return new RecordForm<>(Kinds.LOT, MaterialRecords.LOT, Set.of(), currency);
    }

    public RecordForm<Party> people() {
        return new RecordForm<>(Kinds.PARTY, StudioRecords.PARTY, Set.of(), currency);
    }

    public RecordForm<Studio> studio() {
        return new RecordForm<>(Kinds.STUDIO, StudioRecords.STUDIO, Set.of("answers"), currency);
    }

    public RecordForm<Agreement> agreements() {
        return new RecordForm<>(Kinds.AGREEMENT, AgreementRecord.AGREEMENT, Set.of(), currency);
    }

    public RecordForm<Fair> fairs() {
        return new RecordForm<>(Kinds.FAIR, FairRecord.FAIR, Set.of(), currency);
    }

    public ClampingForm clampings() {
        return new ClampingForm(currency);
    }

    public ExaminationForm examinations() {
        return new ExaminationForm(currency);
    }
}

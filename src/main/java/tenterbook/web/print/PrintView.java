package tenterbook.web.print;

import java.util.List;
import java.util.Map;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.archive.record.LabelSheet;
import tenterbook.labelling.Arrangement;
import tenterbook.labelling.PrintSettings;
import tenterbook.web.page.Address;

/**
 * The print page.
 *
 * @param problem why something chosen cannot be printed; empty where all can
 * @param numbers the pieces chosen one by one, with commas; empty where a search chose them
 * @param pieces how many are chosen
 * @param request what will be printed; the usual settings of its kind where there is a problem
 * @param asked what was typed, by parameter
 * @param choices the choices for hidden fields
 * @param search the search that chose the pieces, for hidden fields; empty where none did
 * @param sheets kept sheets
 * @param places labels on one sheet
 * @param blocked why labels cannot be printed, by piece
 * @param remarks what else is to be known before printing
 * @param questions doubts that do not stop a label
 * @param answered doubts that the maker answered
 * @param lines the exact text of the first label
 * @param first number of its piece; empty where no label can be printed
 * @param shown labels that can be seen before printing, the first one first; empty where none can
 * @param others the numbers whose labels can be printed where some cannot, with commas
 * @param issued labels printed before, newest first
 * @param typedNumbers for the field again, unknown numbers included
 * @param offer text of the first piece for an offer at a distance, line by line; empty where there is none
 * @param offerQuestions what is open about it
 * @param noSymbols why no care symbol can be drawn for the first piece, row by row; empty where one can or none is asked for
 * @param code of what is shown, see {@link Preview}
 */
public record PrintView(
        String problem,
        String numbers,
        int pieces,
        PrintSettings request,
        Map<String, String> asked,
        List<Map.Entry<String, String>> choices,
        List<Map.Entry<String, String>> search,
        List<LabelSheet> sheets,
        int places,
        List<BlockedLabels.Label> blocked,
        List<String> remarks,
        List<LabelQuestions.Open> questions,
        List<LabelQuestions.Answered> answered,
        List<String> lines,
        String first,
        List<Shown> shown,
        String others,
        List<IssuedPaper> issued,
        String typedNumbers,
        List<String> noSymbols,
        List<String> offer,
        List<String> offerQuestions,
        String code) {
    /** A label shown before it is printed: the number of its piece and the address of its picture. */
    public record Shown(String number, String picture) {}

    /** What was typed, or an empty text. */
    public String typed(String name) {
        return asked.getOrDefault(name, "");
    }

    public List<Arrangement> arrangements() {
        return request.kind().arrangements();
    }

    /** Labels in all, copies included. */
    public int labels() {
        return pieces * request.placement().copies();
    }

    /** Address of the picture of the first label; empty where there is none. */
    public String preview() {
        return shown.isEmpty() ? "" : shown.get(0).picture();
    }

    /** The labels after the first. */
    public List<Shown> next() {
        return shown.subList(Math.min(1, shown.size()), shown.size());
    }

    /** The choices as a query, for a link that goes on with {@code &}. */
    public String query() {
        return Address.query(choices);
    }
}

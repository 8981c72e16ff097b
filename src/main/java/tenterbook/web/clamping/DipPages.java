package tenterbook.web.clamping;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Kinds;
import tenterbook.colour.space.ColourText;
import tenterbook.colour.space.Lab;
import tenterbook.facts.DipEvidence;
import tenterbook.facts.DipEvidence.Dyed;
import tenterbook.facts.DipQuestion;
import tenterbook.recipe.dip.Group;
import tenterbook.web.Site;
import tenterbook.web.colour.ColourBand;
import tenterbook.web.form.Form;
import tenterbook.web.form.TypedNumber;
import tenterbook.web.page.Html;
import tenterbook.web.page.NotFound;
import tenterbook.words.Refusal;

/** The dip curve of a cloth and vat, and the dips that a colour needs: a page and its JSON. */
public final class DipPages {
    private record Kept(long sequence, List<Dyed> dyed) {}

    private final Site site;
    private volatile Kept kept = new Kept(-1, List.of());

    public DipPages(Site site) {
        this.site = site;
    }

    public void routes(RoutesConfig routes) {
        routes.get("/dips", this::show);
        routes.get("/api/dips", this::answer);
    }

    /** The evidence as of the newest revision; read again only after something was saved. */
    private List<Dyed> dyed() {
        long now = site.ledger().lastSequence();
        if (kept.sequence() != now) {
            kept = new Kept(now, DipEvidence.of(site.archive()));
        }
        return kept.dyed();
    }

    /**
     * The page.
     *
     * @param groups what can be asked about, with what is asked about
     * @param cloths what each cloth is called, by its identifier
     * @param form the target and the piece as typed, with what is wrong about them
     * @param further number of the piece to dip further; empty where none is named or it cannot be used
     * @param moreRefused why nothing is estimated for the piece named; empty where that is not so
     * @param swatch of the target; null without one
     */
    public record DipView(
            DipQuestion question,
            @Nullable DipChart chart,
            List<Group> groups,
            Map<String, String> cloths,
            Form form,
            String further,
            String moreRefused,
            ColourBand.@Nullable Swatch swatch) {
        public String cloth() {
            return question.group().cloth();
        }

        public String vat() {
            return question.group().vat();
        }
    }

    /** @param moreRefused why nothing is estimated for the piece named; empty where that is not so */
    private record Asked(
            Group group, @Nullable Lab target, @Nullable Dyed from, String moreRefused) {}

    /** For a bolt that is not in the archive nothing is estimated: the curve of other cloths would be taken for its own. */
    private boolean noCloth(Context ctx) {
        String cloth = typed(ctx, "cloth");
        return !cloth.isEmpty() && site.archive().cloth(cloth).isEmpty();
    }

    private static String typed(Context ctx, String name) {
        return Optional.ofNullable(ctx.queryParam(name)).orElse("").strip();
    }

    private Asked asked(Context ctx, List<Dyed> all, Lab target, String number) {
        String cloth = noCloth(ctx) ? "" : typed(ctx, "cloth");
        String vat = typed(ctx, "vat");
        List<Group> groups = DipQuestion.groups(all);
        Group group = groups.stream()
                .filter(each -> (cloth.isEmpty() || each.cloth().equals(cloth))
                        && (vat.isEmpty() || each.vat().equals(vat)))
                // The first of those with most distinct dip counts.
                .min(Comparator.comparingLong(each -> -counts(all, each)))
                .orElse(new Group(cloth, vat));
        String named = number.isEmpty()
                ? ""
                : TypedNumber.piece(site.archive(), number)
                        .map(piece -> piece.number().value())
                        .orElseThrow(() -> NotFound.of(Kinds.PIECE, number));
        Optional<Dyed> from =
                all.stream().filter(each -> each.piece().equals(named)).findFirst();
        String moreRefused = "";
        if (from.isEmpty() && !number.isEmpty()) {
            moreRefused = w("dips.further-not-estimated", "piece", number);
        }
        return new Asked(from.map(Dyed::group).orElse(group), target, from.orElse(null), moreRefused);
    }

    /** How many distinct dip counts are recorded of a cloth in a vat. */
    private static long counts(List<Dyed> all, Group group) {
        return all.stream()
                .filter(each -> each.group().equals(group))
                .map(each -> each.dips().text())
                .distinct()
                .count();
    }

    /** What each cloth is called, by its identifier. */
    private Map<String, String> cloths(List<Group> groups) {
        Map<String, String> names = new LinkedHashMap<>();
        for (Group group : groups) {
            names.put(
                    group.cloth(),
                    site.archive()
                            .cloth(group.cloth())
                            .map(cloth -> (group.cloth() + " " + cloth.name()).strip())
                            .orElse(group.cloth()));
        }
        return names;
    }

    private void show(Context ctx) {
        List<Dyed> all = dyed();
        Form form = Form.of(ctx.queryParamMap());
        Lab target = form.read("target", null, ColourText::read);
        String number = form.text("from");
        if (!number.isEmpty() && TypedNumber.piece(site.archive(), number).isEmpty()) {
            form.problem("from", w("not-here.piece", "id", number));
            number = "";
        }
        if (noCloth(ctx)) {
            form.problem("cloth", w("not-here.cloth", "id", typed(ctx, "cloth")));
        }
        if (form.hasProblems()) {
            ctx.status(400);
        }
        Asked asked = asked(ctx, all, target, number);
        DipQuestion question = DipQuestion.ask(all, asked.group(), asked.target(), asked.from());
        DipChart chart = question.curve()
                .value()
                .map(curve -> DipChart.of(question, curve))
                .orElse(null);
        List<Group> groups = new ArrayList<>(DipQuestion.groups(all));
        if (!groups.isEmpty() && !groups.contains(asked.group())) {
            groups.add(asked.group());
        }
        Map<String, Object> values = new HashMap<>();
        values.put("page", site.page(ctx, w("pieces.dips"), "colours"));
        values.put(
                "view",
                new DipView(
                        question,
                        chart,
                        groups,
                        cloths(groups),
                        form,
                        asked.from() == null ? "" : asked.from().piece(),
                        asked.moreRefused(),
                        asked.target() == null ? null : ColourBand.swatch(asked.target(), "", 1, 0)));
        Html.show(ctx, "dips", values);
    }

    private void answer(Context ctx) {
        List<Dyed> all = dyed();
        if (noCloth(ctx)) {
            throw Refusal.of("not-here.cloth", "id", typed(ctx, "cloth"));
        }
        String colour = typed(ctx, "target");
        Asked asked = asked(ctx, all, colour.isEmpty() ? null : ColourText.read(colour), typed(ctx, "from"));
        DipQuestion question = DipQuestion.ask(all, asked.group(), asked.target(), asked.from());
        ctx.json(DipAnswer.of(question, asked.target(), asked.moreRefused()));
    }
}

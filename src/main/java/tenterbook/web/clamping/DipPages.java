package tenterbook.web.clamping;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import tenterbook.archive.Kinds;
import tenterbook.colour.compare.DepthOfShade;
import tenterbook.colour.space.ColourText;
import tenterbook.colour.space.Interval;
import tenterbook.colour.space.Lab;
import tenterbook.facts.DipEvidence;
import tenterbook.facts.DipEvidence.Dyed;
import tenterbook.measure.NumberWords;
import tenterbook.recipe.dip.DipEstimate;
import tenterbook.recipe.dip.DipsNeeded;
import tenterbook.recipe.dip.FittedDips;
import tenterbook.recipe.dip.Group;
import tenterbook.web.Site;
import tenterbook.web.colour.ColourBand;
import tenterbook.web.form.Form;
import tenterbook.web.page.Html;
import tenterbook.web.page.NotFound;
import tenterbook.web.page.Words;
import tenterbook.web.record.TypedNumber;

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

    /** The evidence as of the newest revision; gathered again only when something was saved. */
    private List<Dyed> dyed() {
        long now = site.archive().ledger().lastSequence();
        if (kept.sequence() != now) {
            kept = new Kept(now, DipEvidence.of(site.archive()));
        }
        return kept.dyed();
    }

    /** A point or a line of the chart, in its own units: 100 across, 60 down. */
    public record Mark(double x, double y, String label, String fill, String number) {}

    /**
     * What the chart draws.
     *
     * @param curve points of the polyline, as SVG wants them
     * @param band outline of the 95 % band, empty where it is unbounded
     * @param targetY height of the target, negative where there is none in reach of the chart
     */
    public record Chart(
            List<Mark> points, String curve, String band, double targetY, List<Mark> across, List<Mark> up) {}

    /** The page; {@code form} holds the target and the piece as typed, with what is wrong about them. */
    public record DipView(
            DipQuestion question,
            Chart chart,
            List<Group> groups,
            Map<String, String> cloths,
            String cloth,
            String vat,
            Form form,
            String further,
            String mute,
            ColourBand.Swatch swatch) {}

    /** What was asked; {@code mute} says why the piece to dip further cannot speak, empty where it can or none is named. */
    private record Asked(Group group, Lab target, Dyed from, String mute) {}

    private Asked asked(Context ctx, List<Dyed> all) {
        if (noCloth(ctx)) {
            throw NotFound.of(Kinds.CLOTH, typed(ctx, "cloth"));
        }
        String colour = typed(ctx, "target");
        return asked(ctx, all, colour.isEmpty() ? null : ColourText.read(colour), typed(ctx, "from"));
    }

    /** Of a bolt that is not in the archive nothing is estimated: a curve of other cloths would pass for its own. */
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
                // Among those that fit, the first of those with the most to say.
                .min(Comparator.comparingLong(each -> -counts(all, each)))
                .orElse(new Group(cloth, vat));
        Optional<Dyed> from = all.stream()
                .filter(each -> each.piece().equalsIgnoreCase(number))
                .findFirst();
        String mute = "";
        if (from.isEmpty() && !number.isEmpty()) {
            TypedNumber.piece(site.archive(), number).orElseThrow(() -> NotFound.of(Kinds.PIECE, number));
            mute = w("dips.further-not-told", "piece", number);
        }
        return new Asked(from.map(Dyed::group).orElse(group), target, from.orElse(null), mute);
    }

    /** How many different numbers of dips are recorded of a cloth in a vat. */
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
        Chart chart =
                question.curve().value().map(curve -> chart(question, curve)).orElse(null);
        Map<String, Object> values = new HashMap<>();
        values.put("page", site.page(ctx, w("pieces.dips"), "colours"));
        values.put(
                "view",
                new DipView(
                        question,
                        chart,
                        DipQuestion.groups(all),
                        cloths(DipQuestion.groups(all)),
                        asked.group().cloth(),
                        asked.group().vat(),
                        form,
                        asked.from() == null ? "" : asked.from().piece(),
                        asked.mute(),
                        asked.target() == null ? null : ColourBand.swatch(asked.target(), "", 1, 0)));
        Html.show(ctx, "dips", values);
    }

    private static Chart chart(DipQuestion question, FittedDips fitted) {
        double most = Math.max(8, fitted.mostDipsSeen() * 1.3);
        List<DipEstimate> along = new ArrayList<>();
        for (int i = 0; i <= 60; i++) {
            along.add(fitted.pieceAt(most * i / 60));
        }
        double top = 1;
        for (DipEstimate each : along) {
            top = Math.max(top, each.value());
            top = each.plausible().bounded()
                    ? Math.max(top, Math.min(each.plausible().high(), 2 * each.value()))
                    : top;
        }
        double height = top * 1.05;
        StringBuilder curve = new StringBuilder();
        StringBuilder upper = new StringBuilder();
        StringBuilder lower = new StringBuilder();
        boolean bounded = true;
        for (int i = 0; i <= 60; i++) {
            DipEstimate each = along.get(i);
            double x = 100.0 * i / 60;
            curve.append(xy(x, each.value(), height));
            bounded &= each.plausible().bounded();
            upper.append(xy(x, Math.min(height, each.plausible().high()), height));
            lower.insert(0, xy(x, each.plausible().low(), height));
        }
        List<Mark> points = new ArrayList<>();
        for (Dyed each : question.inOrder()) {
            DepthOfShade.byPhoto(each.ground(), question.channel())
                    .value()
                    .ifPresent(shade -> points.add(new Mark(
                            each.dips().middle() / most * 100,
                            60 - Math.min(shade.ks(), height) / height * 60,
                            w(
                                    "dips.point",
                                    "piece",
                                    each.piece(),
                                    "dips",
                                    each.dips().text(),
                                    "ks",
                                    NumberWords.decimals(shade.ks(), 2)),
                            each.ground().srgb().hex(),
                            each.piece())));
        }
        double targetY = question.target() == null
                ? -1
                : question.target()
                        .value()
                        .filter(shade -> shade.ks() <= height)
                        .map(shade -> 60 - shade.ks() / height * 60)
                        .orElse(-1.0);
        List<Mark> across = new ArrayList<>();
        int step = most > 30 ? 10 : most > 12 ? 4 : 2;
        for (int dips = 0; dips <= most; dips += step) {
            across.add(new Mark(dips / most * 100, 64, Integer.toString(dips), "", ""));
        }
        List<Mark> up = new ArrayList<>();
        double ks = height > 10 ? 5 : height > 4 ? 2 : 1;
        for (double at = 0; at <= height; at += ks) {
            up.add(new Mark(-1, 60 - at / height * 60, String.format(Locale.ROOT, "%.0f", at), "", ""));
        }
        return new Chart(
                points,
                curve.toString().strip(),
                bounded ? (upper.toString() + lower).strip() : "",
                targetY,
                across,
                up);
    }

    private static String xy(double x, double value, double height) {
        return String.format(Locale.ROOT, "%.2f,%.2f ", x, 60 - Math.max(0, value) / height * 60);
    }

    private void answer(Context ctx) {
        List<Dyed> all = dyed();
        Asked asked = asked(ctx, all);
        DipQuestion question = DipQuestion.ask(all, asked.group(), asked.target(), asked.from());
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("cloth", question.group().cloth());
        answer.put("vat", question.group().vat());
        answer.put("scale", w("dips.scale", "band", question.channel().band()));
        answer.put("uncalibrated", question.uncalibrated());
        answer.put("borrowed", question.borrowed());
        answer.put("points", question.inOrder().stream().map(DipPages::point).toList());
        question.curve().value().ifPresent(fitted -> {
            answer.put("formula", "K/S(n) = c + A(1 − e^(−b n))");
            answer.put("c", figure(fitted.curve().base(), fitted.base()));
            answer.put("A", figure(fitted.curve().rise(), fitted.rise()));
            answer.put("b", figure(fitted.curve().rate(), fitted.rate()));
            answer.put("residualSpread", fitted.residualSpread());
            fitted.leaveOneOutError().ifPresent(error -> answer.put("leaveOneOutError", error));
            answer.put("mostDipsSeen", fitted.mostDipsSeen());
        });
        if (question.curve().value().isEmpty()) {
            answer.put("refused", question.curve().refusal());
        }
        if (question.target() != null) {
            answer.put("target", asked.target());
            question.target().value().ifPresent(shade -> answer.put("targetDepth", shade.ks()));
            if (question.target().value().isEmpty()) {
                answer.put("targetRefused", question.target().refusal());
            }
        }
        if (question.nearest() != null) {
            Map<String, Object> nearest = point(question.nearest().dyed());
            nearest.put("difference", question.nearest().difference());
            answer.put("nearest", nearest);
        }
        if (question.needed() != null) {
            answer.put("dips", needed(question.needed()));
        }
        if (!asked.mute().isEmpty()) {
            answer.put("moreRefused", asked.mute());
        }
        if (question.more() != null) {
            question.more().value().ifPresent(more -> answer.put("moreDips", needed(more)));
            if (question.more().value().isEmpty()) {
                answer.put("moreRefused", question.more().refusal());
            }
        }
        ctx.json(answer);
    }

    private static Map<String, Object> point(Dyed dyed) {
        Map<String, Object> point = new LinkedHashMap<>();
        point.put("piece", dyed.piece());
        point.put("dips", dyed.dips().text());
        point.put("ground", dyed.ground());
        point.put("calibrated", dyed.calibrated());
        if (!dyed.disagreements().isEmpty()) {
            point.put(
                    "disagreements", dyed.disagreements().stream().map(Words::w).toList());
        }
        return point;
    }

    private static Map<String, Object> figure(double value, Interval interval) {
        Map<String, Object> figure = new LinkedHashMap<>();
        figure.put("value", value);
        put(figure, "low", interval.low());
        put(figure, "high", interval.high());
        return figure;
    }

    /** JSON has no infinity: an end that the points do not bound is left out. */
    private static void put(Map<String, Object> figure, String name, double value) {
        if (Double.isFinite(value)) {
            figure.put(name, value);
        }
    }

    private static Map<String, Object> needed(DipsNeeded needed) {
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("verdict", needed.verdict().name().toLowerCase(Locale.ROOT).replace('_', ' '));
        answer.put("sentence", Words.w(needed.sentence()));
        put(answer, "best", needed.best());
        put(answer, "low", needed.plausible().low());
        put(answer, "high", needed.plausible().high());
        answer.put(
                "evidence",
                needed.evidence().stream().map(point -> point.source()).toList());
        return answer;
    }
}

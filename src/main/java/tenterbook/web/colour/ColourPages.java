package tenterbook.web.colour;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import tenterbook.colour.space.Ciede2000;
import tenterbook.colour.space.Decimals;
import tenterbook.colour.space.DifferenceWords;
import tenterbook.colour.space.Lab;
import tenterbook.facts.PieceColour;
import tenterbook.measure.NumberWords;
import tenterbook.piece.ColourRegion;
import tenterbook.piece.Piece;
import tenterbook.piece.PiecePhoto;
import tenterbook.search.find.Hit;
import tenterbook.search.find.SearchResult;
import tenterbook.search.index.PieceCard;
import tenterbook.search.query.Facet;
import tenterbook.search.query.PieceQuery;
import tenterbook.web.Site;
import tenterbook.web.form.Form;
import tenterbook.web.form.TypedNumber;
import tenterbook.web.page.Html;
import tenterbook.web.record.Choices;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/** The archive laid out by colour, and two pieces or two states of one side by side. */
public final class ColourPages {
    /** More points than this cannot be distinguished on a page. The newest are shown, which the page states. */
    private static final int MOST_POINTS = 1500;

    /** The drawn part of the a*b* plane, in CIELAB units either way from grey; what lies outside is drawn at its edge. */
    private static final double REACH = 60;

    /** Least share of a colour of the cloth that is drawn, and how many of one piece at most. */
    private static final double MAIN = 0.05;

    private static final int MOST_OF_CLOTH = 3;

    /** Degrees from the number of one ring to that of the next, so that rings round one place do not share theirs. */
    private static final double NUMBER_TURN = 77;

    private final Site site;

    public ColourPages(Site site) {
        this.site = site;
    }

    public void routes(RoutesConfig routes) {
        routes.get("/colours", this::plane);
        routes.get("/compare", this::compare);
    }

    /**
     * One colour of a piece on the plane.
     *
     * @param ofCloth whether it is one of the cloth's that nobody named
     * @param x across, 0 to 100: a* from {@code -REACH} to {@code REACH}
     * @param y down, 0 to 100: b* from {@code REACH} to {@code -REACH}
     * @param along L*, 0 to 100
     * @param beside height on the lightness strip, 0 to 100, by chroma
     */
    public record Point(
            String number,
            String title,
            ColourBand.Swatch swatch,
            String part,
            boolean ofCloth,
            double x,
            double y,
            double along,
            double beside) {}

    /**
     * A colour name of the maker's, with the middle and the reach of what it was given to.
     *
     * @param numberX across, and {@code numberY} down, where its number in the list stands: on the ring, each at another angle
     */
    public record Name(
            String name,
            int count,
            double x,
            double y,
            double radius,
            double numberX,
            double numberY,
            ColourBand.Swatch swatch) {}

    /**
     * @param total pieces found
     * @param shown pieces drawn
     * @param role which part of the dyeing is drawn; empty for every colour: those named, else those of the cloth
     * @param ofCloth of how many of the pieces shown the colours of the cloth are drawn, since nobody named any
     * @param without how many of the pieces shown have no such colour
     * @param looking how far the program has come with looking for the cloth; empty where it is not looking
     */
    public record ColourView(
            long total,
            int shown,
            List<Point> points,
            List<Name> names,
            String board,
            String cloth,
            String dye,
            String role,
            List<Choices.Choice> boards,
            List<Choices.Choice> cloths,
            List<Choices.Choice> dyes,
            int ofCloth,
            int without,
            String looking) {}

    private void plane(Context ctx) {
        Map<String, List<String>> asked = new HashMap<>(ctx.queryParamMap());
        String role = Optional.ofNullable(ctx.queryParam("role")).orElse("");
        asked.keySet().removeAll(List.of("role", "page", "size"));
        PieceQuery query = site.index().query(asked).withSize(PieceQuery.MOST_SIZE);
        List<PieceCard> cards = new ArrayList<>();
        SearchResult result = site.index().search(query);
        for (int page = 1; cards.size() < MOST_POINTS; page++) {
            List<Hit> hits = page == 1
                    ? result.hits()
                    : site.index().search(query.withPage(page)).hits();
            hits.forEach(hit -> cards.add(hit.card()));
            if (hits.size() < PieceQuery.MOST_SIZE) {
                break;
            }
        }
        List<Point> points = new ArrayList<>();
        Map<String, List<Lab>> named = new TreeMap<>();
        int ofCloth = 0;
        int without = 0;
        for (PieceCard card : cards) {
            List<PieceColour> drawn = drawn(card, role);
            ofCloth += !drawn.isEmpty() && drawn.get(0).role() == null ? 1 : 0;
            without += drawn.isEmpty() ? 1 : 0;
            for (PieceColour band : drawn) {
                points.add(point(card, band));
                if (!band.name().isEmpty()) {
                    named.computeIfAbsent(band.name(), name -> new ArrayList<>())
                            .add(band.colour());
                }
            }
        }
        ColourView view = new ColourView(
                result.total(),
                cards.size(),
                points,
                names(named),
                one(query, Facet.BOARD),
                one(query, Facet.CLOTH),
                one(query, Facet.DYE),
                role,
                choices(result, Facet.BOARD),
                choices(result, Facet.CLOTH),
                choices(result, Facet.DYE),
                ofCloth,
                without,
                LookingForCloth.sentence(site.archive().cloths()));
        Html.show(ctx, "colours", Map.of("page", site.page(ctx, w("page.menu.colours"), "colours"), "view", view));
    }

    /** Those named, by role; where nobody named any and every role is wanted, the main ones of the cloth. */
    private static List<PieceColour> drawn(PieceCard card, String role) {
        List<PieceColour> named = card.band().stream()
                .filter(band -> band.role() != null
                        && (role.isEmpty() || band.role().toString().equals(role)))
                .toList();
        return !named.isEmpty() || !role.isEmpty()
                ? named
                : card.band().stream()
                        .filter(band -> band.share() == null || band.share() >= MAIN)
                        .limit(MOST_OF_CLOTH)
                        .toList();
    }

    private static String one(PieceQuery query, Facet facet) {
        return query.chosen(facet).stream().findFirst().orElse("");
    }

    private static List<Choices.Choice> choices(SearchResult result, Facet facet) {
        return result.facets().stream()
                .filter(group -> group.name().equals(facet.parameter()))
                .flatMap(group -> group.counts().stream())
                .map(count -> new Choices.Choice(count.value(), count.label()))
                .sorted(Comparator.comparing(Choices.Choice::label))
                .toList();
    }

    private static Point point(PieceCard card, PieceColour band) {
        Lab lab = band.colour();
        return new Point(
                card.number(),
                card.title(),
                ColourBand.swatch(lab, band.called(), 1, 0),
                band.role() == null ? w("colour.of-the-cloth") : w(band.role()),
                band.role() == null,
                across(lab.a()),
                100 - across(lab.b()),
                lab.lightness(),
                100 - Math.min(100, lab.chroma() / REACH * 100));
    }

    private static double across(double value) {
        return Math.max(1, Math.min(99, (value + REACH) / (2 * REACH) * 100));
    }

    /** Names given to at least two colours, as rings round their mean that hold all of them. */
    private static List<Name> names(Map<String, List<Lab>> named) {
        List<Name> names = new ArrayList<>();
        named.forEach((name, colours) -> {
            if (colours.size() > 1) {
                names.add(ring(name, colours, Math.toRadians(NUMBER_TURN * names.size())));
            }
        });
        return names;
    }

    private static Name ring(String name, List<Lab> colours, double angle) {
        double l = colours.stream().mapToDouble(Lab::lightness).average().orElseThrow();
        double a = colours.stream().mapToDouble(Lab::a).average().orElseThrow();
        double b = colours.stream().mapToDouble(Lab::b).average().orElseThrow();
        double radius = colours.stream()
                .mapToDouble(colour -> Math.hypot(colour.a() - a, colour.b() - b))
                .max()
                .orElseThrow();
        double reach = Math.max(2, radius / (2 * REACH) * 100 + 1);
        double x = across(a);
        double y = 100 - across(b);
        return new Name(
                name,
                colours.size(),
                x,
                y,
                reach,
                x + (reach + 2) * Math.cos(angle),
                y - (reach + 2) * Math.sin(angle),
                ColourBand.swatch(new Lab(l, a, b), name, 1, 0));
    }

    /**
     * Two pieces, or two states of one.
     *
     * @param rows colours that both have in the same part of the dyeing
     */
    public record Comparison(Side first, Side second, List<ComparedRow> rows) {}

    /** One side: a piece in one state. */
    public record Side(String number, int state, String title, String photo, String alt) {}

    /** One part of the dyeing on both sides. */
    public record ComparedRow(
            String part,
            ColourBand.Swatch first,
            ColourBand.Swatch second,
            String difference,
            String words,
            String changes) {}

    private void compare(Context ctx) {
        Form form = Form.of(ctx.queryParamMap());
        Shown first = form.read("first", null, this::shown);
        Shown second = form.read("second", null, this::shown);
        if (form.hasProblems()) {
            ctx.status(400);
        }
        Comparison comparison = first == null || second == null ? null : compared(first, second);
        Map<String, Object> values = new HashMap<>();
        values.put("page", site.page(ctx, w("photo.compare"), "colours"));
        values.put("form", form);
        values.put("comparison", comparison);
        Html.show(ctx, "compare", values);
    }

    private record Shown(Side side, Map<String, Lab> colours) {}

    /** Reads 'V24-002' (as it is now) or 'V24-002 state 1'. */
    private Shown shown(String text) {
        String[] parts = text.split("(?i)\\s+state\\s+|@", 2);
        Piece piece = TypedNumber.piece(site.archive(), parts[0])
                .orElseThrow(() -> Refusal.of("comparing.no-such-piece", "number", parts[0].strip()));
        int state = piece.state();
        if (parts.length > 1) {
            try {
                state = Integer.parseInt(parts[1].strip());
            } catch (NumberFormatException e) {
                throw new Refusal(Message.of("comparing.no-state", "found", text), e);
            }
        }
        Map<String, Lab> colours = new TreeMap<>();
        PiecePhoto front = null;
        for (PiecePhoto photo : piece.photos()) {
            if (photo.state() == state) {
                front = front == null ? photo : front;
                for (ColourRegion region : photo.regions()) {
                    colours.putIfAbsent(region.role().toString(), region.colour());
                }
            }
        }
        Side side = new Side(
                piece.number().value(),
                state,
                piece.title(),
                front == null ? "" : front.photo().hex(),
                front == null ? "" : front.caption());
        return new Shown(side, colours);
    }

    private static Comparison compared(Shown one, Shown two) {
        List<ComparedRow> rows = new ArrayList<>();
        one.colours().forEach((part, colour) -> {
            Lab other = two.colours().get(part);
            if (other != null) {
                double difference = Ciede2000.difference(colour, other);
                rows.add(new ComparedRow(
                        part,
                        ColourBand.swatch(colour, part, 1, 0),
                        ColourBand.swatch(other, part, 1, 0),
                        w("comparing.difference", "difference", NumberWords.decimals(difference, 1)),
                        w(DifferenceWords.of(difference)),
                        "ΔL* %s, Δa* %s, Δb* %s"
                                .formatted(
                                        Decimals.signed(other.lightness() - colour.lightness(), 1),
                                        Decimals.signed(other.a() - colour.a(), 1),
                                        Decimals.signed(other.b() - colour.b(), 1))));
            }
        });
        return new Comparison(one.side(), two.side(), rows);
    }
}

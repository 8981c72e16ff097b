package tenterbook.web.today;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Kinds;
import tenterbook.exchange.backup.BackupNote;
import tenterbook.facts.Away;
import tenterbook.facts.LotStock;
import tenterbook.facts.Settlement;
import tenterbook.labelling.rule.Market;
import tenterbook.measure.Threshold;
import tenterbook.piece.EventKind;
import tenterbook.piece.Party;
import tenterbook.piece.PartyId;
import tenterbook.piece.agreement.Agreement;
import tenterbook.piece.agreement.AgreementKind;
import tenterbook.piece.fair.Fair;
import tenterbook.search.query.Lacking;
import tenterbook.web.Site;
import tenterbook.web.fair.FairStanding;
import tenterbook.web.page.Html;

/** What is due, overdue, owed, and not finished yet. */
public final class TodayPages {
    /** Days before its end from which a loan or consignment is shown as ending soon. */
    private static final int SOON = (int) Threshold.number("today-ending");

    private static final int MOST_AWAY = 2000;
    private static final Duration LONGEST_WAIT = Duration.ofSeconds(5);

    private final Site site;

    public TodayPages(Site site) {
        this.site = site;
    }

    public void routes(RoutesConfig routes) {
        routes.get("/today", this::show);
        routes.get("/today.ics", this::calendar);
    }

    /** One piece that is away, in words. */
    public record AwayLine(Away away, String party) {}

    /** A consignment of which something is owed, or of which that cannot be computed. */
    public record OwedLine(Agreement agreement, String party, Settlement settlement) {}

    /** A number of pieces or photographs to be completed, with a search for them. */
    public record OpenLine(String label, long count, String address) {}

    /**
     * @param soon in so many days at most
     * @param ending soon
     * @param undated away without a day of return
     * @param fair the fair that comes next or goes on; null where none is recorded
     * @param lots that run low, or of which that cannot be known, among those with a limit
     */
    public record TodayView(
            LocalDate today,
            int soon,
            List<AwayLine> overdue,
            List<AwayLine> ending,
            int undated,
            List<OwedLine> owed,
            List<OpenLine> open,
            @Nullable FairStanding fair,
            List<LotStock> lots,
            String backup) {
        public boolean nothing() {
            return overdue.isEmpty()
                    && ending.isEmpty()
                    && owed.isEmpty()
                    && open.isEmpty()
                    && fair == null
                    && lots.isEmpty()
                    && backup.isEmpty();
        }
    }

    private void show(Context ctx) {
        Html.show(ctx, "today", Map.of("page", site.page(ctx, w("today.title"), "today"), "view", view()));
    }

    private TodayView view() {
        LocalDate today = site.today();
        List<AwayLine> away = away();
        return new TodayView(
                today,
                SOON,
                away.stream().filter(line -> line.away().overdue(today)).toList(),
                away.stream().filter(line -> soon(line.away().end(), today)).toList(),
                (int) away.stream().filter(line -> line.away().end() == null).count(),
                owed(),
                open(),
                fair(),
                lots(),
                backup());
    }

    /** A reminder where the last good backup is old or there is none; empty where all is well, or the archive is younger. */
    private String backup() {
        Instant now = site.clock().instant();
        BackupNote note = BackupNote.in(site.archive().folder().root());
        boolean young = site.ledger().after(0, 1).stream()
                .allMatch(first -> first.writtenAt().isAfter(now.minus(BackupNote.OLD)));
        if (note.fresh(now) || young) {
            return "";
        }
        return note.lastGood()
                .map(at -> w("backup.old", "days", Duration.between(at, now).toDays()))
                .orElseGet(() -> w("backup.never"));
    }

    private List<LotStock> lots() {
        return site.records(Kinds.LOT).stream()
                .filter(lot -> lot.warnBelow().recorded())
                .map(lot -> LotStock.of(site.archive(), lot))
                .filter(stock -> stock.low() || !stock.known())
                .toList();
    }

    /** That which begins first of those that are not over; one without a day is no next one. */
    private @Nullable FairStanding fair() {
        return site.records(Kinds.FAIR).stream()
                .filter(fair -> fair.firstDay() != null && !fair.over(site.today()))
                .min(Fair.IN_TIME)
                .map(fair -> FairStanding.of(site, fair))
                .orElse(null);
    }

    private static boolean soon(@Nullable LocalDate end, LocalDate today) {
        return end != null && !end.isBefore(today) && !end.isAfter(today.plusDays(SOON));
    }

    /** Pieces that are away or reserved, those that end first first. */
    private List<AwayLine> away() {
        // What was saved a moment ago counts; with very much to read the page does not wait for all of it.
        site.index().await(LONGEST_WAIT);
        List<String> numbers = Stream.of("consigned", "on-loan", "reserved")
                .flatMap(status ->
                        site
                                .index()
                                .numbers(site.index().query(Map.of("status", List.of(status))), MOST_AWAY)
                                .numbers()
                                .stream())
                .distinct()
                .toList();
        Map<String, List<Agreement>> agreements = agreementsByPiece();
        return site.ledger().records(Kinds.PIECE, numbers).values().stream()
                .flatMap(piece ->
                        Away.of(piece, agreements.getOrDefault(piece.number().value(), List.of())).stream())
                .map(away -> new AwayLine(away, party(away.event().party())))
                .sorted(Comparator.comparing(
                                (AwayLine line) -> line.away().end(), Comparator.nullsLast(Comparator.naturalOrder()))
                        .thenComparing(line -> line.away().piece().number().value()))
                .toList();
    }

    private Map<String, List<Agreement>> agreementsByPiece() {
        Map<String, List<Agreement>> byPiece = new LinkedHashMap<>();
        site.records(Kinds.AGREEMENT).stream()
                .sorted(Agreement.IN_TIME)
                .forEach(agreement -> agreement
                        .pieces()
                        .forEach(each -> byPiece.computeIfAbsent(each.piece().value(), key -> new ArrayList<>())
                                .add(agreement)));
        return byPiece;
    }

    private String party(@Nullable PartyId id) {
        return id == null
                ? ""
                : site.archive().party(id.value()).map(Party::title).orElse(id.value());
    }

    private List<OwedLine> owed() {
        return site.records(Kinds.AGREEMENT).stream()
                .filter(agreement -> agreement.kind() == AgreementKind.CONSIGNMENT)
                .sorted(Agreement.IN_TIME)
                .map(agreement -> new OwedLine(
                        agreement,
                        party(agreement.party()),
                        Settlement.of(agreement, site.archive().piecesOf(agreement))))
                .filter(line -> line.settlement().owed())
                .toList();
    }

    private List<OpenLine> open() {
        List<OpenLine> open = new ArrayList<>();
        long waiting = site.ledger().unreferenced(Kinds.PHOTO, Kinds.PIECE).size();
        open.add(new OpenLine(w("today.photographs-waiting"), waiting, "/photos/waiting"));
        for (Lacking lack : List.of(Lacking.PHOTOGRAPH, Lacking.TITLE, Lacking.DIPS, Lacking.CLOTH)) {
            String code = lack.code();
            open.add(new OpenLine(
                    w("today.lacking." + code),
                    site.index().count(site.index().query(Map.of("lacking", List.of(code)))),
                    "/?lacking=" + code));
        }
        site.archive().readableStudio().map(Market::of).ifPresent(market -> {
            String value = market.code() + ":lacking";
            open.add(new OpenLine(
                    w("today.tag." + market.code()),
                    site.index()
                            .count(site.index().query(Map.of("tag", List.of(value), "status", List.of("in-stock")))),
                    "/?tag=" + value + "&status=in-stock"));
        });
        open.removeIf(line -> line.count() == 0);
        return open;
    }

    /** The ends of loans, consignments and reservations. */
    private void calendar(Context ctx) {
        Calendar calendar = new Calendar(site.clock().instant());
        for (AwayLine line : away()) {
            LocalDate end = line.away().end();
            if (end != null) {
                EventKind kind = line.away().event().kind();
                calendar.add(
                        line.away().piece().number() + "-" + kind + "-" + end,
                        end,
                        line.party().isEmpty()
                                ? w("today.ends", "number", line.away().piece().shown(), "event", kind)
                                : w(
                                        "today.ends-with",
                                        "number",
                                        line.away().piece().shown(),
                                        "event",
                                        kind,
                                        "party",
                                        line.party()));
            }
        }
        for (Fair fair : site.records(Kinds.FAIR)) {
            if (fair.firstDay() != null) {
                calendar.add(fair.id() + "-begins", fair.firstDay(), w("today.fair-begins", "fair", fair.title()));
            }
        }
        ctx.contentType("text/calendar; charset=utf-8");
        ctx.result(calendar.written());
    }
}

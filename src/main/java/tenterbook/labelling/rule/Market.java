package tenterbook.labelling.rule;

import java.util.Arrays;
import java.util.Currency;
import java.util.Optional;
import tenterbook.piece.Studio;

/** Where a piece is to be sold. A further market is a constant here, a rule table and, where it has its own, fibre names. */
public enum Market implements CodedChoice {
    US("us"),
    EU("eu"),
    /** Great Britain. */
    UK("uk"),
    /** Northern Ireland. */
    NI("ni"),
    CA("ca"),
    JP("jp");

    private final String code;

    Market(String code) {
        this.code = code;
    }

    @Override
    public String code() {
        return code;
    }

    /** Where a studio that counts in this currency most likely sells; a guess that only orders what is offered. */
    public static Market of(Currency currency) {
        return switch (currency.getCurrencyCode()) {
            case "USD" -> US;
            case "GBP" -> UK;
            case "CAD" -> CA;
            case "JPY" -> JP;
            default -> EU;
        };
    }

    /** Where a studio sells: in the country that it recorded, else most likely where its currency is used. */
    public static Market of(Studio studio) {
        return selling(studio.selling().soldIn()).orElse(of(studio.currency()));
    }

    /** Whose rules hold in a country, or at a place written with it; empty where that is not known. */
    public static Optional<Market> selling(String country) {
        return Arrays.stream(values())
                .filter(market -> RuleTable.sells(market, country))
                .findFirst();
    }

    /** The market's table of rules. */
    public RuleTable rules() {
        return RuleTable.of(this);
    }

    /** The version of that table, which is known without reading its rules. */
    public String rulesVersion() {
        return RuleTable.versionOf(this);
    }

    /** The country or union in plain words. */
    public String place() {
        return rules().name();
    }
}

package tenterbook.web.form;

import java.util.Currency;
import java.util.Locale;
import tenterbook.archive.Kinds;
import tenterbook.ledger.Kind;
import tenterbook.piece.NumberScheme;
import tenterbook.piece.Studio;

/** The studio's own particulars. */
public final class StudioForm implements RecordForm<Studio> {
    @Override
    public Kind<Studio> kind() {
        return Kinds.STUDIO;
    }

    @Override
    public Form filled(Studio studio) {
        return Form.empty()
                .put("name", studio.name())
                .put("maker", studio.maker())
                .put("place", studio.place())
                .put("dyedIn", studio.dyedIn())
                .put("contact", studio.contact())
                .put("careLine", studio.careLine())
                .put("prefix", studio.numbers().prefix())
                .put("currency", studio.currency().getCurrencyCode())
                .put("notice", studio.notice());
    }

    @Override
    public Studio read(Form form, Studio old) {
        NumberScheme numbers = form.read("prefix", new NumberScheme(""), NumberScheme::new);
        Currency currency = form.read("currency", null, code -> {
            try {
                return Currency.getInstance(code.toUpperCase(Locale.ROOT));
            } catch (IllegalArgumentException e) {
                throw new IllegalArgumentException(
                        "“%s” is not a currency code. Expected three letters such as EUR or USD.".formatted(code), e);
            }
        });
        Studio studio = form.build(
                "name",
                () -> new Studio(
                        form.text("name"),
                        form.text("maker"),
                        form.text("place"),
                        form.text("dyedIn"),
                        form.text("contact"),
                        form.text("careLine"),
                        numbers,
                        currency,
                        form.text("notice")));
        return form.hasProblems() ? null : studio;
    }
}

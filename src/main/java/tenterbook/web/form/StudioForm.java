package tenterbook.web.form;

import java.util.Currency;
import java.util.List;
import java.util.Locale;
import tenterbook.archive.Kinds;
import tenterbook.ledger.Kind;
import tenterbook.piece.LocalName;
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
        Form form = Form.empty()
                .put("name", studio.name())
                .put("maker", studio.maker())
                .put("place", studio.place())
                .put("dyedIn", studio.dyedIn())
                .put("contact", studio.contact())
                .put("careLine", studio.careLine())
                .put("prefix", studio.numbers().prefix())
                .put("currency", studio.currency().getCurrencyCode())
                .put("notice", studio.notice())
                .put("postalAddress", studio.postalAddress())
                .put("online", studio.online())
                .put("phone", studio.phone())
                .put("rn", studio.rn())
                .put("caNumber", studio.caNumber())
                .put("responsible", studio.responsible());
        for (int i = 0; i < studio.names().size(); i++) {
            LocalName name = studio.names().get(i);
            form.row("names", i)
                    .put("term", name.term())
                    .put("language", name.language())
                    .put("name", name.name())
                    .put("enteredBy", name.enteredBy());
        }
        return form;
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
        String rn = form.read("rn", "", Studio::rn);
        String caNumber = form.read("caNumber", "", Studio::caNumber);
        List<LocalName> names = form.each(
                "names",
                row -> row.build(
                        "name",
                        () -> new LocalName(
                                row.text("term"), row.text("language"), row.text("name"), row.text("enteredBy"))));
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
                        form.text("notice"),
                        form.text("postalAddress"),
                        form.text("online"),
                        form.text("phone"),
                        rn,
                        caNumber,
                        form.text("responsible"),
                        names));
        return form.hasProblems() ? null : studio;
    }
}

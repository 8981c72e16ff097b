package tenterbook.web.form;

import java.util.Currency;
import java.util.function.Supplier;
import tenterbook.archive.Kinds;
import tenterbook.ledger.Kind;
import tenterbook.material.Lot;
import tenterbook.material.LotId;
import tenterbook.material.Role;
import tenterbook.material.Source;
import tenterbook.measure.Unit;

/** A lot of dye, mordant or assistant. */
public final class LotForm implements RecordForm<Lot> {
    private final Supplier<Currency> currency;

    public LotForm(Supplier<Currency> currency) {
        this.currency = currency;
    }

    @Override
    public Kind<Lot> kind() {
        return Kinds.LOT;
    }

    @Override
    public Form filled(Lot lot) {
        Form form = Form.empty();
        form.put("id", lot.id()).put("role", lot.role()).put("name", lot.name()).put("source", lot.source());
        form.put("organism", lot.organism())
                .put("part", lot.part())
                .put("form", lot.form())
                .put("lot", lot.lot());
        form.put("supplier", lot.supplier()).put("price", lot.price()).put("notes", lot.notes());
        form.put("boughtOn", lot.boughtOn());
        form.put("bought", lot.bought());
        return form;
    }

    @Override
    public Lot read(Form form, Lot old) {
        LotId id = old != null ? old.id() : form.read("id", null, LotId::new);
        if (id == null) {
            form.problem("id", "A lot needs a short name, as in ‘weld-2024’: recipes call it by that.");
        }
        if (form.text("name").isEmpty()) {
            form.problem("name", "Labels say what a piece was dyed with, so a lot needs its plain name, as in ‘weld’.");
        }
        Role role = form.choice("role", Role.values());
        if (role == null) {
            form.problem(
                    "role", "Labels say what a piece was dyed with: is this lot a dye, a mordant or an assistant?");
            return null;
        }
        Lot lot = form.build(
                "name",
                () -> new Lot(
                        id,
                        role,
                        form.text("name"),
                        form.choice("source", Source.values()),
                        form.text("organism"),
                        form.text("part"),
                        form.text("form"),
                        form.text("lot"),
                        form.text("supplier"),
                        form.date("boughtOn"),
                        form.quantity("bought", Unit.GRAM),
                        form.money("price", currency.get()),
                        form.text("notes")));
        return form.hasProblems() ? null : lot;
    }
}

package tenterbook.web.form;

import static tenterbook.measure.Unit.CENTIMETRE;
import static tenterbook.measure.Unit.GRAM_PER_SQUARE_METRE;
import static tenterbook.measure.Unit.METRE;

import java.util.Currency;
import java.util.List;
import java.util.function.Supplier;
import tenterbook.archive.Kinds;
import tenterbook.ledger.Kind;
import tenterbook.material.Cloth;
import tenterbook.material.ClothId;
import tenterbook.material.FibreShare;

/** A bolt of cloth with its fibre content. */
public final class ClothForm implements RecordForm<Cloth> {
    private final Supplier<Currency> currency;

    public ClothForm(Supplier<Currency> currency) {
        this.currency = currency;
    }

    @Override
    public Kind<Cloth> kind() {
        return Kinds.CLOTH;
    }

    @Override
    public Form filled(Cloth cloth) {
        Form form = Form.empty();
        form.put("id", cloth.id()).put("name", cloth.name()).put("contentEvidence", cloth.contentEvidence());
        form.put("arealWeight", cloth.arealWeight());
        form.put("width", cloth.width());
        form.put("weave", cloth.weave()).put("lot", cloth.lot()).put("supplier", cloth.supplier());
        form.put("wovenIn", cloth.wovenIn())
                .put("price", cloth.price())
                .put("notes", cloth.notes())
                .put("finish", cloth.finish());
        form.put("boughtOn", cloth.boughtOn());
        form.put("bought", cloth.bought());
        for (int i = 0; i < cloth.content().size(); i++) {
            FibreShare share = cloth.content().get(i);
            form.row("content", i)
                    .put("fibre", share.fibre())
                    .put("percent", share.percent() == null ? null : BoardForm.plain(share.percent()))
                    .put("purpose", share.purpose());
        }
        return form;
    }

    @Override
    public Cloth read(Form form, Cloth old) {
        ClothId id = old != null ? old.id() : form.read("id", null, ClothId::new);
        if (id == null) {
            form.problem("id", "A bolt needs a short name, as in ‘SH’: recipes call it by that.");
        }
        List<FibreShare> content = form.each(
                "content",
                row -> row.build(
                        "percent",
                        () -> new FibreShare(row.text("fibre"), row.decimal("percent"), row.text("purpose"))));
        Cloth cloth = form.build(
                "name",
                () -> new Cloth(
                        id,
                        form.text("name"),
                        content,
                        form.text("contentEvidence"),
                        form.quantity("arealWeight", GRAM_PER_SQUARE_METRE),
                        form.quantity("width", CENTIMETRE),
                        form.text("weave"),
                        form.text("lot"),
                        form.text("supplier"),
                        form.text("wovenIn"),
                        form.date("boughtOn"),
                        form.quantity("bought", METRE),
                        form.money("price", currency.get()),
                        form.text("notes"),
                        form.text("finish")));
        return form.hasProblems() ? null : cloth;
    }
}

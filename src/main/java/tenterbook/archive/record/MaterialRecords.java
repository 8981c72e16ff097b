package tenterbook.archive.record;

import static tenterbook.archive.record.Measures.CLOTH_LENGTH;
import static tenterbook.archive.record.Measures.DATE;
import static tenterbook.archive.record.Measures.MONEY;
import static tenterbook.archive.record.Measures.quantity;
import static tenterbook.measure.Unit.GRAM;
import static tenterbook.measure.Unit.GRAM_PER_SQUARE_METRE;
import static tenterbook.measure.Unit.METRE;

import tenterbook.archive.field.Numeric;
import tenterbook.archive.field.Part;
import tenterbook.archive.field.Plain;
import tenterbook.material.Cloth;
import tenterbook.material.ClothId;
import tenterbook.material.FibreShare;
import tenterbook.material.Lot;
import tenterbook.material.LotId;

/** Bolts of cloth, and lots of dye, mordant and other chemicals. */
public final class MaterialRecords {
    static final Part<FibreShare> FIBRE = Part.<FibreShare>of("fibre-share")
            .text("fibre", FibreShare::fibre)
            .field("percent", Numeric.PERCENT, FibreShare::percent)
            .blamed()
            .text("purpose", FibreShare::purpose)
            .choice("evidence", StoredCodes.EVIDENCE, FibreShare::evidence)
            .field("measured", Numeric.PERCENT, FibreShare::measured)
            .built(v -> new FibreShare(
                    v.get("fibre"), v.get("percent"), v.get("purpose"), v.get("evidence"), v.get("measured")));

    public static final Part<Cloth> CLOTH = Part.<Cloth>of("cloth")
            .field("id", Plain.identifier(ClothId::new), Cloth::id)
            .required()
            .key()
            .text("name", Cloth::name)
            .blamed()
            .list("content", FIBRE, Cloth::content)
            .text("contentEvidence", Cloth::contentEvidence)
            .field("arealWeight", quantity(GRAM_PER_SQUARE_METRE), Cloth::arealWeight)
            .field("width", CLOTH_LENGTH, Cloth::width)
            .text("weave", Cloth::weave)
            .text("lot", Cloth::lot)
            .text("supplier", Cloth::supplier)
            .personal()
            .text("wovenIn", Cloth::wovenIn)
            .field("boughtOn", DATE, Cloth::boughtOn)
            .field("bought", quantity(METRE), Cloth::bought)
            .field("price", MONEY, Cloth::price)
            .personal()
            .text("notes", Cloth::notes)
            .personal()
            .text("finish", Cloth::finish)
            .built(v -> new Cloth(
                    v.get("id"),
                    v.get("name"),
                    v.get("content"),
                    v.get("contentEvidence"),
                    v.get("arealWeight"),
                    v.get("width"),
                    v.get("weave"),
                    v.get("lot"),
                    v.get("supplier"),
                    v.get("wovenIn"),
                    v.get("boughtOn"),
                    v.get("bought"),
                    v.get("price"),
                    v.get("notes"),
                    v.get("finish")));

    public static final Part<Lot> LOT = Part.<Lot>of("lot")
            .field("id", Plain.identifier(LotId::new), Lot::id)
            .required()
            .key()
            .choice("role", StoredCodes.ROLE, Lot::role)
            .required()
            .text("name", Lot::name)
            .required()
            .blamed()
            .choice("source", StoredCodes.SOURCE, Lot::source)
            .text("organism", Lot::organism)
            .text("part", Lot::part)
            .text("form", Lot::form)
            .text("lot", Lot::lot)
            .text("supplier", Lot::supplier)
            .personal()
            .field("boughtOn", DATE, Lot::boughtOn)
            .field("bought", quantity(GRAM), Lot::bought)
            .field("price", MONEY, Lot::price)
            .personal()
            .text("notes", Lot::notes)
            .personal()
            .field("warnBelow", quantity(GRAM), Lot::warnBelow)
            .built(v -> new Lot(
                    v.get("id"),
                    v.get("role"),
                    v.get("name"),
                    v.get("source"),
                    v.get("organism"),
                    v.get("part"),
                    v.get("form"),
                    v.get("lot"),
                    v.get("supplier"),
                    v.get("boughtOn"),
                    v.get("bought"),
                    v.get("price"),
                    v.get("notes"),
                    v.get("warnBelow")));

    private MaterialRecords() {}
}

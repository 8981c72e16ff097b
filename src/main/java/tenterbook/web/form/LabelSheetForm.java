package tenterbook.web.form;

import java.math.BigDecimal;
import java.util.List;
import tenterbook.archive.Kinds;
import tenterbook.archive.LabelSheet;
import tenterbook.ledger.Kind;

/** A sheet or roll of labels, in plain millimetres. */
public final class LabelSheetForm implements RecordForm<LabelSheet> {
    /** The fields that are numbers. */
    public static final List<String> NUMBERS = List.of(
            "widthMm",
            "heightMm",
            "columns",
            "rows",
            "labelWidthMm",
            "labelHeightMm",
            "leftMm",
            "topMm",
            "columnGapMm",
            "rowGapMm",
            "shiftRightMm",
            "shiftDownMm",
            "acrossPerMille",
            "downPerMille");

    @Override
    public Kind<LabelSheet> kind() {
        return Kinds.LABEL_SHEET;
    }

    /** For a sheet not yet described: an A4 sheet and a printer that does not stray. */
    public Form begun() {
        return Form.empty()
                .put("widthMm", "210")
                .put("heightMm", "297")
                .put("columnGapMm", "0")
                .put("rowGapMm", "0")
                .put("shiftRightMm", "0")
                .put("shiftDownMm", "0")
                .put("acrossPerMille", "0")
                .put("downPerMille", "0");
    }

    @Override
    public Form filled(LabelSheet sheet) {
        return Form.empty()
                .put("name", sheet.name())
                .put("widthMm", plain(sheet.widthMm()))
                .put("heightMm", plain(sheet.heightMm()))
                .put("columns", sheet.columns())
                .put("rows", sheet.rows())
                .put("labelWidthMm", plain(sheet.labelWidthMm()))
                .put("labelHeightMm", plain(sheet.labelHeightMm()))
                .put("leftMm", plain(sheet.leftMm()))
                .put("topMm", plain(sheet.topMm()))
                .put("columnGapMm", plain(sheet.columnGapMm()))
                .put("rowGapMm", plain(sheet.rowGapMm()))
                .put("shiftRightMm", plain(sheet.shiftRightMm()))
                .put("shiftDownMm", plain(sheet.shiftDownMm()))
                .put("acrossPerMille", plain(sheet.acrossPerMille()))
                .put("downPerMille", plain(sheet.downPerMille()));
    }

    /** Without a needless point. */
    public static String plain(double number) {
        return BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
    }

    @Override
    public LabelSheet read(Form form, LabelSheet old) {
        double[] found =
                NUMBERS.stream().mapToDouble(name -> number(form, name)).toArray();
        if (form.hasProblems()) {
            return null;
        }
        LabelSheet sheet = form.build(
                "name",
                () -> new LabelSheet(
                        form.text("name"),
                        found[0],
                        found[1],
                        (int) found[2],
                        (int) found[3],
                        found[4],
                        found[5],
                        found[6],
                        found[7],
                        found[8],
                        found[9],
                        found[10],
                        found[11],
                        found[12],
                        found[13]));
        return form.hasProblems() ? null : sheet;
    }

    private static double number(Form form, String name) {
        boolean whole = name.equals("columns") || name.equals("rows");
        Double number = form.read(name, null, text -> {
            String plain = text.replace(',', '.').replace('−', '-').replaceAll("\\s*(mm|‰)$", "");
            if (!plain.matches(whole ? "\\d{1,3}" : "-?\\d{1,4}([.]\\d{1,3})?")) {
                throw new IllegalArgumentException(
                        whole
                                ? "Expected a whole number such as 3; found “%s”.".formatted(text)
                                : "Expected a number such as 63.5; found “%s”.".formatted(text));
            }
            return Double.parseDouble(plain);
        });
        if (number == null && !form.has(name)) {
            form.problem(name, "Measure it and enter a number; 0 where there is none.");
        }
        return number == null ? 0 : number;
    }
}

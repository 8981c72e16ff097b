package tenterbook.labelling.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.ValidationResult;
import tenterbook.labelling.LabelKind;
import tenterbook.labelling.PrintSettings;
import tenterbook.labelling.Samples;
import tenterbook.labelling.SheetSize;
import tenterbook.labelling.rule.Market;

/** Checked with veraPDF against its profile of ISO 19005-2, level B. */
class PdfATest {
    @BeforeAll
    static void begin() {
        VeraGreenfieldFoundryProvider.initialise();
    }

    @ParameterizedTest
    @EnumSource(LabelKind.class)
    void everyLabelIsArchivalPdf(LabelKind kind) throws Exception {
        ValidationResult alone = checked(
                Printed.of(PrintSettings.of(kind, Market.EU), Samples.kasuri()).bytes());
        assertThat(alone.isCompliant()).as(alone.getTestAssertions().toString()).isTrue();
        ValidationResult sheet = checked(
                Printed.of(PrintSettings.of(kind, Market.US).on(SheetSize.A4), Samples.heron(), Samples.kasuri())
                        .bytes());
        assertThat(sheet.isCompliant()).as(sheet.getTestAssertions().toString()).isTrue();
    }

    @Test
    void theCheckerRefusesTheSameLabelWithoutItsOutputIntent() throws Exception {
        byte[] good = Printed.of(PrintSettings.of(LabelKind.HANG_TAG, Market.EU), Samples.kasuri())
                .bytes();
        ByteArrayOutputStream spoilt = new ByteArrayOutputStream();
        try (PDDocument document = Loader.loadPDF(good)) {
            document.getDocumentCatalog().getCOSObject().removeItem(COSName.OUTPUT_INTENTS);
            document.save(spoilt);
        }
        assertThat(checked(spoilt.toByteArray()).isCompliant()).isFalse();
    }

    @Test
    void titleAndLanguageStandInTheDocument() throws Exception {
        try (PDDocument document =
                Loader.loadPDF(Printed.of(PrintSettings.of(LabelKind.HANG_TAG, Market.EU), Samples.kasuri())
                        .bytes())) {
            assertThat(document.getDocumentInformation().getTitle()).isEqualTo("Hang tag V24-005");
            assertThat(document.getDocumentCatalog().getLanguage()).isEqualTo("en-GB");
        }
    }

    private static ValidationResult checked(byte[] pdf) throws Exception {
        try (var parser =
                        Foundries.defaultInstance().createParser(new ByteArrayInputStream(pdf), PDFAFlavour.PDFA_2_B);
                var validator = Foundries.defaultInstance().createValidator(PDFAFlavour.PDFA_2_B, false)) {
            return validator.validate(parser);
        }
    }
}

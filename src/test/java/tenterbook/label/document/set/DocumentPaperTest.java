package tenterbook.label.document.set;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.ValidationResult;
import tenterbook.label.document.DocumentSamples;
import tenterbook.label.document.DocumentText;
import tenterbook.label.document.Dress;
import tenterbook.label.document.PageSize;

class DocumentPaperTest {
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2024-06-01T10:00:00Z"), ZoneOffset.UTC);

    @BeforeAll
    static void begin() {
        VeraGreenfieldFoundryProvider.initialise();
    }

    static byte[] pdf(DocumentText text, PageSize page, Dress dress) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        DocumentPaper.pdf(java.util.List.of(text), page, dress, DocumentSamples.PHOTOGRAPHS, out, CLOCK);
        return out.toByteArray();
    }

    static ValidationResult checked(byte[] pdf, PDFAFlavour flavour) throws Exception {
        try (var parser = Foundries.defaultInstance().createParser(new ByteArrayInputStream(pdf), flavour);
                var validator = Foundries.defaultInstance().createValidator(flavour, false)) {
            return validator.validate(parser);
        }
    }

    @ParameterizedTest
    @EnumSource(PageSize.class)
    void everyBlockOnEveryPaperIsAccessibleArchivalPdf(PageSize page) throws Exception {
        byte[] pdf = pdf(DocumentSamples.everyBlock(), page, page.widthMm() < 120 ? Dress.CARD : Dress.SHEET);
        if (System.getProperty("documents.write") != null) {
            Files.write(Path.of(System.getProperty("documents.write"), "every-" + page.name() + ".pdf"), pdf);
        }
        for (PDFAFlavour flavour : new PDFAFlavour[] {PDFAFlavour.PDFA_2_A, PDFAFlavour.PDFA_2_B}) {
            ValidationResult result = checked(pdf, flavour);
            assertThat(result.isCompliant())
                    .as(result.getTestAssertions().toString())
                    .isTrue();
        }
    }

    @Test
    void theBenchDressIsAccessibleArchivalPdf() throws Exception {
        byte[] pdf = pdf(DocumentSamples.everyBlock(), PageSize.A4, Dress.BENCH);
        if (System.getProperty("documents.write") != null) {
            Files.write(Path.of(System.getProperty("documents.write"), "every-bench.pdf"), pdf);
        }
        assertThat(checked(pdf, PDFAFlavour.PDFA_2_A).isCompliant()).isTrue();
    }
}

package tenterbook.label.document.kind;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.ValidationResult;
import tenterbook.label.document.DocumentKind;

/** Every document of the sample studio, checked with veraPDF against its profiles of ISO 19005-2, levels A and B. */
class DocumentPdfTest {
    @TempDir
    static Path folder;

    private static SampleStudioDocuments studio;

    @BeforeAll
    static void begin() throws Exception {
        VeraGreenfieldFoundryProvider.initialise();
        studio = new SampleStudioDocuments(folder);
    }

    @AfterAll
    static void end() {
        studio.close();
    }

    private static ValidationResult checked(byte[] pdf, PDFAFlavour flavour) throws Exception {
        try (var parser = Foundries.defaultInstance().createParser(new ByteArrayInputStream(pdf), flavour);
                var validator = Foundries.defaultInstance().createValidator(flavour, false)) {
            return validator.validate(parser);
        }
    }

    @ParameterizedTest
    @EnumSource(DocumentKind.class)
    void everyDocumentIsArchivalAndAccessiblePdf(DocumentKind kind) throws Exception {
        byte[] pdf = studio.pdf(kind);
        if (System.getProperty("documents.write") != null) {
            Files.write(Path.of(System.getProperty("documents.write"), kind.code() + ".pdf"), pdf);
        }
        for (PDFAFlavour flavour : new PDFAFlavour[] {PDFAFlavour.PDFA_2_A, PDFAFlavour.PDFA_2_B}) {
            ValidationResult result = checked(pdf, flavour);
            assertThat(result.isCompliant())
                    .as(result.getTestAssertions().toString())
                    .isTrue();
        }
    }
}

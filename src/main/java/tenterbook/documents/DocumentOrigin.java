package tenterbook.documents;

import com.fasterxml.jackson.annotation.JsonProperty;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.labelling.StoredSettings;

/**
 * Which revision a document was composed from, where it says so itself; kept with its paper.
 *
 * @param certificateCode as printed on a certificate; null for other documents
 * @param examination of a condition report; null for other documents
 * @param examinationVersion of the examination's record; null for other documents
 */
public record DocumentOrigin(
        @JsonProperty("certificateCode") String certificateCode,
        @JsonProperty("examination") String examination,
        @JsonProperty("examinationVersion") Integer examinationVersion) {
    public static final DocumentOrigin NONE = new DocumentOrigin(null, null, null);
    public static final String STORED = "origin";

    public static DocumentOrigin of(VerificationCode code) {
        return new DocumentOrigin(code.toString(), null, null);
    }

    /** {@link #NONE} where the paper keeps none that is understood. */
    public static DocumentOrigin of(IssuedPaper paper) {
        try {
            return paper.settings().has(STORED) ? StoredSettings.read(paper, STORED, DocumentOrigin.class) : NONE;
        } catch (IllegalArgumentException e) {
            return NONE;
        }
    }
}

package tenterbook.exchange.openpgp;

import java.io.IOException;
import java.io.OutputStream;
import java.security.SecureRandom;
import org.bouncycastle.bcpg.SymmetricKeyAlgorithmTags;
import org.bouncycastle.openpgp.PGPEncryptedDataGenerator;
import org.bouncycastle.openpgp.PGPException;
import org.bouncycastle.openpgp.PGPLiteralData;
import org.bouncycastle.openpgp.PGPLiteralDataGenerator;
import org.bouncycastle.openpgp.operator.bc.BcPublicKeyKeyEncryptionMethodGenerator;
import org.bouncycastle.openpgp.operator.jcajce.JcePGPDataEncryptorBuilder;

/**
 * Writes OpenPGP messages of any length in little memory: AES-256, integrity-protected, not compressed, not signed. The cipher is Java's
 * own, which was measured four times as fast as Bouncy Castle's (270 and 65 MB/s).
 */
public final class EncryptedMessage {
    private static final int CHUNK = 1 << 16;

    private EncryptedMessage() {}

    /** Writes the plain bytes. */
    @FunctionalInterface
    public interface Writing {
        void to(OutputStream plain) throws IOException;
    }

    /**
     * @param out stays open
     * @param name of the file, for the program that opens it
     */
    public static void write(OutputStream out, BackupKey key, String name, Writing writing) throws IOException {
        PGPEncryptedDataGenerator message =
                new PGPEncryptedDataGenerator(new JcePGPDataEncryptorBuilder(SymmetricKeyAlgorithmTags.AES_256)
                        .setWithIntegrityPacket(true)
                        .setSecureRandom(new SecureRandom()));
        message.addMethod(new BcPublicKeyKeyEncryptionMethodGenerator(key.encryption()));
        PGPLiteralDataGenerator content = new PGPLiteralDataGenerator();
        try (OutputStream encrypted = message.open(out, new byte[CHUNK]);
                OutputStream plain =
                        content.open(encrypted, PGPLiteralData.BINARY, name, PGPLiteralData.NOW, new byte[CHUNK])) {
            writing.to(plain);
        } catch (PGPException e) {
            throw new IOException(e);
        }
    }
}

package tenterbook.exchange.openpgp;

import java.io.BufferedInputStream;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import org.bouncycastle.openpgp.PGPCompressedData;
import org.bouncycastle.openpgp.PGPEncryptedData;
import org.bouncycastle.openpgp.PGPEncryptedDataList;
import org.bouncycastle.openpgp.PGPException;
import org.bouncycastle.openpgp.PGPKeyPair;
import org.bouncycastle.openpgp.PGPLiteralData;
import org.bouncycastle.openpgp.PGPPublicKeyEncryptedData;
import org.bouncycastle.openpgp.bc.BcPGPObjectFactory;
import org.bouncycastle.openpgp.operator.PublicKeyDataDecryptorFactory;
import org.bouncycastle.openpgp.operator.jcajce.JcePublicKeyDataDecryptorFactoryBuilder;

/** A key whose passphrase was given: opens messages. */
public final class OpenedKey {
    private final long id;
    private final PublicKeyDataDecryptorFactory decryptor;

    OpenedKey(PGPKeyPair key) {
        this.id = key.getKeyID();
        this.decryptor = new JcePublicKeyDataDecryptorFactoryBuilder().build(key.getPrivateKey());
    }

    /** Reads the plain bytes. They are certain only once {@link OpenedKey#read} has returned. */
    @FunctionalInterface
    public interface Reading<T> {
        T from(InputStream plain) throws IOException;
    }

    /**
     * @throws MessageDamaged if the message is not whole, was changed, has no protection against that, or is for another key
     * @throws IOException of {@code reading} itself
     */
    public <T> T read(InputStream message, Reading<T> reading) throws IOException {
        PGPPublicKeyEncryptedData sealed;
        PGPLiteralData content;
        try {
            sealed = own(new BcPGPObjectFactory(new BufferedInputStream(message)).nextObject());
            content = content(sealed.getDataStream(decryptor));
        } catch (PGPException | IOException | RuntimeException e) {
            throw new MessageDamaged(e);
        }
        T read = reading.from(new OfMessage(content.getInputStream()));
        try {
            if (!sealed.verify()) {
                throw new MessageDamaged(null);
            }
        } catch (PGPException | IOException | RuntimeException e) {
            throw new MessageDamaged(e);
        }
        return read;
    }

    private PGPPublicKeyEncryptedData own(Object first) throws MessageDamaged {
        if (first instanceof PGPEncryptedDataList list) {
            for (PGPEncryptedData each : list) {
                if (each instanceof PGPPublicKeyEncryptedData sealed
                        && sealed.getKeyIdentifier().getKeyId() == id
                        && sealed.isIntegrityProtected()) {
                    return sealed;
                }
            }
        }
        throw new MessageDamaged(null);
    }

    /** Other programs compress what they encrypt. */
    private static PGPLiteralData content(InputStream clear) throws PGPException, IOException {
        Object first = new BcPGPObjectFactory(clear).nextObject();
        if (first instanceof PGPCompressedData packed) {
            first = new BcPGPObjectFactory(packed.getDataStream()).nextObject();
        }
        if (first instanceof PGPLiteralData content) {
            return content;
        }
        throw new MessageDamaged(null);
    }

    /** Tells a damaged message from a full disk on which its content is written. */
    private static final class OfMessage extends FilterInputStream {
        private OfMessage(InputStream in) {
            super(in);
        }

        @Override
        public int read() throws IOException {
            byte[] one = new byte[1];
            return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
        }

        @Override
        public int read(byte[] bytes, int from, int length) throws IOException {
            try {
                return super.read(bytes, from, length);
            } catch (IOException | RuntimeException e) {
                throw new MessageDamaged(e);
            }
        }
    }
}

package tenterbook.exchange.openpgp;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.math.BigInteger;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Instant;
import java.util.Date;
import java.util.HexFormat;
import org.bouncycastle.bcpg.ArmoredOutputStream;
import org.bouncycastle.bcpg.HashAlgorithmTags;
import org.bouncycastle.bcpg.PublicKeyPacket;
import org.bouncycastle.bcpg.SymmetricKeyAlgorithmTags;
import org.bouncycastle.bcpg.sig.Features;
import org.bouncycastle.bcpg.sig.KeyFlags;
import org.bouncycastle.crypto.generators.RSAKeyPairGenerator;
import org.bouncycastle.crypto.params.RSAKeyGenerationParameters;
import org.bouncycastle.openpgp.PGPException;
import org.bouncycastle.openpgp.PGPKeyRingGenerator;
import org.bouncycastle.openpgp.PGPPublicKey;
import org.bouncycastle.openpgp.PGPSecretKey;
import org.bouncycastle.openpgp.PGPSecretKeyRing;
import org.bouncycastle.openpgp.PGPSignature;
import org.bouncycastle.openpgp.PGPSignatureSubpacketGenerator;
import org.bouncycastle.openpgp.PGPUtil;
import org.bouncycastle.openpgp.operator.PGPDigestCalculator;
import org.bouncycastle.openpgp.operator.PGPDigestCalculatorProvider;
import org.bouncycastle.openpgp.operator.bc.BcKeyFingerprintCalculator;
import org.bouncycastle.openpgp.operator.bc.BcPBESecretKeyDecryptorBuilder;
import org.bouncycastle.openpgp.operator.bc.BcPBESecretKeyEncryptorBuilder;
import org.bouncycastle.openpgp.operator.bc.BcPGPContentSignerBuilder;
import org.bouncycastle.openpgp.operator.bc.BcPGPKeyPair;
import org.bouncycastle.openpgp.operator.jcajce.JcaPGPDigestCalculatorProviderBuilder;
import tenterbook.words.Refusal;

/**
 * The key pair of encrypted backups, in OpenPGP's version 4: a primary key and a subkey that messages are encrypted to, both RSA with
 * 3072 bits, which every OpenPGP program of the last decades reads. Messages are made with the public part alone; the secret part is
 * protected by the passphrase with AES-256, through iterated and salted SHA-256.
 */
public final class BackupKey {
    private static final int BITS = 3072;

    /** Of about 2^-100 at most that a prime is none. */
    private static final int CERTAINTY = 100;

    /** The most that the form can say: 65,011,712 bytes are hashed for each attempt (RFC 4880, 3.7.1.3). */
    private static final int HASHED = 0xff;

    private static final String USER = "Tenterbook";

    private final PGPSecretKeyRing ring;
    private final PGPSecretKey opening;

    private BackupKey(PGPSecretKeyRing ring) throws IOException {
        this.ring = ring;
        PGPSecretKey found = null;
        for (PGPSecretKey key : ring) {
            if (!key.isMasterKey()
                    && !key.isPrivateKeyEmpty()
                    && key.getPublicKey().isEncryptionKey()) {
                found = key;
            }
        }
        if (found == null) {
            throw new MessageDamaged(null);
        }
        this.opening = found;
    }

    /** A new one; takes a second or two. */
    public static BackupKey make(Passphrase passphrase, Instant now) {
        try {
            PGPDigestCalculatorProvider digests = digests();
            PGPDigestCalculator sha1 = digests.get(HashAlgorithmTags.SHA1);
            Date made = Date.from(now);
            BcPGPKeyPair primary = pair(made);
            PGPKeyRingGenerator generator = new PGPKeyRingGenerator(
                    PGPSignature.POSITIVE_CERTIFICATION,
                    primary,
                    USER,
                    sha1,
                    flags(KeyFlags.CERTIFY_OTHER | KeyFlags.SIGN_DATA).generate(),
                    null,
                    new BcPGPContentSignerBuilder(primary.getPublicKey().getAlgorithm(), HashAlgorithmTags.SHA256),
                    new BcPBESecretKeyEncryptorBuilder(
                                    SymmetricKeyAlgorithmTags.AES_256, digests.get(HashAlgorithmTags.SHA256), HASHED)
                            .setSecureRandom(new SecureRandom())
                            .build(passphrase.characters()));
            PGPSignatureSubpacketGenerator subkey = new PGPSignatureSubpacketGenerator();
            subkey.setKeyFlags(false, KeyFlags.ENCRYPT_COMMS | KeyFlags.ENCRYPT_STORAGE);
            generator.addSubKey(pair(made), subkey.generate(), null);
            return new BackupKey(generator.generateSecretKeyRing());
        } catch (PGPException | IOException e) {
            throw new IllegalStateException("No key could be made", e);
        }
    }

    /** Java's own, since processors have instructions for it: the passphrase is hashed over and over. */
    private static PGPDigestCalculatorProvider digests() throws PGPException {
        return new JcaPGPDigestCalculatorProviderBuilder().build();
    }

    private static PGPSignatureSubpacketGenerator flags(int flags) {
        PGPSignatureSubpacketGenerator signed = new PGPSignatureSubpacketGenerator();
        signed.setKeyFlags(false, flags);
        signed.setPreferredSymmetricAlgorithms(false, new int[] {SymmetricKeyAlgorithmTags.AES_256});
        signed.setPreferredHashAlgorithms(false, new int[] {HashAlgorithmTags.SHA256});
        signed.setFeature(false, Features.FEATURE_MODIFICATION_DETECTION);
        return signed;
    }

    private static BcPGPKeyPair pair(Date made) throws PGPException {
        RSAKeyPairGenerator generator = new RSAKeyPairGenerator();
        generator.init(
                new RSAKeyGenerationParameters(BigInteger.valueOf(0x10001), new SecureRandom(), BITS, CERTAINTY));
        return new BcPGPKeyPair(PublicKeyPacket.VERSION_4, PGPPublicKey.RSA_GENERAL, generator.generateKeyPair(), made);
    }

    /** @throws IOException if the file cannot be read or is no such key */
    public static BackupKey read(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            // To the end, where the checksum of the text stands.
            byte[] packets = PGPUtil.getDecoderStream(in).readAllBytes();
            return new BackupKey(new PGPSecretKeyRing(packets, new BcKeyFingerprintCalculator()));
        } catch (PGPException | RuntimeException e) {
            throw new MessageDamaged(e);
        }
    }

    /** The whole pair as text, the secret part behind the passphrase. */
    public byte[] text() {
        ByteArrayOutputStream text = new ByteArrayOutputStream();
        try (ArmoredOutputStream armored = ArmoredOutputStream.builder().build(text)) {
            ring.encode(armored);
        } catch (IOException e) {
            throw new IllegalStateException("No text of a key", e);
        }
        return text.toByteArray();
    }

    /** 40 hexadecimal digits that tell it from every other. */
    public String fingerprint() {
        return HexFormat.of().withUpperCase().formatHex(ring.getPublicKey().getFingerprint());
    }

    PGPPublicKey encryption() {
        return opening.getPublicKey();
    }

    /** @throws Refusal if it is another passphrase; what was changed in the secret part looks the same */
    public OpenedKey open(Passphrase passphrase) {
        try {
            return new OpenedKey(opening.extractKeyPair(
                    new BcPBESecretKeyDecryptorBuilder(digests()).build(passphrase.characters())));
        } catch (PGPException e) {
            throw Refusal.of("backup.passphrase.wrong");
        }
    }
}

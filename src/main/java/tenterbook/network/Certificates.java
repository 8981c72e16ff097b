package tenterbook.network;

import java.io.IOException;
import java.math.BigInteger;
import java.security.GeneralSecurityException;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.PrivateKey;
import java.security.SecureRandom;
import java.security.cert.X509Certificate;
import java.security.spec.ECGenParameterSpec;
import java.time.Duration;
import java.time.Instant;
import java.util.Date;
import org.bouncycastle.asn1.x500.X500Name;
import org.bouncycastle.asn1.x500.X500NameBuilder;
import org.bouncycastle.asn1.x500.style.BCStyle;
import org.bouncycastle.asn1.x509.BasicConstraints;
import org.bouncycastle.asn1.x509.ExtendedKeyUsage;
import org.bouncycastle.asn1.x509.Extension;
import org.bouncycastle.asn1.x509.GeneralName;
import org.bouncycastle.asn1.x509.GeneralNames;
import org.bouncycastle.asn1.x509.GeneralSubtree;
import org.bouncycastle.asn1.x509.KeyPurposeId;
import org.bouncycastle.asn1.x509.KeyUsage;
import org.bouncycastle.asn1.x509.NameConstraints;
import org.bouncycastle.cert.jcajce.JcaX509CertificateConverter;
import org.bouncycastle.cert.jcajce.JcaX509ExtensionUtils;
import org.bouncycastle.cert.jcajce.JcaX509v3CertificateBuilder;
import org.bouncycastle.operator.OperatorCreationException;
import org.bouncycastle.operator.jcajce.JcaContentSignerBuilder;

/** Certificates by RFC 5280, over keys of the curve P-256; the library builds them, Java's own providers make and use the keys. */
final class Certificates {
    /** A clock of a device may be behind this computer's. */
    private static final Duration EARLIER = Duration.ofDays(1);

    private static final SecureRandom RANDOM = new SecureRandom();

    private Certificates() {}

    /** Whose signature a certificate gets. */
    record Signer(X500Name name, PrivateKey key) {}

    static X500Name name(String common) {
        return new X500NameBuilder(BCStyle.INSTANCE).addRDN(BCStyle.CN, common).build();
    }

    static KeyPair keys() throws GeneralSecurityException {
        KeyPairGenerator generator = KeyPairGenerator.getInstance("EC");
        generator.initialize(new ECGenParameterSpec("secp256r1"), RANDOM);
        return generator.generateKeyPair();
    }

    static JcaX509v3CertificateBuilder builder(Signer by, X500Name subject, KeyPair keys, Instant now, Duration valid)
            throws IOException, GeneralSecurityException {
        JcaX509v3CertificateBuilder builder = new JcaX509v3CertificateBuilder(
                by.name(),
                new BigInteger(126, RANDOM).add(BigInteger.ONE),
                Date.from(now.minus(EARLIER)),
                Date.from(now.plus(valid)),
                subject,
                keys.getPublic());
        builder.addExtension(
                Extension.subjectKeyIdentifier,
                false,
                new JcaX509ExtensionUtils().createSubjectKeyIdentifier(keys.getPublic()));
        return builder;
    }

    /** @param below how many authorities may stand between it and a server's certificate */
    static void authority(JcaX509v3CertificateBuilder builder, int below) throws IOException {
        builder.addExtension(Extension.basicConstraints, true, new BasicConstraints(below));
        builder.addExtension(Extension.keyUsage, true, new KeyUsage(KeyUsage.keyCertSign));
    }

    /** May sign for these ranges of addresses and for no name of the internet (RFC 5280, 4.2.1.10). */
    static void only(JcaX509v3CertificateBuilder builder, String[] ranges) throws IOException {
        GeneralSubtree[] permitted = new GeneralSubtree[ranges.length + 1];
        for (int i = 0; i < ranges.length; i++) {
            permitted[i] = new GeneralSubtree(new GeneralName(GeneralName.iPAddress, ranges[i]));
        }
        // Without a permitted name, names would not be limited at all.
        permitted[ranges.length] = new GeneralSubtree(new GeneralName(GeneralName.dNSName, "localhost"));
        builder.addExtension(Extension.nameConstraints, true, new NameConstraints(permitted, null));
    }

    static void server(JcaX509v3CertificateBuilder builder, Iterable<String> addresses) throws IOException {
        builder.addExtension(Extension.basicConstraints, true, new BasicConstraints(false));
        builder.addExtension(Extension.keyUsage, true, new KeyUsage(KeyUsage.digitalSignature));
        builder.addExtension(Extension.extendedKeyUsage, false, new ExtendedKeyUsage(KeyPurposeId.id_kp_serverAuth));
        java.util.List<GeneralName> names = new java.util.ArrayList<>();
        addresses.forEach(each -> names.add(new GeneralName(GeneralName.iPAddress, each)));
        builder.addExtension(
                Extension.subjectAlternativeName, false, new GeneralNames(names.toArray(new GeneralName[0])));
    }

    static X509Certificate signed(JcaX509v3CertificateBuilder builder, PrivateKey by) throws GeneralSecurityException {
        try {
            return new JcaX509CertificateConverter()
                    .getCertificate(builder.build(new JcaContentSignerBuilder("SHA256withECDSA").build(by)));
        } catch (OperatorCreationException e) {
            throw new GeneralSecurityException(e);
        }
    }
}

package tenterbook.network;

import java.io.IOException;
import java.net.InetAddress;
import java.security.GeneralSecurityException;
import java.security.KeyPair;
import java.security.KeyStore;
import java.security.MessageDigest;
import java.security.PublicKey;
import java.security.cert.X509Certificate;
import java.time.Duration;
import java.time.Instant;
import java.util.Collection;
import java.util.Date;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.bouncycastle.asn1.x500.X500Name;
import org.bouncycastle.cert.jcajce.JcaX509v3CertificateBuilder;
import tenterbook.words.Message;

/**
 * The studio's own authority for the encrypted connection, made when the network is first opened.
 *
 * <p>What a phone installs is the certificate of a root. The root's key signs one certificate below it and is then forgotten, never
 * stored. The one below can sign for local addresses alone, so whoever gets hold of this folder cannot stand in for a site of the
 * internet towards that phone; they could for this program.
 */
public final class Authority {
    private static final String AUTHORITY = "authority.p12";
    private static final String SERVER = "server.p12";

    private static final Duration AUTHORITY_VALID = Duration.ofDays(3650);

    /** Some systems take no certificate of a server that is valid for more than 398 days (CA/Browser Forum, Baseline Requirements 6.3.2, from memory). */
    private static final Duration SERVER_VALID = Duration.ofDays(390);

    /** One that ends sooner is made anew. */
    private static final Duration SOON = Duration.ofDays(30);

    private final NetworkFolder folder;
    private final KeyFile signing;

    private Authority(NetworkFolder folder, KeyFile signing) {
        this.folder = folder;
        this.signing = signing;
    }

    /** The one that is kept, or a new one where there is none or the kept one ends soon; devices then install that one. */
    public static Authority of(NetworkFolder folder, Instant now) throws IOException, GeneralSecurityException {
        Optional<KeyFile> kept = KeyFile.read(folder, AUTHORITY).filter(file -> lasts(file.certificate(), now));
        if (kept.isPresent()) {
            return new Authority(folder, kept.get());
        }
        KeyFile made = made(now);
        made.write(folder, AUTHORITY);
        return new Authority(folder, made);
    }

    private static KeyFile made(Instant now) throws IOException, GeneralSecurityException {
        KeyPair root = Certificates.keys();
        String mark =
                HexFormat.of().withUpperCase().formatHex(digest(root.getPublic().getEncoded()), 0, 3);
        X500Name rootName =
                Certificates.name(Message.of("device.authority", "mark", mark).inEnglish());
        Certificates.Signer byRoot = new Certificates.Signer(rootName, root.getPrivate());
        JcaX509v3CertificateBuilder top = Certificates.builder(byRoot, rootName, root, now, AUTHORITY_VALID);
        Certificates.authority(top, 1);
        KeyPair keys = Certificates.keys();
        X500Name name = Certificates.name(
                Message.of("device.authority-below", "mark", mark).inEnglish());
        JcaX509v3CertificateBuilder below = Certificates.builder(byRoot, name, keys, now, AUTHORITY_VALID);
        Certificates.authority(below, 0);
        Certificates.only(below, LocalAddresses.RANGES.toArray(new String[0]));
        return new KeyFile(
                keys.getPrivate(),
                List.of(Certificates.signed(below, root.getPrivate()), Certificates.signed(top, root.getPrivate())));
    }

    private static boolean lasts(X509Certificate certificate, Instant now) {
        return certificate.getNotAfter().toInstant().isAfter(now.plus(SOON))
                && !certificate.getNotBefore().after(Date.from(now));
    }

    /** What a device installs. */
    public X509Certificate root() {
        return signing.chain().get(1);
    }

    /** Of {@link #root}: SHA-256 in hexadecimal, as devices show it. */
    public String fingerprint() throws GeneralSecurityException {
        return HexFormat.ofDelimiter(":").withUpperCase().formatHex(digest(root().getEncoded()));
    }

    /**
     * Key and certificate of the server for these addresses: the kept ones where they are the same addresses, else made anew.
     *
     * @param addresses local ones; devices refuse a certificate for any other
     */
    public KeyStore server(Collection<InetAddress> addresses, Instant now)
            throws IOException, GeneralSecurityException {
        TreeSet<String> names =
                addresses.stream().map(LocalAddresses::text).collect(Collectors.toCollection(TreeSet::new));
        Optional<KeyFile> kept = KeyFile.read(folder, SERVER);
        if (kept.isPresent() && fits(kept.get(), names, now)) {
            return kept.get().store();
        }
        KeyPair keys = Certificates.keys();
        X500Name issuer = X500Name.getInstance(
                signing.certificate().getSubjectX500Principal().getEncoded());
        JcaX509v3CertificateBuilder builder = Certificates.builder(
                new Certificates.Signer(issuer, signing.key()),
                Certificates.name(names.first()),
                keys,
                now,
                SERVER_VALID);
        Certificates.server(builder, names);
        KeyFile made = new KeyFile(
                keys.getPrivate(), List.of(Certificates.signed(builder, signing.key()), signing.certificate()));
        made.write(folder, SERVER);
        return made.store();
    }

    public static String password() {
        return KeyFile.PASSWORD;
    }

    private boolean fits(KeyFile kept, TreeSet<String> names, Instant now) throws GeneralSecurityException {
        PublicKey ours = signing.certificate().getPublicKey();
        try {
            kept.certificate().verify(ours);
        } catch (GeneralSecurityException e) {
            return false;
        }
        TreeSet<String> has = new TreeSet<>();
        for (List<?> name : kept.certificate().getSubjectAlternativeNames()) {
            has.add(String.valueOf(name.get(1)).toLowerCase(Locale.ROOT));
        }
        return has.equals(names) && lasts(kept.certificate(), now);
    }

    static byte[] digest(byte[] bytes) throws GeneralSecurityException {
        return MessageDigest.getInstance("SHA-256").digest(bytes);
    }
}

package tenterbook.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.net.InetAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.PrivateKey;
import java.security.Signature;
import java.security.cert.CertPathValidator;
import java.security.cert.CertPathValidatorException;
import java.security.cert.Certificate;
import java.security.cert.CertificateFactory;
import java.security.cert.PKIXParameters;
import java.security.cert.TrustAnchor;
import java.security.cert.X509Certificate;
import java.time.Instant;
import java.util.Date;
import java.util.HexFormat;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Certificates are checked by Java's own validation of paths (PKIX, RFC 5280). */
class AuthorityTest {
    private static final Instant NOW = Instant.parse("2024-09-30T16:20:00Z");

    @TempDir
    Path archive;

    private NetworkFolder folder;
    private Authority authority;

    @BeforeEach
    void begin() throws IOException, GeneralSecurityException {
        folder = new NetworkFolder(archive);
        authority = Authority.of(folder, NOW);
    }

    private static X509Certificate[] chain(KeyStore store) throws GeneralSecurityException {
        Certificate[] chain = store.getCertificateChain("key");
        return Stream.of(chain).map(X509Certificate.class::cast).toArray(X509Certificate[]::new);
    }

    private X509Certificate[] server(Instant at, String... addresses) throws IOException, GeneralSecurityException {
        List<InetAddress> present = new java.util.ArrayList<>();
        for (String each : addresses) {
            present.add(InetAddress.getByName(each));
        }
        return chain(authority.server(present, at));
    }

    private void validate(X509Certificate[] chain, Instant at) throws GeneralSecurityException {
        PKIXParameters parameters = new PKIXParameters(Set.of(new TrustAnchor(authority.root(), null)));
        parameters.setRevocationEnabled(false);
        parameters.setDate(Date.from(at));
        CertPathValidator.getInstance("PKIX")
                .validate(CertificateFactory.getInstance("X.509").generateCertPath(List.of(chain)), parameters);
    }

    @Test
    void theServersCertificateNamesTheAddressesAndFollowsFromTheRoot() throws Exception {
        X509Certificate[] chain = server(NOW, "192.168.1.5", "fe80::1", "127.0.0.1");
        validate(chain, NOW);
        assertThat(chain[0].getSubjectAlternativeNames().stream().map(name -> name.get(0) + " " + name.get(1)))
                .containsExactlyInAnyOrder("7 192.168.1.5", "7 fe80:0:0:0:0:0:0:1", "7 127.0.0.1");
        assertThat(chain[0].getExtendedKeyUsage()).containsExactly("1.3.6.1.5.5.7.3.1");
        assertThat(chain[0].getBasicConstraints()).as("signs nothing").isEqualTo(-1);
        validate(chain, NOW.plusSeconds(389L * 86_400));
        assertThatThrownBy(() -> validate(chain, NOW.plusSeconds(391L * 86_400)))
                .isInstanceOf(CertPathValidatorException.class);
        assertThat(authority.fingerprint().replace(":", ""))
                .isEqualTo(HexFormat.of()
                        .withUpperCase()
                        .formatHex(java.security.MessageDigest.getInstance("SHA-256")
                                .digest(authority.root().getEncoded())));
    }

    @Test
    void aCertificateForAnAddressOfTheInternetIsRefusedThoughTheAuthoritySignedIt() throws Exception {
        X509Certificate[] chain = server(NOW, "192.168.1.5", "8.8.8.8");
        assertThatThrownBy(() -> validate(chain, NOW))
                .isInstanceOf(CertPathValidatorException.class)
                .hasMessageContaining("name constraints");
    }

    @Test
    void theKeyOfTheRootIsNowhere() throws Exception {
        KeyFile kept = KeyFile.read(folder, "authority.p12").orElseThrow();
        byte[] text = "which key is this".getBytes();
        assertThat(verifies(kept.key(), kept.certificate(), text)).isTrue();
        assertThat(verifies(kept.key(), authority.root(), text)).isFalse();
        assertThat(kept.certificate().getBasicConstraints())
                .as("no authority below it")
                .isZero();
    }

    private static boolean verifies(PrivateKey key, X509Certificate certificate, byte[] text)
            throws GeneralSecurityException {
        Signature signing = Signature.getInstance("SHA256withECDSA");
        signing.initSign(key);
        signing.update(text);
        Signature verifying = Signature.getInstance("SHA256withECDSA");
        verifying.initVerify(certificate.getPublicKey());
        verifying.update(text);
        return verifying.verify(signing.sign());
    }

    @Test
    void itIsKeptUntilAnAddressChangesOrItEndsSoon() throws Exception {
        X509Certificate first = server(NOW, "192.168.1.5")[0];
        assertThat(Authority.of(folder, NOW).root()).isEqualTo(authority.root());
        assertThat(server(NOW.plusSeconds(86_400), "192.168.1.5")[0]).isEqualTo(first);
        X509Certificate moved = server(NOW, "192.168.1.9")[0];
        assertThat(moved.getPublicKey()).isNotEqualTo(first.getPublicKey());
        X509Certificate later = server(NOW.plusSeconds(365L * 86_400), "192.168.1.9")[0];
        assertThat(later.getNotAfter()).isAfter(moved.getNotAfter());
        Authority next = Authority.of(folder, NOW.plusSeconds(3640L * 86_400));
        assertThat(next.root()).isNotEqualTo(authority.root());
    }

    @Test
    void onlyTheOwnerReadsTheFolder() throws Exception {
        server(NOW, "192.168.1.5");
        Path network = archive.resolve("network");
        Assumptions.assumeTrue(Files.getFileStore(network).supportsFileAttributeView("posix"));
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(network)))
                .isEqualTo("rwx------");
        try (Stream<Path> files = Files.list(network)) {
            assertThat(files)
                    .hasSize(2)
                    .allSatisfy(file -> assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
                            .isEqualTo("rw-------"));
        }
    }
}

package tenterbook.network;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.PrivateKey;
import java.security.cert.X509Certificate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A private key with its chain of certificates.
 *
 * @param chain the certificate of the key first, then of whoever signed it, and so on
 */
record KeyFile(PrivateKey key, List<X509Certificate> chain) {
    /** The format wants a password. It protects nothing, since it stands here: the permissions of the file do. */
    static final String PASSWORD = "tenterbook";

    private static final String ENTRY = "key";

    /** Empty where there is no such file. */
    static Optional<KeyFile> read(NetworkFolder folder, String name) throws IOException, GeneralSecurityException {
        Optional<byte[]> bytes = folder.read(name);
        if (bytes.isEmpty()) {
            return Optional.empty();
        }
        KeyStore store = KeyStore.getInstance("PKCS12");
        store.load(new ByteArrayInputStream(bytes.get()), PASSWORD.toCharArray());
        return Optional.of(new KeyFile(
                (PrivateKey) store.getKey(ENTRY, PASSWORD.toCharArray()),
                Stream.of(store.getCertificateChain(ENTRY))
                        .map(X509Certificate.class::cast)
                        .toList()));
    }

    void write(NetworkFolder folder, String name) throws IOException, GeneralSecurityException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        store().store(bytes, PASSWORD.toCharArray());
        folder.write(name, bytes.toByteArray());
    }

    KeyStore store() throws IOException, GeneralSecurityException {
        KeyStore store = KeyStore.getInstance("PKCS12");
        store.load(null, null);
        store.setKeyEntry(ENTRY, key, PASSWORD.toCharArray(), chain.toArray(new X509Certificate[0]));
        return store;
    }

    X509Certificate certificate() {
        return chain.get(0);
    }
}

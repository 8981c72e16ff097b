package tenterbook.web.device;

import java.io.IOException;
import java.net.BindException;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import org.eclipse.jetty.io.Connection;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.NetworkConnectionLimit;
import org.eclipse.jetty.server.SecureRequestCustomizer;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.util.ssl.SslContextFactory;
import org.jspecify.annotations.Nullable;
import tenterbook.network.Authority;

/** The second connector of the running server, on all addresses of this computer. */
final class NetworkConnection {
    /** Devices of one studio; more connections wait. */
    private static final int CONNECTIONS = 128;

    private static final int IDLE_MILLIS = 30_000;
    private static final int LONGEST_ADDRESS = 64 << 10;
    private static final int PORTS_TRIED = 20;

    private final Server server;
    private final ServerConnector connector;
    private final SslContextFactory.@Nullable Server tls;

    private NetworkConnection(Server server, ServerConnector connector, SslContextFactory.@Nullable Server tls) {
        this.server = server;
        this.connector = connector;
        this.tls = tls;
    }

    /**
     * @param keys of the server; null for plain HTTP
     * @param port the next free one from here on; 0 for any
     * @param reached called with each connection, before anything was sent over it
     */
    static NetworkConnection open(Server server, @Nullable KeyStore keys, int port, Runnable reached)
            throws IOException {
        HttpConfiguration http = new HttpConfiguration();
        http.setSendServerVersion(false);
        http.setRequestHeaderSize(LONGEST_ADDRESS);
        http.setResponseHeaderSize(LONGEST_ADDRESS);
        HttpConnectionFactory factory = new HttpConnectionFactory(http);
        SslContextFactory.Server tls = null;
        ServerConnector connector;
        if (keys == null) {
            connector = new ServerConnector(server, factory);
        } else {
            tls = new SslContextFactory.Server();
            tls.setKeyStore(keys);
            tls.setKeyStorePassword(Authority.password());
            tls.setIncludeProtocols("TLSv1.3", "TLSv1.2");
            // The guard compares the Host with the addresses of this computer.
            http.addCustomizer(new SecureRequestCustomizer(false));
            connector = new ServerConnector(server, tls, factory);
        }
        connector.setIdleTimeout(IDLE_MILLIS);
        connector.addBean(new NetworkConnectionLimit(CONNECTIONS, connector));
        connector.addBean(new Connection.Listener() {
            @Override
            public void onOpened(Connection connection) {
                reached.run();
            }
        });
        NetworkConnection made = new NetworkConnection(server, connector, tls);
        made.start(port);
        return made;
    }

    private void start(int first) throws IOException {
        server.addConnector(connector);
        try {
            for (int tried = 0; ; tried++) {
                connector.setPort(first == 0 ? 0 : first + tried);
                try {
                    connector.start();
                    return;
                } catch (BindException e) {
                    connector.stop();
                    if (first == 0 || tried + 1 >= PORTS_TRIED) {
                        throw e;
                    }
                }
            }
        } catch (IOException e) {
            server.removeConnector(connector);
            throw e;
        } catch (Exception e) {
            server.removeConnector(connector);
            throw new IOException(e);
        }
    }

    int port() {
        return connector.getLocalPort();
    }

    /** Another certificate for connections from now on. */
    void renew(KeyStore keys) throws GeneralSecurityException {
        if (tls == null) {
            return;
        }
        try {
            tls.reload(factory -> tls.setKeyStore(keys));
        } catch (Exception e) {
            throw new GeneralSecurityException(e);
        }
    }

    void close() throws IOException {
        try {
            connector.stop();
        } catch (Exception e) {
            throw new IOException(e);
        } finally {
            server.removeConnector(connector);
        }
    }
}

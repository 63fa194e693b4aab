package lapyard.rest;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Optional;

/**
 * Where the server listens and who may use it.
 *
 * @param port 0 for any free one
 */
public record Binding(String host, int port, Optional<Token> token) {
    public Binding {
        if (port < 0 || port > 65535) throw new IllegalArgumentException("a port is 0 to 65535, was " + port);
    }

    /**
     * Refuses an address that other machines could reach while nobody is asked for a token.
     *
     * @throws IllegalArgumentException with the ways out
     * @throws UnknownHostException if the host's name has no address
     */
    public void check() throws UnknownHostException {
        if (token.isEmpty() && !InetAddress.getByName(host).isLoopbackAddress())
            throw new IllegalArgumentException("other machines could reach " + host
                    + ": give a token by --token-file or LAPYARD_TOKEN, or listen on 127.0.0.1");
    }
}

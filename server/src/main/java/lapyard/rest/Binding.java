package lapyard.rest;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Optional;
import java.util.Set;
import javax.net.ssl.SSLContext;
import org.glassfish.grizzly.http.HttpRequestPacket;

/**
 * Where the server listens and who may use it.
 *
 * @param port    0 for any free one
 * @param tls     with what it speaks TLS; plain HTTP where it is empty
 * @param proxies addresses whose {@code X-Forwarded-For} is believed
 */
public record Binding(String host, int port, Keys keys, Optional<SSLContext> tls, Set<String> proxies) {
    public Binding {
        if (port < 0 || port > 65535) throw new IllegalArgumentException("Port " + port + " is outside 0 to 65535. Give 8080, or 0 for any free one.");
        proxies = Set.copyOf(proxies);
    }

    /**
     * Refuses an address that other machines could reach while nobody is asked for a token.
     *
     * @throws IllegalArgumentException with the ways out
     * @throws UnknownHostException if the host's name has no address
     */
    public void check() throws UnknownHostException {
        if (keys.editors().isEmpty() && !keys.readers().isEmpty())
            throw new IllegalArgumentException("there is a reader's token and no editor's: give one, or nobody could change a garden");
        if (keys.isEmpty() && !InetAddress.getByName(host).isLoopbackAddress())
            throw new IllegalArgumentException("other machines could reach " + host
                    + ": give a token by --token-file or LAPYARD_TOKEN, or listen on 127.0.0.1");
    }

    /** Who sent it; behind a proxy of ours, whom the proxy says it had it from. */
    String addressOf(HttpRequestPacket request) {
        String from = String.valueOf(request.getRemoteAddress());
        String told = request.getHeader("X-Forwarded-For");
        if (told == null || !proxies.contains(from)) return from;
        String last = told.substring(told.lastIndexOf(',') + 1).strip();
        return last.matches("[0-9a-fA-F.:]{2,45}") ? last : from;
    }
}

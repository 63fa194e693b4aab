package lapyard.rest;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.LongSupplier;
import org.glassfish.grizzly.Connection;
import org.glassfish.grizzly.filterchain.BaseFilter;
import org.glassfish.grizzly.filterchain.FilterChainBuilder;
import org.glassfish.grizzly.filterchain.FilterChainContext;
import org.glassfish.grizzly.filterchain.NextAction;
import org.glassfish.grizzly.filterchain.TransportFilter;
import org.glassfish.grizzly.http.server.AddOn;
import org.glassfish.grizzly.http.server.NetworkListener;
import org.glassfish.grizzly.nio.NIOConnection;

/**
 * Closes a line whose other end takes nothing of its answer. The library ends a write that is waited for by itself; what
 * it has put into a line's queue, such as a whole document, it would keep for ever.
 */
final class UntakenAnswers extends BaseFilter implements AddOn {
    private final long patienceNanos;
    private final LongSupplier nanos;
    private final Map<NIOConnection, Waiting> lines = new ConcurrentHashMap<>();

    UntakenAnswers(long patienceNanos, LongSupplier nanos) {
        this.patienceNanos = patienceNanos;
        this.nanos = nanos;
    }

    /** So many bytes waited when some of them were last taken. */
    private record Waiting(int bytes, long sinceNanos) {}

    @Override
    public void setup(NetworkListener listener, FilterChainBuilder filters) {
        filters.add(filters.indexOfType(TransportFilter.class) + 1, this);
    }

    @Override
    public NextAction handleAccept(FilterChainContext context) {
        if (context.getConnection() instanceof NIOConnection line) lines.put(line, new Waiting(0, nanos.getAsLong()));
        return context.getInvokeAction();
    }

    @Override
    public NextAction handleClose(FilterChainContext context) {
        Connection<?> closed = context.getConnection();
        lines.keySet().remove(closed);
        return context.getInvokeAction();
    }

    /** Is called now and then. */
    void closeUntaken() {
        long now = nanos.getAsLong();
        lines.forEach((line, before) -> {
            int bytes = line.getAsyncWriteQueue().spaceInBytes();
            boolean moves = bytes == 0 || bytes < before.bytes();
            if (!line.isOpen()) lines.remove(line);
            else if (moves || before.bytes() == 0) lines.replace(line, new Waiting(bytes, now));
            else if (now - before.sinceNanos() > patienceNanos) line.terminateSilently();
            else if (bytes > before.bytes()) lines.replace(line, new Waiting(bytes, before.sinceNanos()));
        });
    }
}

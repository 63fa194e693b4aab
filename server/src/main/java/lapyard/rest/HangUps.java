package lapyard.rest;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.SocketChannel;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.glassfish.grizzly.Buffer;
import org.glassfish.grizzly.Connection;
import org.glassfish.grizzly.Grizzly;
import org.glassfish.grizzly.attributes.Attribute;
import org.glassfish.grizzly.filterchain.BaseFilter;
import org.glassfish.grizzly.filterchain.FilterChainBuilder;
import org.glassfish.grizzly.filterchain.FilterChainContext;
import org.glassfish.grizzly.filterchain.NextAction;
import org.glassfish.grizzly.filterchain.TransportFilter;
import org.glassfish.grizzly.http.server.AddOn;
import org.glassfish.grizzly.http.server.NetworkListener;
import org.glassfish.grizzly.memory.Buffers;
import org.glassfish.grizzly.nio.transport.TCPNIOConnection;

/**
 * Notices within a second when a caller hangs up who waits for an answer. The library reads nothing from a line whose
 * request is being answered, so each such line is asked now and then for one byte: its end closes the line, and a byte
 * that did come, of a next request, is put before what is read after the answer.
 */
final class HangUps extends BaseFilter implements AddOn, AutoCloseable {
    private static final int EVERY_MS = 250;
    private static final Attribute<Byte> EARLY = Grizzly.DEFAULT_ATTRIBUTE_BUILDER.createAttribute("lapyard.early-byte");

    private final Set<Line> lines = ConcurrentHashMap.newKeySet();
    private final ScheduledExecutorService asking = Server.timer("lapyard-hang-ups");

    HangUps() {
        asking.scheduleWithFixedDelay(() -> lines.forEach(Line::ask), EVERY_MS, EVERY_MS, TimeUnit.MILLISECONDS);
    }

    @Override
    public void setup(NetworkListener listener, FilterChainBuilder filters) {
        filters.add(filters.indexOfType(TransportFilter.class) + 1, this);
    }

    /** A line whose request is being answered. */
    final class Line {
        private final TCPNIOConnection connection;
        private boolean answered;

        private Line(TCPNIOConnection connection) {
            this.connection = connection;
        }

        private synchronized void ask() {
            if (answered || EARLY.get(connection) != null) return;
            ByteBuffer one = ByteBuffer.allocate(1);
            try {
                int read = ((SocketChannel) connection.getChannel()).read(one);
                if (read > 0) EARLY.set(connection, one.get(0));
                if (read >= 0) return;
            } catch (IOException broken) {
                // as gone as one that has ended
            }
            lines.remove(this);
            connection.terminateSilently();
        }

        /** The answer is written: the library may read again. */
        synchronized void isAnswered() {
            answered = true;
            lines.remove(this);
        }
    }

    /** Listens until it is said that the line is answered; empty for lines of another kind. */
    Optional<Line> listen(Connection<?> connection) {
        if (!(connection instanceof TCPNIOConnection tcp)) return Optional.empty();
        Line line = new Line(tcp);
        lines.add(line);
        return Optional.of(line);
    }

    @Override
    public NextAction handleRead(FilterChainContext context) throws IOException {
        Byte early = EARLY.remove(context.getConnection());
        if (early != null && context.getMessage() instanceof Buffer rest) {
            Buffer first = Buffers.wrap(context.getMemoryManager(), new byte[] {early});
            context.setMessage(Buffers.appendBuffers(context.getMemoryManager(), first, rest));
        }
        return context.getInvokeAction();
    }

    @Override
    public void close() {
        asking.shutdownNow();
    }
}

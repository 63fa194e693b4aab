package lapyard.rest;

import java.io.IOException;
import java.util.Optional;
import lapyard.rest.BodyBudget.Body;
import org.glassfish.grizzly.CloseListener;
import org.glassfish.grizzly.Connection;
import org.glassfish.grizzly.ICloseType;
import org.glassfish.grizzly.filterchain.BaseFilter;
import org.glassfish.grizzly.filterchain.FilterChainBuilder;
import org.glassfish.grizzly.filterchain.FilterChainContext;
import org.glassfish.grizzly.filterchain.NextAction;
import org.glassfish.grizzly.http.HttpContent;
import org.glassfish.grizzly.http.HttpRequestPacket;
import org.glassfish.grizzly.http.server.AddOn;
import org.glassfish.grizzly.http.server.HttpServerFilter;
import org.glassfish.grizzly.http.server.NetworkListener;

/**
 * Holds a request back until its body is whole, so that a client that sends slowly, or never ends, holds a connection but
 * no thread. It is judged by its header first: what is refused, over the limit or without room passes at once and is
 * answered, its body thrown away. What waits for leave to go on passes too, and is asked on.
 */
final class WholeBodies extends BaseFilter implements AddOn {
    private static final String HELD = "lapyard.body";
    private static final String NO_ROOM = "lapyard.no-room";

    private final Guard guard;
    private final BodyBudget budget;

    WholeBodies(Guard guard, BodyBudget budget) {
        this.guard = guard;
        this.budget = budget;
    }

    @Override
    public void setup(NetworkListener listener, FilterChainBuilder filters) {
        filters.add(filters.indexOfType(HttpServerFilter.class), this);
    }

    @Override
    public NextAction handleRead(FilterChainContext context) throws IOException {
        if (!(context.getMessage() instanceof HttpContent content) || !(content.getHttpHeader() instanceof HttpRequestPacket request))
            return context.getInvokeAction();
        boolean passes = request.getUpgradeDC().getLength() > 0 || request.getHeader("Expect") != null || request.getAttribute(NO_ROOM) != null
                || guard.verdict(request).refusal().isPresent();
        if (content.isLast() || passes) {
            held(request).ifPresent(Body::isWhole);
            return context.getInvokeAction();
        }
        Body body = held(request).orElseGet(() -> begin(context.getConnection(), request));
        if (!body.holds(content.getContent().remaining())) {
            request.setAttribute(NO_ROOM, true);
            return context.getInvokeAction();
        }
        return content.getContent().remaining() > BodyReader.limit(request.getRequestURI()) ? context.getInvokeAction() : context.getStopAction(content);
    }

    private static Optional<Body> held(HttpRequestPacket request) {
        return Optional.ofNullable((Body) request.getAttribute(HELD));
    }

    private Body begin(Connection<?> connection, HttpRequestPacket request) {
        Body body = budget.begin(connection::terminateSilently);
        request.setAttribute(HELD, body);
        connection.addCloseListener((CloseListener<Connection<?>, ICloseType>) (closed, why) -> body.free());
        return body;
    }

    /** There was no room for its body. */
    static boolean hadNoRoom(HttpRequestPacket request) {
        return request.getAttribute(NO_ROOM) != null;
    }

    /** The request is answered: its body is not needed any more. */
    static void free(HttpRequestPacket request) {
        held(request).ifPresent(Body::free);
    }
}

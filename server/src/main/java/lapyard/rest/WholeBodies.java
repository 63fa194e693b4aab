package lapyard.rest;

import java.io.IOException;
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
 * Holds a request back until its body is whole, so that a client that sends slowly, or never ends, holds a connection
 * but no thread. What is over the limit, and what waits for leave to go on, passes at once: it is refused, or asked on.
 */
final class WholeBodies extends BaseFilter implements AddOn {
    @Override
    public void setup(NetworkListener listener, FilterChainBuilder filters) {
        filters.add(filters.indexOfType(HttpServerFilter.class), this);
    }

    @Override
    public NextAction handleRead(FilterChainContext context) throws IOException {
        if (!(context.getMessage() instanceof HttpContent content)) return context.getInvokeAction();
        if (content.isLast() || !(content.getHttpHeader() instanceof HttpRequestPacket request))
            return context.getInvokeAction();
        int limit = BodyReader.limit(request.getRequestURI());
        boolean tooLong = request.getContentLength() > limit || content.getContent().remaining() > limit;
        boolean asksFirst = request.getHeader("Expect") != null;
        return tooLong || asksFirst || request.getUpgradeDC().getLength() > 0
                ? context.getInvokeAction()
                : context.getStopAction(content);
    }
}

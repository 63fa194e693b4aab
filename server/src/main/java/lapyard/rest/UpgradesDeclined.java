package lapyard.rest;

import org.glassfish.grizzly.filterchain.BaseFilter;
import org.glassfish.grizzly.filterchain.FilterChainBuilder;
import org.glassfish.grizzly.filterchain.FilterChainContext;
import org.glassfish.grizzly.filterchain.FilterChainEvent;
import org.glassfish.grizzly.filterchain.NextAction;
import org.glassfish.grizzly.http.HttpEvents.IncomingHttpUpgradeEvent;
import org.glassfish.grizzly.http.HttpHeader;
import org.glassfish.grizzly.http.server.AddOn;
import org.glassfish.grizzly.http.server.NetworkListener;

/**
 * Forgets a request's Upgrade header, as RFC 9110 section 7.8 allows. Left in place, the library takes the request
 * for one of another protocol already: it waits for a body it has, and says gzip before plain bytes. Java's own client
 * sends that header with every first request.
 */
final class UpgradesDeclined extends BaseFilter implements AddOn {
    @Override
    public void setup(NetworkListener listener, FilterChainBuilder filters) {
        filters.addLast(this);
    }

    @Override
    public NextAction handleEvent(FilterChainContext context, FilterChainEvent event) {
        if (event.type() == IncomingHttpUpgradeEvent.TYPE) {
            HttpHeader header = ((IncomingHttpUpgradeEvent) event).getHttpHeader();
            header.getUpgradeDC().recycle();
            header.setIgnoreContentModifiers(false);
        }
        return context.getInvokeAction();
    }
}

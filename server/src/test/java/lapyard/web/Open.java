package lapyard.web;

import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.extension.ExtensionContext.Namespace;
import org.junit.jupiter.api.extension.ParameterContext;
import org.junit.jupiter.api.extension.ParameterResolver;

/** Hands every browser test the same server and the same browser, which end with the last of them. */
final class Open implements ParameterResolver {
    /** The two together, closed with the run. */
    static final class Both implements ExtensionContext.Store.CloseableResource {
        private final Browser browser = Browser.open();
        private final RunningServer server;

        Both() {
            try {
                server = new RunningServer();
            } catch (java.io.IOException failed) {
                browser.close();
                throw new java.io.UncheckedIOException(failed);
            } catch (InterruptedException stopped) {
                browser.close();
                Thread.currentThread().interrupt();
                throw new IllegalStateException(stopped);
            }
        }

        @Override
        public void close() {
            browser.close();
            server.close();
        }
    }

    @Override
    public boolean supportsParameter(ParameterContext parameter, ExtensionContext context) {
        return parameter.getParameter().getType() == Page.class;
    }

    @Override
    public Object resolveParameter(ParameterContext parameter, ExtensionContext context) {
        Both both = context.getRoot()
                .getStore(Namespace.create(Open.class))
                .getOrComputeIfAbsent(Both.class, key -> new Both(), Both.class);
        return new Page(both.server, both.browser);
    }
}

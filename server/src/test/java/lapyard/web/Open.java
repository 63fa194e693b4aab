package lapyard.web;

import java.util.Optional;
import org.junit.jupiter.api.extension.ConditionEvaluationResult;
import org.junit.jupiter.api.extension.ExecutionCondition;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.extension.ExtensionContext.Namespace;
import org.junit.jupiter.api.extension.ParameterContext;
import org.junit.jupiter.api.extension.ParameterResolver;

/**
 * Hands every browser test the same server and the same browser, which end with the last of them. Where there is no
 * browser the tests say so loudly and are left out, except with the environment's {@code CI=true}, where they fail.
 */
final class Open implements ParameterResolver, ExecutionCondition {
    @Override
    public ConditionEvaluationResult evaluateExecutionCondition(ExtensionContext context) {
        Optional<String> missing = context.getTestMethod().isPresent() ? Optional.empty() : Browser.missing();
        if (missing.isPresent() && "true".equals(System.getenv("CI"))) throw new AssertionError(missing.get());
        return missing.map(ConditionEvaluationResult::disabled).orElse(ConditionEvaluationResult.enabled("there is a browser"));
    }

    /** The two together, closed with the run. */
    static final class Both implements ExtensionContext.Store.CloseableResource, AutoCloseable {
        private final RunningServer server = started();
        private final Browser browser;

        /** Whatever fails, nothing is left running: the browser opens last, and a server without a browser is stopped. */
        Both() {
            Browser opened = null;
            try {
                opened = Browser.open();
            } finally {
                if (opened == null) server.close();
            }
            browser = opened;
        }

        private static RunningServer started() {
            try {
                return new RunningServer();
            } catch (java.io.IOException failed) {
                throw new java.io.UncheckedIOException(failed);
            } catch (InterruptedException stopped) {
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

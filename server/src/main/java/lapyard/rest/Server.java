package lapyard.rest;

import java.io.IOException;
import java.net.URI;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executor;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Supplier;
import java.util.logging.Level;
import java.util.logging.Logger;
import lapyard.answers.AnswerService;
import lapyard.answers.Desk;
import lapyard.store.GardenStore;
import org.glassfish.grizzly.http.CompressionConfig;
import org.glassfish.grizzly.http.server.HttpHandler;
import org.glassfish.grizzly.http.server.HttpServer;
import org.glassfish.grizzly.http.server.NetworkListener;
import org.glassfish.grizzly.http.server.ServerConfiguration;
import org.glassfish.grizzly.ssl.SSLEngineConfigurator;
import org.glassfish.grizzly.threadpool.ThreadPoolConfig;
import org.glassfish.jersey.grizzly2.httpserver.GrizzlyHttpContainer;
import org.glassfish.jersey.server.ContainerFactory;
import org.glassfish.jersey.server.ResourceConfig;
import org.glassfish.jersey.server.ServerProperties;

/**
 * The server on its port. The port is open first; the page's table and the resources are made beside each other, and
 * early requests wait for what they need.
 */
public final class Server implements AutoCloseable {
    private static final int WORKERS = 40;
    /** Of the heap: bodies that arrive may take so much of it. */
    private static final int BODIES_SHARE = 24;
    private static final int SWEEP_SECONDS = 5;
    /** An answer that is not taken for so long is given up, and its connection with it. */
    private static final int WRITE_SECONDS = 10;
    private static final int GRACE_SECONDS = 10;
    private static final long SKIPPED_BODY_BYTES = 64L << 20;
    /** Held so that the levels stay: the library warns of every resource that is handed over as an object. */
    private static final List<Logger> QUIET = List.of(
            Logger.getLogger("org.glassfish.jersey.internal.inject.Providers"),
            Logger.getLogger("org.glassfish.grizzly"));
    /** It logs a port that cannot be opened, with a stack trace, and throws as well. */
    private static final Logger PORTS = Logger.getLogger("org.glassfish.grizzly.http.server.HttpServer");

    private static final System.Logger LOG = System.getLogger("lapyard.rest");

    private final HttpServer http;
    private final NetworkListener listener;
    private final Binding binding;
    private final CompletableFuture<HttpHandler> api;

    private final Live live;
    private final ScheduledExecutorService sweeper;
    private final HangUps hangUps;

    private Server(
            HttpServer http, NetworkListener listener, Binding binding, CompletableFuture<HttpHandler> api, Live live,
            ScheduledExecutorService sweeper, HangUps hangUps) {
        this.sweeper = sweeper;
        this.hangUps = hangUps;
        this.http = http;
        this.listener = listener;
        this.binding = binding;
        this.api = api;
        this.live = live;
    }

    /**
     * Opens the port and returns; answers follow as soon as they can be made.
     *
     * @param store asked once a request needs it; may wait until the store is open
     * @param files where the page and the samples lie
     * @throws IOException if the port cannot be opened
     * @throws IllegalArgumentException if others could reach it and it has no token
     */
    public static Server start(Binding binding, Supplier<GardenStore> store, Desk desk, ClassLoader files)
            throws IOException {
        return start(binding, store, desk, files, AccessLog.NONE);
    }

    /** As above, with a line in the log for every request. */
    public static Server start(
            Binding binding, Supplier<GardenStore> store, Desk desk, ClassLoader files, AccessLog log)
            throws IOException {
        binding.check();
        QUIET.forEach(logger -> logger.setLevel(Level.SEVERE));
        PORTS.setLevel(Level.OFF);
        Metrics metrics = new Metrics();
        AnswerService answers = new AnswerService(desk);
        Live live = new Live(store);
        StandingAnswers standing = new StandingAnswers(store, answers);
        Executor threads = task -> new Thread(task, "lapyard-start").start();
        CompletableFuture<HttpHandler> api = CompletableFuture.supplyAsync(
                () -> container(store, answers, new Samples(files), metrics, live, standing), threads);
        CompletableFuture<PageFiles> page = CompletableFuture.supplyAsync(() -> new PageFiles(files), threads);

        Guard guard = new Guard(binding, store, new Attempts(System::nanoTime));
        BodyBudget bodies = new BodyBudget(Runtime.getRuntime().maxMemory() / BODIES_SHARE, System::nanoTime);
        ScheduledExecutorService sweeper = swept(bodies);
        HangUps hangUps = new HangUps();
        HttpServer http = new HttpServer();
        NetworkListener listener = new NetworkListener("lapyard", binding.host(), binding.port());
        listener.setTraceEnabled(false);
        if (binding.tls().isPresent()) {
            listener.setSecure(true);
            listener.setSSLEngineConfig(new SSLEngineConfigurator(binding.tls().get(), false, false, false)
                    .setEnabledProtocols(new String[] {"TLSv1.2", "TLSv1.3"}));
        }
        listener.setDefaultErrorPageGenerator((request, status, reason, description, thrown) -> {
            request.getResponse().setContentType(Problem.TYPE);
            if (status >= 500 && thrown != null)
                return Problems.unforeseen(thrown).json();
            return Problem.of(status, "the request cannot be read as it stands").json();
        });
        CompressionConfig compression = listener.getCompressionConfig();
        compression.setCompressionMode(CompressionConfig.CompressionMode.ON);
        compression.setCompressionMinSize(1024);
        compression.setCompressibleMimeTypes(
                "text/html",
                "text/css",
                "text/javascript",
                "text/csv",
                "text/plain",
                "application/json",
                "application/schema+json",
                "application/problem+json",
                "image/svg+xml");
        listener.registerAddOn(new UpgradesDeclined());
        listener.registerAddOn(new WholeBodies(guard, bodies));
        listener.registerAddOn(hangUps);
        listener.getTransport().setWriteTimeout(WRITE_SECONDS, TimeUnit.SECONDS);
        listener.getTransport()
                .setWorkerThreadPoolConfig(ThreadPoolConfig.defaultConfig()
                        .setPoolName("lapyard")
                        .setCorePoolSize(WORKERS)
                        .setMaxPoolSize(WORKERS));
        ServerConfiguration configuration = http.getServerConfiguration();
        configuration.setMaxPayloadRemainderToSkip(SKIPPED_BODY_BYTES);
        configuration.setJmxEnabled(false);
        configuration.addHttpHandler(
                new FrontHandler(
                        binding,
                        guard,
                        page::join,
                        api::join,
                        live,
                        standing,
                        hangUps,
                        metrics,
                        log), "/");
        http.start();
        // only now, with its handler in place: a listener that starts with the server answers 404 for a moment
        http.addListener(listener);
        try {
            listener.start(); // does nothing where adding it started it, and says why where it could not
        } catch (IOException noPort) {
            http.shutdownNow();
            closeQuietly(live);
            sweeper.shutdownNow();
            hangUps.close();
            throw noPort;
        }
        return new Server(http, listener, binding, api, live, sweeper, hangUps);
    }

    private static ScheduledExecutorService swept(BodyBudget bodies) {
        ScheduledExecutorService sweeper = Executors.newSingleThreadScheduledExecutor(work -> {
            Thread thread = new Thread(work, "lapyard-bodies");
            thread.setDaemon(true);
            return thread;
        });
        sweeper.scheduleWithFixedDelay(bodies::cutOffLate, SWEEP_SECONDS, SWEEP_SECONDS, TimeUnit.SECONDS);
        return sweeper;
    }

    private static HttpHandler container(
            Supplier<GardenStore> store, AnswerService answers, Samples samples, Metrics metrics, Live live,
            StandingAnswers standing) {
        ResourceConfig resources = new ResourceConfig();
        // finding extensions by itself costs a third of the start, and there are none
        for (String off : List.of(
                ServerProperties.WADL_FEATURE_DISABLE,
                ServerProperties.FEATURE_AUTO_DISCOVERY_DISABLE,
                ServerProperties.METAINF_SERVICES_LOOKUP_DISABLE,
                ServerProperties.JSON_PROCESSING_FEATURE_DISABLE,
                ServerProperties.MOXY_JSON_FEATURE_DISABLE,
                ServerProperties.BV_FEATURE_DISABLE,
                ServerProperties.RESOURCE_VALIDATION_DISABLE,
                ServerProperties.LOCATION_HEADER_RELATIVE_URI_RESOLUTION_DISABLED)) resources.property(off, true);
        Shelf shelf = new Shelf(store, answers, metrics);
        resources.register(new BodyReader());
        resources.register(new Problems());
        resources.register(new EmptyErrors());
        resources.register(new GardensResource(shelf));
        resources.register(new GardenResource(shelf, standing));
        resources.register(new RevisionsResource(shelf));
        resources.register(new SharesResource(shelf, live));
        resources.register(new DifferenceResource(shelf));
        resources.register(new CopiesResource(shelf));
        resources.register(new BringInResource(shelf));
        resources.register(new SheetsResource(shelf, answers, standing));
        resources.register(new ApiResource());
        resources.register(new DeskResource(answers));
        resources.register(new SamplesResource(samples));
        resources.register(new WatchResource(store, answers, metrics, live));
        GrizzlyHttpContainer container = ContainerFactory.createContainer(GrizzlyHttpContainer.class, resources);
        container.start();
        return container;
    }

    /** Waits until every resource answers. */
    public void awaitReady() {
        api.join();
    }

    /** Where it listens, with the port it really has. */
    public URI address() {
        String host = binding.host();
        String name = host.contains(":") && !host.startsWith("[") ? "[" + host + "]" : host;
        return URI.create((binding.tls().isPresent() ? "https://" : "http://") + name + ":" + listener.getPort() + "/");
    }

    private static void closeQuietly(Live live) {
        try {
            live.close();
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        } catch (Exception late) {
            LOG.log(System.Logger.Level.WARNING, "the listeners did not end", late);
        }
    }

    /** Takes no more requests and lets the running ones end, ten seconds at most. */
    @Override
    public void close() {
        sweeper.shutdownNow();
        hangUps.close();
        closeQuietly(live);
        try {
            http.shutdown(GRACE_SECONDS, TimeUnit.SECONDS).get(GRACE_SECONDS + 1L, TimeUnit.SECONDS);
        } catch (ExecutionException | TimeoutException late) {
            http.shutdownNow();
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            http.shutdownNow();
        }
    }
}

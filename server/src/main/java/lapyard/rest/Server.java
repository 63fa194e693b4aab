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
import lapyard.answers.GardenDesk;
import lapyard.store.GardenStore;
import org.glassfish.grizzly.http.CompressionConfig;
import org.glassfish.grizzly.http.server.HttpHandler;
import org.glassfish.grizzly.http.server.HttpServer;
import org.glassfish.grizzly.http.server.NetworkListener;
import org.glassfish.grizzly.http.server.Request;
import org.glassfish.grizzly.http.server.Response;
import org.glassfish.grizzly.http.server.ServerConfiguration;
import org.glassfish.grizzly.ssl.SSLEngineConfigurator;
import org.glassfish.grizzly.threadpool.ThreadPoolConfig;
import org.glassfish.jersey.grizzly2.httpserver.GrizzlyHttpContainer;
import org.glassfish.jersey.server.ContainerFactory;
import org.glassfish.jersey.server.ResourceConfig;
import org.glassfish.jersey.server.ServerProperties;

/**
 * The server on its port. The port is open first, the page's table is made beside it, the resources once one is asked for or
 * the work ahead is done; early requests wait for what they need.
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
    /** They log a port that cannot be opened and a reader who is gone, with a stack trace, and throw as well. */
    private static final List<Logger> SILENT = List.of(
            Logger.getLogger("org.glassfish.grizzly.http.server.HttpServer"),
            Logger.getLogger("org.glassfish.jersey.server.ServerRuntime$Responder"));

    private static final String[] COMPRESSED = {
        "text/html", "text/css", "text/javascript", "text/csv", "text/plain", "application/json", "application/schema+json",
        "application/problem+json", "image/svg+xml"
    };
    /** Finding extensions by itself costs the resource library a third of the start, and there are none. */
    private static final List<String> OFF = List.of(
            ServerProperties.WADL_FEATURE_DISABLE,
            ServerProperties.FEATURE_AUTO_DISCOVERY_DISABLE,
            ServerProperties.METAINF_SERVICES_LOOKUP_DISABLE,
            ServerProperties.JSON_PROCESSING_FEATURE_DISABLE,
            ServerProperties.MOXY_JSON_FEATURE_DISABLE,
            ServerProperties.BV_FEATURE_DISABLE,
            ServerProperties.RESOURCE_VALIDATION_DISABLE,
            ServerProperties.LOCATION_HEADER_RELATIVE_URI_RESOLUTION_DISABLED);

    private static final System.Logger LOG = System.getLogger("lapyard.rest");
    private static final Executor STARTING = task -> new Thread(task, "lapyard-start").start();

    private final HttpServer http = new HttpServer();
    private final NetworkListener listener;
    private final Binding binding;
    private final Live live;
    private final HangUps hangUps = new HangUps();
    private final BodyBudget bodies = new BodyBudget(Runtime.getRuntime().maxMemory() / BODIES_SHARE, System::nanoTime);
    private final UntakenAnswers untaken;
    private final ScheduledExecutorService sweeper;
    private final StandingAnswers standing;
    private final CompletableFuture<Void> resourcesWanted = new CompletableFuture<>();
    private final CompletableFuture<HttpHandler> api;

    private Server(Binding binding, Supplier<GardenStore> store, GardenDesk desk, ClassLoader files, AccessLog log, int writeSeconds) {
        this.binding = binding;
        this.live = new Live(store);
        this.untaken = new UntakenAnswers(TimeUnit.SECONDS.toNanos(writeSeconds), System::nanoTime);
        this.sweeper = sweeper();
        Metrics metrics = new Metrics();
        AnswerService answers = new AnswerService(desk);
        this.standing = new StandingAnswers(store, answers);
        this.api = resourcesWanted.thenApplyAsync(now -> container(store, answers, new Samples(files), metrics, live, standing), STARTING);
        CompletableFuture<PageFiles> page = CompletableFuture.supplyAsync(() -> new PageFiles(files), STARTING);
        Guard guard = new Guard(binding, store, new Attempts(System::nanoTime));
        this.listener = listener(guard, writeSeconds);
        ServerConfiguration configuration = http.getServerConfiguration();
        configuration.setMaxPayloadRemainderToSkip(SKIPPED_BODY_BYTES);
        configuration.setJmxEnabled(false);
        FrontHandler front = new FrontHandler(binding, guard, page::join, new FrontHandler.Resources(this::resources, this::hasResources), live, new LongAnswers(hangUps), standing, metrics, log);
        configuration.addHttpHandler(new HttpHandler() {
            @Override
            public void service(Request request, Response response) throws Exception {
                front.service(request, response);
            }
        }, "/");
    }

    /**
     * Opens the port and returns; answers follow as soon as they can be made.
     *
     * @param store asked once a request needs it; may wait until the store is open
     * @param files where the page and the samples lie
     * @param log   has a line for every request
     * @throws IOException if the port cannot be opened
     * @throws IllegalArgumentException if others could reach it and it has no token
     */
    public static Server start(
            Binding binding, Supplier<GardenStore> store, GardenDesk desk, ClassLoader files, AccessLog log)
            throws IOException {
        return start(binding, store, desk, files, log, WRITE_SECONDS);
    }

    /** @param writeSeconds an answer that is not taken for so long is given up, and its connection with it */
    static Server start(
            Binding binding, Supplier<GardenStore> store, GardenDesk desk, ClassLoader files, AccessLog log, int writeSeconds)
            throws IOException {
        binding.check();
        QUIET.forEach(logger -> logger.setLevel(Level.SEVERE));
        SILENT.forEach(logger -> logger.setLevel(Level.OFF));
        Server server = new Server(binding, store, desk, files, log, writeSeconds);
        server.openPort();
        return server;
    }

    private void openPort() throws IOException {
        http.start();
        // only now, with its handler in place: a listener that starts with the server answers 404 for a moment
        http.addListener(listener);
        try {
            listener.start(); // does nothing where adding it started it, and says why where it could not
        } catch (IOException noPort) {
            http.shutdownNow();
            closeOwn();
            throw noPort;
        }
    }

    private NetworkListener listener(Guard guard, int writeSeconds) {
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
            return Problem.of(status, "the request is not valid HTTP: send it again").json();
        });
        CompressionConfig compression = listener.getCompressionConfig();
        compression.setCompressionMode(CompressionConfig.CompressionMode.ON);
        compression.setCompressionMinSize(1024);
        compression.setCompressibleMimeTypes(COMPRESSED);
        listener.registerAddOn(new UpgradesDeclined());
        listener.registerAddOn(new WholeBodies(guard, bodies));
        listener.registerAddOn(hangUps);
        listener.registerAddOn(untaken);
        listener.getTransport().setWriteTimeout(writeSeconds, TimeUnit.SECONDS);
        listener.getTransport()
                .setWorkerThreadPoolConfig(ThreadPoolConfig.defaultConfig()
                        .setPoolName("lapyard")
                        .setCorePoolSize(WORKERS)
                        .setMaxPoolSize(WORKERS));
        return listener;
    }

    private ScheduledExecutorService sweeper() {
        ScheduledExecutorService sweeper = timer("lapyard-lines");
        sweeper.scheduleWithFixedDelay(bodies::cutOffLate, SWEEP_SECONDS, SWEEP_SECONDS, TimeUnit.SECONDS);
        sweeper.scheduleWithFixedDelay(untaken::closeUntaken, 1, 1, TimeUnit.SECONDS);
        return sweeper;
    }

    /** One thread of that name, which ends with the process. */
    public static ScheduledExecutorService timer(String name) {
        return Executors.newSingleThreadScheduledExecutor(work -> daemon(work, name));
    }

    static Thread daemon(Runnable work, String name) {
        Thread thread = new Thread(work, name);
        thread.setDaemon(true);
        return thread;
    }

    private static HttpHandler container(
            Supplier<GardenStore> store, AnswerService answers, Samples samples, Metrics metrics, Live live,
            StandingAnswers standing) {
        awaited(store);
        Shelf shelf = new Shelf(store, answers, metrics);
        ResourceConfig resources = new ResourceConfig();
        OFF.forEach(property -> resources.property(property, true));
        for (Object resource : List.of(
                new BodyReader(),
                new Problems(),
                new GardensResource(shelf),
                new GardenResource(shelf, standing),
                new RevisionsResource(shelf),
                new SharesResource(shelf, live),
                new PhotosResource(shelf),
                new ShelfResource(shelf, answers),
                new ShelfResource.OfGarden(shelf),
                new GardensResource.OfFile(shelf),
                new SheetsResource(shelf, answers, standing),
                new ApiResource(samples, store, answers, metrics, live),
                new DeskResource(answers, new Solves(answers)))) resources.register(resource);
        GrizzlyHttpContainer container = ContainerFactory.createContainer(GrizzlyHttpContainer.class, resources);
        container.start();
        return container;
    }

    /** The first answers need the store and no resource: making the resources would take the processor from them. */
    private static void awaited(Supplier<GardenStore> store) {
        try {
            store.get();
        } catch (RuntimeException cannotOpen) {
            LOG.log(System.Logger.Level.DEBUG, "the store does not open", cannotOpen); // whoever opens it says so
        }
    }

    private HttpHandler resources() {
        resourcesWanted.complete(null);
        return api.join();
    }

    /** Whether the resources are made. */
    boolean hasResources() {
        return api.isDone();
    }

    /**
     * Begins with what is likely to be asked for first, once the store is open, and then with the resources: making both at
     * once would take the processor from the first. Where somebody asked for a garden meanwhile the resources are made once one is asked for.
     *
     * @return done once the former is made, cannot be or gave way
     */
    public CompletableFuture<Void> workAhead() {
        return CompletableFuture.runAsync(() -> {
            if (standing.makeAhead()) resourcesWanted.complete(null);
        }, STARTING);
    }

    /** Where it listens, with the port it really has. */
    public URI address() {
        String host = binding.host();
        String name = host.contains(":") && !host.startsWith("[") ? "[" + host + "]" : host;
        return URI.create((binding.tls().isPresent() ? "https://" : "http://") + name + ":" + listener.getPort() + "/");
    }

    private void closeOwn() {
        sweeper.shutdownNow();
        hangUps.close();
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
        closeOwn();
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

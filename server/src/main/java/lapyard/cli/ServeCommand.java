package lapyard.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.net.BindException;
import java.net.HttpURLConnection;
import java.net.URI;
import java.net.UnknownHostException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.net.ssl.KeyManagerFactory;
import javax.net.ssl.SSLContext;
import lapyard.answers.GardenDesk;
import lapyard.rest.AccessLog;
import lapyard.rest.Binding;
import lapyard.rest.Keys;
import lapyard.rest.OutOfMemory;
import lapyard.rest.Samples;
import lapyard.rest.Server;
import lapyard.store.GardenStore;
import lapyard.store.Retention;
import lapyard.store.StoreFault;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code lapyard serve}: the server, until it is told to stop. */
@Command(
        name = "serve",
        description = "Serves the gardens of a data folder to the browser.",
        mixinStandardHelpOptions = true)
public final class ServeCommand extends PrintedCommand {
    private static final int DAILY_DAYS = 365;
    private static final System.Logger LOG = System.getLogger("lapyard.serve");
    private static final ClassLoader FILES = ServeCommand.class.getClassLoader();

    @Option(
            names = "--port",
            defaultValue = "8080",
            paramLabel = "PORT",
            description = "port to listen on, 0 for any free one (default: ${DEFAULT-VALUE})")
    private int port;

    @Option(
            names = "--host",
            defaultValue = "127.0.0.1",
            paramLabel = "HOST",
            description =
                    "address to listen on; any but a loopback address needs a token (default: ${DEFAULT-VALUE})")
    private String host;

    @Option(
            names = "--data",
            defaultValue = ".lapyard",
            paramLabel = "DIR",
            description = "folder that keeps the gardens, made where it is missing (default: ${DEFAULT-VALUE})")
    private Path data;

    @Option(
            names = "--database",
            paramLabel = "URL",
            description = "PostgreSQL database instead of a folder: jdbc:postgresql://HOST/NAME; user and password by"
                    + " LAPYARD_DATABASE_USER and LAPYARD_DATABASE_PASSWORD")
    private String database;

    @Option(
            names = "--token-file",
            paramLabel = "FILE",
            description = "file of the tokens that callers must send, a line each: editor TOKEN or reader TOKEN; or set"
                    + " LAPYARD_TOKEN and LAPYARD_READER_TOKEN")
    private Path tokenFile;

    @Option(
            names = "--key-store",
            paramLabel = "FILE",
            description = "PKCS#12 file with the certificate to speak TLS with; its password by"
                    + " LAPYARD_KEY_STORE_PASSWORD")
    private Path keyStore;

    @Option(
            names = "--proxy",
            paramLabel = "ADDRESS",
            description = "address of a reverse proxy whose X-Forwarded-For is believed; may be given more than once")
    private List<String> proxies = List.of();

    @Option(
            names = "--access-log",
            paramLabel = "FILE",
            description = "file that gets a line for every request")
    private Path accessLog;

    @Option(
            names = "--thin-after",
            paramLabel = "DAYS",
            description = "thin out the history: every revision of the last DAYS days stays, then the last of each day"
                    + " for a year, then of each week; stamped and printed ones always stay (default: all stay)")
    private Integer thinAfter;

    @Option(
            names = "--once",
            description =
                    "answer one round of its own requests and stop: shows that this machine and folder can serve")
    private boolean once;

    private final GardenDesk desk;
    private final Map<String, String> environment;

    public ServeCommand(GardenDesk desk) {
        this(desk, System.getenv());
    }

    ServeCommand(GardenDesk desk, Map<String, String> environment) {
        this.desk = desk;
        this.environment = environment;
    }

    @Override
    public Integer call() throws IOException, InterruptedException {
        OutOfMemory.watch();
        try {
            List<String> tokens = tokens();
            Optional<Retention> thinning = Optional.ofNullable(thinAfter).map(days -> new Retention(days, DAILY_DAYS));
            Optional<SSLContext> tls = keyStore == null
                    ? Optional.empty()
                    : Optional.of(certificate(keyStore, environment.getOrDefault("LAPYARD_KEY_STORE_PASSWORD", "")));
            Binding binding = new Binding(host, port, Keys.read(tokens), tls, Set.copyOf(proxies));
            binding.check();
            try (AccessLog log = accessLog == null ? AccessLog.NONE : openLog()) {
                return start(binding, editorOf(tokens), thinning, log);
            }
        } catch (IllegalArgumentException refused) {
            return refuse(refused.getMessage());
        } catch (UnknownHostException unknown) {
            return refuse("there is no address " + host + ": give one of this machine's to --host");
        } catch (BindException taken) {
            return refuse("port " + port + " on " + host + " cannot be had (" + taken.getMessage()
                    + "): stop what uses it, or give another with --port");
        }
    }

    private AccessLog openLog() {
        try {
            return AccessLog.to(accessLog);
        } catch (IOException cannot) {
            throw new IllegalArgumentException("access log " + full(accessLog) + " cannot be written", cannot);
        }
    }

    private int start(Binding binding, Optional<String> secret, Optional<Retention> thinning, AccessLog log)
            throws IOException, InterruptedException {
        // the store opens while the port does
        CompletableFuture<GardenStore> store = CompletableFuture.supplyAsync(() -> filled(database == null ? GardenStore.open(data) : GardenStore.open(database, login(environment))),
                work -> new Thread(work, "lapyard-store").start());
        try (Server server = Server.start(binding, store::join, desk, FILES, log)) {
            return serve(server, store, secret, thinning);
        } catch (IOException noPort) {
            store.thenAccept(GardenStore::close).exceptionally(notOpened -> null).join();
            throw noPort;
        }
    }

    private int serve(Server server, CompletableFuture<GardenStore> store, Optional<String> secret, Optional<Retention> thinning)
            throws IOException, InterruptedException {
        GardenStore open;
        try {
            open = store.join();
        } catch (CompletionException failed) {
            if (failed.getCause() instanceof IllegalArgumentException refused) return refuse(refused.getMessage());
            if (!(failed.getCause() instanceof StoreFault fault)) throw failed;
            return refuse(place() + " cannot be used: " + fault.getMessage());
        }
        server.workAhead();
        err().println("Lapyard answers at " + server.address() + " with the gardens in " + (database == null ? full(data) : place()));
        err().flush();
        if (once) {
            try (open) {
                return new SelfCheck(server.address(), secret, err()).passes() ? 0 : 1;
            }
        }
        thinning.ifPresent(rule -> Server.timer("lapyard-thin").scheduleWithFixedDelay(() -> thin(open, rule), 0, 1, TimeUnit.DAYS));
        untilStopped(server, open);
        return 0;
    }

    private static void untilStopped(Server server, GardenStore open) throws InterruptedException {
        CountDownLatch stopped = new CountDownLatch(1);
        Runnable stop = () -> {
            server.close();
            open.close();
            stopped.countDown();
        };
        Runtime.getRuntime().addShutdownHook(new Thread(stop, "lapyard-stop"));
        stopped.await();
    }

    private String place() {
        return database == null ? "data folder " + full(data) : GardenStore.place(database);
    }

    /** @param environment with the user and the password of the database, where they are told so */
    static Properties login(Map<String, String> environment) {
        Properties login = new Properties();
        for (String name : List.of("user", "password")) {
            String value = environment.get("LAPYARD_DATABASE_" + name.toUpperCase(Locale.ROOT));
            if (value != null) login.setProperty(name, value);
        }
        return login;
    }

    /** A store that never held a garden gets those that come with the program. */
    private static GardenStore filled(GardenStore store) {
        if (store.isNew()) store.fillIfNew(new Samples(FILES).all());
        return store;
    }

    private static void thin(GardenStore store, Retention rule) {
        try {
            LOG.log(System.Logger.Level.INFO, store.thin(rule) + " revisions were thinned out");
        } catch (StoreFault fault) {
            LOG.log(System.Logger.Level.WARNING, "nothing was thinned out: " + fault.getMessage());
        }
    }

    /** Lines as in a token file; empty where nobody is asked for a token. */
    private List<String> tokens() {
        if (tokenFile == null) {
            List<String> lines = new ArrayList<>();
            for (String[] role : new String[][] {{"editor", "LAPYARD_TOKEN"}, {"reader", "LAPYARD_READER_TOKEN"}}) {
                String token = environment.getOrDefault(role[1], "").strip();
                if (!token.isEmpty()) lines.add(role[0] + " " + token);
            }
            return lines;
        }
        try {
            List<String> lines = Files.readAllLines(tokenFile);
            if (Keys.read(lines).editors().isEmpty())
                throw new IllegalArgumentException("token file " + tokenFile + " holds no editor's token");
            return lines;
        } catch (IOException unreadable) {
            throw new IllegalArgumentException("token file " + tokenFile + " cannot be read as text", unreadable);
        }
    }

    /** What the server's own round of requests shows. */
    private static Optional<String> editorOf(List<String> lines) {
        return lines.stream()
                .map(String::strip)
                .filter(line -> !line.isEmpty() && !line.startsWith("#") && !line.startsWith("reader "))
                .map(line -> line.substring(line.lastIndexOf(' ') + 1))
                .findFirst();
    }

    private static Path full(Path folder) {
        return folder.toAbsolutePath().normalize();
    }

    /** The certificate that the server shows, with its key. @throws IllegalArgumentException naming the file and what is wrong with it */
    static SSLContext certificate(Path file, String password) {
        try (InputStream stream = Files.newInputStream(file)) {
            KeyStore store = KeyStore.getInstance("PKCS12");
            store.load(stream, password.toCharArray());
            if (store.size() == 0) throw new IllegalArgumentException("key store " + file + " is empty");
            KeyManagerFactory keys = KeyManagerFactory.getInstance(KeyManagerFactory.getDefaultAlgorithm());
            keys.init(store, password.toCharArray());
            SSLContext context = SSLContext.getInstance("TLS");
            context.init(keys.getKeyManagers(), null, null);
            return context;
        } catch (IOException | GeneralSecurityException unusable) {
            throw new IllegalArgumentException(
                    "key store " + file + " cannot be read: give a PKCS#12 file, and its password by"
                            + " LAPYARD_KEY_STORE_PASSWORD",
                    unusable);
        }
    }

    /** Asks a server of this process for what a browser would ask first. */
    private record SelfCheck(URI server, Optional<String> secret, PrintWriter complaints) {
        private static final Pattern ID = Pattern.compile("\"id\":\"([a-z0-9-]+)\"");

        /** The page, the list, the first garden with its job sheet, plan, sheets and lists; true where all of it was answered. */
        boolean passes() throws IOException {
            boolean passed = ask("/").isPresent() & ask("/health").isPresent();
            Optional<String> list = ask("/api/gardens");
            if (list.isEmpty()) return false;
            Matcher first = ID.matcher(list.get());
            if (!first.find()) return passed;
            for (String made : List.of("", "/job-sheet?look=first", "/job-sheet", "/plan.svg", "/sheets.pdf", "/slip.csv", "/weekends.ics"))
                passed &= ask("/api/gardens/" + first.group(1) + made).isPresent();
            return passed;
        }

        private Optional<String> ask(String path) throws IOException {
            HttpURLConnection connection = (HttpURLConnection) server.resolve(path).toURL().openConnection();
            connection.setRequestProperty("Accept", "*/*"); // as a browser's fetch has it
            secret.ifPresent(token -> connection.setRequestProperty("Authorization", "Bearer " + token));
            if (connection.getResponseCode() != 200) {
                complaints.println(path + " answered " + connection.getResponseCode());
                return Optional.empty();
            }
            try (InputStream body = connection.getInputStream()) {
                return Optional.of(new String(body.readAllBytes(), StandardCharsets.UTF_8));
            }
        }
    }
}

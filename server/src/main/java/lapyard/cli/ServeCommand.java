package lapyard.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.net.BindException;
import java.net.UnknownHostException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.CountDownLatch;
import java.util.stream.Stream;
import lapyard.rest.Binding;
import lapyard.rest.Desk;
import lapyard.rest.Samples;
import lapyard.rest.Server;
import lapyard.rest.Token;
import lapyard.store.GardenStore;
import lapyard.store.Opening;
import lapyard.store.StoreFault;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code lapyard serve}: the server, until it is told to stop. */
@Command(
        name = "serve",
        description = "Serve the gardens of a data folder to the browser.",
        mixinStandardHelpOptions = true)
public final class ServeCommand implements Callable<Integer> {
    private static final int REFUSED = 2;
    private static final ClassLoader FILES = ServeCommand.class.getClassLoader();

    @Spec
    private CommandSpec spec;

    @Option(
            names = "--port",
            defaultValue = "8080",
            paramLabel = "PORT",
            description = "Port to listen on, 0 for any free one (default: ${DEFAULT-VALUE}).")
    private int port;

    @Option(
            names = "--host",
            defaultValue = "127.0.0.1",
            paramLabel = "HOST",
            description =
                    "Address to listen on; any but a loopback address needs a token (default: ${DEFAULT-VALUE}).")
    private String host;

    @Option(
            names = "--data",
            defaultValue = ".lapyard",
            paramLabel = "DIR",
            description = "Folder that keeps the gardens, made where it is missing (default: ${DEFAULT-VALUE}).")
    private Path data;

    @Option(
            names = "--database",
            paramLabel = "URL",
            description = "PostgreSQL database instead of a folder: jdbc:postgresql://HOST/NAME; user and password by"
                    + " LAPYARD_DATABASE_USER and LAPYARD_DATABASE_PASSWORD.")
    private String database;

    @Option(
            names = "--token-file",
            paramLabel = "FILE",
            description = "File whose first line is the token that callers must send; or set LAPYARD_TOKEN.")
    private Path tokenFile;

    @Option(
            names = "--once",
            description =
                    "Answer one round of its own requests and stop: shows that this machine and folder can serve.")
    private boolean once;

    private final Desk desk;
    private final Map<String, String> environment;

    public ServeCommand(Desk desk) {
        this(desk, System.getenv());
    }

    ServeCommand(Desk desk, Map<String, String> environment) {
        this.desk = desk;
        this.environment = environment;
    }

    @Override
    public Integer call() throws IOException, InterruptedException {
        try {
            Optional<String> secret = secret();
            Binding binding = new Binding(host, port, secret.map(Token::of));
            binding.check();
            return start(binding, secret);
        } catch (IllegalArgumentException refused) {
            return refuse(refused.getMessage());
        } catch (UnknownHostException unknown) {
            return refuse("there is no address " + host + ": give one of this machine's to --host");
        } catch (BindException taken) {
            return refuse("port " + port + " on " + host + " cannot be had (" + taken.getMessage()
                    + "): stop what uses it, or give another with --port");
        }
    }

    private int start(Binding binding, Optional<String> secret) throws IOException, InterruptedException {
        // the store opens while the port does
        CompletableFuture<Opening> opening = new CompletableFuture<>();
        new Thread(() -> complete(opening), "lapyard-store").start();
        CompletableFuture<GardenStore> store = opening.thenApply(ServeCommand::filled);
        try (Server server = Server.start(binding, store::join, desk, FILES)) {
            return serve(server, opening, store, secret);
        } catch (IOException noPort) {
            store.thenAccept(GardenStore::close);
            throw noPort;
        }
    }

    private int serve(
            Server server,
            CompletableFuture<Opening> opening,
            CompletableFuture<GardenStore> store,
            Optional<String> secret)
            throws IOException, InterruptedException {
        Opening opened = opening.join();
        if (opened instanceof Opening.InUse inUse) {
            String by =
                    inUse.process().isPresent() ? " (process " + inUse.process().getAsLong() + ")" : "";
            return refuse("data folder " + full(inUse.folder()) + " is in use by another Lapyard" + by
                    + ": stop that one, or give another folder with --data");
        }
        if (opened instanceof Opening.Unusable unusable)
            return refuse(unusable.place() + " cannot be used: " + unusable.why());
        GardenStore open;
        try {
            open = store.join();
        } catch (CompletionException failed) {
            if (!(failed.getCause() instanceof StoreFault fault)) throw failed;
            return refuse(place() + " cannot be used: " + fault.getMessage());
        }
        server.awaitReady();
        PrintWriter err = spec.commandLine().getErr();
        err.println("Lapyard answers at " + server.address() + " with the gardens in " + (database == null ? full(data) : place()));
        err.flush();
        if (once) {
            try (open) {
                return new SelfCheck(server.address(), secret, err).passes() ? 0 : 1;
            }
        }
        CountDownLatch stopped = new CountDownLatch(1);
        Runtime.getRuntime()
                .addShutdownHook(new Thread(
                        () -> {
                            server.close();
                            open.close();
                            stopped.countDown();
                        },
                        "lapyard-stop"));
        stopped.await();
        return 0;
    }

    private void complete(CompletableFuture<Opening> opening) {
        try {
            opening.complete(database == null ? GardenStore.open(data) : GardenStore.open(database, login()));
        } catch (RuntimeException | Error failed) {
            opening.completeExceptionally(failed);
        }
    }

    private String place() {
        return database == null ? "data folder " + full(data) : "database " + database.replaceAll("\\?.*", "");
    }

    private Properties login() {
        Properties login = new Properties();
        for (String name : List.of("user", "password")) {
            String value = environment.get("LAPYARD_DATABASE_" + name.toUpperCase(Locale.ROOT));
            if (value != null) login.setProperty(name, value);
        }
        return login;
    }

    /** A store that never held a garden gets those that come with the program. */
    private static GardenStore filled(Opening opened) {
        if (!(opened instanceof Opening.Open open)) throw new IllegalStateException("the data folder cannot be used");
        if (open.store().isNew()) open.store().fillIfNew(new Samples(FILES).all());
        return open.store();
    }

    private Optional<String> secret() {
        if (tokenFile == null)
            return Optional.of(environment.getOrDefault("LAPYARD_TOKEN", "").strip())
                    .filter(text -> !text.isEmpty());
        try (Stream<String> lines = Files.lines(tokenFile)) {
            return Optional.of(lines.findFirst().orElse("").strip());
        } catch (IOException | UncheckedIOException unreadable) {
            throw new IllegalArgumentException("token file " + tokenFile + " cannot be read as text", unreadable);
        }
    }

    private int refuse(String why) {
        PrintWriter err = spec.commandLine().getErr();
        err.println(why);
        err.flush();
        return REFUSED;
    }

    private static Path full(Path folder) {
        return folder.toAbsolutePath().normalize();
    }
}

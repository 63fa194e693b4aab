package lapyard.rest;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lapyard.store.GardenStore;
import lapyard.store.NewsListener;
import lapyard.store.StoreFault;
import org.glassfish.grizzly.CloseListener;
import org.glassfish.grizzly.Connection;
import org.glassfish.grizzly.ICloseType;
import org.glassfish.grizzly.http.io.NIOOutputStream;
import org.glassfish.grizzly.http.server.Request;
import org.glassfish.grizzly.http.server.Response;

/**
 * Tells browsers of new revisions while they wait, as server-sent events. One thread writes to all of them and never
 * waits for one; a listener holds no thread. Whoever takes nothing for a whole heartbeat is let go, and comes again by
 * itself. What is told is only the newest revision's number: a lost line costs nothing, as the next says the same or more.
 *
 * @see "WHATWG HTML, section 9.2: server-sent events"
 */
final class Live implements NewsListener, AutoCloseable {
    static final int MOST_LISTENERS = 1000;
    private static final int HEARTBEAT_SECONDS = 15;
    private static final Pattern ADDRESS = Pattern.compile("/api/gardens/([a-z0-9-]{1,40})/events");
    private static final String BEGIN = "retry: 2000\n\n";
    private static final String STILL_HERE = ": still here\n\n";

    private final Supplier<GardenStore> store;
    private final ScheduledExecutorService teller = Server.timer("lapyard-live");
    private final Map<String, Set<Listener>> listeners = new ConcurrentHashMap<>();
    private final AtomicInteger count = new AtomicInteger();
    private AutoCloseable listening;

    Live(Supplier<GardenStore> store) {
        this.store = store;
        teller.scheduleWithFixedDelay(this::beat, HEARTBEAT_SECONDS, HEARTBEAT_SECONDS, TimeUnit.SECONDS);
    }

    static boolean has(String path) {
        return ADDRESS.matcher(path).matches();
    }

    int listeners() {
        return count.get();
    }

    /**
     * Answers and keeps the answer open. Is called by the thread of a request, which goes on.
     *
     * @param share by which the caller may listen; empty where by a token of the server, or nobody is asked for one
     */
    void serve(String path, Optional<String> share, Request request, Response response) throws IOException {
        Matcher address = ADDRESS.matcher(path);
        if (!address.matches()) throw new IllegalArgumentException(path);
        if (!request.getMethod().getMethodString().equals("GET")) {
            FrontHandler.notAllowed(response, "GET");
            return;
        }
        String garden = address.group(1);
        try {
            new Shelf(store, null, null).standing(garden);
        } catch (ProblemException refusal) {
            FrontHandler.send(response, refusal.problem());
            return;
        } catch (StoreFault fault) {
            FrontHandler.send(response, Problems.ofFault(fault));
            return;
        }
        if (count.incrementAndGet() > MOST_LISTENERS) {
            count.decrementAndGet();
            FrontHandler.send(response, Problem.later(503, MOST_LISTENERS + " listen already: look now and then instead", 30));
            return;
        }
        listen();
        response.setStatus(200);
        response.setContentType("text/event-stream; charset=utf-8");
        response.setHeader("X-Accel-Buffering", "no"); // a reverse proxy that would collect the lines passes them on
        response.suspend();
        Listener listener = new Listener(garden, share, response);
        Connection<?> connection = request.getContext().getConnection();
        connection.addCloseListener((CloseListener<Connection<?>, ICloseType>) (closed, why) -> gone(listener));
        listeners.compute(garden, (key, known) -> {
            Set<Listener> all = known == null ? ConcurrentHashMap.newKeySet() : known;
            all.add(listener);
            return all;
        });
        run(() -> {
            listener.say(BEGIN);
            tellNow(garden);
        });
    }

    /** Asked for with the first listener, so that the start does not wait for the store. */
    private synchronized void listen() {
        if (listening == null) listening = store.get().listen(this);
    }

    @Override
    public void saved(String garden, long revision) {
        if (listeners.containsKey(garden)) run(() -> tell(garden, revision));
    }

    @Override
    public void missed() {
        run(() -> listeners.keySet().forEach(this::tellNow));
    }

    private void tellNow(String garden) {
        try {
            store.get().find(garden).ifPresent(stored -> tell(garden, stored.revision()));
        } catch (StoreFault away) {
            return; // once it is back it says so by missed()
        }
    }

    private void tell(String garden, long revision) {
        for (Listener listener : listeners.getOrDefault(garden, Set.of())) listener.tell(revision);
    }

    /** A share of that garden was taken back: its listeners hear nothing more. */
    void shareEnded(String garden) {
        run(() -> listeners.getOrDefault(garden, Set.of()).forEach(Listener::mayListen));
    }

    private void beat() {
        listeners.values().forEach(all -> all.forEach(Listener::beat));
    }

    private void run(Runnable work) {
        try {
            teller.execute(work);
        } catch (RejectedExecutionException closing) {
            return; // nobody is told of anything after the end
        }
    }

    private void gone(Listener listener) {
        boolean[] was = {false};
        listeners.computeIfPresent(listener.garden, (key, all) -> {
            was[0] = all.remove(listener);
            return all.isEmpty() ? null : all;
        });
        if (was[0]) count.decrementAndGet();
    }

    /** Ends every answer, so that a server that stops does not wait for them. */
    @Override
    public void close() throws Exception {
        teller.shutdown();
        if (!teller.awaitTermination(5, TimeUnit.SECONDS)) teller.shutdownNow();
        if (listening != null) listening.close();
        listeners.values().forEach(all -> all.forEach(Listener::end));
    }

    private final class Listener {
        final String garden;
        private final Optional<String> share;
        private final Response response;
        private final NIOOutputStream out;
        private long told;
        private boolean slow;

        Listener(String garden, Optional<String> share, Response response) {
            this.garden = garden;
            this.share = share;
            this.response = response;
            this.out = response.getNIOOutputStream();
        }

        /** Ends it where its share has ended or was taken back, here or at another server. */
        private boolean mayListen() {
            try {
                boolean may = share.isEmpty() || store.get().shares().of(garden).stream().anyMatch(one -> one.id().equals(share.get()));
                if (!may) end();
                return may;
            } catch (StoreFault away) {
                return false; // nothing is told until the store can be asked
            }
        }

        void tell(long revision) {
            if (!mayListen()) return;
            if (revision <= told || !out.canWrite()) return; // who is slow hears of the newest at the next heartbeat
            told = revision;
            say("event: revision\nid: " + revision + "\ndata: {\"garden\":\"" + garden + "\",\"revision\":" + revision
                    + "}\n\n");
        }

        void beat() {
            if (!mayListen()) return;
            if (!out.canWrite()) {
                if (slow) end();
                slow = true;
                return;
            }
            if (slow) tellNow(garden);
            slow = false;
            say(STILL_HERE);
        }

        void say(String text) {
            try {
                out.write(text.getBytes(StandardCharsets.UTF_8));
                out.flush();
            } catch (IOException | IllegalStateException left) {
                end();
            }
        }

        void end() {
            gone(this);
            try {
                if (response.isSuspended()) response.resume();
            } catch (IllegalStateException ended) {
                return; // its connection went first
            }
        }
    }
}

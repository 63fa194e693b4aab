package lapyard.rest;

import java.util.Optional;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.SynchronousQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.regex.Pattern;
import lapyard.answers.Caller;
import org.glassfish.grizzly.EmptyCompletionHandler;
import org.glassfish.grizzly.http.Method;
import org.glassfish.grizzly.http.server.Request;
import org.glassfish.grizzly.http.server.Response;

/**
 * Requests whose answer may take long wait on threads of their own, so that short ones always find one; and while they
 * wait their line is listened to: a caller who hangs up is known to be gone.
 */
final class LongAnswers {
    /** Of those who wait for job sheets, prints and searches. */
    private static final int MOST_WAITING = 120;
    /** Those who save wait for each other at most. */
    private static final int SAVING_THREADS = 32;
    private static final int MOST_SAVES = 2000;
    private static final int IDLE_SECONDS = 30;

    private static final Pattern LONG_READ = Pattern.compile(
            "/api/gardens/[^/]+/(job-sheet.*|variation.*|(tables/)?[a-z-]+\\.(pdf|svg|png|csv|ics|dxf|xlsx))");

    private final ThreadPoolExecutor waiting =
            new ThreadPoolExecutor(0, MOST_WAITING, IDLE_SECONDS, TimeUnit.SECONDS, new SynchronousQueue<>(), LongAnswers::thread);
    private final ThreadPoolExecutor saving = new ThreadPoolExecutor(
            SAVING_THREADS, SAVING_THREADS, IDLE_SECONDS, TimeUnit.SECONDS, new LinkedBlockingQueue<>(MOST_SAVES), LongAnswers::thread);
    private final HangUps hangUps;

    LongAnswers(HangUps hangUps) {
        this.hangUps = hangUps;
        saving.allowCoreThreadTimeOut(true);
    }

    private static Thread thread(Runnable work) {
        return Server.daemon(work, "lapyard-wait");
    }

    /** Answers by the resources. */
    interface Answering {
        void run() throws Exception;
    }

    /** Whether the answer may take long: a job sheet in any form, and whatever is checked or worked out from a body. */
    static boolean has(Request request) {
        if (request.getHeader("Expect") != null) return false; // its body is read by whoever answers, and not while it is suspended
        String path = request.getRequestURI();
        return isRead(request) ? LONG_READ.matcher(path).matches() : path.startsWith("/api/");
    }

    private static boolean isRead(Request request) {
        return request.getMethod() == Method.GET || request.getMethod() == Method.HEAD;
    }

    /**
     * Answers on another thread; returns at once.
     *
     * @param ended told once, when the answer is written or its line is gone
     */
    void begin(String address, Request request, Response response, Answering answering, Requester asking, Runnable ended) throws Exception {
        Caller caller = new Caller(address);
        AtomicBoolean done = new AtomicBoolean();
        Runnable once = () -> {
            if (done.compareAndSet(false, true)) ended.run();
        };
        Optional<HangUps.Line> line = hangUps.listen(request.getContext().getConnection());
        request.addAfterServiceListener(served -> {
            line.ifPresent(HangUps.Line::isAnswered);
            once.run();
        });
        response.suspend(-1, TimeUnit.MILLISECONDS, new EmptyCompletionHandler<>() {
            @Override
            public void cancelled() {
                caller.leave();
            }
        });
        try {
            boolean keeps = !isRead(request) && !Guard.onlyReasons(request.getRequestURI());
            (keeps ? saving : waiting).execute(() -> run(answering, asking, caller, request, once));
        } catch (RejectedExecutionException full) {
            FrontHandler.send(response, Problem.later(503, "too many requests wait for job sheets, prints and searches: nothing was changed, ask again", 10));
            response.resume();
        }
    }

    private static void run(Answering answering, Requester asking, Caller caller, Request request, Runnable ended) {
        Requester.begin(asking);
        caller.begin();
        try {
            answering.run();
            if (caller.hasLeft()) ended.run();
        } catch (Throwable broken) { // the line broke while it was written to, or an error ends the process
            OutOfMemory.check(broken);
            request.getContext().getConnection().terminateSilently();
            ended.run();
        } finally {
            Caller.end();
            Requester.end();
        }
    }
}

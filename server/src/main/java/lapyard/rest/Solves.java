package lapyard.rest;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import lapyard.answers.AnswerService;
import lapyard.working.Progress;

/** Solves that go on while nobody waits for their answer. The oldest that ended are forgotten first. */
final class Solves {
    static final int MOST_KEPT = 64;
    static final int MOST_OPEN = 16;

    private final AnswerService answers;
    private final Map<String, Solve> solves = new LinkedHashMap<>();

    Solves(AnswerService answers) {
        this.answers = answers;
    }

    enum State {
        WAITING,
        RUNNING,
        DONE,
        STOPPED,
        REFUSED
    }

    /** @throws ProblemException 503 where too many are open: what is accepted is not refused later */
    synchronized Solve begin(String kind, String problem, double seconds) {
        if (solves.values().stream().filter(Solve::isOpen).count() >= MOST_OPEN)
            throw new ProblemException(Problem.later(503, MOST_OPEN + " solves are open: stop one, or ask again", 10));
        solves.values().removeIf(each -> solves.size() >= MOST_KEPT && !each.isOpen());
        Solve solve = new Solve(Ids.next(), kind, seconds);
        solves.put(solve.id, solve);
        solve.begin(answers.solveUnwatched(kind, problem, seconds, solve));
        return solve;
    }

    synchronized Optional<Solve> find(String id) {
        return Optional.ofNullable(solves.get(id));
    }

    /** Told to stop, a running one still gives the best it has. */
    static final class Solve implements AnswerService.Unwatched {
        final String id;
        final String kind;
        final double limitSeconds;
        private Optional<BooleanSupplier> stopping = Optional.empty();
        private State state = State.WAITING;
        private boolean stopAsked;
        private long fromNanos;
        private double tookSeconds;
        private String result;
        private Problem problem;
        private final Map<String, Reached> progress = new LinkedHashMap<>();

        private record Reached(BigDecimal best, BigDecimal bound) {}

        private Solve(String id, String kind, double limitSeconds) {
            this.id = id;
            this.kind = kind;
            this.limitSeconds = limitSeconds;
        }

        private synchronized void begin(BooleanSupplier how) {
            stopping = Optional.of(how);
        }

        @Override
        public synchronized void began() {
            state = State.RUNNING;
            fromNanos = System.nanoTime();
        }

        @Override
        public Progress progress(String what) {
            return (best, bound) -> {
                synchronized (this) {
                    progress.put(what, new Reached(best, bound));
                }
            };
        }

        @Override
        public void ended(String answer) {
            end(answer, null);
        }

        @Override
        public void failed(Throwable why) {
            end(null, Problems.of(why));
        }

        private synchronized void end(String answer, Problem refused) {
            if (fromNanos != 0) tookSeconds = (System.nanoTime() - fromNanos) / 1e9;
            result = answer;
            problem = refused;
            state = refused != null ? State.REFUSED : stopAsked ? State.STOPPED : State.DONE;
        }

        synchronized boolean isOpen() {
            return state == State.WAITING || state == State.RUNNING;
        }

        /** Returns at once; what has ended stays as it is. */
        synchronized void stop() {
            if (!isOpen()) return;
            stopAsked = true;
            if (!stopping.map(BooleanSupplier::getAsBoolean).orElse(true)) end(null, null);
        }

        synchronized String json() {
            double seconds = state == State.RUNNING ? (System.nanoTime() - fromNanos) / 1e9 : tookSeconds;
            return Json.text(Json.object("id", id, "kind", kind, "state", state.name().toLowerCase(java.util.Locale.ROOT), "limitSeconds", limitSeconds, "seconds", Math.round(seconds * 1000) / 1000.0,
                    "progress", progress.entrySet().stream().map(each -> Json.object("of", each.getKey(), "best", each.getValue().best(), "bound", each.getValue().bound())).toList(),
                    "result", result == null ? null : new Json.Raw(result), "problem", problem == null ? null : new Json.Raw(problem.json())));
        }
    }
}

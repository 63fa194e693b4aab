package lapyard.rest;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import lapyard.working.Progress;

/** Solves that go on while nobody waits for their answer. The oldest that ended are forgotten first. */
final class Solves {
    static final int MOST_KEPT = 64;
    static final int MOST_OPEN = 16;

    private final Turns turns;
    private final Map<String, Solve> solves = new LinkedHashMap<>();

    Solves(Turns turns) {
        this.turns = turns;
    }

    enum State {
        WAITING,
        RUNNING,
        DONE,
        STOPPED,
        REFUSED
    }

    /** @throws Refusal 503 where too many are open */
    synchronized Solve begin(String kind, double seconds, Function<Solve, String> work) {
        if (solves.values().stream().filter(Solve::isOpen).count() >= MOST_OPEN)
            throw new Refusal(Problem.later(503, MOST_OPEN + " solves are open: stop one, or ask again", 10));
        solves.values().removeIf(each -> solves.size() >= MOST_KEPT && !each.isOpen());
        Solve solve = new Solve(Ids.next(), kind, seconds);
        solves.put(solve.id, solve);
        solve.thread = new Thread(() -> solve.run(turns, work), "lapyard-solve");
        solve.thread.setDaemon(true);
        solve.thread.start();
        return solve;
    }

    synchronized Optional<Solve> find(String id) {
        return Optional.ofNullable(solves.get(id));
    }

    /** Told to stop, a running one still gives the best it has. */
    static final class Solve {
        final String id;
        final String kind;
        final double limitSeconds;
        private Thread thread;
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

        private void run(Turns turns, Function<Solve, String> work) {
            try {
                String answer = turns.take(() -> {
                    running();
                    return work.apply(this);
                });
                end(answer, null);
            } catch (InterruptedException stopped) {
                end(null, null);
            } catch (Refusal refusal) {
                end(null, refusal.problem());
            } catch (Desk.Refused refused) {
                end(null, new Refusal(refused.findings()).problem());
            } catch (RuntimeException | Error fault) {
                end(null, Problems.unforeseen(fault));
            }
        }

        /** Hears of one search of this solve. */
        Progress progress(String what) {
            return (best, bound) -> {
                synchronized (this) {
                    progress.put(what, new Reached(best, bound));
                }
            };
        }

        private synchronized void running() {
            state = State.RUNNING;
            fromNanos = System.nanoTime();
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
            thread.interrupt();
        }

        synchronized String json() {
            return Json.text(json -> {
                json.writeStartObject();
                json.writeStringField("id", id);
                json.writeStringField("kind", kind);
                json.writeStringField("state", state.name().toLowerCase(java.util.Locale.ROOT));
                json.writeNumberField("limitSeconds", limitSeconds);
                double seconds = state == State.RUNNING ? (System.nanoTime() - fromNanos) / 1e9 : tookSeconds;
                json.writeNumberField("seconds", Math.round(seconds * 1000) / 1000.0);
                json.writeArrayFieldStart("progress");
                for (Map.Entry<String, Reached> each : progress.entrySet()) {
                    json.writeStartObject();
                    json.writeStringField("of", each.getKey());
                    json.writeNumberField("best", each.getValue().best());
                    json.writeNumberField("bound", each.getValue().bound());
                    json.writeEndObject();
                }
                json.writeEndArray();
                if (result != null) {
                    json.writeFieldName("result");
                    json.writeRawValue(result);
                }
                if (problem != null) {
                    json.writeFieldName("problem");
                    json.writeRawValue(problem.json());
                }
                json.writeEndObject();
            });
        }
    }
}

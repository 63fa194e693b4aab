package lapyard.answers;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lapyard.working.Abandonable;
import lapyard.working.RecentlyUsed;

/**
 * Who works next. Checks have turns of their own; job sheets, prints and searches share as many as there are cores, two at
 * least, of which one is always left to job sheets and one to what is long; a search that nobody waits for begins only
 * while nothing waits, and runs beside the others. Among alike, whoever was served longest ago is next, first by caller,
 * then by garden, then in the order of asking. One document is prepared by one turn at a time.
 */
final class TurnQueue {
    /** Number of callers whose last turn is remembered. */
    private static final int MOST_REMEMBERED = 1000;

    private static final int LEAST_RETRY_SECONDS = 5;
    private static final int MOST_RETRY_SECONDS = 60;

    private final int slots;
    private final int mostWaiting;
    private final List<Turn> waiting = new ArrayList<>();
    private final List<Turn> running = new ArrayList<>();
    private final Set<String> preparing = new HashSet<>();
    private final RecentlyUsed<String, Long> served = new RecentlyUsed<>(MOST_REMEMBERED, turn -> 1);
    private long count;

    TurnQueue(int cores, int mostWaiting) {
        this.slots = Math.max(2, cores);
        this.mostWaiting = mostWaiting;
    }

    /** One piece of work, waiting or running. */
    final class Turn {
        private final WorkKind kind;
        private final String caller;
        private final String garden;
        private final Runnable work;
        private Optional<String> document;
        private Optional<WorkThread> thread = Optional.empty();
        private volatile long startedNanos;

        private Turn(WorkKind kind, String caller, String garden, Optional<String> document, Runnable work) {
            this.kind = kind;
            this.caller = caller;
            this.garden = garden;
            this.document = document;
            this.work = work;
        }

        /** Start by the system's clock, 0 while it waits. */
        long startedNanos() {
            return startedNanos;
        }

        /** Cancelled: it never begins, or it ends soon and its result is thrown away. */
        void abandon() {
            synchronized (TurnQueue.this) {
                waiting.remove(this);
                thread.ifPresent(WorkThread::abandon);
            }
        }

        /** Asks the work to end soon with the best it has found; false if it had not begun, and then it never does. */
        boolean stop() {
            synchronized (TurnQueue.this) {
                thread.ifPresent(Thread::interrupt);
                return !waiting.remove(this);
            }
        }

        /** The document is prepared: others who want something of it need not wait for the end of this turn. */
        void prepared() {
            synchronized (TurnQueue.this) {
                document.ifPresent(preparing::remove);
                document = Optional.empty();
                beginWhatMay();
            }
        }

        private void run() {
            try {
                work.run();
            } finally {
                synchronized (TurnQueue.this) {
                    running.remove(this);
                    prepared();
                }
            }
        }
    }

    /** Says to what it works out when nobody wants that any more. */
    private static final class WorkThread extends Thread implements Abandonable {
        private volatile boolean abandoned;

        private final Turn turn;

        WorkThread(Turn turn) {
            super(turn::run, "lapyard-work");
            this.turn = turn;
            setDaemon(true);
        }

        void abandon() {
            abandoned = true;
            interrupt();
        }

        @Override
        public boolean isAbandoned() {
            return abandoned;
        }
    }

    /**
     * @param document what is prepared first, so that no other turn prepares it at the same time; empty where it is ready
     * @param work     runs on a thread of its own; must throw nothing
     * @throws Busy if too many job sheets, prints and searches wait
     */
    synchronized Turn ask(WorkKind kind, String caller, String garden, Optional<String> document, Runnable work) {
        Turn turn = new Turn(kind, caller, garden, document, work);
        waiting.add(turn);
        beginWhatMay();
        if (kind.isBounded() && waiting.contains(turn) && waiting.stream().filter(other -> other.kind.isBounded()).count() > mostWaiting) {
            waiting.remove(turn);
            throw busy("Too much waits: ");
        }
        return turn;
    }

    /** Said within a turn: its document is prepared, and others who want something of it need not wait for its end. */
    static void documentIsPrepared() {
        if (Thread.currentThread() instanceof WorkThread thread) thread.turn.prepared();
    }

    private long waitingWatched() {
        return waiting.stream().filter(turn -> turn.kind != WorkKind.UNWATCHED).count();
    }

    private void beginWhatMay() {
        for (Optional<Turn> next = next(); next.isPresent(); next = next()) {
            Turn turn = next.get();
            waiting.remove(turn);
            running.add(turn);
            turn.document.ifPresent(preparing::add);
            count++;
            served.put("caller " + turn.caller, count);
            served.put("garden " + turn.garden, count);
            turn.startedNanos = System.nanoTime();
            WorkThread thread = new WorkThread(turn);
            turn.thread = Optional.of(thread);
            thread.start();
        }
    }

    private Optional<Turn> next() {
        long shared = running(turn -> turn.kind == WorkKind.SHEET || turn.kind.isLong());
        long longer = running(turn -> turn.kind.isLong());
        Optional<Turn> check = running(turn -> turn.kind == WorkKind.CHECK) < slots ? first(kind -> kind == WorkKind.CHECK) : Optional.empty();
        if (check.isPresent()) return check;
        if (shared < slots) {
            Optional<Turn> sheet = first(kind -> kind == WorkKind.SHEET);
            Optional<Turn> other = longer < slots - 1 ? first(WorkKind::isLong) : Optional.empty();
            Optional<Turn> one = longer == 0 && shared > 0 && other.isPresent() ? other : sheet.or(() -> other);
            if (one.isPresent()) return one;
        }
        boolean idle = waitingWatched() == 0 && running(turn -> turn.kind == WorkKind.UNWATCHED) == 0;
        return idle ? first(kind -> kind == WorkKind.UNWATCHED) : Optional.empty();
    }

    private long running(Predicate<Turn> which) {
        return running.stream().filter(which).count();
    }

    private Optional<Turn> first(Predicate<WorkKind> kinds) {
        return waiting.stream()
                .filter(turn -> kinds.test(turn.kind) && turn.document.filter(preparing::contains).isEmpty())
                .min(Comparator.comparingLong((Turn turn) -> servedAt("caller " + turn.caller))
                        .thenComparingLong(turn -> servedAt("garden " + turn.garden)));
    }

    private long servedAt(String whom) {
        return served.get(whom).orElse(0L);
    }

    synchronized int running() {
        return running.size();
    }

    synchronized int waiting() {
        return waiting.size();
    }

    /** Says what is being worked out and how much waits. */
    synchronized Busy busy(String why) {
        String work = Stream.of(WorkKind.values())
                .map(kind -> Map.entry(kind, running(turn -> turn.kind == kind)))
                .filter(each -> each.getValue() > 0)
                .map(each -> each.getKey().counted(each.getValue()))
                .collect(Collectors.joining(", "));
        long others = waitingWatched();
        int retry = (int) Math.min(MOST_RETRY_SECONDS, LEAST_RETRY_SECONDS + others / slots);
        return new Busy(why + (work.isEmpty() ? "nothing is" : work + (running(turn -> true) == 1 ? " is" : " are")) + " being worked out and " + others
                + (others == 1 ? " waits" : " wait") + ". Nothing was changed. Ask again in " + retry + " s.", retry);
    }
}

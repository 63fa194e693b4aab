package lapyard.rest;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.atomic.LongAdder;
import java.util.function.Supplier;
import lapyard.prints.PrintAsk;
import lapyard.store.Stored;

/**
 * The desk's outputs, kept by the document's content hash, the least lately used dropped first. What several
 * ask for at once is made once.
 */
final class Outputs {
    private final Desk desk;
    private final long limitBytes;
    private final Turns turns;
    private final ConcurrentHashMap<String, FutureTask<Output>> making = new ConcurrentHashMap<>();
    private final LinkedHashMap<String, Output> kept = new LinkedHashMap<>(16, 0.75f, true);
    private long keptBytes;
    final LongAdder hits = new LongAdder();
    final LongAdder misses = new LongAdder();

    /** @param limitBytes the bytes kept, all outputs together */
    Outputs(Desk desk, long limitBytes, Turns turns) {
        this.desk = desk;
        this.turns = turns;
        this.limitBytes = limitBytes;
    }

    Output jobSheet(String document) {
        return keep("job-sheet", document, () -> Output.of(desk.jobSheetJson(document)));
    }

    /** Empty where the job sheet has no such part. */
    Optional<Output> jobSheetPart(String document, String part) {
        // a name that nobody vouches for is no key: only parts that exist are kept
        Optional<Output> known = kept("part " + part, document);
        if (known.isPresent()) return known;
        return desk.jobSheetPart(document, part).map(text -> keep("part " + part, document, () -> Output.of(text)));
    }

    Output print(String document, String name, String format, int page, PrintAsk ask) {
        String kind = "print " + name + " " + format + " " + page + " " + ask;
        return keep(kind, document, () -> Output.of(desk.print(document, name, format, page, ask)));
    }

    Output slipCsv(String document, Optional<String> supplier) {
        return keep("slip.csv " + supplier.orElse(""), document, () -> Output.of(desk.slipCsv(document, supplier)));
    }

    Output variation(String before, String after) {
        String kind = "variation from " + Output.hash(before.getBytes(StandardCharsets.UTF_8));
        return keep(kind, after, () -> Output.of(desk.variation(before, after)));
    }

    Output variationSheet(String before, String after, String from, String to) {
        String kind = "variation sheet from " + Output.hash(before.getBytes(StandardCharsets.UTF_8)) + " " + from + " " + to;
        return keep(kind, after, () -> Output.of(desk.variationSheet(before, after, from, to)));
    }

    /** Not kept: it holds the moment and number of its revision, and is quickly written. */
    Output weekendsIcs(Stored stored) {
        return Output.of(desk.weekendsIcs(stored.document(), stored.id(), stored.saved(), Math.toIntExact(stored.revision())));
    }

    Output weekendsCsv(String document) {
        return keep("weekends.csv", document, () -> Output.of(desk.weekendsCsv(document)));
    }

    long bytes() {
        synchronized (kept) {
            return keptBytes;
        }
    }

    private static String key(String kind, String document) {
        return kind + " " + Output.hash(document.getBytes(StandardCharsets.UTF_8));
    }

    private Optional<Output> kept(String kind, String document) {
        Output output;
        synchronized (kept) {
            output = kept.get(key(kind, document));
        }
        if (output != null) hits.increment();
        return Optional.ofNullable(output);
    }

    private Output keep(String kind, String document, Supplier<Output> maker) {
        Optional<Output> known = kept(kind, document);
        if (known.isPresent()) return known.get();
        String key = key(kind, document);
        // looks once more: another may have kept it between the look above and the turn to make it
        FutureTask<Output> mine = new FutureTask<>(() -> {
            Optional<Output> meanwhile = kept(kind, document);
            return meanwhile.isPresent() ? meanwhile.get() : made(maker);
        });
        FutureTask<Output> task = making.putIfAbsent(key, mine);
        if (task == null) {
            task = mine;
            try {
                mine.run();
                put(key, result(mine));
            } finally {
                making.remove(key, mine);
            }
        }
        return result(task);
    }

    private Output made(Supplier<Output> maker) throws InterruptedException {
        misses.increment();
        return turns.take(maker);
    }

    private void put(String key, Output output) {
        if (output.bytes().length > limitBytes / 4) return; // one big drawing must not push everything else out
        synchronized (kept) {
            Output before = kept.put(key, output);
            keptBytes += output.bytes().length - (before == null ? 0 : before.bytes().length);
            var eldest = kept.entrySet().iterator();
            while (keptBytes > limitBytes) {
                keptBytes -= eldest.next().getValue().bytes().length;
                eldest.remove();
            }
        }
    }

    private static Output result(FutureTask<Output> task) {
        try {
            return task.get();
        } catch (ExecutionException failed) {
            if (failed.getCause() instanceof RuntimeException unchecked) throw unchecked;
            if (failed.getCause() instanceof Error error) throw error;
            throw new IllegalStateException(failed.getCause());
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("stopped while waiting for an output", stopped);
        }
    }
}

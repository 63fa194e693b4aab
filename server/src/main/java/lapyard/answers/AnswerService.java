package lapyard.answers;

import java.io.IOException;
import java.io.OutputStream;
import java.lang.ref.SoftReference;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicReference;
import java.util.concurrent.atomic.LongAdder;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import java.util.function.Predicate;
import lapyard.answers.TurnQueue.Turn;
import lapyard.drawing.PdfPage;
import lapyard.json.JobSheetPart;
import lapyard.json.MerchantList;
import lapyard.json.SheetAsk;
import lapyard.json.SiteFileJson;
import lapyard.plan.Finding;
import lapyard.prints.BuyingTables;
import lapyard.prints.PrintAsk;
import lapyard.words.Wording;
import lapyard.working.Abandonable;
import lapyard.working.BrokenRule;
import lapyard.working.Look;
import lapyard.working.Progress;
import lapyard.working.RecentlyUsed;

/**
 * The only way to job sheets, parts, prints, checks and solves. It keeps what was made, makes what several ask for once,
 * in its turn, and stops what nobody waits for any more. Behind a first look it begins the whole, until the next look at
 * that garden. Everything but a job sheet and its parts is made of the whole. Safe for many threads.
 */
public final class AnswerService {
    private static final int MOST_WAITING = 96;
    /** Share of the heap that kept answers may take. */
    private static final int KEPT_SHARE = 6;
    /** What is remembered of an address. */
    private static final long STANDING_BYTES = 400;
    /** From the first question on nothing is made ahead: it would take the processor from the answer. */
    private static final Ahead ASKED = new Ahead(null, new Caller(""));

    private final GardenDesk desk;
    private final TurnQueue turns;
    private final RecentlyUsed<String, Object> kept;
    private final Map<String, Task<?>> tasks = new HashMap<>();
    /** The whole that was begun behind the last first look, by the kept garden, or by the caller for one that is not kept. */
    private final Map<String, Behind> behind = new HashMap<>();
    private final AtomicReference<Ahead> ahead = new AtomicReference<>();
    /** The last job sheet that is too large for the kept answers, for as long as the heap has room for it. */
    private volatile SoftReference<Large> large = new SoftReference<>(null);
    private final LongAdder hits = new LongAdder();
    private final LongAdder misses = new LongAdder();

    /** Takes as many turns as there are cores and the usual share of the heap for kept answers. */
    public AnswerService(GardenDesk desk) {
        this(desk, Runtime.getRuntime().availableProcessors(), MOST_WAITING, Runtime.getRuntime().maxMemory() / KEPT_SHARE);
    }

    AnswerService(GardenDesk desk, int cores, int mostWaiting, long keptBytes) {
        this.desk = desk;
        this.turns = new TurnQueue(cores, mostWaiting);
        this.kept = new RecentlyUsed<>(keptBytes, AnswerService::sizeBytes);
    }

    private record Behind(String document, Task<Answer> whole) {}

    /** What was begun before anybody asked for it, and who waits for it. */
    private record Ahead(GivenDocument document, Caller nobody) {}

    private record Large(String key, PreparedGarden sheet) {}

    private static long sizeBytes(Object one) {
        if (one instanceof Answer answer) return answer.sizeBytes();
        return one instanceof PreparedGarden sheet ? sheet.sizeBytes() : STANDING_BYTES;
    }

    /** The findings about a document before it is saved; a STOP means that it cannot be saved. */
    public List<Finding> check(GivenDocument document) {
        GardenDesk.Checked checked = inTurn(WorkKind.CHECK, document.garden(), () -> desk.check(document));
        if (checked.holdsStop() || !checked.onlyTheSheetTells()) return checked.findings();
        try {
            if (!isPrepared(document)) shared(sheetKey(document, Look.WHOLE), kind(document), document, () -> sheet(document));
            return checked.findings();
        } catch (Refused refused) {
            return refused.findings();
        }
    }

    /** Which of these documents hold a STOP as far as it shows without their job sheets, in their order. */
    public List<Boolean> refused(List<GivenDocument> documents) {
        return inTurn(WorkKind.SHEET, documents.get(0).garden(), () -> documents.stream().map(document -> {
            Abandonable.check();
            return desk.check(document).holdsStop();
        }).toList());
    }

    /**
     * A first look is the whole where that is known, and else the whole is begun behind it.
     *
     * @throws Refused if the document holds a STOP, as all below
     */
    public Answer jobSheet(GivenDocument document, SheetAsk ask) {
        SheetAsk whole = ask.at(Look.WHOLE);
        String key = jobSheetKey(document, ask);
        if (ask.look() == Look.FIRST && !isPrepared(document) && kept.get(key).isEmpty())
            return first("job sheet " + ask.key(), document, whole, (sheet, out) -> sheet.jobSheet(whole, out));
        return made(key, kind(document), document, () -> spooled(out -> sheet(document).jobSheet(whole, out)));
    }

    /** The part {@code order}; otherwise as {@link #jobSheet}. */
    public Answer order(GivenDocument document, SheetAsk ask) {
        if (ask.look() == Look.FIRST && !isPrepared(document)) return first("order", document, ask.at(Look.WHOLE), (sheet, out) -> sheet.part(JobSheetPart.ORDER, out));
        return part(document, JobSheetPart.ORDER);
    }

    /**
     * Looks at a garden, unless it is large, before anybody asks for one.
     *
     * @return false where somebody asked for one before or for this one meanwhile, whose answer has all cores
     * @throws CallerLeft where something of another document was asked for meanwhile, likewise
     */
    public boolean makeAhead(GivenDocument document) {
        if (kind(document) != WorkKind.SHEET) return true;
        Ahead made = new Ahead(document, new Caller(""));
        if (!ahead.compareAndSet(null, made)) return false;
        made.nobody().begin();
        try {
            joined(sheetKey(document, Look.FIRST), WorkKind.SHEET, document, Look.FIRST, () -> sheet(document, unheard -> Progress.UNHEARD, Look.FIRST)).await(turns);
            if (ahead.get() != made) return false;
            beginBehind(document.garden(), document, SheetAsk.WHOLE);
            return true;
        } finally {
            Caller.end();
        }
    }

    /** What is made ahead is the asker's from now on, or gives way to what is asked for. */
    private void giveWay(GivenDocument asked) {
        Ahead now = ahead.get();
        if (now != null && Caller.now() == now.nobody()) return;
        Ahead made = ahead.getAndSet(ASKED);
        if (made == null || made == ASKED || made.document().hash().equals(asked.hash())) return;
        made.nobody().leave();
        dropBehind(made.document().garden(), one -> one.document().equals(made.document().hash()));
    }

    /** How an answer is written. */
    private interface Written {
        void to(PreparedGarden sheet, OutputStream out) throws IOException;
    }

    private Answer first(String what, GivenDocument document, SheetAsk whole, Written written) {
        giveWay(document);
        String whose = document.isKept() ? document.garden() : "caller " + Caller.now().name();
        dropBehind(whose, one -> !one.document().equals(document.hash()));
        Answer first = made("first look " + what + " " + document.hash(), desk.isLarge(document, Look.FIRST) ? WorkKind.SEARCH : WorkKind.SHEET, document, Look.FIRST,
                () -> spooled(out -> written.to(sheet(document, unheard -> Progress.UNHEARD, Look.FIRST), out)));
        if (!isPrepared(document)) beginBehind(whose, document, whole);
        return first;
    }

    /** Begins the whole of what is asked for, unless something of the whole was begun for that garden as it is. */
    private void beginBehind(String whose, GivenDocument document, SheetAsk whole) {
        synchronized (behind) {
            if (Optional.ofNullable(behind.get(whose)).filter(one -> one.document().equals(document.hash())).isPresent()) return;
        }
        try {
            String key = jobSheetKey(document, whole);
            Behind begun = new Behind(document.hash(), joined(key, kind(document), document, Look.WHOLE, () -> kept(key, () -> spooled(out -> sheet(document).jobSheet(whole, out)))));
            Behind before;
            synchronized (behind) {
                before = behind.put(whose, begun);
            }
            if (before != null) before.whole().leave();
            begun.whole().whenDone(() -> dropBehind(whose, begun::equals));
        } catch (Busy full) {
            // whoever asks for the whole begins it
        }
    }

    /** Nobody waits any more for what was begun there. */
    private void dropBehind(String whose, Predicate<Behind> which) {
        Optional<Behind> dropped;
        synchronized (behind) {
            dropped = Optional.ofNullable(behind.get(whose)).filter(which);
            if (dropped.isPresent()) behind.remove(whose);
        }
        dropped.ifPresent(one -> one.whole().leave());
    }

    /** The key under which these parts of the whole are kept. */
    public String jobSheetKey(GivenDocument document, SheetAsk ask) {
        return "job-sheet " + ask.key() + " " + document.hash();
    }

    public Answer part(GivenDocument document, JobSheetPart part) {
        return made("part " + part.code() + " " + document.hash(), kind(document), document, () -> spooled(out -> sheet(document).part(part, out)));
    }

    /** @throws Refused also if there is no such page, it does not fit or the paper is unknown */
    public Answer print(GivenDocument document, String name, String format, int page, PrintAsk ask) {
        return made(printKey(document, name, format, page, ask), WorkKind.PRINT, document, () -> spooled(out -> sheet(document).print(name, format, page, ask, out)));
    }

    /** The key under which {@link #print} is kept. */
    public String printKey(GivenDocument document, String name, String format, int page, PrintAsk ask) {
        return "print " + name + " " + format + " " + page + " " + ask + " " + document.hash();
    }

    /** @throws Refused also if it is of a supplier from whom nothing comes */
    public Answer file(GivenDocument document, FileAsk ask) {
        WorkKind kind = ask.name().endsWith(".xlsx") || BuyingTables.known(ask.name().replaceFirst("\\..*", "")) ? WorkKind.PRINT : kind(document);
        return made(ask + " " + document.hash(), kind, document, () -> spooled(out -> sheet(document).file(ask, out)));
    }

    /** @throws Refused also if they are in two currencies */
    public Answer variation(GivenDocument before, GivenDocument after) {
        String key = "variation " + before.hash() + " " + after.hash();
        return made(key, kind(after), after, () -> Answer.of(desk.variation(sheet(before), sheet(after))));
    }

    /** The same on paper; {@code from} and {@code to} are what the sheet says of the two. */
    public Answer variationSheet(GivenDocument before, GivenDocument after, String from, String to) {
        String key = "variation sheet " + from + " " + to + " " + before.hash() + " " + after.hash();
        return made(key, WorkKind.PRINT, after, () -> spooled(out -> desk.variationSheet(sheet(before), sheet(after), from, to, out)));
    }

    /** How a merchant's list is understood, and the garden with it where every line is good. */
    public String merchantList(String body) {
        return inTurn(WorkKind.CHECK, "", () -> MerchantList.preview(body).toString());
    }

    /** The contents of a site file, and the garden with the layers taken from it. */
    public String siteFile(String body) {
        return inTurn(WorkKind.CHECK, "", () -> SiteFileJson.preview(body).toString());
    }

    /**
     * The first page of a PDF as a picture.
     *
     * @return PNG
     * @throws Refused if it cannot be painted
     */
    public byte[] pdfPage(byte[] pdf) {
        return inTurn(WorkKind.SEARCH, "", () -> {
            PdfPage.Result result = PdfPage.paint(pdf);
            if (result instanceof PdfPage.Result.Painted painted) return painted.png();
            throw Refused.of(BrokenRule.of(((PdfPage.Result.Refused) result).rule(), "site plan"), Wording.METRIC);
        });
    }

    public String tryOut(String asked) {
        return inTurn(WorkKind.SEARCH, "", () -> desk.tryOut(asked, this::sheet));
    }

    /** @param kind {@code cutting}, {@code rolls}, {@code staging}, or of a garden document {@code garden} for its slip,
     *     {@code sizes} for what changed sizes save, {@code lay-out} for proposals of its yard */
    public String solve(String kind, String problem, double seconds) {
        return inTurn(WorkKind.SEARCH, "", () -> solved(kind, problem, seconds, what -> Progress.UNHEARD));
    }

    private String solved(String kind, String problem, double seconds, Function<String, Progress> progress) {
        return kind.equals("garden")
                ? sheet(GivenDocument.of(problem), progress, Look.WHOLE).slipJson()
                : desk.solve(kind, problem, seconds, progress);
    }

    /** A solve that goes on while nobody waits for it, once nothing else waits. */
    public interface Unwatched {
        /** It never ends before it has begun, nor begins once it was stopped. */
        void began();

        Progress progress(String what);

        void ended(String result);

        void failed(Throwable why);
    }

    /**
     * As {@link #solve}, told to {@code heard}.
     *
     * @return stops it, with the best it has; false where it had not begun and never will
     */
    public BooleanSupplier solveUnwatched(String kind, String problem, double seconds, Unwatched heard) {
        Turn turn = turns.ask(WorkKind.UNWATCHED, Caller.now().name(), "", Optional.empty(), () -> {
            heard.began();
            try {
                heard.ended(solved(kind, problem, seconds, heard::progress));
            } catch (Throwable failed) { // told to whoever asks for it later
                heard.failed(failed);
            }
        });
        return turn::stop;
    }

    /**
     * An answer that stands for an address until its garden is written to.
     *
     * @param revision of the garden
     * @param key      of the answer itself
     * @param more     what whoever keeps it wants to remember with it
     */
    public record Standing(String garden, long revision, String key, Object more) {}

    /** Remembers that the address is answered by this. */
    public void stands(String address, Standing standing, Answer answer) {
        if (answer.isInMemory() && kept.put(standing.key(), answer)) kept.put("address " + address, standing);
    }

    public Optional<Standing> standing(String address) {
        return kept.get("address " + address).map(Standing.class::cast);
    }

    /** Empty where it was dropped for others. */
    public Optional<Answer> answer(Standing standing) {
        return kept.get(standing.key()).map(Answer.class::cast);
    }

    public void stands(String address, Standing standing) {
        kept.put("address " + address, standing);
    }

    public void standsNoMore(String address) {
        kept.remove("address " + address);
    }

    private Answer made(String key, WorkKind kind, GivenDocument document, Callable<Answer> maker) {
        return made(key, kind, document, Look.WHOLE, maker);
    }

    private Answer made(String key, WorkKind kind, GivenDocument document, Look look, Callable<Answer> maker) {
        Optional<Answer> known = keptAnswer(key);
        return known.isPresent() ? known.get() : joined(key, kind, document, look, () -> kept(key, maker)).await(turns);
    }

    /** Runs within a turn. */
    private Answer kept(String key, Callable<Answer> maker) throws Exception {
        // another may have made it before this turn
        Optional<Answer> meanwhile = keptAnswer(key);
        if (meanwhile.isPresent()) return meanwhile.get();
        misses.increment();
        Answer made = maker.call();
        if (made.isInMemory()) kept.put(key, made);
        return made;
    }

    private Optional<Answer> keptAnswer(String key) {
        Optional<Answer> known = kept.get(key).map(Answer.class::cast);
        if (known.isPresent()) hits.increment();
        return known;
    }

    private WorkKind kind(GivenDocument document) {
        return !isPrepared(document) && desk.isLarge(document, Look.WHOLE) ? WorkKind.SEARCH : WorkKind.SHEET;
    }

    private static String sheetKey(GivenDocument document, Look look) {
        return "sheet " + look + " " + document.hash();
    }

    private boolean isPrepared(GivenDocument document) {
        return keptSheet(document, Look.WHOLE).isPresent();
    }

    private Optional<PreparedGarden> keptSheet(GivenDocument document, Look look) {
        String key = sheetKey(document, look);
        Large last = large.get();
        return last != null && last.key().equals(key) ? Optional.of(last.sheet()) : kept.get(key).map(PreparedGarden.class::cast);
    }

    private PreparedGarden sheet(GivenDocument document) {
        return sheet(document, what -> Progress.UNHEARD, Look.WHOLE);
    }

    /** Runs within a turn. The whole where that is known; a search that was told to stop returns what it has found, which is not kept. */
    private PreparedGarden sheet(GivenDocument document, Function<String, Progress> progress, Look look) {
        Optional<PreparedGarden> known = keptSheet(document, Look.WHOLE).or(() -> keptSheet(document, look));
        if (known.isPresent()) return known.get();
        if (desk.isLarge(document, Look.WHOLE)) large = new SoftReference<>(null); // two have no room
        PreparedGarden sheet = desk.prepare(document, progress, look);
        Abandonable.check();
        if (keeps(document, sheet)) TurnQueue.documentIsPrepared();
        return sheet;
    }

    /** Whether others find it from now on. The whole has a place of its own where it is too large, and takes that of its first look. */
    private boolean keeps(GivenDocument document, PreparedGarden sheet) {
        if (Thread.currentThread().isInterrupted()) return false;
        String key = sheetKey(document, sheet.look());
        boolean put = kept.put(key, sheet);
        if (sheet.look() == Look.FIRST) return put;
        kept.remove(sheetKey(document, Look.FIRST));
        if (!put) large = new SoftReference<>(new Large(key, sheet));
        return true;
    }

    private <T> T inTurn(WorkKind kind, String garden, Callable<T> work) {
        Task<T> task = new Task<>(kind, () -> {});
        task.join();
        task.begin(turns, garden, Optional.empty(), work);
        return task.await(turns);
    }

    private <T> T shared(String key, WorkKind kind, GivenDocument document, Callable<T> work) {
        return joined(key, kind, document, Look.WHOLE, work).await(turns);
    }

    /** Requests for one key at the same time share one computation, which is joined. */
    private <T> Task<T> joined(String key, WorkKind kind, GivenDocument document, Look look, Callable<T> work) {
        giveWay(document);
        synchronized (tasks) {
            @SuppressWarnings("unchecked") // a key names what is made
            Task<T> found = (Task<T>) tasks.get(key);
            if (found != null && found.join()) return found;
            Task<T> task = new Task<>(kind, () -> forget(key));
            task.join();
            begin(key, task, document, look, work);
            return task;
        }
    }

    /** A computation that another request has begun under that key meanwhile goes on. */
    private void forget(String key) {
        synchronized (tasks) {
            Task<?> there = tasks.get(key);
            if (there != null && there.isGivenUp()) tasks.remove(key);
        }
    }

    private <T> void begin(String key, Task<T> task, GivenDocument document, Look look, Callable<T> work) {
        tasks.put(key, task);
        Optional<String> first = isPrepared(document) ? Optional.empty() : Optional.of(look + " " + document.hash());
        try {
            task.begin(turns, document.garden(), first, () -> {
                try {
                    return work.call();
                } finally {
                    synchronized (tasks) {
                        tasks.remove(key, task);
                    }
                }
            });
        } catch (Busy full) {
            tasks.remove(key, task);
            throw full;
        }
    }

    private interface Writing {
        void to(OutputStream out) throws IOException;
    }

    private static Answer spooled(Writing writing) throws IOException {
        Spool spool = new Spool();
        boolean whole = false;
        try (spool) {
            writing.to(spool);
            whole = true;
            return spool.answer();
        } finally {
            if (!whole) spool.discard();
        }
    }

    /** How many wait for what is made under that key. */
    int waitersOf(String key) {
        synchronized (tasks) {
            Task<?> task = tasks.get(key);
            return task == null ? 0 : task.waiters();
        }
    }

    /** How much was found ready or made, bytes kept, turns running and waiting. */
    public record Figures(long hits, long misses, long keptBytes, int running, int waiting) {}

    public Figures figures() {
        return new Figures(hits.sum(), misses.sum(), kept.taken(), turns.running(), turns.waiting());
    }

    /** Counts an answer that stood. */
    public void hit() {
        hits.increment();
    }
}

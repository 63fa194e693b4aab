package lapyard.rest;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import lapyard.answers.GivenDocument;
import lapyard.answers.PreparedGarden;
import lapyard.working.Abandonable;
import lapyard.working.Look;
import lapyard.working.Progress;

/** A desk whose job sheets last until they are let go or told to stop; first looks are there at once. */
public final class HeldDesk extends SizesDesk {
    public final CountDownLatch begun = new CountDownLatch(1);
    public final CountDownLatch goOn = new CountDownLatch(1);
    public final CountDownLatch stopped = new CountDownLatch(1);
    public final AtomicInteger firstLooks = new AtomicInteger();

    @Override
    public PreparedGarden prepare(GivenDocument document, Function<String, Progress> progress, Look look) {
        if (look == Look.FIRST) {
            firstLooks.incrementAndGet();
            return super.prepare(document, progress, look);
        }
        begun.countDown();
        try {
            goOn.await();
        } catch (InterruptedException told) {
            stopped.countDown();
            Abandonable.check();
        }
        return super.prepare(document, progress, look);
    }
}

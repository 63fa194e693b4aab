package lapyard.rest;

import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.LongSupplier;

/**
 * Memory for bodies that arrive, taken before their bytes are. Short bodies have a part that long ones cannot take, so
 * that however many long ones are unfinished a save still gets through; and a body that arrives too slowly is cut off.
 */
final class BodyBudget {
    /** A body is short up to here. */
    static final long SHORT_BYTES = 256 << 10;

    private static final long STEP_BYTES = 8 << 10;
    /** Share of the whole that is reserved for short bodies. */
    private static final int SHORT_SHARE = 4;
    private static final long PATIENCE_NANOS = 30_000_000_000L;
    /** Extra time for every byte that has arrived: 50 kB/s. */
    private static final long NANOS_A_BYTE = 20_000;

    private final long longBytes;
    private final long shortBytes;
    private final LongSupplier nanos;
    private final Set<Body> open = ConcurrentHashMap.newKeySet();
    private long longTaken;
    private long shortTaken;

    BodyBudget(long bytes, LongSupplier nanos) {
        this.shortBytes = bytes / SHORT_SHARE;
        this.longBytes = bytes - shortBytes;
        this.nanos = nanos;
    }

    /** One body on its way. */
    final class Body {
        private final Runnable cutOff;
        private final long beganNanos = nanos.getAsLong();
        private long taken;
        private long arrived;
        private boolean given;

        private Body(Runnable cutOff) {
            this.cutOff = cutOff;
        }

        /**
         * Takes room for what has arrived and the next step.
         *
         * @return false where there is none: nothing was taken
         */
        boolean holds(long bytes) {
            synchronized (BodyBudget.this) {
                arrived = bytes;
                if (given) return true;
                long want = (bytes / STEP_BYTES + 1) * STEP_BYTES;
                if (want <= taken) return true;
                long ofShort = Math.min(want, SHORT_BYTES) - Math.min(taken, SHORT_BYTES);
                long ofLong = Math.max(0, want - SHORT_BYTES) - Math.max(0, taken - SHORT_BYTES);
                if (shortTaken + ofShort > shortBytes || longTaken + ofLong > longBytes) return false;
                shortTaken += ofShort;
                longTaken += ofLong;
                taken = want;
                return true;
            }
        }

        /** It is whole: it is not cut off any more, and keeps its room until {@link #free}. */
        void isWhole() {
            open.remove(this);
        }

        /** Gives its room back; once, however often it is called. */
        void free() {
            open.remove(this);
            synchronized (BodyBudget.this) {
                if (given) return;
                given = true;
                shortTaken -= Math.min(taken, SHORT_BYTES);
                longTaken -= Math.max(0, taken - SHORT_BYTES);
            }
        }

        private boolean isLate() {
            return nanos.getAsLong() - beganNanos > PATIENCE_NANOS + arrived * NANOS_A_BYTE;
        }
    }

    /** @param cutOff called where it arrives too slowly */
    Body begin(Runnable cutOff) {
        Body body = new Body(cutOff);
        open.add(body);
        return body;
    }

    /** Cuts off what arrives too slowly. Is called now and then. */
    void cutOffLate() {
        for (Body body : open) {
            if (!body.isLate()) continue;
            body.free();
            body.cutOff.run();
        }
    }
}

package lapyard.working;

/** A thread whose work may come to be wanted by nobody. Long work asks now and then and gives up. */
public interface Abandonable {
    boolean isAbandoned();

    /**
     * Asks whether anybody still wants what this thread works out: between beds, sheets and searches.
     *
     * @throws Abandoned where nobody does
     */
    static void check() {
        if (Thread.currentThread() instanceof Abandonable thread && thread.isAbandoned()) throw new Abandoned();
    }

    /** Ends work that nobody wants any more. */
    final class Abandoned extends RuntimeException {
        Abandoned() {
            super("nobody waits for it any more", null, false, false);
        }
    }
}

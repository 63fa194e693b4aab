package lapyard.plan;

/** Finish on all faces: {@code coats}, {@code coverM2PerLitre} a coat, {@code rough} 1 for planed and more for rough wood. */
public record Finish(boolean wanted, int coats, double coverM2PerLitre, double rough) {
    public static final Finish USUAL = new Finish(true, 2, 12, 1);
    public static final Finish NONE = new Finish(false, 2, 12, 1);
}

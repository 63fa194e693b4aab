package lapyard.plan;

/**
 * Beds of one making that are wanted in a yard.
 *
 * @param making a bed of it, its place without meaning
 * @param least  how many at least, 0 or more
 * @param most   how many at most; {@link #AS_MANY_AS_FIT}
 */
public record Wish(Bed making, int least, int most) {
    public static final int AS_MANY_AS_FIT = 1_000;

    public Wish {
        if (least < 0 || most < least || most > AS_MANY_AS_FIT) {
            throw new IllegalArgumentException("wanted are 0 or more up to " + AS_MANY_AS_FIT + ", was " + least + " to " + most);
        }
    }
}

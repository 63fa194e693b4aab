package lapyard.plan;

/** How the courses lap at right-angled corners. */
public enum Lap {
    /** Each wall runs past at its start and stops short at its end; reversed in every other course. */
    TURNING,
    /** Walls A, C, E... run past both ends; walls B, D, F... do so in every other course. */
    LONG_WALL
}

package lapyard.ground;

import java.util.List;
import lapyard.plan.Finding;
import lapyard.plan.Garden;

/** Beds, paths and keep-clear that get in each other's way or leave the yard, each with its amount and a way out. */
public final class Clashes {
    private Clashes() {}

    public static List<Finding> of(Garden garden) {
        throw new UnsupportedOperationException();
    }
}

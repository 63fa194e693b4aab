package lapyard.diagrams;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import lapyard.working.BrokenRule;

/** What may be shown on a plan or left off; the edge of the yard is always drawn. */
public enum PlanLayer {
    /** Hours of direct sun on the day that the garden names. */
    SUN,
    /** Surfaces. */
    GROUND,
    /** Covers, gates and other things with the ground to keep clear of. */
    KEEP_CLEAR,
    LEVELS,
    PATHS,
    BEDS,
    /** The lengths of the beds' walls. */
    DIMENSIONS,
    /** The baseline and the pegs of the beds. */
    PEGS,
    /** Letters of the snags and their list. */
    SNAGS,
    /** The stage in which each bed is built. */
    STAGES;

    /** All but what is looked at for a purpose of its own. */
    public static final Set<PlanLayer> USUAL = Set.copyOf(EnumSet.complementOf(EnumSet.of(SUN, PEGS, STAGES)));

    /** As asked for: {@code keep-clear}. */
    public String label() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /**
     * Those of these names, in whatever case.
     *
     * @throws BrokenRule for a name that is none, naming all
     */
    public static Set<PlanLayer> named(List<String> names) {
        Set<PlanLayer> layers = EnumSet.noneOf(PlanLayer.class);
        for (String name : names) {
            layers.add(Arrays.stream(values())
                    .filter(layer -> layer.label().equalsIgnoreCase(name.strip()))
                    .findFirst()
                    .orElseThrow(() -> BrokenRule.of(BrokenRule.Rule.FIELD_NO_SUCH, "layers").with("what", "layer of a plan").with("value", name.strip())
                            .with("there", Arrays.stream(values()).map(PlanLayer::label).toList())));
        }
        return layers;
    }
}

package lapyard.ground;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import lapyard.plan.Finding;
import lapyard.plan.Garden;
import lapyard.plan.Ground;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;
import lapyard.working.Working;

/**
 * All about the ground of a garden.
 *
 * @param quantities {@code surface.KIND}, {@code surface.rest}, {@code fall.one-in}
 * @param beds       in the order of the document
 */
public record GroundSheet(
        Optional<SurveyedYard> survey,
        Optional<Fall> fall,
        List<Quantity> quantities,
        List<BedGround> beds,
        List<PathWork> paths,
        List<Nearness> keepClear,
        AccessSheet access,
        List<Rims> rims,
        List<Finding> findings) {
    public GroundSheet {
        quantities = List.copyOf(quantities);
        beds = List.copyOf(beds);
        paths = List.copyOf(paths);
        keepClear = List.copyOf(keepClear);
        rims = List.copyOf(rims);
        findings = List.copyOf(findings);
    }

    /**
     * @param reaches works out a reach, or remembers it
     * @throws IllegalArgumentException where {@link Clashes#stops} has something to say
     */
    public static GroundSheet of(Garden garden, Function<WallReach, WallReach.Worst> reaches) {
        return Clashes.sheet(garden, reaches).orElseThrow(() -> new IllegalArgumentException("sides of an outline cross: nothing can be measured"));
    }

    static List<Quantity> quantities(SurfaceChecks surfaces, Optional<Fall> fall, Ground ground) {
        List<Quantity> quantities = new ArrayList<>();
        if (!ground.surfaces().isEmpty()) quantities.addAll(surfaces.areas());
        fall.filter(plane -> Double.isFinite(plane.oneIn()))
                .ifPresent(plane -> quantities.add(Quantity.of(QuantityKind.FALL, plane.oneIn(), "1:n",
                        "1 / sqrt(a^2 + b^2) of the plane through all readings", Working.GEOMETRY,
                        Working.Input.of("a", plane.a(), ""), Working.Input.of("b", plane.b(), ""))));
        return quantities;
    }
}

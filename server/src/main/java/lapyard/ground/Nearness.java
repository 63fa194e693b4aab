package lapyard.ground;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import lapyard.geometry.Outline;
import lapyard.plan.KeepClearKind;

/**
 * One thing to keep clear and the beds about it.
 *
 * @param number      in the document, from 1
 * @param zone        ground to keep clear
 * @param beds        the three nearest within {@link #WITHIN_MM}, nearest first
 */
public record Nearness(int number, KeepClearKind kind, double clearanceMm, List<Outline> zone, List<Near> beds) {
    /** Beds further off have nothing to do with it. */
    private static final double WITHIN_MM = 5_000;

    private static final int MOST = 3;

    public Nearness {
        zone = List.copyOf(zone);
        beds = List.copyOf(beds);
    }

    /** @param missingMm by which it is too near; 0 where it is clear */
    public record Near(String bed, double distanceMm, double missingMm) {}

    static List<Nearness> of(Site site) {
        List<Nearness> all = new ArrayList<>();
        for (Zone zone : site.zones()) {
            List<Near> beds = new ArrayList<>();
            for (Lot lot : site.near(zone.shape(), WITHIN_MM)) {
                double distance = lot.area().distance(zone.shape());
                if (distance <= WITHIN_MM) beds.add(new Near(lot.bed().id(), distance, zone.blocks(lot) ? zone.shortByMm(lot) : 0));
            }
            beds.sort(Comparator.comparingDouble(Near::distanceMm));
            all.add(new Nearness(
                    zone.index() + 1,
                    zone.kept().kind(),
                    zone.kept().clearanceMm(),
                    zone.keptClear().getArea() > 0 ? Shapes.outlines(zone.keptClear()) : List.of(),
                    beds.subList(0, Math.min(MOST, beds.size()))));
        }
        return all;
    }
}

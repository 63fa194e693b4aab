package lapyard.sizes;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import lapyard.geometry.Outline;
import lapyard.job.JobSheet;
import lapyard.job.SearchMemory;
import lapyard.plan.Bed;
import lapyard.plan.Garden;
import lapyard.plan.Giving;
import lapyard.working.Progress;

/**
 * What changed sizes save.
 *
 * @param now      the garden as it stands
 * @param sides    that may give
 * @param front    answers of which none is beaten in number of changes, millimetres and money at once; fewest changes first
 * @param bounds   proved: at index n - 1, with at most n changes the order costs no less; not longer than the changes looked at
 * @param bound    proved: with every side as it may give the order costs no less
 * @param proven   whether the cheapest answer costs just that
 * @param growth   what each side could grow by at no cost, all others staying; only sides that can
 * @param growthOpen sides of which it is not known how far they could grow at no cost, as the counts or a stop ended the look;
 *                 what stands for them in {@code growth} may be less than they could
 * @param complete whether the look came to its end before its counts did
 * @param longer   how many times as long was looked as the cheapest took to be found, in whole looks; 1 where the last one found it
 * @param early    whether a stop ended the look, so that the same look may find other sizes another time
 */
public record SizesThatGive(
        JobSheet now,
        List<Side> sides,
        List<SizeAnswer> front,
        List<BigDecimal> bounds,
        BigDecimal bound,
        boolean proven,
        List<Growth> growth,
        List<Side> growthOpen,
        boolean complete,
        double longer,
        boolean early) {
    public SizesThatGive {
        sides = List.copyOf(sides);
        front = List.copyOf(front);
        bounds = List.copyOf(bounds);
        growth = List.copyOf(growth);
        growthOpen = List.copyOf(growthOpen);
    }

    /** The side grown by {@code change} costs no more; {@code most} says that it may give no more than that. */
    public record Growth(Resize change, boolean most) {}

    /**
     * @param looks    one after the other; each begins with what those before it found
     * @param progress hears the least total found and the bound
     * @param memory   of searches for boards and rolls, shared with others
     * @throws IllegalArgumentException if nothing gives, or the garden cannot be made as it stands, or boards of it are cut
     */
    public static SizesThatGive of(Garden garden, Giving giving, List<SizeLook> looks, Progress progress, SearchMemory memory) {
        return new SizeSearch(garden, Sides.of(garden, giving), looks, progress, memory).run();
    }

    /** The garden with one answer's sizes. */
    public static Garden changed(Garden garden, List<Resize> changes) {
        List<Bed> beds = new ArrayList<>();
        for (int i = 0; i < garden.beds().size(); i++) {
            Bed bed = garden.beds().get(i);
            Outline outline = bed.outline();
            for (Resize change : changes) outline = change.side().applied(i, outline, change.byMm());
            beds.add(outline.equals(bed.outline()) ? bed : bed.withOutline(outline));
        }
        return garden.withBeds(beds);
    }
}

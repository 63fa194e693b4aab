package lapyard.job;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import lapyard.construction.Nest;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.FindingList;
import lapyard.plan.Place;
import lapyard.plan.Place.What;
import lapyard.plan.WayKind;
import lapyard.plan.Tally;
import lapyard.weekends.Weekends;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;

/**
 * Two gardens side by side, the one as it stands and a copy with changes. A pure function: nothing is kept.
 *
 * @param moved    tasks that fall on another day, were dropped or are new
 * @param touched  what is cut, done or bought and would be affected; none may be
 * @param gone     findings that the copy has not any more; {@code come} those that it has beside
 */
public record TryOut(Figures before, Figures after, List<Moved> moved, List<Finding> touched, List<Finding> gone, List<Finding> come) {
    public TryOut {
        moved = List.copyOf(moved);
        touched = List.copyOf(touched);
        gone = List.copyOf(gone);
        come = List.copyOf(come);
    }

    /**
     * @param boards  to buy or open, wall timber and bearers
     * @param massKg  of the wall timber
     * @param soilM3  loose
     * @param hours   person-hours still to do
     * @param endDay  of the plan, from 0, on which the last bed is planted
     * @param snags   that stand, notes not counted
     */
    public record Figures(BigDecimal money, boolean atLeast, int beds, int boards, double massKg, double soilM3, double hours, int endDay, String end, int snags) {}

    /** Days of the plan, and the task as a person says it; -1 where the task is not in that garden. */
    public record Moved(String task, String called, int wasDay, int isDay) {}

    public static TryOut of(JobSheet before, JobSheet after) {
        Map<String, Weekends.Task> was = before.weekends().byId();
        Map<String, Weekends.Task> is = after.weekends().byId();
        Set<String> ids = new TreeSet<>(was.keySet());
        ids.addAll(is.keySet());
        List<Moved> moved = new ArrayList<>();
        for (String id : ids) {
            int from = was.containsKey(id) ? was.get(id).firstDay() : -1;
            int to = is.containsKey(id) ? is.get(id).firstDay() : -1;
            if (from != to) moved.add(new Moved(id, (is.containsKey(id) ? after : before).weekends().words(id), from, to));
        }
        return new TryOut(figures(before), figures(after), moved, touched(before, after), without(before, after), without(after, before));
    }

    /** Findings of one garden that the other does not have. */
    private static List<Finding> without(JobSheet one, JobSheet other) {
        List<Finding> left = new ArrayList<>(FindingList.singles(one.snags()));
        left.removeAll(FindingList.singles(other.snags()));
        return FindingList.merged(left);
    }

    private static Figures figures(JobSheet sheet) {
        int boards = sheet.cutting().stream().mapToInt(cutting -> cutting.result().boards()).sum()
                + sheet.strips().stream().mapToInt(strips -> strips.saw().ways().get(0).boards()).sum();
        Weekends weekends = sheet.weekends();
        String end = weekends.days().stream().filter(day -> day.number() == weekends.lastDay()).findFirst()
                .map(day -> day.date().map(Object::toString).orElse("weekend " + day.weekend())).orElse("nothing to do");
        return new Figures(sheet.slip().total(), sheet.slip().atLeast(), sheet.beds().size(), boards, sum(sheet, QuantityKind.TIMBER_MASS), sum(sheet, QuantityKind.SOIL_LOOSE),
                weekends.loadHours(), weekends.lastDay(), end,
                (int) sheet.snags().stream().filter(finding -> finding.weight() == Finding.Weight.SNAG).count());
    }

    private static double sum(JobSheet sheet, QuantityKind kind) {
        return sheet.beds().stream().mapToDouble(bed -> Quantity.sum(bed.quantities(), kind)).sum();
    }

    /** Pieces cut that are of another length or gone, tasks done that are gone, packs bought that are not asked for. */
    private static List<Finding> touched(JobSheet before, JobSheet after) {
        Tally tally = before.garden().people().tally();
        Map<String, Timber> was = timbers(before);
        Map<String, Timber> is = timbers(after);
        List<Finding> touched = new ArrayList<>();
        for (Tally.Board board : tally.boards()) {
            for (String mark : board.cut().stream().flatMap(one -> Nest.marks(one).stream()).toList()) {
                Timber old = was.get(mark);
                if (old == null || old.equals(is.get(mark))) continue;
                touched.add(Finding.of(is.containsKey(mark) ? FindingKind.TRY_CUT_OTHER : FindingKind.TRY_CUT_UNWANTED, Place.of(What.PIECE, mark))
                        .with("board", Fact.name(board.name())).by(Fact.mm(old.lengthMm()))
                        .way(WayKind.LEAVE_BED).way(WayKind.RACK_AS_OFFCUT));
            }
        }
        Set<String> gone = new HashSet<>(before.weekends().byId().keySet());
        gone.removeAll(after.weekends().byId().keySet());
        for (Tally.Done done : tally.done()) {
            if (gone.contains(done.task())) {
                touched.add(Finding.of(FindingKind.TRY_DONE_UNWANTED, Place.of(What.TALLY)).with("task", Fact.name(before.weekends().words(done.task()))).way(WayKind.LEAVE_BED));
            }
        }
        after.snags().stream().filter(one -> one.kind() == FindingKind.TALLY_BOUGHT_MORE
                && !before.snags().contains(one)).forEach(touched::add);
        return touched;
    }

    private record Timber(String section, double lengthMm) {}

    /** By the marks of the pieces. */
    private static Map<String, Timber> timbers(JobSheet sheet) {
        Map<String, Timber> timbers = new HashMap<>();
        sheet.works().forEach(work -> work.pieces().forEach(piece -> timbers.put(piece.mark(), new Timber(work.bed().section().id(), piece.lengthMm()))));
        return timbers;
    }
}

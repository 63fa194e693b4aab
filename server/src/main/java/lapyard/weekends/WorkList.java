package lapyard.weekends;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import lapyard.construction.BedWork;
import lapyard.construction.Course;
import lapyard.construction.Piece;
import lapyard.construction.SlatCut;
import lapyard.geometry.Jts;
import lapyard.geometry.Measure;
import lapyard.plan.Bed;
import lapyard.plan.Crew;
import lapyard.plan.Fill;
import lapyard.plan.GardenPath;
import lapyard.plan.Lifting;
import lapyard.plan.Rate;
import lapyard.weekends.GardenTask.After;
import lapyard.weekends.GardenTask.Share;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;
import lapyard.working.Whole;

/**
 * The order of work of a garden as tasks with their time. What would be hidden comes first: notches before course 1 is
 * fixed, all coats before base and liner, the base with its drain gaps before the liner.
 */
public final class WorkList {
    /**
     * A bed with all its quantities, those of ground and fill among them.
     *
     * @param stripMinutes of its part of the bearer strips at the saw, ripped, trimmed and cut
     */
    public record BedLoad(BedWork work, List<Quantity> quantities, double stripMinutes) {
        public BedLoad {
            quantities = List.copyOf(quantities);
        }

        double amount(QuantityKind kind) {
            return Quantity.sum(quantities, kind);
        }
    }

    /** @param stone whether sub-base or gravel is laid */
    public record PathLoad(GardenPath path, List<Quantity> quantities, boolean stone) {
        public PathLoad {
            quantities = List.copyOf(quantities);
        }
    }

    /**
     * One day at the saw, as long as it takes.
     *
     * @param weekend   of the beds that it cuts for
     * @param cuts      square ones, those that trim an end among them
     * @param settings  of the stop, and of the saw off square
     * @param slanted   cuts off square
     * @param boards    how many are put on it
     * @param heavyKg   for each square cut of a board that is still more than one person lifts, what it then weighs
     * @param anew      marks of what is sawn, where that is what is left of a day that is over; else empty
     */
    public record SawLoad(int weekend, int cuts, int slanted, int settings, int boards, List<Double> heavyKg, Set<String> anew) {
        public SawLoad {
            heavyKg = List.copyOf(heavyKg);
            anew = Set.copyOf(anew);
        }

        public SawLoad(int weekend, int cuts, int slanted, int settings, int boards, List<Double> heavyKg) {
            this(weekend, cuts, slanted, settings, boards, heavyKg, Set.of());
        }

        /** Whether pieces of a bed are sawn on it. */
        private boolean cutsFor(BedLoad load) {
            return weekend == load.work().bed().stage() && (anew.isEmpty() || load.work().pieces().stream().anyMatch(piece -> anew.contains(piece.mark())));
        }

        /** Both on one day. */
        public SawLoad with(SawLoad more) {
            List<Double> heavy = new ArrayList<>(heavyKg);
            heavy.addAll(more.heavyKg);
            Set<String> both = new HashSet<>(anew);
            both.addAll(more.anew);
            return new SawLoad(weekend, cuts + more.cuts, slanted + more.slanted, settings + more.settings, boards + more.boards, heavy, both);
        }
    }

    /** A path this close to a bed is what barrows run on when it is filled. */
    private static final double BARROW_WAY_MM = 1500;

    private final Crew crew;
    private final Lifting lifting;
    private final double barrowLitres;
    private final int painters;
    private final boolean imperial;
    private final List<GardenTask> works = new ArrayList<>();

    private WorkList(Crew crew, Lifting lifting, double barrowLitres, int painters, boolean imperial) {
        this.crew = crew;
        this.lifting = lifting;
        this.barrowLitres = barrowLitres;
        this.painters = painters;
        this.imperial = imperial;
    }

    /**
     * Tasks in the order of work.
     *
     * @param painters who share a coat
     * @param imperial measures in which the amounts of a task are written
     */
    static List<GardenTask> of(Crew crew, Lifting lifting, double barrowLitres, int painters, boolean imperial, List<BedLoad> beds,
            List<PathLoad> paths, List<SawLoad> saw) {
        WorkList list = new WorkList(crew, lifting, barrowLitres, painters, imperial);
        saw.forEach(list::sawDay);
        paths.forEach(list::path);
        for (BedLoad bed : beds) list.bed(bed, paths, saw.stream().filter(day -> day.cutsFor(bed)).findFirst());
        return List.copyOf(list.works);
    }

    private void sawDay(SawLoad day) {
        double minutes = (day.cuts() + day.slanted()) * crew.minutes(Rate.CUT) + day.settings() * crew.minutes(Rate.SETTING);
        double heaviest = day.heavyKg().stream().mapToDouble(Double::doubleValue).max().orElse(0);
        double lifted = day.heavyKg().size() * crew.minutes(Rate.CUT);
        List<String> cautions = new ArrayList<>(List.of(
                "eyes, ears and hands: read the saw's own instructions first",
                "treated dust: outdoors, with a mask"));
        if (lifted > 0) cautions.add("boards up to " + kg(heaviest) + ": " + said(heaviest));
        works.add(new GardenTask("saw." + day.weekend(), "saw", "", Step.SAW, day.weekend(), "cut for stage " + day.weekend(),
                shared(lifted, heaviest, minutes - lifted), false, List.of(), List.of(),
                List.of(Measure.counted(day.boards(), "board") + ", "
                        + (day.slanted() == 0 ? Measure.counted(day.cuts(), "cut") : day.cuts() + " square and " + Measure.counted(day.slanted(), "slanted cut"))
                        + " at " + Measure.counted(day.settings(), "setting")), cautions));
    }

    private void path(PathLoad load) {
        double area = Quantity.sum(load.quantities(), QuantityKind.PATH_AREA);
        double edging = Quantity.sum(load.quantities(), QuantityKind.EDGING_LENGTH);
        String id = load.path().id();
        works.add(new GardenTask("path." + id, "path " + id, "", Step.PATH, 0, "lay path " + id,
                List.of(Share.alone(area * crew.minutes(load.stone() ? Rate.STONE_PATH : Rate.PATH) + edging * crew.minutes(Rate.EDGING))), false, List.of(), List.of(),
                List.of(Measure.SQUARE_METRES.written(area, 1, imperial)), List.of("keep it clear: barrows and timbers come along it")));
    }

    private void bed(BedLoad load, List<PathLoad> paths, Optional<SawLoad> sawn) {
        Map<Integer, List<Piece>> courses = new HashMap<>();
        for (Course course : load.work().frame().courses()) courses.put(course.number(), course.pieces());
        After ready = ground(load, courses.getOrDefault(1, List.of()));
        GardenTask walls = stack(load, courses, marked(load, ready, sawn));
        GardenTask coated = coats(load, walls);
        GardenTask floored = floor(load, walls, coated);
        fill(load, paths, lined(load, coated, floored));
    }

    /** Set out, dug and poured, or made level or scribed to. */
    private After ground(BedLoad load, List<Piece> firstCourse) {
        GardenTask last = add(load, Step.SET_OUT, Step.SET_OUT.label, crew.minutes(Rate.SET_OUT), List.of(), List.of(),
                List.of("look for pipes and cables before a peg goes in"));
        double dig = load.amount(QuantityKind.DIG);
        double concrete = load.amount(QuantityKind.CONCRETE);
        double spoil = Whole.up(load.amount(QuantityKind.SPOIL_LOOSE) * 1000 / barrowLitres);
        double stone = load.amount(QuantityKind.SUB_BASE);
        if (dig > 0) {
            last = add(load, Step.DIG, Step.DIG.label, dig * crew.minutes(Rate.DIG) + spoil * crew.minutes(Rate.BARROW), after(last),
                    List.of(m3(dig) + " out, " + Measure.counted((long) spoil, "barrow")),
                    List.of("look for pipes and cables before digging"));
        }
        if (concrete > 0) {
            last = add(load, Step.POUR, stone > 0 ? "lay the sub-base, pour" : Step.POUR.label,
                    stone * crew.minutes(Rate.SUB_BASE) + concrete * crew.minutes(Rate.POUR), after(last),
                    List.of(m3(concrete) + " of concrete" + (stone > 0 ? ", " + m3(stone) + " of sub-base" : "")), List.of("wet concrete burns: gloves and boots"));
            return new After(last.id(), crew.waits().cureDays(), "concrete cures");
        }
        double wallM = firstCourse.stream().mapToDouble(Piece::lengthMm).sum() / 1000;
        last = add(load, Step.GROUND, Step.GROUND.label,
                load.amount(QuantityKind.SCRIBE_MOST) > 0 ? crew.minutes(Rate.SCRIBE) : wallM * crew.minutes(Rate.GROUND), after(last), List.of(), List.of());
        return new After(last.id(), 0, "ground is ready");
    }

    /** Marks and notches: what course 1 waits for, with the ground. */
    private List<After> marked(BedLoad load, After ground, Optional<SawLoad> sawn) {
        Bed bed = load.work().bed();
        List<Piece> pieces = load.work().pieces();
        List<After> cut = sawn.map(day -> new After("saw." + day.weekend(), 0, "pieces are cut")).stream().toList();
        GardenTask marked = add(load, Step.MARK, bed.making().seal().wanted() ? "mark pieces, seal ends" : Step.MARK.label,
                List.of(Share.alone(pieces.size() * crew.minutes(Rate.MARK))), cut, List.of(Measure.counted(pieces.size(), "piece")), List.of(), marks(pieces));
        After marks = new After(marked.id(), 0, "pieces are marked");
        int notched = load.work().frame().notches().size();
        List<After> first = new ArrayList<>(List.of(ground, marks));
        // marking may be over when pieces are sawn anew
        if (sawn.isPresent() && !sawn.get().anew().isEmpty()) first.addAll(cut);
        if (notched == 0) return first;
        GardenTask notches = add(load, Step.NOTCHES, Step.NOTCHES.label, List.of(Share.alone(notched * crew.minutes(Rate.NOTCH))), List.of(marks),
                List.of(notched + (notched == 1 ? " notch" : " notches")), List.of("cannot be cut once course 1 is fixed"), notched(load));
        first.add(new After(notches.id(), 0, "notches are hidden by course 1"));
        return first;
    }

    /** The base, with its strips cut before; where there is none, what was done last. */
    private GardenTask floor(BedLoad load, GardenTask walls, GardenTask last) {
        Bed bed = load.work().bed();
        int strips = load.work().bottom().strips().size();
        int slats = load.work().bottom().slats().stream().mapToInt(SlatCut::count).sum();
        if (!bed.inside().base().slatted() || slats + strips == 0) return last;
        List<After> after = dried(last, crew.waits().coatGapHours(), "base");
        if (load.stripMinutes() > 0) {
            GardenTask cut = new GardenTask(Step.STRIPS.task(bed.id()), "saw", bed.id(), Step.STRIPS, 0, Step.STRIPS.label,
                    List.of(Share.alone(load.stripMinutes())), false, List.of(new After(walls.id(), 0, "walls stand")), List.of(),
                    List.of(strips + " bearers and beams"),
                    List.of("rip with a riving knife, guard and push sticks: read the saw's own instructions first"));
            works.add(cut);
            after.add(new After(cut.id(), 0, "strips are cut"));
        }
        return add(load, Step.BASE, Step.BASE.label, (slats + strips) * crew.minutes(Rate.BASE), after,
                List.of(strips + " bearers and beams, " + slats + " slats"),
                List.of("drain gaps are hidden by the liner: look at them now"));
    }

    /** Once the walls stand, and their finish is dry where they have one; what comes next hides it. */
    private static List<After> dried(GardenTask walls, double hours, String next) {
        boolean coated = walls.step() == Step.COAT;
        return new ArrayList<>(List.of(new After(walls.id(), coated ? wholeDays(hours) : 0,
                coated ? "finish dries, and is hidden by the " + next : "walls stand")));
    }

    private GardenTask lined(BedLoad load, GardenTask finish, GardenTask last) {
        double liner = load.amount(QuantityKind.LINER_AREA);
        if (liner <= 0) return last;
        List<After> after = dried(finish, crew.waits().beforeLinerHours(), "liner");
        if (last != finish) after.add(new After(last.id(), 0, "base and drain gaps are hidden by the liner"));
        return add(load, Step.LINER, Step.LINER.label, liner * crew.minutes(Rate.LINER), after, List.of(Measure.SQUARE_METRES.written(liner, 1, imperial)), List.of());
    }

    private GardenTask stack(BedLoad load, Map<Integer, List<Piece>> courses, List<After> first) {
        boolean single = !courses.containsKey(2);
        GardenTask last = course(load, Step.COURSE_1, Step.COURSE_1.label, List.of(courses.getOrDefault(1, List.of())), Rate.FIRST_COURSE, first,
                single ? 1.0 : 1.0 / courses.size(), single);
        List<List<Piece>> above = new ArrayList<>();
        for (int number = 2; courses.containsKey(number); number++) above.add(courses.get(number));
        if (above.isEmpty()) return last;
        int top = courses.size();
        return course(load, Step.COURSES, top == 2 ? "course 2" : "courses 2 to " + top, above, Rate.COURSE, after(last),
                (top - 1.0) / top, true);
    }

    /**
     * Course by course: its heavy timbers while the helpers are there, then the rest by one alone; brackets, plates and ties last.
     *
     * @param share of all courses, which is its share of the brackets and joint plates
     * @param top   whether the uppermost course is among them: all ties are put in with it
     */
    private GardenTask course(BedLoad load, Step step, String label, List<List<Piece>> courses, Rate rate, List<After> after, double share, boolean top) {
        List<Piece> pieces = courses.stream().flatMap(List::stream).toList();
        double heaviest = heaviestKg(load, pieces);
        List<Piece> heavy = heavy(load, pieces);
        List<Share> shares = new ArrayList<>();
        for (List<Piece> course : courses) {
            List<Piece> lifted = heavy(load, course);
            shares.addAll(shared(lifted.size() * crew.minutes(rate), heaviestKg(load, lifted), (course.size() - lifted.size()) * crew.minutes(rate)));
        }
        List<String> cautions = new ArrayList<>();
        List<String> loads = new ArrayList<>(List.of(Measure.counted(pieces.size(), "timber") + ", the heaviest " + kg(heaviest)));
        if (!heavy.isEmpty()) {
            loads.add(Measure.counted(heavy.size(), "lift") + " over " + kg(lifting.limitKg()) + ": " + String.join(", ", marks(heavy)));
            cautions.add(said(heaviest) + " to each lift over " + kg(lifting.limitKg()) + ": bend the knees, agree the word first");
        }
        cautions.add("saw, drill and driver: eyes and hands");
        List<String> fixed = new ArrayList<>();
        double fixing = fixing(load, QuantityKind.BRACKETS, share, Rate.BRACKET, "bracket", fixed)
                + fixing(load, QuantityKind.JOINT_PLATES, share, Rate.BRACKET, "joint plate", fixed)
                + (top ? fixing(load, QuantityKind.COURSE_TIES, 1, Rate.COURSE_TIE, "course tie", fixed)
                        + fixing(load, QuantityKind.CROSS_TIES, 1, Rate.CROSS_TIE, "cross tie", fixed)
                        + fixing(load, QuantityKind.POSTS, 1, Rate.POST, "post", fixed) : 0);
        if (fixing > 0) {
            shares.add(Share.alone(fixing));
            loads.add(String.join(", ", fixed));
        }
        return add(load, step, label, shares, after, loads, cautions, marks(pieces));
    }

    private double fixing(BedLoad load, QuantityKind kind, double share, Rate rate, String label, List<String> loads) {
        double count = load.amount(kind) * share;
        if (count > 0) loads.add(Measure.counted(Math.round(count), label));
        return count * crew.minutes(rate);
    }

    private List<Piece> heavy(BedLoad load, List<Piece> pieces) {
        return pieces.stream().filter(piece -> lifting.heavy(load.work().massKg(piece))).toList();
    }

    private static double heaviestKg(BedLoad load, List<Piece> pieces) {
        return pieces.stream().mapToDouble(load.work()::massKg).max().orElse(0);
    }

    /** What is lifted together, then what one does alone. */
    private List<Share> shared(double liftedMinutes, double heaviestKg, double aloneMinutes) {
        List<Share> shares = new ArrayList<>();
        if (liftedMinutes > 0) shares.add(new Share(lifting.hands(heaviestKg), true, liftedMinutes));
        if (aloneMinutes > 0 || shares.isEmpty()) shares.add(Share.alone(aloneMinutes));
        return shares;
    }

    private String said(double kg) {
        return lifting.people(kg) + " people" + (lifting.beyondCrew(kg) ? ", or wheels" : "");
    }

    private GardenTask coats(BedLoad load, GardenTask walls) {
        Bed bed = load.work().bed();
        double area = load.amount(QuantityKind.FINISH_AREA);
        if (!bed.making().finish().wanted() || area <= 0) return walls;
        GardenTask last = walls;
        for (int coat = 1; coat <= bed.making().finish().coats(); coat++) {
            List<After> after = coat == 1
                    ? List.of(new After(last.id(), 0, "walls stand"))
                    : List.of(new After(last.id(), wholeDays(crew.waits().coatGapHours()), "coat " + (coat - 1) + " dries"));
            GardenTask next = new GardenTask(Step.COAT.task(bed.id(), coat), "bed " + bed.id(), bed.id(), Step.COAT, coat, "coat " + coat,
                    List.of(new Share(painters, false, area * crew.minutes(Rate.COAT) / painters)), true, after, List.of(), List.of(Measure.SQUARE_METRES.written(area, 1, imperial)),
                    List.of("oily rags can catch fire by themselves: dry them spread out", "only on a dry day"));
            works.add(next);
            last = next;
        }
        return last;
    }

    private void fill(BedLoad load, List<PathLoad> paths, GardenTask lined) {
        double later = load.amount(QuantityKind.BARROWS_TOP_UP);
        double barrows = load.amount(QuantityKind.BARROWS) - later;
        if (barrows <= 0) return;
        List<After> after = new ArrayList<>(List.of(new After(lined.id(), 0, "it is ready for soil")));
        for (PathLoad path : paths) {
            if (distanceMm(load.work().bed(), path.path()) <= BARROW_WAY_MM + path.path().widthMm() / 2) {
                after.add(new After("path." + path.path().id(), 0, "barrows run on it"));
            }
        }
        GardenTask fill = add(load, Step.FILL, Step.FILL.label, barrows * crew.minutes(Rate.BARROW), after,
                List.of(Measure.counted((long) barrows, "barrow") + ", " + Measure.TONNES.written((load.amount(QuantityKind.SOIL_LOOSE) - load.amount(QuantityKind.SOIL_TOP_UP)) * Fill.LOOSE_KG_M3 / 1000, 1, imperial)),
                List.of("a barrow of soil is about " + kg(barrowLitres * Fill.LOOSE_KG_M3 / 1000) + ": plank over edges, no hurry"));
        GardenTask plant = add(load, Step.PLANT, Step.PLANT.label, load.amount(QuantityKind.INNER_AREA) * crew.minutes(Rate.PLANT), after(fill), List.of(), List.of());
        works.add(new GardenTask(Step.TOP_UP.task(plant.bed()), plant.place(), plant.bed(), Step.TOP_UP, 0, Step.TOP_UP.label,
                List.of(Share.alone(crew.minutes(Rate.TOP_UP) + later * crew.minutes(Rate.BARROW))), false, List.of(new After(fill.id(), crew.waits().settleDays(), "soil settles")), List.of(), List.of(), List.of()));
    }

    private List<String> notched(BedLoad load) {
        Set<String> walls = new LinkedHashSet<>();
        load.work().frame().notches().forEach(notch -> walls.add(notch.wall()));
        return marks(load.work().pieces().stream().filter(piece -> piece.course() == 1 && walls.contains(piece.wall())).toList());
    }

    private GardenTask add(BedLoad load, Step step, String label, double minutes, List<After> after, List<String> loads, List<String> cautions) {
        return add(load, step, label, List.of(Share.alone(minutes)), after, loads, cautions, List.of());
    }

    private GardenTask add(BedLoad load, Step step, String label, List<Share> shares, List<After> after, List<String> loads,
            List<String> cautions, List<String> marks) {
        String bed = load.work().bed().id();
        GardenTask work = new GardenTask(step.task(bed), "bed " + bed, bed, step, 0, label, shares, false, after, marks, loads, cautions);
        works.add(work);
        return work;
    }

    private static List<After> after(GardenTask work) {
        return List.of(new After(work.id(), 0, work.label()));
    }

    private static List<String> marks(List<Piece> pieces) {
        return pieces.stream().map(Piece::mark).toList();
    }

    /** A wait of 24 hours runs from a day's work to the next day's, however late in the day the work was done. */
    static int wholeDays(double hours) {
        return (int) Whole.up(hours / 24);
    }

    private String kg(double kg) {
        return Measure.KG.plain(kg, 1, imperial);
    }

    private String m3(double m3) {
        return Measure.CUBIC_METRES.written(m3, 2, imperial);
    }

    private static double distanceMm(Bed bed, GardenPath path) {
        return Jts.area(bed.inYard().corners()).distance(Jts.line(path.line()));
    }
}

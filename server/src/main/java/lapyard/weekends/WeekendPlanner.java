package lapyard.weekends;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import lapyard.plan.Crew;
import lapyard.plan.Crew.Person;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Lifting;
import lapyard.plan.Place;
import lapyard.plan.Place.What;
import lapyard.plan.WayKind;
import lapyard.stages.StagingProblem;
import lapyard.stages.StagingResult;
import lapyard.stages.StagingSolver;
import lapyard.weekends.WorkList.BedLoad;
import lapyard.weekends.WorkList.PathLoad;
import lapyard.weekends.WorkList.SawLoad;
import lapyard.working.Effort;
import lapyard.working.Whole;

/** Schedules the tasks of the garden on the crew's days. */
public final class WeekendPlanner {
    /** For a plan that follows each change of the garden. */
    public static final Effort FOLLOWING = Effort.ofSteps(400, 200);

    /** In which the fullest day is looked for, days. */
    private static final int YEAR_DAYS = 7 * 53;

    /** What is searched for: equal ones have equal results. */
    public record Staging(StagingProblem problem) {
        public int tasks() {
            return problem.tasks().size();
        }

        public StagingResult solved() {
            return StagingSolver.solve(problem, FOLLOWING);
        }
    }

    private final Crew crew;
    private final List<GardenTask> works;
    private final Map<String, Integer> fixedWeekends;
    private final Set<String> done;
    private final Map<String, Integer> notBefore;
    private CrewCalendar calendar;
    private final List<Finding> findings = new ArrayList<>();

    private WeekendPlanner(Crew crew, List<GardenTask> works, Map<String, Integer> fixedWeekends, Set<String> done, Map<String, Integer> notBefore) {
        this.crew = crew;
        this.works = works;
        this.fixedWeekends = fixedWeekends;
        this.done = done;
        this.notBefore = notBefore;
    }

    /**
     * @param lifting       how many people lift what, {@link #lifting}
     * @param barrowLitres  of one barrow load
     * @param imperial      measures in which the amounts of a task are written
     * @param fixedWeekends beds whose timber is to be stacked in a given weekend, by code
     * @param done          ids of tasks that need not be planned any more, with the day on which each was done
     * @param today         first day that can still be planned
     * @param schedule      answers with {@link Staging#solved}, or with what was solved for an equal one
     */
    public static Weekends of(
            Crew crew,
            Lifting lifting,
            double barrowLitres,
            boolean imperial,
            List<BedLoad> beds,
            List<PathLoad> paths,
            List<SawLoad> saw,
            Map<String, Integer> fixedWeekends,
            Map<String, Integer> done,
            int today,
            Function<Staging, StagingResult> schedule) {
        int painters = new CrewCalendar(crew, YEAR_DAYS).painters();
        List<GardenTask> works = WorkList.of(crew, lifting, barrowLitres, painters, imperial, beds, paths, saw);
        return new WeekendPlanner(crew, works, fixedWeekends, done.keySet(), done).plan(today, schedule);
    }

    /** The crew of a year, as its fullest day has it, with what each of them lifts. */
    public static Lifting lifting(Crew crew, double limitKg) {
        return new Lifting(limitKg, Math.max(1, new CrewCalendar(crew, YEAR_DAYS).lifters()));
    }

    private Weekends plan(int today, Function<Staging, StagingResult> schedule) {
        List<GardenTask> open = works.stream().filter(work -> !done.contains(work.id())).toList();
        double load = open.stream().mapToDouble(GardenTask::personHours).sum();
        calendar = CrewCalendar.enough(crew, load, crew.waits().cureDays() + crew.waits().settleDays() + today,
                fixedWeekends.values().stream().mapToInt(Integer::intValue).max().orElse(0));
        int lifted = open.stream().flatMap(work -> work.shares().stream()).filter(GardenTask.Share::lifts).mapToInt(GardenTask.Share::people).max().orElse(0);
        // what is lifted together waits for the one who comes late in the year
        if (Math.min(lifted, new CrewCalendar(crew, YEAR_DAYS).lifters()) > calendar.lifters()) calendar = new CrewCalendar(crew, YEAR_DAYS + calendar.days);
        if (!calendar.anyoneEver()) {
            findings.add(Finding.of(FindingKind.NOBODY_COMES, Place.of(What.CREW)).with("days", Fact.count(calendar.days, "days"))
                    .by(Fact.count(0, "people")).way(WayKind.TAKE_HOLIDAYS_OUT).way(WayKind.SAY_WHO_COMES));
            return new Weekends(List.of(), List.of(), List.of(), load, 0, 0, 0, List.copyOf(done), findings);
        }
        StagingResult result = schedule.apply(new Staging(problem(open, today)));
        return laidOut(open, today, result, load);
    }

    private StagingProblem problem(List<GardenTask> open, int today) {
        List<StagingProblem.Task> tasks = new ArrayList<>();
        Set<String> ids = new HashSet<>();
        Map<List<Object>, Integer> longest = new HashMap<>();
        open.forEach(work -> ids.add(work.id()));
        for (GardenTask work : open) {
            List<StagingProblem.Wait> after = new ArrayList<>();
            for (GardenTask.After earlier : work.after()) {
                if (!ids.contains(earlier.task())) continue;
                String id = earlier.task();
                if (earlier.days() > 0) {
                    // a night is one unit of a clock of its own: so many nights lie between the two
                    id = work.id() + " waits for " + earlier.task();
                    tasks.add(new StagingProblem.Task(id, earlier.days(), List.of(0, 0, 0, 0, 1),
                            List.of(new StagingProblem.Wait(earlier.task(), 0)), false, "", 0, OptionalInt.empty()));
                }
                after.add(new StagingProblem.Wait(id, 0));
            }
            int from = firstDay(work, ids, today) * calendar.unitsADay;
            Integer fixed = fixedWeekends.get(work.bed());
            OptionalInt due = fixed != null && work.step().lays()
                    ? OptionalInt.of((calendar.lastDay(fixed) + 1) * calendar.unitsADay)
                    : OptionalInt.empty();
            boolean later = work.step() == Step.TOP_UP;
            List<Stretch> shares = stretches(work);
            for (Stretch share : shares) {
                boolean last = share == shares.get(shares.size() - 1);
                tasks.add(new StagingProblem.Task(share.id(), share.units(),
                        List.of(share.people(), share.lifts() ? share.people() : 0, work.step().atSaw() ? 1 : 0, work.dry() ? 1 : 0, 0),
                        // what fits a day is not broken off for the night
                        after, share.units() <= longest.computeIfAbsent(List.of(share.people(), share.lifts(), work.dry()),
                                kind -> longestStretch(work, share)),
                        later ? "" : work.bed(), from, last ? due : OptionalInt.empty()));
                after = List.of(new StagingProblem.Wait(share.id(), 0));
            }
        }
        return new StagingProblem("weekends", calendar.capacities(), tasks,
                java.util.Optional.of(calendar.calendar()), 7 * calendar.unitsADay);
    }

    /** The day before which a task cannot begin, for what is done already and for the weekend fixed for its bed. */
    private int firstDay(GardenTask work, Set<String> open, int today) {
        Integer fixed = fixedWeekends.get(work.bed());
        int first = fixed != null && work.step() == Step.COURSE_1 ? Math.max(today, calendar.firstDay(fixed)) : today;
        for (GardenTask.After earlier : work.after()) {
            if (!open.contains(earlier.task())) first = Math.max(first, notBefore.getOrDefault(earlier.task(), 0) + earlier.days());
        }
        return first;
    }

    /** A share of a task as the clock has it, under an id of its own; the last one has the task's. */
    private record Stretch(String id, int people, boolean lifts, int units) {}

    /** Shares in whole units that add up to the task's; what falls under a unit goes to the share behind it. */
    private static List<Stretch> stretches(GardenTask work) {
        List<Stretch> stretches = new ArrayList<>();
        double minutes = 0;
        int units = 0;
        for (GardenTask.Share share : work.shares()) {
            minutes += share.minutes();
            int own = (int) Whole.up(minutes / CrewCalendar.UNIT_MINUTES) - units;
            units += own;
            if (own > 0) stretches.add(new Stretch(work.id() + " share " + stretches.size(), share.people(), share.lifts(), own));
        }
        Stretch last = stretches.isEmpty() ? new Stretch("", 1, false, 0) : stretches.remove(stretches.size() - 1);
        stretches.add(new Stretch(work.id(), last.people(), last.lifts(), last.units()));
        return stretches;
    }

    private Weekends laidOut(List<GardenTask> open, int today, StagingResult result, double load) {
        Map<Integer, List<Weekends.Part>> byDay = new TreeMap<>();
        Map<Integer, Double> used = new TreeMap<>();
        Map<String, Weekends.Task> tasks = new LinkedHashMap<>();
        int last = 0;
        int end = 0;
        double left = 0;
        for (GardenTask work : works) {
            if (done.contains(work.id())) {
                int day = notBefore.getOrDefault(work.id(), 0);
                tasks.put(work.id(), new Weekends.Task(work, day, day, true));
                end = Math.max(end, day);
                if (work.step() != Step.TOP_UP) last = Math.max(last, day);
                continue;
            }
            List<Stretch> shares = stretches(work);
            int from = result.starts().get(shares.get(0).id());
            int to = result.ends().get(work.id());
            int firstDay = calendar.dayOf(from);
            int lastDay = to > from ? calendar.dayOf(to - 1) : firstDay;
            tasks.put(work.id(), new Weekends.Task(work, firstDay, lastDay, false));
            parts(work, shares, result, byDay, used);
            if (shares.stream().anyMatch(share -> share.units() > 0 && !worked(work, share, result.ends().get(share.id()) - 1))) left += work.personHours();
            end = Math.max(end, lastDay);
            if (work.step() != Step.TOP_UP) last = Math.max(last, lastDay);
        }
        List<Weekends.Wait> waits = waits(open, today, tasks);
        if (left > 0) {
            findings.add(Finding.of(FindingKind.WORK_LEFT, Place.of(What.CREW)).with("last", Fact.name(calendar.said(calendar.days - 1)))
                    .by(new Fact.PersonHours(left)).way(WayKind.SAY_WHO_COMES).way(WayKind.LONGER_DAYS));
        }
        about(tasks, waits);
        int least = calendar.dayOf(Math.max(0, result.lowerBound() - 1));
        return new Weekends(days(today, end, byDay, used), List.copyOf(tasks.values()), waits, load, last, end, least, List.copyOf(done), findings);
    }

    /** Days on which somebody is there, up to the last that anything is done on. */
    private List<Weekends.Day> days(int today, int end, Map<Integer, List<Weekends.Part>> byDay, Map<Integer, Double> used) {
        List<Weekends.Day> days = new ArrayList<>();
        for (int day = 0; day <= end; day++) {
            List<Person> there = calendar.there(day);
            if (there.isEmpty()) continue;
            List<Weekends.Part> parts = new ArrayList<>(byDay.getOrDefault(day, List.of()));
            parts.sort(Comparator.comparingInt(Weekends.Part::fromMinute));
            days.add(new Weekends.Day(day, calendar.weekend(day), calendar.date(day), calendar.dayOfWeek(day), calendar.wet(day),
                    there.stream().map(Person::name).toList(), day < today ? 0 : calendar.hoursThere(day), used.getOrDefault(day, 0.0), parts));
        }
        return days;
    }

    /** Nights that a task waits for another, those that are not over yet. */
    private static List<Weekends.Wait> waits(List<GardenTask> open, int today, Map<String, Weekends.Task> tasks) {
        List<Weekends.Wait> waits = new ArrayList<>();
        for (GardenTask work : open) {
            for (GardenTask.After after : work.after()) {
                Weekends.Task earlier = tasks.get(after.task());
                if (after.days() > 0 && earlier != null && earlier.lastDay() + after.days() > today) {
                    waits.add(new Weekends.Wait(work.id(), after.task(), after.why(), earlier.lastDay(), earlier.lastDay() + after.days()));
                }
            }
        }
        return waits;
    }

    /** What is done of a task without a break, one part or more a day, and the person-hours that it takes. */
    private void parts(GardenTask work, List<Stretch> shares, StagingResult result, Map<Integer, List<Weekends.Part>> byDay, Map<Integer, Double> used) {
        List<int[]> parts = new ArrayList<>();
        for (Stretch share : shares) {
            for (int unit = result.starts().get(share.id()); unit < result.ends().get(share.id()); unit++) {
                if (!worked(work, share, unit)) continue;
                int day = calendar.dayOf(unit);
                int at = unit % calendar.unitsADay;
                if (parts.isEmpty() || parts.get(parts.size() - 1)[0] != day || parts.get(parts.size() - 1)[2] != at) {
                    parts.add(new int[] {day, at, at, 0, 0});
                }
                int[] part = parts.get(parts.size() - 1);
                part[2] = at + 1;
                part[3] = Math.max(part[3], share.people());
                part[4] += share.people() > 1 ? 1 : 0;
                used.merge(day, share.people() * CrewCalendar.UNIT_MINUTES / 60.0, Double::sum);
            }
        }
        for (int i = 0; i < parts.size(); i++) {
            int[] one = parts.get(i);
            byDay.computeIfAbsent(one[0], day -> new ArrayList<>()).add(new Weekends.Part(work.id(), one[1] * CrewCalendar.UNIT_MINUTES,
                    one[2] * CrewCalendar.UNIT_MINUTES, one[3], one[4] * CrewCalendar.UNIT_MINUTES, i + 1, parts.size()));
        }
    }

    private int longestStretch(GardenTask work, Stretch share) {
        int longest = 0;
        for (int day = 0; day < calendar.days; day++) {
            int run = 0;
            while (run < calendar.unitsADay && worked(work, share, day * calendar.unitsADay + run)) run++;
            longest = Math.max(longest, run);
        }
        return longest;
    }

    private boolean worked(GardenTask work, Stretch share, int unit) {
        int day = calendar.dayOf(unit);
        return !(work.dry() && calendar.wet(day)) && calendar.hands(day, unit % calendar.unitsADay, share.lifts()) >= share.people();
    }

    private void about(Map<String, Weekends.Task> tasks, List<Weekends.Wait> waits) {
        for (Weekends.Wait wait : waits) {
            if (tasks.get(wait.after()).work().step() != Step.POUR) continue;
            Weekends.Task walls = tasks.get(wait.task());
            findings.add(Finding.of(FindingKind.CONCRETE_CURES, Place.bed(walls.work().bed()).then(Place.What.WALL))
                    .with("from", Fact.name(calendar.said(wait.fromDay())))
                    .with("to", Fact.name(calendar.said(wait.toDay()))).by(Fact.count(wait.toDay() - wait.fromDay(), "days"))
                    .way(WayKind.POUR_EARLIER).way(WayKind.LEVEL_INSTEAD));
        }
        fixed(tasks);
        if (crew.dates().start().isPresent()) {
            crew.dates().wet().stream().sorted().forEach(date -> findings.add(Finding.of(FindingKind.DAY_WET, Place.field("day " + date)).with("date", new Fact.Day(date))
                    .way(WayKind.DAY_DRY)));
        }
    }

    /** Beds that do not stand by the end of the weekend that was fixed for them, weekend by weekend. */
    private void fixed(Map<String, Weekends.Task> tasks) {
        Map<Integer, List<String>> late = new TreeMap<>();
        Map<String, Integer> stands = new LinkedHashMap<>();
        tasks.values().forEach(task -> {
            if (!task.done() && task.work().step().lays()) stands.merge(task.work().bed(), task.lastDay(), Math::max);
        });
        stands.forEach((bed, day) -> {
            Integer weekend = fixedWeekends.get(bed);
            if (weekend != null && calendar.comes(weekend) && day > calendar.lastDay(weekend)) late.computeIfAbsent(weekend, w -> new ArrayList<>()).add(bed);
        });
        late.forEach((weekend, beds) -> {
            int limit = calendar.lastDay(weekend);
            double there = 0;
            for (int day = 0; day <= limit; day++) there += calendar.hoursThere(day);
            double wanted = 0;
            for (GardenTask work : works) {
                Integer own = fixedWeekends.get(work.bed());
                boolean cut = work.step() == Step.SAW && work.number() <= weekend;
                if (!done.contains(work.id()) && (cut || work.step().stacks && own != null && own <= weekend)) wanted += work.personHours();
            }
            int latest = beds.stream().mapToInt(stands::get).max().orElse(limit);
            double over = wanted - there;
            Place place = Place.of(What.WEEKEND, String.valueOf(weekend));
            Finding found = over > 0.05
                    ? Finding.of(FindingKind.OVERBOOKED, place).with("work", new Fact.PersonHours(wanted)).with("available", new Fact.PersonHours(there))
                            .by(new Fact.PersonHours(over))
                    : Finding.of(FindingKind.STANDS_LATE, place).by(Fact.count(latest - limit, "days"));
            // a crew that nobody described is our guess: what it cannot do is no fault of the garden
            findings.add(found.with("beds", Fact.names(beds)).with("stand", Fact.name(calendar.said(latest)))
                    .weighing(crew.described() ? Finding.Weight.SNAG : Finding.Weight.NOTE)
                    .way(WayKind.LATER_WEEKEND, Fact.name(beds.get(beds.size() - 1))).way(WayKind.MORE_PEOPLE).way(WayKind.LONGER_DAYS));
        });
    }
}

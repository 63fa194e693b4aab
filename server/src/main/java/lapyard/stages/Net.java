package lapyard.stages;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import lapyard.stages.StagingProblem.Calendar;
import lapyard.stages.StagingProblem.Task;
import lapyard.stages.StagingProblem.Wait;
import lapyard.working.BrokenRule.Rule;
import lapyard.working.BrokenRule;

/** A problem in numbers, checked: tasks are 0 to n - 1 in the order given. */
final class Net {
    /** Clock units times resources that are kept at most. */
    static final int FURTHEST = 40_000_000;

    final int n;
    final int period;
    final int resources;
    final String[] ids;
    final int[] duration;
    /** The resources that each task uses, and how much of each. */
    final int[][] used;
    final int[][] amount;
    /** Number of each task's kind: those of one kind use as much of each resource in the same hours. */
    final int[] kind;
    final int kinds;
    final boolean[] unbroken;
    final int[] notBefore;
    final int[] due;
    /** Number of the task's group, -1 for none. */
    final int[] group;
    final int groups;
    final int[][] before;
    final int[][] beforeLag;
    final int[][] after;
    final int[][] afterLag;
    /** Each task behind all that it waits for. */
    final int[] inOrder;
    final int[] place;
    final Hours[] hours;
    final int[] capacity;
    /** Whether each unit of the cycle is worked at all. */
    private final boolean[] cycle;
    /** Amount there in each unit of the cycle; null where it is always the capacity. */
    final int[][] there;

    Net(StagingProblem problem) {
        List<Task> tasks = problem.tasks();
        n = tasks.size();
        period = problem.period();
        resources = problem.resources().size();
        capacity = capacity(problem.resources());
        ids = new String[n];
        duration = new int[n];
        used = new int[n][];
        amount = new int[n][];
        unbroken = new boolean[n];
        notBefore = new int[n];
        due = new int[n];
        group = new int[n];
        Map<String, Integer> numbers = new HashMap<>();
        Map<String, Integer> groupNumbers = new LinkedHashMap<>();
        for (int i = 0; i < n; i++) {
            if (numbers.put(tasks.get(i).id(), i) != null) throw BrokenRule.twice("tasks", "Task", tasks.get(i).id());
            enter(i, tasks.get(i), groupNumbers);
        }
        groups = groupNumbers.size();
        before = new int[n][];
        beforeLag = new int[n][];
        after = new int[n][];
        afterLag = new int[n][];
        waits(tasks, numbers);
        inOrder = inOrder();
        place = new int[n];
        for (int i = 0; i < n; i++) place[inOrder[i]] = i;
        there = there(problem);
        List<Boolean> worked = problem.calendar().map(Calendar::cycle).orElse(List.of(true));
        cycle = new boolean[worked.size()];
        for (int t = 0; t < cycle.length; t++) cycle[t] = worked.get(t);
        hours = hours(problem);
        kind = new int[n];
        kinds = enterKinds();
        reach();
    }

    private static int[] capacity(List<Integer> resources) {
        for (int r = 0; r < resources.size(); r++) BrokenRule.between("resources", "resource " + (r + 1), resources.get(r), 0, Integer.MAX_VALUE, "");
        return resources.stream().mapToInt(Integer::intValue).toArray();
    }

    /** One task's own figures, checked; a group that is named for the first time gets the next number. */
    private void enter(int i, Task task, Map<String, Integer> groupNumbers) {
        ids[i] = task.id();
        BrokenRule.between(task(i), "duration", task.duration(), 0, Integer.MAX_VALUE, "clock units");
        BrokenRule.between(task(i), "notBefore", task.notBefore(), 0, FURTHEST - 1, "clock units");
        duration[i] = task.duration();
        unbroken[i] = task.unbroken();
        notBefore[i] = task.notBefore();
        due[i] = task.due().orElse(Integer.MAX_VALUE);
        group[i] = task.group().isEmpty() ? -1 : groupNumbers.computeIfAbsent(task.group(), g -> groupNumbers.size());
        uses(i, task);
    }

    private void uses(int i, Task task) {
        if (task.uses().size() != resources)
            throw BrokenRule.of(Rule.TASK_USES_LISTED, task(i)).with("listed", task.uses().size(), "amounts").with("resources", resources, "resources");
        int[] each = new int[resources];
        int count = 0;
        for (int r = 0; r < resources; r++) {
            int wanted = task.uses().get(r);
            BrokenRule.between(task(i), "uses of resource " + (r + 1), wanted, 0, Integer.MAX_VALUE, "");
            if (wanted > capacity[r])
                throw BrokenRule.of(Rule.TASK_USES_MORE, task(i)).with("wanted", wanted, "").with("resource", String.valueOf(r + 1)).with("there", capacity[r], "");
            if (wanted > 0) each[count++] = r;
        }
        used[i] = Arrays.copyOf(each, count);
        amount[i] = new int[count];
        for (int u = 0; u < count; u++) amount[i][u] = task.uses().get(used[i][u]);
    }

    private void waits(List<Task> tasks, Map<String, Integer> numbers) {
        List<List<int[]>> behind = new ArrayList<>();
        for (int i = 0; i < n; i++) behind.add(new ArrayList<>());
        for (int i = 0; i < n; i++) {
            Map<Integer, Integer> lags = new LinkedHashMap<>();
            for (Wait wait : tasks.get(i).after()) {
                Integer earlier = numbers.get(wait.task());
                if (earlier == null) throw BrokenRule.of(Rule.FIELD_NO_SUCH, task(i) + ", after").with("what", "task").with("value", wait.task());
                BrokenRule.between(task(i) + ", after " + wait.task(), "lag", wait.lag(), 0, FURTHEST - 1, "clock units");
                lags.merge(earlier, wait.lag(), Math::max);
            }
            before[i] = lags.keySet().stream().mapToInt(Integer::intValue).toArray();
            beforeLag[i] = lags.values().stream().mapToInt(Integer::intValue).toArray();
            for (int p = 0; p < before[i].length; p++) behind.get(before[i][p]).add(new int[] {i, beforeLag[i][p]});
        }
        for (int i = 0; i < n; i++) {
            after[i] = behind.get(i).stream().mapToInt(pair -> pair[0]).toArray();
            afterLag[i] = behind.get(i).stream().mapToInt(pair -> pair[1]).toArray();
        }
    }

    private int[] inOrder() {
        int[] open = new int[n];
        Deque<Integer> free = new ArrayDeque<>();
        for (int i = 0; i < n; i++) {
            open[i] = before[i].length;
            if (open[i] == 0) free.add(i);
        }
        int[] order = new int[n];
        int done = 0;
        while (!free.isEmpty()) {
            int task = free.poll();
            order[done++] = task;
            for (int next : after[task]) if (--open[next] == 0) free.add(next);
        }
        if (done < n) throw BrokenRule.of(Rule.TASK_CIRCLE, "tasks").with("circle", circle(open));
        return order;
    }

    private String circle(int[] open) {
        int at = 0;
        while (open[at] == 0) at++;
        // every task that is still waited for has such a one before it: going back must come round
        List<Integer> way = new ArrayList<>();
        while (!way.contains(at)) {
            way.add(at);
            for (int earlier : before[at]) {
                if (open[earlier] > 0) {
                    at = earlier;
                    break;
                }
            }
        }
        List<Integer> round = new ArrayList<>(way.subList(way.indexOf(at), way.size()));
        round.add(at);
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < round.size(); i++) {
            if (i == 6 && round.size() > 8) {
                text.append(" waits for ... (").append(round.size() - 1).append(" tasks in all)");
                break;
            }
            text.append(i == 0 ? "" : " waits for ").append('"').append(ids[round.get(i)]).append('"');
        }
        return text.toString();
    }

    private int[][] there(StagingProblem problem) {
        int[][] amounts = new int[resources][];
        if (problem.calendar().isEmpty()) return amounts;
        Calendar calendar = problem.calendar().get();
        if (!calendar.cycle().contains(true)) throw BrokenRule.of(Rule.CALENDAR_EMPTY, "calendar");
        if (!calendar.there().isEmpty() && calendar.there().size() != resources)
            throw BrokenRule.of(Rule.CALENDAR_LISTED, "calendar").with("listed", calendar.there().size(), "resources").with("wanted", resources, "resources");
        for (int r = 0; r < calendar.there().size(); r++) {
            List<Integer> each = calendar.there().get(r);
            if (each.isEmpty()) continue;
            if (each.size() != calendar.cycle().size())
                throw BrokenRule.of(Rule.CALENDAR_LISTED, "calendar, resource " + (r + 1)).with("listed", each.size(), "clock units").with("wanted", calendar.cycle().size(), "clock units");
            amounts[r] = each.stream().mapToInt(Integer::intValue).toArray();
        }
        return amounts;
    }

    private Hours[] hours(StagingProblem problem) {
        Hours[] own = new Hours[n];
        if (problem.calendar().isEmpty()) {
            Arrays.fill(own, new Hours(new boolean[] {true}));
            return own;
        }
        Map<List<Integer>, Hours> known = new HashMap<>();
        for (int i = 0; i < n; i++) {
            List<Integer> key = new ArrayList<>();
            for (int u = 0; u < used[i].length; u++) {
                if (there[used[i][u]] != null) {
                    key.add(used[i][u]);
                    key.add(amount[i][u]);
                }
            }
            own[i] = known.computeIfAbsent(key, this::hours);
            if (duration[i] > 0 && own[i].never()) throw BrokenRule.of(Rule.TASK_NEVER, task(i));
            if (unbroken[i] && duration[i] > own[i].longestRun())
                throw BrokenRule.of(Rule.TASK_UNBROKEN, task(i)).with("wanted", duration[i], "clock units").with("longest", own[i].longestRun(), "clock units");
        }
        return own;
    }

    /** @param uses numbers of resources, each with its amount behind it */
    private Hours hours(List<Integer> uses) {
        boolean[] works = cycle.clone();
        for (int u = 0; u < uses.size(); u += 2) {
            int[] hands = there[uses.get(u)];
            int wanted = uses.get(u + 1);
            for (int t = 0; t < works.length; t++) works[t] &= hands[t] >= wanted;
        }
        return new Hours(works);
    }

    private int enterKinds() {
        Map<List<Object>, Integer> numbers = new HashMap<>();
        for (int i = 0; i < n; i++) {
            List<Object> uses = new ArrayList<>(List.of(hours[i]));
            for (int u = 0; u < used[i].length; u++) {
                uses.add(used[i][u]);
                uses.add(amount[i][u]);
            }
            kind[i] = numbers.computeIfAbsent(uses, key -> numbers.size());
        }
        return numbers.size();
    }

    /** Refuses what would need more memory than any plan of work is worth. */
    private void reach() {
        double units = 0;
        for (int i = 0; i < n; i++) {
            units += duration[i] == 0 ? 0 : duration[i] * (double) cycleLength(i) / hours[i].worksACycle();
            units += Arrays.stream(beforeLag[i]).max().orElse(0);
            if (units * Math.max(1, resources) >= FURTHEST) throw BrokenRule.of(Rule.TASKS_FAR, task(i)).with("most", FURTHEST / Math.max(1, resources), "clock units");
        }
    }

    /** Clock units after which all repeats. */
    int cycleLength() {
        return cycle.length;
    }

    private int cycleLength(int i) {
        return hours[i].cycleLength();
    }

    boolean anyDue() {
        for (int unit : due) if (unit != Integer.MAX_VALUE) return true;
        return false;
    }

    /** What a task uses of a resource. */
    int amount(int task, int resource) {
        for (int u = 0; u < used[task].length; u++) if (used[task][u] == resource) return amount[task][u];
        return 0;
    }

    /** Tasks that are worked on with some of a resource, those that use most first. */
    int[] users(int resource) {
        return IntStream.range(0, n).filter(i -> duration[i] > 0 && amount(i, resource) > 0).boxed()
                .sorted(Comparator.comparingInt((Integer i) -> -amount(i, resource))).mapToInt(Integer::intValue).toArray();
    }

    /** Whether one of the two must end before the other begins, as together they need more than there is. */
    boolean apart(int i, int j) {
        // one that pauses while the other goes on may lie round it
        if (duration[i] == 0 || duration[j] == 0 || hours[i] != hours[j]) return false;
        for (int r : used[i]) if (amount(i, r) + amount(j, r) > capacity[r]) return true;
        return false;
    }

    /** What is there of a resource in a clock unit. */
    int there(int resource, int unit) {
        int[] each = there[resource];
        return each == null ? capacity[resource] : Math.min(capacity[resource], each[unit % each.length]);
    }

    boolean worked(int unit) {
        return cycle[unit % cycle.length];
    }

    /** What can be worked of a resource in a clock unit: nothing while nobody works. */
    int workable(int resource, int unit) {
        return worked(unit) ? there(resource, unit) : 0;
    }

    private String task(int i) {
        return "task " + ids[i];
    }
}

package lapyard.diagrams;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import lapyard.plan.Crew;
import lapyard.weekends.Weekends;

/**
 * Who does what on a day: each part of the work goes to those who are free when it begins, to whoever has done least so far;
 * what is lifted goes to those who can lift, other work to those who cannot where there are such.
 */
final class Hands {
    private Hands() {}

    /** Names for each part of a day, in its order; a part for which this way of sharing finds too few has the number alone. */
    static List<String> of(Weekends.Day day, Map<String, Weekends.Task> tasks, Crew crew) {
        Map<String, Boolean> lifts = new HashMap<>();
        crew.people().forEach(person -> lifts.put(person.name(), person.lifts()));
        Map<String, Integer> until = new HashMap<>();
        Map<String, Integer> minutes = new HashMap<>();
        List<String> hands = new ArrayList<>();
        for (Weekends.Part part : day.parts()) {
            boolean heavy = tasks.get(part.task()).work().lifts();
            List<String> free = day.people().stream()
                    .filter(name -> until.getOrDefault(name, 0) <= part.fromMinute())
                    .filter(name -> !heavy || lifts.getOrDefault(name, true))
                    .sorted(Comparator.comparing((String name) -> !heavy && lifts.getOrDefault(name, true))
                            .thenComparing(name -> minutes.getOrDefault(name, 0)))
                    .limit(part.people())
                    .toList();
            if (free.size() < part.people()) {
                hands.add(part.hands());
                continue;
            }
            boolean some = part.people() > 1 && part.togetherMinutes() < part.toMinute() - part.fromMinute();
            for (int i = 0; i < free.size(); i++) {
                int to = some && i > 0 ? part.fromMinute() + part.togetherMinutes() : part.toMinute();
                until.put(free.get(i), to);
                minutes.merge(free.get(i), to - part.fromMinute(), Integer::sum);
            }
            hands.add(String.join(", ", free) + (some ? "; together for " + part.togetherMinutes() + " min" : ""));
        }
        return hands;
    }
}

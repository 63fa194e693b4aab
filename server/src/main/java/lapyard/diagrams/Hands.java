package lapyard.diagrams;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import lapyard.plan.Crew;
import lapyard.weekends.Weekends;

/**
 * Who does what on a day: each part of the work goes to those who are free for the whole of it, to whoever has done least so
 * far; then a second pair of hands comes to what is lifted together for a while. What is lifted goes to those who can lift,
 * other work to those who cannot where there are such.
 *
 * @param busy minutes of the day in which somebody is at work
 */
record Hands(Weekends.Day day, Map<String, Weekends.Task> tasks, Map<String, Boolean> lifts, Map<String, BitSet> busy) {
    /** Names for each part of a day, in its order; a part for which this way of sharing finds too few has the number alone. */
    static List<String> of(Weekends.Day day, Map<String, Weekends.Task> tasks, Crew crew) {
        return new Hands(day, tasks, crew.people().stream().collect(Collectors.toMap(Crew.Person::name, Crew.Person::lifts, (one, other) -> other)),
                day.people().stream().collect(Collectors.toMap(name -> name, name -> new BitSet(), (one, same) -> one))).names();
    }

    private List<String> names() {
        List<List<String>> names = new ArrayList<>();
        for (Weekends.Part part : day.parts()) names.add(new ArrayList<>(take(part, some(part) ? 1 : part.people(), length(part), List.of())));
        List<String> words = new ArrayList<>();
        for (int i = 0; i < names.size(); i++) {
            Weekends.Part part = day.parts().get(i);
            List<String> own = names.get(i);
            if (some(part)) own.addAll(take(part, part.people() - 1, part.togetherMinutes(), own));
            words.add(own.size() < part.people() ? unnamed(part) : String.join(", ", own) + (some(part) ? "; together for " + part.togetherMinutes() + " min" : ""));
        }
        return words;
    }

    private static String unnamed(Weekends.Part part) {
        return part.people() == 1 ? "1 person" : part.people() + " people" + (some(part) ? " for " + part.togetherMinutes() + " min" : "");
    }

    private static int length(Weekends.Part part) {
        return part.toMinute() - part.fromMinute();
    }

    /** Whether all are needed for a while only. */
    private static boolean some(Weekends.Part part) {
        return part.people() > 1 && part.togetherMinutes() < length(part);
    }

    /** So many who have these minutes of a part to give, beside those who are at it; they have them no more. */
    private List<String> take(Weekends.Part part, int count, int minutes, List<String> at) {
        boolean heavy = tasks.get(part.task()).work().lifts();
        List<String> free = day.people().stream()
                .filter(name -> !at.contains(name) && free(part, name) >= minutes)
                .filter(name -> !heavy || lifts.getOrDefault(name, true))
                .sorted(Comparator.comparing((String name) -> !heavy && lifts.getOrDefault(name, true))
                        .thenComparing(name -> busy.get(name).cardinality()))
                .limit(count)
                .toList();
        for (String name : free) {
            BitSet own = busy.get(name);
            for (int i = 0; i < minutes; i++) own.set(own.nextClearBit(part.fromMinute()));
        }
        return free;
    }

    private int free(Weekends.Part part, String name) {
        return length(part) - busy.get(name).get(part.fromMinute(), part.toMinute()).cardinality();
    }
}

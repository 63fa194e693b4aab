package lapyard.job;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import lapyard.catalogue.Section;
import lapyard.construction.BedWork;
import lapyard.construction.Piece;
import lapyard.cutting.SawBoard;
import lapyard.geometry.Lengths;
import lapyard.job.JobSheet.SectionCutting;
import lapyard.plan.BedNames;
import lapyard.plan.Finding;
import lapyard.plan.Finding.Amount;
import lapyard.plan.Garden;
import lapyard.plan.Lifting;

/** What is too heavy for one person, the whole garden in one note a kind. Guides, not safe limits. */
final class Lifts {
    /** Pieces that a note names one by one; beyond that it counts them by weight. */
    private static final int NAMED = 12;

    private static final int WEIGHTS = 6;

    private record Lift(String bed, String mark, double kg) {}

    private Lifts() {}

    /** @param lifting the rule, with the crew's number */
    static List<Finding> findings(Garden garden, Lifting lifting, List<BedWork> works, List<SectionCutting> cutting) {
        Map<Integer, List<Lift>> byPeople = new TreeMap<>();
        for (BedWork work : works) {
            for (Piece piece : work.pieces()) {
                double kg = work.massKg(piece);
                if (lifting.heavy(kg)) {
                    byPeople.computeIfAbsent(Math.min(lifting.people(kg), lifting.crew() + 1), n -> new ArrayList<>())
                            .add(new Lift(work.bed().id(), piece.mark(), kg));
                }
            }
        }
        List<Finding> findings = new ArrayList<>();
        byPeople.forEach((people, lifts) -> findings.add(pieces(garden, lifting, people, lifts)));
        cutting.forEach(section -> garden.goods().catalogue()
                .section(section.section())
                .flatMap(timber -> boards(garden, lifting, timber, section))
                .ifPresent(findings::add));
        return findings;
    }

    private static Finding pieces(Garden garden, Lifting lifting, int people, List<Lift> lifts) {
        if (people > lifting.crew()) {
            return beyond(garden, where(lifts), lifts(lifts.size()) + " over " + Lengths.text(lifting.crew() * lifting.limitKg())
                            + " kg, beyond " + counted(lifting.crew()) + ": " + told(lifts),
                    heaviest(lifts), new ArrayList<>(List.of("use wheels: rollers, a sack truck or a machine", "join the wall from shorter parts")));
        }
        long over = lifts.stream().filter(lift -> lifting.overGuide(lift.kg())).count();
        return Finding.note(
                where(lifts),
                lifts(lifts.size()) + " over " + Lengths.text((people - 1) * lifting.limitKg()) + " kg, " + counted(people) + " each: " + told(lifts)
                        + overGuide(lifting, people, over),
                heaviest(lifts),
                over == 0 ? "have a helper on the day" : "have a helper and a sack truck on the day",
                "join the wall from shorter parts");
    }

    /** A crew that nobody described is our guess: what it cannot lift is no fault of the garden. */
    private static Finding beyond(Garden garden, String where, String text, Amount amount, List<String> ways) {
        if (!garden.people().crew().described()) return Finding.note(where, text, amount, ways.toArray(String[]::new));
        ways.add(1, "ask more people who can lift for the day");
        return Finding.snag(where, text, amount, ways.toArray(String[]::new));
    }

    private static String overGuide(Lifting lifting, int people, long count) {
        return count == 0 ? "" : "; " + count + " over the guide of " + IntStream.rangeClosed(2, people)
                .mapToObj(team -> Lengths.text(Lengths.toTenth(lifting.guideKg(team))) + " kg for " + word(team))
                .collect(Collectors.joining(", "));
    }

    private static String counted(int people) {
        return word(people) + (people == 1 ? " person" : " people");
    }

    private static String word(int people) {
        return people == 1 ? "one" : people == 2 ? "two" : people == 3 ? "three" : String.valueOf(people);
    }

    private static Optional<Finding> boards(Garden garden, Lifting lifting, Section timber, SectionCutting cutting) {
        Map<Double, Integer> heavy = new TreeMap<>(Comparator.reverseOrder());
        int helped = 0;
        int beyond = 0;
        int over = 0;
        for (SawBoard board : cutting.saw().boards()) {
            double kg = kg(timber, board.lengthMm());
            if (!lifting.heavy(kg)) continue;
            heavy.merge(board.lengthMm(), 1, Integer::sum);
            beyond += lifting.beyondCrew(kg) ? 1 : 0;
            over += lifting.overGuide(kg) ? 1 : 0;
            helped += helps(lifting, timber, board) ? 1 : 0;
        }
        if (heavy.isEmpty()) {
            return Optional.empty();
        }
        int count = heavy.values().stream().mapToInt(Integer::intValue).sum();
        double heaviest = kg(timber, heavy.keySet().iterator().next());
        int people = lifting.people(heaviest);
        String told = heavy.entrySet().stream()
                .map(entry -> entry.getValue() + " of " + Lengths.text(entry.getKey()) + " at "
                        + Lengths.text(kg(timber, entry.getKey())))
                .collect(Collectors.joining(", "));
        String text = count + (count == 1 ? " board" : " boards") + " over " + Lengths.text(lifting.limitKg()) + " kg to unload and to saw, "
                + (people == 2 ? "two people each: " : "two to " + counted(people) + " each: ") + told
                + (beyond > 0 ? "; " + beyond + " beyond " + counted(lifting.crew()) : overGuide(lifting, people, over));
        List<String> ways = new ArrayList<>(List.of("use wheels: rollers or a sack truck"));
        if (helped > 0) {
            ways.add("have the merchant make the first cut of " + (helped == count ? "each" : helped + " of them"));
        }
        Amount amount = new Amount(Lengths.toTenth(heaviest), "kg");
        return Optional.of(beyond > 0
                ? beyond(garden, "timber " + timber.id(), text, amount, ways)
                : Finding.note("timber " + timber.id(), text, amount, ways.toArray(String[]::new)));
    }

    /**
     * Whether one cut where a piece ends leaves parts that fewer people lift; of a board that is beyond the crew, that the
     * crew lifts. Kerf counts as timber.
     */
    static boolean helps(Lifting lifting, Section timber, SawBoard board) {
        int whole = lifting.people(kg(timber, board.lengthMm()));
        int enough = Math.min(whole - 1, lifting.crew());
        return board.cuts().stream().anyMatch(cut ->
                lifting.people(kg(timber, Math.max(cut.toMm(), board.lengthMm() - cut.toMm()))) <= enough);
    }

    static double kg(Section timber, double lengthMm) {
        return lengthMm * timber.thicknessMm() * timber.heightMm() * timber.densityKgM3() / 1e9;
    }

    private static String lifts(int count) {
        return count + (count == 1 ? " lift" : " lifts");
    }

    private static String where(List<Lift> lifts) {
        Set<String> beds = new LinkedHashSet<>();
        lifts.forEach(lift -> beds.add(lift.bed()));
        return BedNames.where(List.copyOf(beds)) + ", lifts";
    }

    private static Amount heaviest(List<Lift> lifts) {
        return new Amount(Lengths.toTenth(lifts.stream().mapToDouble(Lift::kg).max().orElse(0)), "kg");
    }

    /** Each by its mark where they are few, else how many of which weight, heaviest first. */
    private static String told(List<Lift> lifts) {
        if (lifts.size() <= NAMED) {
            return lifts.stream()
                    .map(lift -> lift.mark() + " " + Lengths.text(lift.kg()))
                    .collect(Collectors.joining(", "));
        }
        Map<Double, Integer> byWeight = new TreeMap<>(Comparator.reverseOrder());
        lifts.forEach(lift -> byWeight.merge(Lengths.toTenth(lift.kg()), 1, Integer::sum));
        int listed = byWeight.values().stream().limit(WEIGHTS).mapToInt(Integer::intValue).sum();
        return byWeight.entrySet().stream()
                        .limit(WEIGHTS)
                        .map(entry -> entry.getValue() + " of " + Lengths.text(entry.getKey()))
                        .collect(Collectors.joining(", "))
                + (listed < lifts.size() ? " and " + (lifts.size() - listed) + " lighter" : "");
    }
}

package lapyard.job;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
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

/** What is too heavy for one person, the whole garden in one note a kind. Guides, not safe limits. */
final class Lifts {
    /** Pieces that a note names one by one; beyond that it counts them by weight. */
    private static final int NAMED = 12;

    private static final int WEIGHTS = 6;

    /** Two people together lift two thirds of what each lifts alone: HSE L23, from memory. */
    private static final double TEAM = 2.0 / 3;

    private record Lift(String bed, String mark, double kg) {}

    private Lifts() {}

    static List<Finding> findings(Garden garden, List<BedWork> works, List<SectionCutting> cutting) {
        double limit = garden.people().liftLimitKg();
        List<Lift> two = new ArrayList<>();
        List<Lift> beyond = new ArrayList<>();
        for (BedWork work : works) {
            for (Piece piece : work.pieces()) {
                double kg = work.massKg(piece);
                if (kg > limit + 1e-9) {
                    (kg > 2 * limit + 1e-9 ? beyond : two).add(new Lift(work.bed().id(), piece.mark(), kg));
                }
            }
        }
        List<Finding> findings = new ArrayList<>();
        if (!two.isEmpty()) {
            double team = 2 * limit * TEAM;
            long over = two.stream().filter(lift -> lift.kg() > team + 1e-9).count();
            findings.add(Finding.note(
                    where(two),
                    lifts(two.size()) + " over " + Lengths.text(limit) + " kg, two people each: " + told(two)
                            + (over == 0 ? "" : "; " + over + " over the guide of " + Lengths.text(team) + " kg for two"),
                    heaviest(two),
                    over == 0 ? "have a helper on the day" : "have a helper and a sack truck on the day",
                    "join the wall from shorter parts"));
        }
        if (!beyond.isEmpty()) {
            findings.add(Finding.note(
                    where(beyond),
                    lifts(beyond.size()) + " over " + Lengths.text(2 * limit) + " kg, beyond two people: " + told(beyond),
                    heaviest(beyond),
                    "use rollers, a sack truck or a machine",
                    "join the wall from shorter parts"));
        }
        cutting.forEach(section -> garden.goods().catalogue()
                .section(section.section())
                .flatMap(timber -> boards(timber, section, limit))
                .ifPresent(findings::add));
        return findings;
    }

    private static java.util.Optional<Finding> boards(Section timber, SectionCutting cutting, double limit) {
        Map<Double, Integer> heavy = new TreeMap<>(Comparator.reverseOrder());
        for (SawBoard board : cutting.saw().boards()) {
            if (kg(timber, board.lengthMm()) > limit + 1e-9) {
                heavy.merge(board.lengthMm(), 1, Integer::sum);
            }
        }
        if (heavy.isEmpty()) {
            return java.util.Optional.empty();
        }
        int count = heavy.values().stream().mapToInt(Integer::intValue).sum();
        double heaviest = kg(timber, heavy.keySet().iterator().next());
        String told = heavy.entrySet().stream()
                .map(entry -> entry.getValue() + " of " + Lengths.text(entry.getKey()) + " at "
                        + Lengths.text(kg(timber, entry.getKey())))
                .collect(Collectors.joining(", "));
        return java.util.Optional.of(Finding.note(
                "timber " + timber.id(),
                count + (count == 1 ? " board" : " boards") + " over " + Lengths.text(limit)
                        + " kg to unload and to saw, two people each: " + told,
                new Amount(Lengths.toTenth(heaviest), "kg"),
                "have the merchant cut them first",
                "use rollers or a sack truck"));
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

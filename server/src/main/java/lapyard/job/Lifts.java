package lapyard.job;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import lapyard.catalogue.Section;
import lapyard.construction.BedWork;
import lapyard.construction.Piece;
import lapyard.cutting.SawBoard;
import lapyard.geometry.Lengths;
import lapyard.job.JobSheet.SectionCutting;
import lapyard.plan.Fact;
import lapyard.plan.Finding.Weight;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Garden;
import lapyard.plan.Lifting;
import lapyard.plan.Place.What;
import lapyard.plan.Place;
import lapyard.plan.WayKind;

/** Timber that is too heavy for one person, one note for each kind over the whole garden. The limits are guides, not safe limits. */
final class Lifts {
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
        double heaviest = lifts.stream().mapToDouble(Lift::kg).max().orElse(0);
        boolean beyond = people > lifting.crew();
        Finding found = Finding.of(beyond ? FindingKind.LIFTS_BEYOND : FindingKind.LIFTS, where(lifts))
                .with("lifts", Fact.count(lifts.size(), "timbers")).with("people", Fact.count(beyond ? lifting.crew() : people, "people"))
                .with("limit", Fact.kg((beyond ? lifting.crew() : people - 1) * lifting.limitKg())).by(Fact.kg(heaviest));
        if (beyond) return beyond(garden, found);
        long over = lifts.stream().filter(lift -> lifting.overGuide(lift.kg())).count();
        return (over == 0 ? found : found.with("over", Fact.count(over, "lifts")).with("guide", Fact.kg(Lengths.toTenth(lifting.guideKg(people)))))
                .way(over == 0 ? WayKind.HELPER : WayKind.WHEELS);
    }

    /** A crew that nobody described is our guess: what it cannot lift is no fault of the garden. */
    private static Finding beyond(Garden garden, Finding found) {
        Finding told = found.way(WayKind.WHEELS);
        return garden.people().crew().described() ? told.weighing(Weight.SNAG).way(WayKind.MORE_LIFTERS) : told;
    }

    private static Optional<Finding> boards(Garden garden, Lifting lifting, Section timber, SectionCutting cutting) {
        Map<Double, Integer> heavy = new TreeMap<>(Comparator.reverseOrder());
        int helped = 0;
        int helpedBeyond = 0;
        int beyond = 0;
        int over = 0;
        for (SawBoard board : cutting.saw().boards()) {
            double kg = timber.massKg(board.lengthMm());
            if (!lifting.heavy(kg)) continue;
            heavy.merge(board.lengthMm(), 1, Integer::sum);
            int helps = helps(lifting, timber, board) ? 1 : 0;
            helped += helps;
            if (lifting.beyondCrew(kg)) {
                beyond++;
                helpedBeyond += helps;
            }
            over += lifting.overGuide(kg) ? 1 : 0;
        }
        if (heavy.isEmpty()) return Optional.empty();
        int count = heavy.values().stream().mapToInt(Integer::intValue).sum();
        double heaviest = timber.massKg(heavy.keySet().iterator().next());
        int people = lifting.people(heaviest);
        Finding found = Finding.of(beyond > 0 ? FindingKind.BOARDS_BEYOND : FindingKind.BOARDS_HEAVY, Place.of(What.TIMBER, timber.id()))
                .with(beyond == count ? "all" : "boards", Fact.count(count, "boards")).with("limit", Fact.kg(lifting.limitKg())).with("people", Fact.count(people, "people"))
                .with("crew", Fact.count(lifting.crew(), "people")).with("beyond", Fact.count(beyond, "boards")).by(Fact.kg(heaviest));
        if (beyond == 0 && over > 0) {
            found = found.with("over", Fact.count(over, "boards")).with("guide", Fact.kg(Lengths.toTenth(lifting.guideKg(people))));
        }
        found = beyond > 0 ? beyond(garden, found) : found.way(WayKind.WHEELS);
        int cut = beyond > 0 ? helpedBeyond : helped;
        return Optional.of(cut == 0 ? found : found.way(WayKind.MERCHANT_CUTS, Fact.count(cut, "boards")));
    }

    /**
     * Whether one cut where a piece ends leaves parts that fewer people lift; of a board that is beyond the crew, that the
     * crew lifts. Kerf counts as timber.
     */
    static boolean helps(Lifting lifting, Section timber, SawBoard board) {
        int whole = lifting.people(timber.massKg(board.lengthMm()));
        int enough = Math.min(whole - 1, lifting.crew());
        return board.cuts().stream().anyMatch(cut ->
                lifting.people(timber.massKg(Math.max(cut.toMm(), board.lengthMm() - cut.toMm()))) <= enough);
    }

    private static Place where(List<Lift> lifts) {
        Set<String> beds = new LinkedHashSet<>();
        lifts.forEach(lift -> beds.add(lift.bed()));
        return Place.beds(List.copyOf(beds)).then(What.FIELD, "lifts");
    }
}

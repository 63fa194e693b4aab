package lapyard.job;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import lapyard.construction.Nest;
import lapyard.cutting.Batches;
import lapyard.cutting.SawBoard;
import lapyard.cutting.Sawn;
import lapyard.job.JobSheet.BedSheet;
import lapyard.job.JobSheet.PathSheet;
import lapyard.job.JobSheet.SectionCutting;
import lapyard.plan.Bed;
import lapyard.plan.Garden;
import lapyard.plan.Lifting;
import lapyard.weekends.WeekendPlanner;
import lapyard.weekends.Weekends;
import lapyard.weekends.WorkList.BedLoad;
import lapyard.weekends.WorkList.PathLoad;
import lapyard.weekends.WorkList.SawLoad;

/** Plans the weekends from what is to be built and sawn. */
final class Building {
    /** Least density of stone goods, sand among them, kg/m3; bark, chips and compost have a third to a half of it. */
    private static final double STONE_KG_M3 = 1400;

    /** A task of a schedule with those it waits for takes the room of so many pieces that are cut. */
    private static final int TASK_PIECES = 3;

    private Building() {}

    static Weekends weekends(
            Garden garden, List<BedSheet> beds, List<PathSheet> paths, List<SectionCutting> timber, List<SectionCutting> strips, SearchMemory memory) {
        Map<String, Double> stripMinutes = stripMinutes(beds, strips);
        List<BedLoad> loads = beds.stream()
                .map(bed -> new BedLoad(bed.work(), bed.quantities(), stripMinutes.getOrDefault(bed.work().bed().id(), 0.0)))
                .toList();
        List<PathLoad> pathLoads = paths.stream().map(path -> new PathLoad(path.path(), path.quantities(), stone(garden, path))).toList();
        Map<String, List<Double>> slants = slants(beds, timber);
        Map<Integer, Set<String>> anew = Resawn.anew(garden.people().tally(), timber);
        Map<String, Integer> done = garden.people().tally().doneOn();
        anew.keySet().forEach(stage -> done.remove("saw." + stage));
        return WeekendPlanner.of(garden.people().crew(), JobSheet.lifting(garden), garden.terms().wayIn().barrowLitres(), garden.imperial(),
                loads, pathLoads, saw(garden, timber, slants, anew), fixed(garden),
                done, garden.people().tally().day(), asked -> memory.of(asked, asked.tasks() * TASK_PIECES, WeekendPlanner.Staging::solved));
    }

    /** Beds whose weekend the document names; one that it leaves at the default is free. */
    static Map<String, Integer> fixed(Garden garden) {
        Map<String, Integer> fixed = new LinkedHashMap<>();
        Set<String> defaulted = new HashSet<>(garden.defaulted());
        for (int i = 0; i < garden.beds().size(); i++) {
            Bed bed = garden.beds().get(i);
            if (bed.stage() > 1 || !defaulted.contains("/beds/" + i + "/stage")) fixed.put(bed.id(), bed.stage());
        }
        return fixed;
    }

    /** Dug and compacted, as what is laid there weighs like stone. */
    private static boolean stone(Garden garden, PathSheet path) {
        return path.path().layers().stream().anyMatch(layer -> garden.goods().catalogue().packs(layer.item())
                .map(goods -> goods.densityKgM3().orElse(0) >= STONE_KG_M3).orElse(false));
    }

    /** What ripping, trimming and cutting all strips takes, each bed's part by the number of its strips. */
    private static Map<String, Double> stripMinutes(List<BedSheet> beds, List<SectionCutting> strips) {
        Map<String, String> bedOf = new HashMap<>();
        beds.forEach(bed -> bed.work().bottom().strips().forEach(strip -> bedOf.put(strip.id(), bed.work().bed().id())));
        Map<String, Double> minutes = new HashMap<>();
        for (SectionCutting cutting : strips) {
            Batches batches = cutting.saw().batches();
            double all = batches.minutes()
                    + cutting.saw().ripping().map(JobSheet.Ripping::rips).orElse(0) * batches.rates().minutesACut();
            double each = all / batches.pieces();
            cutting.saw().boards().forEach(board -> board.cuts().forEach(cut -> minutes.merge(bedOf.get(cut.mark()), each, Double::sum)));
        }
        return minutes;
    }

    private static List<SawLoad> saw(Garden garden, List<SectionCutting> timber, Map<String, List<Double>> slants, Map<Integer, Set<String>> anew) {
        Map<Integer, SawLoad> byWeekend = new TreeMap<>();
        for (SectionCutting cutting : timber) {
            Map<Integer, List<Double>> heavy = heavyKg(garden, cutting, anew);
            List<SawBoard> boards = toSaw(garden, cutting, anew);
            for (Batches.Stage stage : Batches.of(boards, cutting.saw().problem().kerfMm(), cutting.saw().batches().rates()).stages()) {
                List<Double> sets = boards.stream()
                        .flatMap(board -> board.cutsIn(stage.stage()).stream())
                        .flatMap(cut -> slants.getOrDefault(cut.mark(), List.of()).stream())
                        .toList();
                SawLoad load = new SawLoad(stage.stage(), stage.cuts(), sets.size(),
                        stage.settings().size() + (int) sets.stream().distinct().count(),
                        stage.boards(), heavy.getOrDefault(stage.stage(), List.of()),
                        anew.getOrDefault(stage.stage(), Set.of()).stream().flatMap(mark -> Nest.marks(mark).stream()).collect(Collectors.toSet()));
                byWeekend.merge(stage.stage(), load, SawLoad::with);
            }
        }
        return List.copyOf(byWeekend.values());
    }

    /** The boards with the cuts that a day at the saw has to make: of one that is ticked those that are made anew. */
    private static List<SawBoard> toSaw(Garden garden, SectionCutting cutting, Map<Integer, Set<String>> anew) {
        if (anew.isEmpty()) return cutting.saw().boards();
        Set<String> opened = Resawn.opened(garden.people().tally(), cutting);
        return cutting.saw().boards().stream()
                .map(board -> new SawBoard(board.number(), board.stock(), board.lengthMm(), opened.contains(Sawn.name(board)) ? 0 : board.trimMm(),
                        board.cuts().stream().filter(cut -> isToSaw(cut, anew)).toList(), board.restMm()))
                .filter(board -> !board.cuts().isEmpty()).toList();
    }

    private static boolean isToSaw(SawBoard.Cut cut, Map<Integer, Set<String>> anew) {
        return !anew.containsKey(cut.stage()) || anew.get(cut.stage()).contains(cut.mark());
    }

    /** How the saw is set for each slanted cut of what is cut off a board, by its mark. */
    private static Map<String, List<Double>> slants(List<BedSheet> beds, List<SectionCutting> timber) {
        Map<String, List<Double>> slants = new HashMap<>();
        for (BedSheet bed : beds) bed.work().pieces().forEach(piece -> slants.put(piece.mark(), piece.setsDeg()));
        timber.forEach(cutting -> cutting.saw().nests().forEach(
                nest -> slants.put(nest.mark(), nest.cuts().stream().map(Nest.Cut::setDeg).toList())));
        return slants;
    }

    /** For each stage what a board weighs at each of its cuts, as long as that is more than one person lifts. */
    private static Map<Integer, List<Double>> heavyKg(Garden garden, SectionCutting cutting, Map<Integer, Set<String>> anew) {
        Lifting lifting = JobSheet.lifting(garden);
        Map<Integer, List<Double>> heavy = new HashMap<>();
        garden.goods().catalogue().section(cutting.section()).ifPresent(section -> cutting.saw().boards().forEach(board -> {
            double fromMm = 0;
            for (SawBoard.Cut cut : board.cuts()) {
                double kg = section.massKg(board.lengthMm() - fromMm);
                if (isToSaw(cut, anew) && lifting.heavy(kg)) heavy.computeIfAbsent(cut.stage(), stage -> new ArrayList<>()).add(kg);
                fromMm = cut.toMm();
            }
        }));
        return heavy;
    }
}

package lapyard.job;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lapyard.cutting.CuttingProblem;
import lapyard.cutting.CuttingProblem.Demand;

/**
 * The lengths to cut from one section. Equal lengths are one demand; which of them becomes which piece is chosen after cutting.
 *
 * @param blanks behind each demand, by its id
 */
record SawDemands(CuttingProblem problem, Map<String, List<Blank>> blanks) {
    private record Alike(double lengthMm, int stage, int goodFaces) {
        String id() {
            return lengthMm + "/" + stage + "/" + goodFaces;
        }
    }

    /**
     * @param saw    with its stock
     * @param graded whether some boards have no good face
     */
    static SawDemands of(CuttingProblem saw, List<Blank> blanks, boolean graded) {
        Map<Alike, List<Blank>> alike = new LinkedHashMap<>();
        for (Blank blank : blanks) {
            alike.computeIfAbsent(new Alike(blank.lengthMm(), blank.stage(), blank.goodFaces(graded)), a -> new ArrayList<>()).add(blank);
        }
        List<Demand> demands = new ArrayList<>();
        Map<String, List<Blank>> byId = new LinkedHashMap<>();
        alike.forEach((kind, own) -> {
            String id = kind.id();
            demands.add(new Demand(id, kind.lengthMm(), own.size(), kind.stage(), kind.goodFaces()));
            byId.put(id, own);
        });
        return new SawDemands(saw.with(saw.stock(), demands), byId);
    }
}

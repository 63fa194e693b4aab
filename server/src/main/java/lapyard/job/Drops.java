package lapyard.job;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lapyard.catalogue.PackCode;
import lapyard.catalogue.PackGoods;
import lapyard.order.SlipLine;

/** Which packs of the one order come before which weekend. Together they are the packs of the slip, no more. */
final class Drops {
    private Drops() {}

    /** @param rows in the order of the weekends */
    static List<Buying.Row> of(JobSheet sheet, List<Buying.Row> rows) {
        Map<Buying.Row, Map<String, Integer>> packs = new HashMap<>();
        for (SlipLine line : sheet.slip().lines()) {
            List<Buying.Row> needed = rows.stream().filter(row -> row.item().equals(line.item())).toList();
            if (!needed.isEmpty()) spread(line, sheet, needed, packs);
        }
        return rows.stream().map(row -> row.bringing(packs.getOrDefault(row, Map.of()))).toList();
    }

    private static void spread(SlipLine line, JobSheet sheet, List<Buying.Row> needed, Map<Buying.Row, Map<String, Integer>> packs) {
        Map<String, Integer> left = new LinkedHashMap<>();
        line.packs().forEach(pack -> left.merge(pack.pack(), (int) pack.count(), Integer::sum));
        Map<String, Double> contents = contents(line, sheet);
        boolean known = contents.keySet().containsAll(left.keySet());
        double wanted = 0;
        double there = 0;
        for (int i = 0; i < needed.size(); i++) {
            Buying.Row row = needed.get(i);
            Map<String, Integer> come = new LinkedHashMap<>();
            if (!row.boards().isEmpty()) {
                row.boards().forEach((stock, count) -> take(left, come, PackCode.board(stock), count));
            } else if (known) {
                wanted += row.amount();
                while (there < wanted - 1e-9) {
                    Optional<String> next = next(left, contents, wanted - there);
                    if (next.isEmpty()) break;
                    take(left, come, next.get(), 1);
                    there += contents.get(next.get());
                }
            }
            // packs whose size is not told, as rolls are, come first; spare, and what a bundle of boards holds over, come last
            boolean early = i == 0 && row.boards().isEmpty() && !known;
            boolean late = i == needed.size() - 1;
            if (early || late) new ArrayList<>(left.keySet()).forEach(pack -> take(left, come, pack, Integer.MAX_VALUE));
            packs.put(row, come);
        }
    }

    private static void take(Map<String, Integer> left, Map<String, Integer> come, String pack, int count) {
        int taken = Math.min(count, left.getOrDefault(pack, 0));
        if (taken == 0) return;
        come.merge(pack, taken, Integer::sum);
        left.merge(pack, -taken, Integer::sum);
        left.remove(pack, 0);
    }

    /** The smallest pack that alone is enough, else the largest; empty where none is left. */
    private static Optional<String> next(Map<String, Integer> left, Map<String, Double> contents, double gap) {
        List<String> bySize = new ArrayList<>(left.keySet());
        bySize.sort((a, b) -> Double.compare(contents.get(a), contents.get(b)));
        return bySize.stream().filter(pack -> contents.get(pack) >= gap - 1e-9).findFirst()
                .or(() -> bySize.isEmpty() ? Optional.empty() : Optional.of(bySize.get(bySize.size() - 1)));
    }

    private static Map<String, Double> contents(SlipLine line, JobSheet sheet) {
        Map<String, Double> contents = new HashMap<>();
        sheet.garden().goods().catalogue().packs(line.item()).map(PackGoods::packs).orElse(List.of())
                .forEach(pack -> contents.merge(pack.name(), pack.content(), Math::min));
        return contents;
    }
}

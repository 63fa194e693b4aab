package lapyard.job;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.ToIntFunction;
import java.util.stream.Collectors;
import lapyard.catalogue.Goods;
import lapyard.catalogue.PackCode;
import lapyard.catalogue.PackGoods;
import lapyard.catalogue.SectionGoods;
import lapyard.catalogue.TradeName;
import lapyard.cutting.SawBoard;
import lapyard.cutting.Sawn;
import lapyard.geometry.Measure;
import lapyard.job.JobSheet.SectionCutting;
import lapyard.order.SlipLine;
import lapyard.plan.Bed;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Garden;
import lapyard.plan.Place;
import lapyard.plan.Place.What;
import lapyard.plan.Tally;
import lapyard.plan.WayKind;
import lapyard.weekends.Step;
import lapyard.weekends.Weekends;
import lapyard.working.Csv;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;

/**
 * The slip laid over the weekends: how much of each line is needed in which, and by when it must be there and ordered.
 *
 * @param rows  by the weekend and the day of need
 * @param drops weekends before which something must be brought: as many deliveries as buying by the weekend takes
 */
public record Buying(List<Row> rows, int drops) {
    public Buying {
        rows = List.copyOf(rows);
    }

    /**
     * @param needDay  day of the plan on which the first of it is used
     * @param orderDay needDay less the lead; below 0 before the first day of work
     * @param amount   needed in this weekend, in {@code unit}, spare left out
     * @param boards   boards opened in this weekend by stock length; empty for all but timber
     * @param packs    of the order that come before this weekend, by the name of the pack
     */
    public record Row(int weekend, int needDay, int orderDay, String item, String label, double amount, String unit, Map<String, Integer> boards,
            Map<String, Integer> packs) {
        public Row {
            boards = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(boards));
            packs = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(packs));
        }

        /** The same line on another day of the same weekend. */
        private Row and(Row other) {
            Map<String, Integer> all = new TreeMap<>(boards);
            other.boards.forEach((stock, count) -> all.merge(stock, count, Integer::sum));
            return new Row(weekend, Math.min(needDay, other.needDay), Math.min(orderDay, other.orderDay), item, label, amount + other.amount, unit, all, packs);
        }

        /** As the order calls it. */
        private Row called(Map<String, SlipLine> lines) {
            return lines.containsKey(item) ? new Row(weekend, needDay, orderDay, item, lines.get(item).label(), amount, unit, boards, packs) : this;
        }

        Row bringing(Map<String, Integer> packs) {
            return new Row(weekend, needDay, orderDay, item, label, amount, unit, boards, packs);
        }
    }

    /** The step in which goods are used; all others are used when the first course is laid. */
    private static final Map<Goods, Step> STEPS = Map.of(Goods.FINISH, Step.COAT, Goods.STAPLES, Step.LINER, Goods.SLATS, Step.BASE,
            Goods.MULCH, Step.PLANT, Goods.CONCRETE, Step.POUR, Goods.SUB_BASE, Step.POUR);

    public static Buying of(JobSheet sheet) {
        Map<String, Weekends.Task> tasks = sheet.weekends().byId();
        Map<Integer, Integer> weekendOf = new TreeMap<>();
        sheet.weekends().days().forEach(day -> weekendOf.put(day.number(), day.weekend()));
        Map<String, SlipLine> lines = new LinkedHashMap<>();
        sheet.slip().lines().forEach(line -> lines.put(line.item(), line));
        List<Row> rows = new ArrayList<>();
        Map<String, Integer> leads = leads(sheet);
        int usual = sheet.garden().people().crew().waits().leadDays();
        Set<Integer> anew = Resawn.anew(sheet.garden().people().tally(), sheet.cutting()).keySet();
        for (SectionCutting cutting : sheet.cutting()) timber(cutting, sheet.garden(), anew, tasks, weekendOf, leads.getOrDefault(SectionGoods.TIMBER.item(cutting.section()), usual), rows);
        Map<List<Object>, Row> ripped = new LinkedHashMap<>();
        for (SectionCutting strips : sheet.strips()) strips(sheet, strips, tasks, weekendOf, leads.getOrDefault(SectionGoods.BEARERS.item(strips.section()), usual), ripped);
        rows.addAll(ripped.values());
        rows.replaceAll(row -> row.called(lines));
        Map<String, Map<Integer, double[]>> needs = new LinkedHashMap<>();
        for (JobSheet.BedSheet bed : sheet.beds()) {
            String id = bed.work().bed().id();
            PackNeeds.items(bed.work().bed()).forEach((key, item) -> need(needs, item, PackNeeds.amount(PackNeeds.toBuy(bed.quantities()), key),
                    tasks.get(step(bed.work().bed(), item).task(id, 1)), weekendOf));
            need(needs, bed.work().bed().inside().liner().material(), Quantity.sum(bed.quantities(), QuantityKind.LINER_AREA), tasks.get(Step.LINER.task(id)), weekendOf);
        }
        for (JobSheet.PathSheet path : sheet.paths()) {
            PackNeeds.items(path.path()).forEach((key, item) -> need(needs, item, PackNeeds.amount(path.quantities(), key),
                    tasks.get("path." + path.path().id()), weekendOf));
            need(needs, path.path().membrane(), Quantity.sum(path.quantities(), QuantityKind.MEMBRANE), tasks.get("path." + path.path().id()), weekendOf);
        }
        Set<String> rolled = sheet.rolls().stream().map(JobSheet.MaterialRolls::material).collect(Collectors.toSet());
        needs.forEach((item, byWeekend) -> byWeekend.forEach((weekend, need) -> {
            SlipLine line = lines.get(item);
            int day = (int) need[1];
            double loosening = sheet.garden().goods().catalogue().packs(item).map(PackGoods::loosening).orElse(1.0);
            rows.add(new Row(weekend, day, day - leads.getOrDefault(item, usual), item, line == null ? item : line.label(), need[0] * loosening,
                    rolled.contains(item) ? "m2" : line == null ? "" : line.unit(), Map.of(), Map.of()));
        }));
        rows.sort(Comparator.comparingInt(Row::weekend).thenComparingInt(Row::needDay));
        List<Row> brought = brought(sheet, rows);
        return new Buying(brought, (int) rows.stream().mapToInt(Row::weekend).distinct().count());
    }

    /** With the packs of the one order that come before each weekend, which together are the packs of the slip. */
    private static List<Row> brought(JobSheet sheet, List<Row> rows) {
        Map<Row, Map<String, Integer>> packs = new HashMap<>();
        for (SlipLine line : sheet.slip().lines()) {
            List<Row> needed = rows.stream().filter(row -> row.item().equals(line.item())).toList();
            if (!needed.isEmpty()) spread(line, sheet, needed, packs);
        }
        return rows.stream().map(row -> row.bringing(packs.getOrDefault(row, Map.of()))).toList();
    }

    private static void spread(SlipLine line, JobSheet sheet, List<Row> needed, Map<Row, Map<String, Integer>> packs) {
        Map<String, Integer> left = new LinkedHashMap<>();
        line.packs().forEach(pack -> left.merge(pack.pack(), (int) pack.count(), Integer::sum));
        Map<String, Double> contents = contents(line, sheet);
        boolean known = contents.keySet().containsAll(left.keySet());
        double wanted = 0;
        double there = 0;
        for (int i = 0; i < needed.size(); i++) {
            Row row = needed.get(i);
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

    /** The row of each item that comes first by a day; of several the one that stands first. */
    static Map<String, Row> first(List<Row> rows, ToIntFunction<Row> day) {
        return rows.stream().collect(Collectors.toMap(
                Row::item, row -> row, (a, b) -> day.applyAsInt(a) <= day.applyAsInt(b) ? a : b, LinkedHashMap::new));
    }

    /** The longest lead among the suppliers of each line that name themselves. */
    private static Map<String, Integer> leads(JobSheet sheet) {
        Map<String, Integer> bySupplier = new LinkedHashMap<>();
        sheet.garden().goods().catalogue().suppliers().forEach(supplier -> bySupplier.put(supplier.id(), supplier.leadDays()));
        Map<String, Integer> leads = new LinkedHashMap<>();
        for (SlipLine line : sheet.slip().lines()) {
            line.packs().stream().filter(pack -> bySupplier.containsKey(pack.supplier()))
                    .forEach(pack -> leads.merge(line.item(), bySupplier.get(pack.supplier()), Math::max));
        }
        return leads;
    }

    private static Step step(Bed bed, String item) {
        if (bed.planting().fill().layers().stream().anyMatch(layer -> layer.item().equals(item))) return Step.FILL;
        if (bed.making().seal().wanted() && bed.making().seal().item().equals(item)) return Step.MARK;
        return Goods.of(item).map(STEPS::get).orElse(Step.COURSE_1);
    }

    private static void need(Map<String, Map<Integer, double[]>> needs, String item, double amount, Weekends.Task task, Map<Integer, Integer> weekendOf) {
        if (task == null || task.done() || amount <= 0) return;
        needs.computeIfAbsent(item, i -> new TreeMap<>()).merge(weekendOf.getOrDefault(task.firstDay(), 1),
                new double[] {amount, task.firstDay()}, (a, b) -> new double[] {a[0] + b[0], Math.min(a[1], b[1])});
    }

    private static void timber(SectionCutting cutting, Garden garden, Set<Integer> anew, Map<String, Weekends.Task> tasks, Map<Integer, Integer> weekendOf, int lead, List<Row> rows) {
        Map<Integer, Map<String, Integer>> opened = new TreeMap<>();
        Map<Integer, Double> metres = new TreeMap<>();
        Set<String> sawn = Resawn.opened(garden.people().tally(), cutting);
        for (SawBoard board : cutting.saw().boards()) {
            // where a stage is sawn anew, the boards of its first day at the saw are there
            if (anew.contains(board.openedIn()) && sawn.contains(Sawn.name(board))) continue;
            opened.computeIfAbsent(board.openedIn(), stage -> new TreeMap<>()).merge(board.stock(), 1, Integer::sum);
            metres.merge(board.openedIn(), board.lengthMm() / 1000, Double::sum);
        }
        opened.forEach((stage, boards) -> {
            Weekends.Task saw = tasks.get("saw." + stage);
            if (saw == null || saw.done()) return;
            rows.add(new Row(weekendOf.getOrDefault(saw.firstDay(), 1), saw.firstDay(), saw.firstDay() - lead, SectionGoods.TIMBER.item(cutting.section()),
                    SectionGoods.TIMBER.item(TradeName.section(cutting.section(), garden.imperial())), metres.get(stage), "m", boards, Map.of()));
        });
    }

    /** Boards are ripped for the first bed of a weekend that takes a strip of them: whole boards, so that all strips up to then are there. */
    private static void strips(JobSheet sheet, SectionCutting cutting, Map<String, Weekends.Task> tasks, Map<Integer, Integer> weekendOf, int lead,
            Map<List<Object>, Row> rows) {
        int perBoard = cutting.saw().ripping().map(JobSheet.Ripping::stripsPerBoard).orElse(1);
        Map<String, Weekends.Task> taskOf = new LinkedHashMap<>();
        sheet.beds().forEach(bed -> bed.work().bottom().strips().forEach(
                strip -> taskOf.put(strip.id(), tasks.get(Step.STRIPS.task(bed.work().bed().id())))));
        Map<Integer, List<SawBoard>> byDay = new TreeMap<>();
        for (SawBoard strip : cutting.saw().boards()) {
            strip.cuts().stream().map(cut -> taskOf.get(cut.mark())).filter(task -> task != null && !task.done())
                    .mapToInt(Weekends.Task::firstDay).min()
                    .ifPresent(day -> byDay.computeIfAbsent(day, d -> new ArrayList<>()).add(strip));
        }
        Map<String, Integer> stripsBefore = new TreeMap<>();
        byDay.forEach((day, strips) -> {
            Map<String, Integer> boards = new TreeMap<>();
            double metres = 0;
            for (SawBoard strip : strips) {
                int before = stripsBefore.merge(strip.stock(), 1, Integer::sum) - 1;
                if (before % perBoard == 0) {
                    boards.merge(strip.stock(), 1, Integer::sum);
                    metres += strip.lengthMm() / 1000;
                }
            }
            if (boards.isEmpty()) return;
            int weekend = weekendOf.getOrDefault(day, 1);
            Row row = new Row(weekend, day, day - lead, SectionGoods.BEARERS.item(cutting.section()), SectionGoods.BEARERS.item(TradeName.section(cutting.section(), sheet.garden().imperial())), metres, "m", boards, Map.of());
            rows.merge(List.of(weekend, row.item()), row, Row::and);
        });
    }

    private static String counted(Map<String, Integer> packs, boolean imperial) {
        return packs.entrySet().stream().map(one -> one.getValue() + " x " + PackCode.words(one.getKey(), imperial)).collect(Collectors.joining(" + "));
    }

    /**
     * A snag where something is to be ordered before the first day that can still be planned, and is not bought yet. Without a
     * first day of work nothing is late.
     */
    List<Finding> findings(Garden garden) {
        if (garden.people().crew().dates().start().isEmpty()) return List.of();
        LocalDate start = garden.people().crew().dates().start().get();
        int today = garden.people().tally().day();
        Map<String, Row> early = new LinkedHashMap<>();
        notBought(garden.people().tally()).stream().filter(row -> row.orderDay() < today).sorted(Comparator.comparingInt(Row::orderDay))
                .forEach(row -> early.putIfAbsent(row.item(), row));
        if (early.isEmpty()) return List.of();
        Row first = early.values().iterator().next();
        int days = today - first.orderDay();
        LocalDate by = start.plusDays(first.orderDay());
        int others = early.size() - 1;
        Finding late = Finding.of(FindingKind.ORDER_LATE, Place.of(What.WEEKEND, String.valueOf(first.weekend())))
                .with("first", Fact.name(first.label())).with("date", new Fact.Day(by)).by(Fact.count(days, "days"));
        return List.of((others == 0 ? late : late.with("others", Fact.count(others, "other lines")))
                .way(WayKind.ORDER_BY).way(WayKind.BEGIN_LATER_BY).way(WayKind.QUICKER_SUPPLIER));
    }

    /** Rows of which some packs are not bought: what is bought comes for the first of them, and other packs than were planned for all. */
    private List<Row> notBought(Tally tally) {
        Map<String, Map<String, Integer>> have = new HashMap<>();
        tally.bought().forEach(one -> have.computeIfAbsent(one.item(), item -> new HashMap<>()).merge(one.pack(), one.count(), Integer::sum));
        return rows.stream().filter(row -> {
            Map<String, Integer> own = have.get(row.item());
            if (own == null) return true;
            Set<String> planned = rows.stream().filter(other -> other.item().equals(row.item())).flatMap(other -> other.packs().keySet().stream()).collect(Collectors.toSet());
            if (!planned.containsAll(own.keySet())) return false;
            boolean lacks = false;
            for (Map.Entry<String, Integer> pack : row.packs().entrySet()) lacks |= own.merge(pack.getKey(), -pack.getValue(), Integer::sum) < 0;
            return lacks;
        }).toList();
    }

    /** RFC 4180 text; a cell never starts a formula. Dates are empty where the garden names no first day of work. */
    public String csv(Optional<LocalDate> start, boolean imperial) {
        return Csv.text(printed -> {
            for (Row row : rows) {
                printed.printRecord(row.weekend(), start.map(date -> date.plusDays(row.needDay()).toString()).orElse(""),
                        start.map(date -> date.plusDays(row.orderDay()).toString()).orElse(""), Csv.safe(row.item()), Csv.safe(row.label()),
                        Measure.plain(Measure.in(row.amount(), row.unit(), imperial), 3), Measure.unit(row.unit(), imperial),
                        Csv.safe(row.boards().entrySet().stream().map(one -> one.getValue() + " x " + PackCode.words(PackCode.board(one.getKey()), imperial))
                                .collect(Collectors.joining(" + "))), Csv.safe(counted(row.packs(), imperial)));
            }
        }, "weekend", "needed on", "order by", "item", "label", "need", "unit", "boards opened", "packs");
    }
}

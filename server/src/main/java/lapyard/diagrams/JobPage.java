package lapyard.diagrams;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.BiConsumer;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import lapyard.drawing.Page;
import lapyard.drawing.Shape;
import lapyard.drawing.Tag;
import lapyard.drawing.TextMeasure;
import lapyard.plan.BedNames;

/** The whole job on one page, to be pinned up: weekends across, beds down, who is there, what is waited for, what is to be ordered by when. */
public final class JobPage {
    private static final String CAUTION = "Weather and people change it: what is written here is as old as its revision. The sheet of each weekend tells the rest.";

    private static final String TITLE = "The job on one page";
    private static final String ABOUT = "weekends across, beds down";
    private static final double[] SIZES = {3.8, 3.4, 3, 2.75, TypeSize.LEAST};
    /** Pages in the largest type that fit one in the least; of more the sizes between are not tried, of far too many the least neither. */
    private static final int MOST_THAT_MAY_BE_ONE = 3;
    private static final int FAR_TOO_MANY = 8;
    private static final double PITCH = 1.25;
    private static final double PAD = 1.6;
    private static final double NAMES = 27;
    private static final double NUMBER = 9;
    private static final double LARGER = 1.25;
    private static final double DATES = 25;
    private static final String BED = "bed ";
    private static final double HEAD = 7;
    /** Weekends beside each other; more stand below. */
    private static final int ACROSS = 14;

    private JobPage() {}

    /**
     * One weekend on which something is done; texts as they shall be read.
     *
     * @param goods   what must be there, empty for nothing
     * @param orderBy the last day for it, as it is read behind "order": "by Mon 1 March 2027"
     */
    public record Weekend(String number, String dates, String who, String waits, String orderBy, String goods) {}

    /** What is done alike at these places; {@code cells} has a text for each weekend, counted from 0, on which something is. */
    public record Row(List<String> places, SortedMap<Integer, String> cells) {
        public Row {
            places = List.copyOf(places);
            cells = Collections.unmodifiableSortedMap(new TreeMap<>(cells));
        }

        private String place() {
            if (places.size() == 1) return places.get(0);
            return isBeds() ? BedNames.where(codes()) : String.join(", ", places);
        }

        private boolean isBeds() {
            return places.stream().allMatch(place -> place.startsWith(BED));
        }

        private List<String> codes() {
            return places.stream().map(place -> place.substring(BED.length())).toList();
        }

        /** Of the weekends from one to another, that left out; empty texts for nothing. */
        private List<String> cells(int from, int to) {
            return IntStream.range(from, to).mapToObj(weekend -> cells.getOrDefault(weekend, "")).toList();
        }
    }

    public record Job(List<Weekend> weekends, List<Row> rows) {}

    /**
     * @return one page, in the largest type at which it is one. Where the least type needs more, a line a weekend in place of a cell
     *     for each place, without what is waited for; without what is done and ordered where even that is too much; more pages only where those lines need more
     */
    public static List<Page> pages(Job job, BenchOptions options) {
        BenchSheet sheet = new BenchSheet(CAUTION, options);
        if (job.weekends().isEmpty()) return sheet.pages(List.of(sheet.nothing(TITLE, "Nothing is left to do.")));
        List<BenchSheet.Draft> drafts = List.of();
        List<BiConsumer<Flow, Double>> forms = List.of((flow, size) -> on(flow, sheet, job, size), (flow, size) -> lines(flow, sheet, job, size, true), (flow, size) -> lines(flow, sheet, job, size, false));
        for (BiConsumer<Flow, Double> form : forms) {
            int pages = 1;
            String about = drafts.isEmpty() ? ABOUT : "weekend by weekend";
            boolean last = form == forms.get(forms.size() - 1);
            for (double size : SIZES) {
                if (pages > MOST_THAT_MAY_BE_ONE && (size > TypeSize.LEAST || pages > FAR_TOO_MANY && !last)) continue;
                Flow flow = new Flow(sheet, TITLE, about);
                form.accept(flow, size);
                drafts = flow.drafts();
                pages = drafts.size();
                if (pages == 1) return sheet.pages(drafts);
            }
        }
        return sheet.pages(drafts);
    }

    /** On a sheet that has other things too. */
    static void section(Flow flow, BenchSheet sheet, Job job) {
        flow.section(TITLE, "");
        on(flow, sheet, job, SIZES[2]);
    }

    private static void on(Flow flow, BenchSheet sheet, Job job, double size) {
        for (int from = 0; from < job.weekends().size(); from += ACROSS) {
            int to = Math.min(job.weekends().size(), from + ACROSS);
            double wide = (sheet.space().width() - NAMES) / (to - from);
            List<Double> each = Collections.nCopies(to - from, wide);
            Tag table = Tag.table();
            Flow.Block head = head(sheet, job.weekends().subList(from, to), wide, table);
            flow.head(head, head);
            flow.block(row(sheet, "there", job.weekends().subList(from, to).stream().map(Weekend::who).toList(), size, each, false, table));
            for (Row row : job.rows()) {
                if (row.cells().subMap(from, to).isEmpty()) continue;
                flow.block(row(sheet, row.place(), row.cells(from, to), size, each, true, table));
            }
            List<String> waits = job.weekends().subList(from, to).stream().map(Weekend::waits).toList();
            if (waits.stream().anyMatch(wait -> !wait.isEmpty())) flow.block(row(sheet, "then wait for", waits, size, each, false, table));
            flow.endHead();
            flow.gap(2);
        }
        List<String> orders = job.weekends().stream()
                .filter(weekend -> !weekend.goods().isEmpty())
                .map(weekend -> "Weekend " + weekend.number() + ", order " + weekend.orderBy() + ": " + weekend.goods() + ".")
                .toList();
        if (!orders.isEmpty()) flow.words(orders, size, false);
    }

    /** A line for each weekend. @param told whether with what is done at each place, and what is ordered */
    private static void lines(Flow flow, BenchSheet sheet, Job job, double size, boolean told) {
        double room = sheet.space().width() - NUMBER;
        List<Double> wide = List.of(DATES, (room - DATES) * (told ? 0.64 : 0.8), (room - DATES) * (told ? 0.36 : 0.2));
        Tag table = Tag.table();
        List<String> who = job.weekends().stream().map(Weekend::who).distinct().toList();
        flow.words(List.of("There" + (who.size() == 1 ? " every weekend: " + who.get(0) + "." : " as the sheet of each weekend says.")), size, false);
        Flow.Block head = row(sheet, "", size, List.of("weekend", told ? "where, and what" : "where", "order"), size, wide, NUMBER, false, () -> table.head(wide.size() + 1));
        flow.head(head, head);
        Map<Integer, List<Row>> rows = new HashMap<>();
        job.rows().forEach(row -> row.cells().keySet().forEach(weekend -> rows.computeIfAbsent(weekend, some -> new ArrayList<>()).add(row)));
        for (int i = 0; i < job.weekends().size(); i++) {
            Weekend weekend = job.weekends().get(i);
            String order = weekend.goods().isEmpty() ? "" : weekend.orderBy() + (told ? ": " + weekend.goods() : "");
            flow.block(row(sheet, weekend.number(), size * LARGER, List.of(weekend.dates(), places(rows.getOrDefault(i, List.of()), i, told), order), size, wide, NUMBER, false, () -> table.row(wide.size() + 1)));
        }
        flow.endHead();
    }

    /** {@code saw: stage 1; B1-B6: set out, ground}, or {@code saw; B1-B6}. @param rows that do something on it */
    private static String places(List<Row> rows, int weekend, boolean told) {
        Map<String, List<Row>> alike = new LinkedHashMap<>();
        for (Row row : rows) {
            alike.computeIfAbsent((row.isBeds() ? "" : row.place()) + (told ? ": " + row.cells().get(weekend) : ""), same -> new ArrayList<>()).add(row);
        }
        return alike.entrySet().stream()
                .map(one -> (one.getValue().get(0).isBeds() ? BedNames.compact(BedNames.inOrder(one.getValue().stream().flatMap(row -> row.codes().stream()).toList())) : "") + one.getKey())
                .collect(Collectors.joining("; "));
    }

    private static Flow.Block head(BenchSheet sheet, List<Weekend> weekends, double wide, Tag table) {
        return new Flow.Block(HEAD + 5, true, (left, top) -> {
            List<Shape> shapes = new ArrayList<>();
            Tag told = table.head(weekends.size() + 1);
            shapes.add(sheet.text(left, top + 5, "Weekend", TypeSize.ARMS_LENGTH, true).as(told.cell(0)));
            for (int i = 0; i < weekends.size(); i++) {
                double x = left + NAMES + i * wide + 0.8;
                shapes.add(sheet.text(x, top + 5.4, weekends.get(i).number(), 6, true).as(told.cell(i + 1)));
                shapes.add(sheet.fitted(x, top + 10, weekends.get(i).dates(), 3.2, false, wide - 1.4).as(told.cell(i + 1)));
            }
            shapes.add(sheet.line(left, top + HEAD + 4.6, left + NAMES + wide * weekends.size(), top + HEAD + 4.6, Inks.WIDE));
            return shapes;
        });
    }

    private static Flow.Block row(BenchSheet sheet, String name, List<String> cells, double size, List<Double> wide, boolean place, Tag table) {
        double named = place ? BenchSheet.fitting(name, TypeSize.ARMS_LENGTH, TypeSize.BED, true, NAMES - 1) : size;
        return row(sheet, name, named, cells, size, wide, NAMES, place, () -> table.row(cells.size() + 1));
    }

    /**
     * @param place whether a name in heavy type stands before cells that are framed
     * @param row   of a table, anew wherever it is drawn
     */
    private static Flow.Block row(BenchSheet sheet, String name, double named, List<String> cells, double size, List<Double> wide, double beside, boolean place, Supplier<Tag> row) {
        List<List<String>> wrapped = IntStream.range(0, cells.size()).mapToObj(i -> TextMeasure.wrap(cells.get(i), size, false, wide.get(i) - 1.6)).toList();
        List<String> names = TextMeasure.wrap(name, named, place, beside - 1);
        int lines = wrapped.stream().mapToInt(List::size).max().orElse(1);
        double height = Math.max(lines * size * PITCH, names.size() * named * PITCH) + PAD;
        return new Flow.Block(height, false, (left, top) -> {
            List<Shape> shapes = new ArrayList<>();
            Tag told = row.get();
            double x = left + beside;
            for (int i = 0; i < cells.size(); x += wide.get(i++)) {
                if (cells.get(i).isEmpty()) continue;
                if (place) {
                    shapes.add(sheet.inks.yard().area(new Box(x, top + 0.3, x + wide.get(i) - 0.4, top + height - 0.3), sheet.inks.pen(Inks.THIN)));
                }
                shapes.addAll(sheet.inks.lines(x + 0.8, top + PAD / 2 + 0.92 * size, PITCH * size, wrapped.get(i), size, false, told.cell(i + 1)));
            }
            shapes.addAll(sheet.inks.lines(left, top + PAD / 2 + 0.92 * named, PITCH * named, names, named, place, told.cell(0)));
            shapes.add(sheet.line(left, top + height, x, top + height, Inks.HAIR));
            return shapes;
        });
    }
}

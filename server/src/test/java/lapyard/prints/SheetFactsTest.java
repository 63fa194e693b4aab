package lapyard.prints;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import lapyard.catalogue.PackCode;
import lapyard.construction.LinerPiece;
import lapyard.construction.SlatCut;
import lapyard.geometry.Length;
import lapyard.geometry.Measure;
import lapyard.job.Buying;
import lapyard.job.Gardens;
import lapyard.job.JobSheet;
import lapyard.job.Loads;
import lapyard.loadin.Load;
import lapyard.order.Quote;
import lapyard.order.Slip;
import lapyard.order.SlipLine;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Each fact that several sheets tell is the same on all of them and in the job sheet: all samples but the field of 200 beds, and gardens made by seed. */
class SheetFactsTest {
    private static final Map<String, JobSheet> SEEDED = new HashMap<>();
    private static final Map<String, String> TEXTS = new HashMap<>();

    static Stream<String> gardens() {
        return Stream.of("chapel-corner", "ferry-lane", "lock-keepers-yard", "school-courtyard", "terrace-feet", "three-entries", "village-hall", "seed 1", "seed 2", "seed 3");
    }

    private static JobSheet sheet(String name) throws Exception {
        return name.startsWith("seed") ? SEEDED.computeIfAbsent(name, one -> Gardens.sheet(seeded(Integer.parseInt(one.substring(5))))) : Gardens.sample(name);
    }

    private static String text(String kind, String name) throws Exception {
        if (!TEXTS.containsKey(kind + name)) TEXTS.put(kind + name, SheetTruthTest.text(kind, sheet(name)));
        return TEXTS.get(kind + name);
    }

    /** Rectangles, an L and a hexagon with floors and liners on slabs, on strips of concrete on grass, with dates and a quote. */
    private static String seeded(int seed) {
        Random random = new Random(seed);
        List<String> beds = new ArrayList<>();
        for (int i = 0; i < 4 + seed; i++) {
            int w = 1200 + 100 * random.nextInt(30);
            int d = 1000 + 100 * random.nextInt(12);
            String shape = switch (i % 3) {
                case 0 -> "\"width\":" + w + ",\"depth\":" + d;
                case 1 -> "\"outline\":[[0,0],[" + (w + 900) + ",0],[" + (w + 900) + "," + (d + 700) + "],[" + w + "," + (d + 700) + "],[" + w + "," + d + "],[0," + d + "]]";
                default -> "\"outline\":[[0,0],[1400,0],[2100,1212],[1400,2424],[0,2424],[-700,1212]]";
            };
            beds.add("{\"id\":\"" + (char) ('A' + i) + "\"," + shape + ",\"courses\":" + (2 + random.nextInt(2)) + ",\"stage\":" + (1 + i / 3)
                    + ",\"at\":[" + (1500 + 6500 * (i % 3)) + "," + (1000 + 5000 * (i / 3)) + "]}");
        }
        return "{\"name\":\"Seed " + seed + "\",\"crew\":{\"start\":\"2026-05-02\"},\"quote\":{\"client\":\"M. Vale\",\"margin\":18,\"tax\":20,\"labour\":[{\"what\":\"Building\",\"hours\":40,\"rate\":24}]},"
                + "\"ground\":{\"outline\":[[0,0],[22000,0],[22000,18000],[0,18000]],\"preparation\":{\"soft\":\"strip\"},\"surfaces\":[{\"kind\":\"slab\",\"outline\":[[0,0],[22000,0],[22000,5000],[0,5000]]},"
                + "{\"kind\":\"grass\",\"outline\":[[0,5000],[22000,5000],[22000,18000],[0,18000]]}]},\"beds\":[" + String.join(",", beds) + "]}";
    }

    private static void contains(String text, String words) {
        assertTrue(text.contains(words), () -> words + " is not in " + text);
    }

    private static double amount(JobSheet.BedSheet bed, QuantityKind kind) {
        return bed.quantities().stream().filter(quantity -> quantity.is(kind)).mapToDouble(Quantity::value).sum();
    }

    private static List<SlipLine.PackCount> packs(JobSheet sheet, String item) {
        return sheet.slip().orders().stream().flatMap(order -> order.lines().stream()).filter(part -> part.line().item().equals(item)).flatMap(part -> part.packs().stream()).toList();
    }

    /** What is bought comes in and is there in some weekend: as many of each pack on the slip, on the delivery sheet and on the weekends together. */
    @ParameterizedTest
    @MethodSource("gardens")
    void packsAreAsManyOnEverySheet(String name) throws Exception {
        JobSheet sheet = sheet(name);
        boolean feet = sheet.garden().imperial();
        Map<String, Long> there = new TreeMap<>();
        for (String one : (text("weekends", name) + " ").split("Must be there: ")) {
            String goods = one.split("\\. (?=Mon|Tue|Wed|Thu|Fri|Sat|Sun)")[0];
            Set<String> labels = new HashSet<>();
            for (String line : goods.split("; ")) {
                Matcher label = Pattern.compile("(.+?): (?=[0-9]+ × )(.*)").matcher(line);
                if (!label.matches()) continue;
                assertTrue(labels.add(label.group(1)), () -> name + ": " + label.group(1) + " is named twice in one weekend");
                for (String pack : label.group(2).split(", (?=[0-9]+ × )")) {
                    there.merge(label.group(1) + ": " + pack.replaceFirst("^[0-9]+ × ", ""), Long.valueOf(pack.split(" × ")[0]), Long::sum);
                }
            }
        }
        Map<String, Long> slip = new TreeMap<>();
        for (Slip.Order order : sheet.slip().orders()) {
            for (Slip.Part part : order.lines()) {
                for (SlipLine.PackCount pack : part.packs()) {
                    slip.merge(part.line().label() + ": " + PackCode.words(pack.pack(), feet), pack.count(), Long::sum);
                    contains(text("slip", name), pack.count() + " " + PackCode.words(pack.pack(), feet));
                    if (!pack.pack().contains(" wide roll") && !pack.pack().startsWith("roll")) contains(text("load-in", name), pack.count() + " " + PackCode.words(pack.pack(), feet));
                }
            }
        }
        Map<String, Long> lower = new TreeMap<>();
        there.forEach((pack, count) -> lower.put(pack.toLowerCase(Locale.ROOT), count));
        Map<String, Long> bought = new TreeMap<>();
        slip.forEach((pack, count) -> bought.put(pack.toLowerCase(Locale.ROOT), count));
        assertEquals(bought, lower, name);
    }

    /** Money: the lines of a quote add up to its price, its tax and what is to pay; goods and charge to what a supplier gets. */
    @ParameterizedTest
    @MethodSource("gardens")
    void moneyAddsUpOnPaper(String name) throws Exception {
        JobSheet sheet = sheet(name);
        for (Slip.Order order : sheet.slip().orders()) {
            contains(text("slip", name), "Goods " + order.goods().toPlainString() + ", delivery " + order.charge().toPlainString() + ": "
                    + (order.atLeast() ? "at least " : "") + sheet.slip().currency().getCode() + " " + order.goods().add(order.charge()).toPlainString());
        }
        if (!sheet.garden().terms().quote().given()) return;
        String quote = text("quote", name);
        BigDecimal sum = BigDecimal.ZERO;
        for (Quote.Line line : sheet.quote().lines()) {
            if (line.price().signum() > 0) contains(quote, line.what() + " " + line.price().toPlainString());
            sum = sum.add(line.price());
        }
        Matcher all = Pattern.compile("All(?:, before tax|; no tax is added) ([0-9.]+) (?:Tax, ([0-9.]+) % ([0-9.]+) )?.*?To pay: [A-Z]+ ([0-9.]+[0-9])\\.").matcher(quote);
        assertTrue(all.find(), quote);
        assertEquals(0, sum.compareTo(new BigDecimal(all.group(1))), quote);
        BigDecimal tax = all.group(2) == null ? BigDecimal.ZERO : sum.multiply(new BigDecimal(all.group(2))).movePointLeft(2).setScale(2, java.math.RoundingMode.HALF_UP);
        if (all.group(3) != null) assertEquals(0, tax.compareTo(new BigDecimal(all.group(3))), quote);
        assertEquals(0, sum.add(tax).compareTo(new BigDecimal(all.group(4))), quote);
    }

    /** Masses of the delivery sheet add up to its heading; the places for bags and heaps are as many as what stands at them. */
    @ParameterizedTest
    @MethodSource("gardens")
    void deliveriesAddUp(String name) throws Exception {
        JobSheet sheet = sheet(name);
        boolean feet = sheet.garden().imperial();
        String text = text("load-in", name);
        long places = 0;
        for (var drop : Loads.of(sheet).drops()) {
            double kg = 0;
            for (Load load : drop.loads()) {
                kg += load.massKg().orElse(0) * load.count();
                if (load.massKg().isPresent()) contains(text, Measure.KG.number(load.massKg().getAsDouble(), 1, feet) + " " + Measure.KG.number(load.massKg().getAsDouble() * load.count(), 1, feet));
                if (load.bulk() && Loads.of(sheet).bagPlaces().isPresent()) {
                    contains(text, (load.places() == 1 ? places + 1 : (places + 1) + " to " + (places + load.places())) + " " + load.label() + ", " + load.count() + " × " + load.name());
                }
                if (load.bulk()) places += load.places();
            }
            contains(text, Measure.KG.written(kg, 0, feet) + ", ");
        }
        if (places > 0) contains(text, "Bulk bags and heaps take " + Measure.counted(places, "place"));
        else assertFalse(text.contains("Bulk bags and heaps"), text);
        for (SlipLine line : sheet.slip().lines()) {
            if (!line.unit().equals("m3") || line.need() <= 0) continue;
            contains(text, Measure.CUBIC_METRES.number(line.need(), 3, feet) + " " + line.label());
            Matcher need = Pattern.compile(Pattern.quote(line.label()) + ", needs ([0-9.]+) (?:m³|cu yd)").matcher(text("slip", name));
            assertTrue(need.find(), line.label());
            assertEquals(Double.parseDouble(Measure.CUBIC_METRES.number(line.need(), 3, feet)), Double.parseDouble(need.group(1)), 0.006, line.label());
        }
    }

    /** Screws, ties, staples, slats, bearers and liner of each bed on its card, its weekend and the register. */
    @ParameterizedTest
    @MethodSource("gardens")
    void eachBedsFiguresAreThoseOfTheJobSheet(String name) throws Exception {
        JobSheet sheet = sheet(name);
        boolean feet = sheet.garden().imperial();
        String cards = text("course-cards", name);
        String floors = Prints.print("base-and-liner").inSet().test(sheet, PrintAsk.usual("", "")) ? text("base-and-liner", name) : "";
        String rolls = text("rolls", name);
        for (JobSheet.BedSheet bed : sheet.beds()) {
            String id = bed.work().bed().id();
            double screws = amount(bed, QuantityKind.SCREWS);
            if (screws > 0) contains(cards, Math.round(screws) + " in all.");
            double ties = amount(bed, QuantityKind.COURSE_TIES);
            if (ties > 0) contains(text("weekends", name), Math.round(ties) + " course tie");
            double finish = amount(bed, QuantityKind.FINISH_AREA);
            if (finish > 0) contains(text("weekends", name), Measure.SQUARE_METRES.written(finish, 1, feet));
            contains(text("bed-register", name), Measure.of(amount(bed, QuantityKind.TIMBER_LENGTH), "m", 1, feet) + " " + Measure.of(amount(bed, QuantityKind.TIMBER_MASS), "kg", 1, feet)
                    + (amount(bed, QuantityKind.SOIL_LOOSE) > 0 ? " " + Measure.of(amount(bed, QuantityKind.SOIL_LOOSE), "m3", 2, feet).replace("m3", "m³") : ""));
            double staples = amount(bed, QuantityKind.STAPLES);
            if (staples > 0) contains(floors, Math.round(staples) + " staples");
            for (LinerPiece piece : bed.work().liner()) {
                contains(floors, Length.written(feet ? piece.widthMm() : Math.floor(piece.widthMm() + 0.5), feet) + " × " + Length.written(feet ? piece.heightMm() : Math.floor(piece.heightMm() + 0.5), feet));
                contains(rolls, piece.id());
            }
            for (SlatCut cut : bed.work().bottom().slats()) contains(floors, cut.count() + " of " + Length.written(feet ? cut.lengthMm() : Math.floor(cut.lengthMm() + 0.5), feet));
            assertTrue(cards.contains("bed " + id) || cards.contains("beds "), id);
        }
    }

    /** Pieces of all settings are those of all boards, and as many boards are bought as the slip has; rolls are as long as they are sold. */
    @ParameterizedTest
    @MethodSource("gardens")
    void whatIsCutIsWhatIsBought(String name) throws Exception {
        JobSheet sheet = sheet(name);
        String saw = text("saw-day", name);
        int pieces = 0;
        for (JobSheet.SectionCutting cutting : Stream.concat(sheet.cutting().stream(), sheet.strips().stream()).toList()) pieces += cutting.saw().boards().stream().mapToInt(board -> board.cuts().size()).sum();
        int told = 0;
        Matcher settings = Pattern.compile("[0-9]+ settings?, ([0-9]+) pieces?,").matcher(saw);
        while (settings.find()) told += Integer.parseInt(settings.group(1));
        assertEquals(pieces, told, saw);
        if (sheet.garden().goods().rack().isEmpty()) {
            for (JobSheet.SectionCutting cutting : sheet.cutting()) {
                assertEquals(cutting.saw().boards().size(), packs(sheet, "timber " + cutting.section()).stream().mapToLong(SlipLine.PackCount::count).sum());
                contains(saw, cutting.saw().boards().size() + " board");
            }
        }
        for (JobSheet.MaterialRolls rolls : sheet.rolls()) {
            double mm = rolls.result().rolls().stream().mapToDouble(layout -> layout.boughtMm()).sum();
            contains(text("rolls", name), "Buy " + (sheet.garden().imperial() ? Length.written(mm, true) : lapyard.geometry.Lengths.text(mm / 1000) + " m"));
        }
    }

    /** By the day on which it is ordered, each supplier's lead still passes before the goods are used. */
    @ParameterizedTest
    @MethodSource("gardens")
    void goodsAreOrderedInTime(String name) throws Exception {
        JobSheet sheet = sheet(name);
        if (sheet.garden().people().crew().dates().start().isEmpty()) return;
        LocalDate start = sheet.garden().people().crew().dates().start().get();
        String job = text("job", name);
        Map<Integer, LocalDate> latest = new TreeMap<>();
        for (Buying.Row row : Buying.of(sheet).rows()) {
            if (row.packs().isEmpty()) continue;
            int lead = sheet.slip().orders().stream().filter(order -> order.lines().stream().anyMatch(part -> part.line().item().equals(row.item())))
                    .mapToInt(order -> order.supplier().leadDays() > 0 ? order.supplier().leadDays() : sheet.garden().people().crew().waits().leadDays()).max().orElse(0);
            latest.merge(row.weekend(), start.plusDays(row.needDay() - lead), (a, b) -> a.isBefore(b) ? a : b);
        }
        assertFalse(latest.isEmpty());
        latest.forEach((weekend, day) -> contains(job, "Weekend " + weekend + ", order by " + DateTimeFormatter.ofPattern("EEE d MMM yyyy", Locale.ENGLISH).format(day) + ": "));
    }
}

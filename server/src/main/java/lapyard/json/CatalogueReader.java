package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.BiFunction;
import java.util.function.Function;
import lapyard.catalogue.Catalogue;
import lapyard.catalogue.Goods;
import lapyard.catalogue.Pack;
import lapyard.catalogue.PackGoods;
import lapyard.catalogue.Roll;
import lapyard.catalogue.Section;
import lapyard.catalogue.StockLength;
import lapyard.catalogue.StrengthClass;
import lapyard.plan.Fact;
import lapyard.plan.FindingKind;
import lapyard.plan.WayKind;
import lapyard.working.BrokenRule;
import lapyard.working.OwnFile;
import lapyard.working.Whole;

/** The merchant's list: our example prices, replaced line by line by the garden's own. */
final class CatalogueReader {
    static final String EXAMPLES = "lapyard/json/example-catalogue.json";

    private CatalogueReader() {}

    private static final class Examples {
        private static final Catalogue CATALOGUE = load();
        private static final Catalogue IN_FEET = new Catalogue(CATALOGUE.suppliers(), CATALOGUE.sections(), CATALOGUE.rolls(),
                CATALOGUE.packs().stream().map(PackGoods::inFeet).toList(), CATALOGUE.examplePrices());

        private static Catalogue load() {
            Cursor.Notes notes = new Cursor.Notes();
            Catalogue empty = new Catalogue(List.of(), List.of(), List.of(), List.of(), true);
            JsonNode lines = DocumentText.parse(OwnFile.text(EXAMPLES));
            Catalogue read = new Cursor(lines, FieldTable.GARDEN.inner("catalogue"), "", "example catalogue", notes).whole(cursor -> over(empty, cursor, false, 0));
            if (notes.stopped()) throw new IllegalStateException("example catalogue: " + notes.findings);
            return read;
        }
    }

    static Catalogue examples() {
        return Examples.CATALOGUE;
    }

    /**
     * @param leadDays of a supplier that names none
     * @param bought   what the tally has as bought
     */
    static Catalogue read(Cursor cursor, boolean imperial, int leadDays, JsonNode bought) {
        boolean withExamples = cursor.flag("examples");
        Catalogue under = withExamples ? imperial ? Examples.IN_FEET : examples() : new Catalogue(List.of(), List.of(), List.of(), List.of(), false);
        return Pins.bought(Pins.read(cursor).over(over(under, cursor, imperial, leadDays)), bought);
    }

    private static Catalogue over(Catalogue under, Cursor cursor, boolean imperial, int leadDays) {
        cursor.raw("examples");
        cursor.raw("pins");
        Suppliers suppliers = Suppliers.read(cursor, leadDays);
        List<Section> sections = lines(cursor, "sections", "section", "id", "100x200", (line, id) -> section(line, id, suppliers));
        List<Roll> rolls = lines(cursor, "rolls", "roll", "id", "liner-4000", (line, id) -> roll(line, id, suppliers));
        List<PackGoods> packs = lines(cursor, "packs", "goods", "item", "soil.topsoil", (line, item) -> goods(line, item, suppliers, imperial));
        List<Section> allSections = replaced(under.sections(), sections, Section::id, cursor, "sections");
        List<Roll> allRolls = replaced(under.rolls(), rolls, Roll::id, cursor, "rolls");
        List<PackGoods> allPacks = replaced(under.packs(), packs, PackGoods::item, cursor, "packs");
        boolean examplesLeft = under.examplePrices()
                && (left(under.sections(), allSections)
                        || left(under.rolls(), allRolls)
                        || left(under.packs(), allPacks)
                        || under.sections().isEmpty());
        return new Catalogue(suppliers.all(), allSections, allRolls, allPacks, examplesLeft);
    }

    /** Whether a line stands as it stood; the very same ones are looked for first, as a record's first comparison takes longer than all. */
    private static <T> boolean left(List<T> under, List<T> all) {
        return all.stream().anyMatch(one -> under.stream().anyMatch(other -> other == one)) || all.stream().anyMatch(under::contains);
    }

    private static <T> List<T> replaced(List<T> under, List<T> over, Function<T, String> id, Cursor cursor, String field) {
        Map<String, T> own = new LinkedHashMap<>();
        for (T line : over) {
            if (own.put(id.apply(line), line) != null) cursor.twice(field, "line", Fact.name(BrokenRule.cut(id.apply(line))), WayKind.KEEP_ONE);
        }
        Map<String, T> all = new LinkedHashMap<>();
        under.forEach(line -> all.put(id.apply(line), line));
        all.putAll(own);
        return List.copyOf(all.values());
    }

    /** The lines of a list, each named by the text in {@code key}, which it cannot do without. */
    private static <T> List<T> lines(Cursor catalogue, String field, String what, String key, String example, BiFunction<Cursor, String, T> reader) {
        List<T> lines = new ArrayList<>();
        for (Cursor line : catalogue.objects(field, what)) {
            String name = line.text(key);
            Cursor named = name.isEmpty() ? line : line.named(what + " " + name);
            if (name.isEmpty()) named.missing(key, "\"" + key + "\": \"" + example + "\"");
            lines.add(reader.apply(named, name));
            named.refuseUnknown();
        }
        return lines;
    }

    private static Section section(Cursor named, String id, Suppliers suppliers) {
        double thickness = named.neededLength("thickness");
        double height = named.neededLength("height");
        double density = named.number("density", 600);
        String graded = named.choice("strengthClass");
        boolean treated = named.flag("treated");
        int goodFaces = named.count("goodFaces");
        boolean planed = named.flag("planed");
        List<StockLength> stock = new ArrayList<>();
        for (Cursor length : named.objects("stock", "stock length")) {
            String seller = suppliers.of(length);
            StockLength one = new StockLength(
                    length.neededLength("length"),
                    suppliers.paid(seller, length.price("price")),
                    seller,
                    length.count("bundle"),
                    length.count("least"));
            length.refuseUnknown();
            if (stock.stream().anyMatch(other -> other.lengthMm() == one.lengthMm() && other.supplier().equals(seller))) {
                length.twice("length", "stock length", Fact.mm(one.lengthMm()), WayKind.KEEP_ONE);
            }
            stock.add(one);
        }
        stock.sort(Comparator.comparingDouble(StockLength::lengthMm));
        return new Section(id, thickness, height, density, stock, StrengthClass.named(graded), treated, goodFaces, planed);
    }

    private static Roll roll(Cursor named, String id, Suppliers suppliers) {
        String seller = suppliers.of(named);
        return new Roll(
                id,
                named.text("material"),
                named.neededLength("width"),
                suppliers.paid(seller, named.price("price")),
                named.number("step"),
                named.numberIfAny("maxLength"),
                seller,
                named.numberIfAny("weight"),
                !named.flag("oneWay"));
    }

    private static PackGoods goods(Cursor named, String item, Suppliers suppliers, boolean imperial) {
        String label = named.text("label", Goods.label(item, imperial));
        String unit = named.text("unit");
        double spare = named.number("spare", PackGoods.usualSpare(item) * 100) / 100;
        double loosening = named.number("loosening", PackGoods.usualLoosening(item));
        OptionalDouble density = named.numberIfAny("density");
        List<Pack> packs = new ArrayList<>();
        for (Cursor size : named.objects("packs", "pack")) {
            String seller = suppliers.of(size);
            double content = content(size, unit, density);
            Pack pack = new Pack(
                    size.text("name", (shownMm(content) + " " + unit).strip()),
                    content,
                    suppliers.paid(seller, size.price("price")),
                    seller,
                    size.count("bundle"),
                    size.count("least"),
                    size.numberIfAny("mass"));
            size.refuseUnknown();
            if (packs.stream().anyMatch(other -> other.name().equals(pack.name()) && other.supplier().equals(seller))) {
                size.twice("name", "pack", Fact.name(BrokenRule.cut(pack.name())), WayKind.KEEP_ONE);
            }
            packs.add(pack);
        }
        return new PackGoods(item, label, unit, spare, loosening, packs, density);
    }

    /** Of one pack; what is sold by the tonne holds its tonnes over the density, down to a litre so that it covers. */
    private static double content(Cursor pack, String unit, OptionalDouble density) {
        if (!pack.has("tonnes")) return pack.number("content", 1, unit);
        double tonnes = pack.number("tonnes");
        if (pack.has("content")) {
            pack.clash("tonnes", "content");
        } else if (!unit.equals("m3") || density.isEmpty()) {
            pack.add(pack.fault(FindingKind.TONNES_NO_DENSITY, "tonnes").way(WayKind.GIVE_LIKE, Fact.name("\"unit\": \"m3\", \"density\": 1200")));
        } else {
            return Math.max(0.001, Whole.down(tonnes * 1e6 / density.getAsDouble()) / 1e3);
        }
        return 1;
    }

    static String shownMm(double number) {
        return Cursor.plain(java.math.BigDecimal.valueOf(number));
    }
}

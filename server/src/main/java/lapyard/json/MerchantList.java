package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Base64;
import java.util.Currency;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lapyard.catalogue.TradeName;
import lapyard.exchange.XlsxReader;
import lapyard.geometry.Length;
import lapyard.geometry.Lengths;
import lapyard.plan.Finding;
import lapyard.plan.FindingList;
import lapyard.plan.WayKind;
import lapyard.working.BrokenRule;
import lapyard.working.Csv;
import lapyard.working.OwnFile;
import org.apache.commons.csv.CSVRecord;

/**
 * A merchant's list against a garden. It is CSV, with a comma, semicolon or tab between cells, read into lines of a garden's catalogue. The
 * columns that were understood are shown first; a bad line is named by its number in the file, and while there is one
 * nothing is taken. A line without a price was left unanswered and is passed over, unless it sizes what stands in the catalogue or what the one merchant sells.
 *
 * @param columns field by the heading it was read from, in the order of the file
 * @param ignored headings that mean nothing here
 * @param lines   as they would stand in the catalogue
 * @param bad     what is wrong, by line number
 */
public record MerchantList(Map<String, String> columns, List<String> ignored, List<Line> lines, List<Bad> bad) {
    private static final int MOST_LINES = 2_000;

    /** What a price is for, where it is not the usual: {@code a foot} of a roll. */
    static final String FOR = "for";

    /** Fields that hold millimetres, and what else they may be written in. */
    private static final List<String> LENGTHS = List.of("length", "width", "thickness", "height", "step");
    private static final Map<String, Double> UNITS_MM = Map.of("mm", 1.0, "cm", 10.0, "m", 1000.0,
            "in", Length.INCH_MM, "\"", Length.INCH_MM, "inches", Length.INCH_MM, "ft", Length.FOOT_MM, "'", Length.FOOT_MM, "feet", Length.FOOT_MM);
    private static final String UNIT = "(" + String.join("|", UNITS_MM.keySet()) + ")";
    private static final Pattern LENGTH = Pattern.compile("(.*[0-9])\\s*" + UNIT, Pattern.CASE_INSENSITIVE);

    /** A heading that says what its column is in: {@code Length, ft}, {@code Price (USD)}. What parts the two is taken whole, so that nothing is tried from each of its signs. */
    private static final String PARTING = "[\\s,;:(\\[_-]";
    private static final Pattern HEADING = Pattern.compile("(.*?)(?<!" + PARTING + ")" + PARTING + "*+(?:in\\s+)?(" + UNIT + "|[a-z]{3})[)\\].]*", Pattern.CASE_INSENSITIVE);

    /** An amount with the code of its currency before or after it: {@code 46.00 USD}. */
    private static final Pattern CODED = Pattern.compile("(?:([A-Z]{3})(?![A-Z]))?(.*?[0-9].*?)(?:(?<![A-Z])([A-Z]{3}))?", Pattern.CASE_INSENSITIVE | Pattern.DOTALL);

    /** @param unit of numbers without one; empty where the heading names none */
    private record Heading(String field, String unit) {}

    /** A section named by its size, however merchants write it: {@code 100x200}, {@code 100 x 200 mm}. */
    private static final Pattern SIZE = Pattern.compile("([0-9]+(?:\\.[0-9]+)?)\\s*[xX\u00D7*]\\s*([0-9]+(?:\\.[0-9]+)?)(?:\\s*mm)?");

    /** Timber is not sold so thin: smaller numbers of a size are nominal inches. */
    private static final BigDecimal LEAST_SIZE_MM = BigDecimal.valueOf(16);

    /**
     * A section that the list may call by its name alone.
     *
     * @param sizeMm thickness and height, where the garden's own catalogue does not say them
     */
    private record Known(String id, List<Double> sizeMm) {
        /** By the code, and by the name in feet and inches: what the garden measured is not asked for again. */
        static Map<String, Known> of(ObjectNode garden) {
            Map<String, Known> all = new LinkedHashMap<>();
            CatalogueReader.examples().sections().forEach(one -> new Known(one.id(), List.of(one.thicknessMm(), one.heightMm())).into(all));
            garden.path("catalogue").path("sections").forEach(one -> new Known(one.path("id").asText(), List.of()).into(all));
            return all;
        }

        private void into(Map<String, Known> all) {
            all.put(TradeName.section(id, true), this);
            all.put(id, this);
        }
    }

    /** Headings as merchants write them, without case, spaces and signs; the first field that knows one takes it. */
    private static final Map<String, List<String>> HEADINGS = new LinkedHashMap<>();

    static {
        HEADINGS.put("item", List.of("item", "code", "sku", "article", "product", "section", "goods", "material"));
        HEADINGS.put("label", List.of("label", "description", "text"));
        HEADINGS.put("pack", List.of("pack", "name", "packname", "size", "sizename"));
        HEADINGS.put("content", List.of("content", "contents", "quantity", "fill", "packsize"));
        HEADINGS.put("unit", List.of("unit", "uom", "units"));
        HEADINGS.put("tonnes", List.of("tonnes", "tonne", "t"));
        HEADINGS.put("length", List.of("length", "stocklength"));
        HEADINGS.put("width", List.of("width", "rollwidth"));
        HEADINGS.put("thickness", List.of("thickness"));
        HEADINGS.put("height", List.of("height", "heightmm", "depth"));
        HEADINGS.put("density", List.of("density", "densitykgm3"));
        HEADINGS.put("step", List.of("step", "soldby"));
        HEADINGS.put("price", List.of("price", "priceeach", "unitprice", "cost", "each", "net", "gross"));
        HEADINGS.put(FOR, List.of("priceisfor", "per"));
        HEADINGS.put("bundle", List.of("bundle", "soldin", "bundlesize"));
        HEADINGS.put("least", List.of("least", "minimum", "minqty", "minimumquantity", "moq"));
        HEADINGS.put("mass", List.of("mass", "weight", "weightkg", "masskg", "kg"));
        HEADINGS.put("supplier", List.of("supplier", "merchant", "seller"));
    }

    /** What a column can be. */
    public static List<String> fields() {
        return List.copyOf(HEADINGS.keySet());
    }

    public MerchantList {
        lines = List.copyOf(lines);
        bad = List.copyOf(bad);
        ignored = List.copyOf(ignored);
    }

    /** {@code kind} is {@code section}, {@code roll} or {@code goods}; {@code fields} have the names of {@link #columns}. */
    public record Line(long line, String kind, Map<String, String> fields) {
        /** What is sold, in which size and by whom; a list has one price for it. */
        private List<String> goods() {
            return Stream.of("item", "length", "width", "pack", "content", "tonnes", "supplier").map(field -> fields.getOrDefault(field, "")).toList();
        }

        private List<Object> price() {
            return List.of(new BigDecimal(fields.get("price")).stripTrailingZeros(), fields.getOrDefault(FOR, ""));
        }
    }

    public record Bad(long line, String text, String way) {}

    /** The catalogue that stands where a garden says nothing, as a document's catalogue is written. */
    public static String examples() {
        return OwnFile.text(CatalogueReader.EXAMPLES);
    }

    /**
     * @param body {@code {"list": CSV, "supplier": id, "garden": {...}}}; in place of {@code list} the bytes of a workbook in base64 as
     *     {@code workbook}, and the answer has its first sheet as {@code list}
     * @throws lapyard.plan.CannotAnswer for a field that is not what it should be, or when it is no JSON at all
     * @throws lapyard.working.BrokenRule for a workbook that cannot be read
     */
    public static ObjectNode preview(String body) {
        return Asked.read("merchant-list", DocumentText.parse(body), ask -> {
            boolean workbook = ask.raw("workbook").isTextual();
            if (!workbook && !ask.has("list")) ask.missing("list", "{\"list\": \"item,price\\n...\", \"supplier\": \"\", \"garden\": {}}");
            String list = workbook ? XlsxReader.firstSheetAsCsv(bytes(ask)) : ask.text("list");
            ObjectNode preview = preview(list, ask.text("supplier"), Map.of(), Asked.object(ask, "garden"));
            return workbook ? preview.put("list", list) : preview;
        });
    }

    private static byte[] bytes(Cursor ask) {
        try {
            return Base64.getDecoder().decode(ask.text("workbook"));
        } catch (IllegalArgumentException e) {
            ask.shape("workbook", "the bytes of the file in base64", ask.raw("workbook"), WayKind.IN_QUOTES);
            throw e;
        }
    }

    /**
     * How the list is understood; {@code garden} is the garden with it, null where a line is bad or that garden could not be read.
     *
     * @param named fields by the heading that means them, where that was said by hand; the fields are those of {@link #fields}
     */
    public static ObjectNode preview(String csv, String supplier, Map<String, String> named, ObjectNode garden) {
        MerchantList list = read(csv, supplier, named, garden);
        Optional<ObjectNode> with = list.bad.isEmpty() ? Optional.of(IntoCatalogue.of(garden, list.lines)) : Optional.empty();
        Optional<Reading> reading = with.map(GardenReader::read);
        return Wire.of(new Preview(
                list.columns.entrySet().stream().map(column -> new Column(column.getKey(), column.getValue())).toList(), list.ignored, list.lines, list.bad,
                reading.map(read -> FindingList.stops(read.findings())).orElse(List.of()), with.filter(whole -> reading.get() instanceof Reading.Read)));
    }

    private record Column(String heading, String field) {}

    private record Preview(List<Column> columns, List<String> ignored, List<Line> lines, List<Bad> bad, List<Finding> findings, Optional<ObjectNode> garden) {}

    /**
     * @param supplier id for lines that name none; empty for the one merchant
     * @param named fields by the heading that means them, where that was said by hand
     * @param garden whose sections need no size
     */
    static MerchantList read(String csv, String supplier, Map<String, String> named, ObjectNode garden) {
        Rows rows = new Rows(supplier, named, Known.of(garden), garden);
        Csv.read(DocumentText.unmarked(csv), rows).ifPresent(line -> rows.bad.add(new Bad(line, "a quoted cell is not closed or goes on after its quotes",
                "write each quote inside a cell twice, and close each cell that begins with one")));
        if (rows.lines.isEmpty() && rows.bad.isEmpty()) {
            boolean parted = csv.isBlank() || !rows.columns.isEmpty();
            rows.bad.add(rows.unanswered ? new Bad(1, "no line has a price", "price what is sold") : new Bad(1, parted ? "the list is empty" : "no line has two cells", parted ? "send a heading, and a line for each pack" : "part cells with commas, semicolons or tabs"));
        }
        return new MerchantList(rows.columns, rows.ignored, rows.lines, rows.bad);
    }

    /** What was read so far: the row of headings, with titles above it passed over, and lines. */
    private static final class Rows implements Csv.Reading {
        private final String supplier;
        private final Map<String, String> named;
        private final Map<String, Known> known;
        private final String currency;
        private final JsonNode catalogue;
        private boolean unanswered;
        private final Map<Integer, Heading> headings = new LinkedHashMap<>();
        final Map<String, String> columns = new LinkedHashMap<>();
        final List<String> ignored = new ArrayList<>();
        final List<Line> lines = new ArrayList<>();
        private final Map<List<String>, Line> byGoods = new HashMap<>();
        final List<Bad> bad = new ArrayList<>();

        Rows(String supplier, Map<String, String> named, Map<String, Known> known, ObjectNode garden) {
            this.supplier = supplier;
            this.named = named;
            this.known = known;
            this.currency = garden.path("currency").asText(GardenReader.CURRENCY);
            this.catalogue = garden.path("catalogue");
        }

        @Override
        public boolean take(CSVRecord row, long number) {
            boolean head = columns.isEmpty() && ignored.isEmpty();
            if (head) {
                if (row.stream().filter(cell -> !cell.isBlank()).count() < 2) return true; // a title
                headings(row);
                for (String needed : List.of("item", "price")) {
                    if (columns.containsValue(needed)) continue;
                    bad.add(new Bad(number, "no column for the " + needed, "head one column \"" + needed + "\""));
                    return false;
                }
            }
            Optional<Bad> foreign = foreign(row, number);
            if (foreign.isPresent()) {
                lines.clear();
                bad.clear();
                bad.add(foreign.get());
            } else if (!head && lines.size() + bad.size() >= MOST_LINES) {
                bad.add(new Bad(number, "more than " + MOST_LINES + " lines", "split the list"));
                return false;
            } else if (!head) {
                line(row, number);
            }
            return foreign.isEmpty();
        }

        private void headings(CSVRecord row) {
            for (int i = 0; i < row.size(); i++) {
                String cell = row.get(i).strip();
                Optional<Heading> heading = Optional.ofNullable(named.get(cell)).map(field -> new Heading(field, unit(cell, field)))
                        .or(() -> meant(cell).filter(one -> !named.containsValue(one.field())))
                        .filter(one -> headings.values().stream().noneMatch(other -> other.field().equals(one.field())));
                if (heading.isPresent()) {
                    headings.put(i, heading.get());
                    columns.put(row.get(i), heading.get().field());
                } else if (!cell.isEmpty()) {
                    ignored.add(row.get(i));
                }
            }
        }

        private void line(CSVRecord row, long number) {
            Map<String, String> fields = new LinkedHashMap<>();
            headings.forEach((column, heading) -> {
                if (column >= row.size() || row.get(column).isBlank()) return;
                String cell = row.get(column).strip();
                boolean bare = LENGTHS.contains(heading.field()) && !WrittenNumber.readings(cell).isEmpty();
                fields.put(heading.field(), bare ? (cell + " " + heading.unit()).strip() : heading.field().equals("price") ? Price.of(cell).amount() : cell);
            });
            if (fields.isEmpty()) return;
            if (!supplier.isEmpty()) fields.putIfAbsent("supplier", supplier);
            Optional<Bad> fault = fields.containsKey("item") ? numbers(fields, number).or(() -> size(fields, number, known))
                    : Optional.of(new Bad(number, "names no item", "write a section such as 100x200, or goods such as screws"));
            String kind = fields.containsKey("length") ? "section" : fields.containsKey("width") ? "roll"
                    : fields.containsKey("content") || fields.containsKey("tonnes") ? "goods" : "";
            boolean answered = fields.containsKey("price") || !kind.isEmpty() && (!fields.containsKey("supplier") || fault.isEmpty() && IntoCatalogue.has(catalogue, kind, fields));
            unanswered |= !answered;
            if (fault.isPresent()) {
                bad.add(fault.get());
            } else if (!answered) {
                return;
            } else if (!kind.isEmpty()) {
                Line line = new Line(number, kind, fields);
                Line before = fields.containsKey("price") ? byGoods.putIfAbsent(line.goods(), line) : null;
                if (before == null || before.price().equals(line.price())) lines.add(line);
                else bad.add(new Bad(number, "\"" + BrokenRule.cut(fields.get("item")) + "\" stands in line " + before.line() + " with another price", "keep one of the two"));
            } else {
                bad.add(new Bad(number, "\"" + BrokenRule.cut(fields.get("item")) + "\" has no length, width or content",
                        "give a stock length, the width of a roll, or what a pack holds"));
            }
        }

        /** What is said once for a whole list, of which nothing can be taken: its prices are in another currency than the garden's. */
        private Optional<Bad> foreign(CSVRecord row, long number) {
            return headings.entrySet().stream().filter(column -> column.getValue().field().equals("price") && column.getKey() < row.size())
                    .map(column -> Price.of(row.get(column.getKey()).strip()).code().or(() -> Optional.of(column.getValue().unit().toUpperCase(Locale.ROOT))).get())
                    .filter(code -> !code.isEmpty() && !code.equals(currency)).findFirst()
                    .map(code -> new Bad(number, "prices are in " + code + ", the garden is in " + currency, "set the currency of the garden to " + code + ", or give prices in " + currency));
        }
    }

    private static Optional<Heading> meant(String cell) {
        Matcher parted = HEADING.matcher(cell);
        return field(cell).map(field -> new Heading(field, ""))
                .or(() -> parted.matches() ? field(parted.group(1)).map(field -> new Heading(field, unit(cell, field))).filter(one -> !one.unit().isEmpty()) : Optional.empty());
    }

    private static Optional<String> field(String heading) {
        String plain = heading.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]", "");
        return HEADINGS.entrySet().stream().filter(entry -> entry.getValue().contains(plain)).map(Map.Entry::getKey).findFirst();
    }

    /**
     * What a heading says that its column is in, where such a field can be in it: lengths in a unit of length, prices in a currency,
     * in capitals or in brackets, as "Price all" is in no lek.
     */
    private static String unit(String cell, String field) {
        Matcher parted = HEADING.matcher(cell);
        if (!parted.matches()) return "";
        String unit = parted.group(2).toLowerCase(Locale.ROOT);
        String code = cell.endsWith(")") ? unit.toUpperCase(Locale.ROOT) : parted.group(2);
        boolean can = LENGTHS.contains(field) ? UNITS_MM.containsKey(unit) : field.equals("price") && isCurrency(code);
        return can ? unit : "";
    }

    private static boolean isCurrency(String code) {
        return Currency.getAvailableCurrencies().stream().anyMatch(one -> one.getCurrencyCode().equals(code));
    }

    /** Writes the code of a section plainly, and where it has a length its size as far as the code or what is known says it. */
    private static Optional<Bad> size(Map<String, String> fields, long number, Map<String, Known> known) {
        Matcher size = SIZE.matcher(fields.get("item"));
        boolean sized = size.matches();
        if (sized) fields.put("item", size.group(1) + "x" + size.group(2));
        if (!fields.containsKey("length")) return Optional.empty();
        boolean told = fields.containsKey("thickness") && fields.containsKey("height");
        boolean inches = sized && new BigDecimal(size.group(1)).min(new BigDecimal(size.group(2))).compareTo(LEAST_SIZE_MM) < 0;
        Known section = known.get(fields.get("item"));
        if (section != null) {
            fields.put("item", section.id());
            for (int i = 0; i < section.sizeMm().size(); i++) fields.putIfAbsent(i == 0 ? "thickness" : "height", Lengths.text(section.sizeMm().get(i)));
        } else if (!told && (inches || !sized)) {
            return Optional.of(new Bad(number, "\"" + BrokenRule.cut(fields.get("item")) + "\" has a length but no thickness and height" + (inches ? " as measured" : ""),
                    inches ? "fill the two columns" : "name the section by its size, as in 100x200, or fill the two columns"));
        } else if (sized) {
            fields.putIfAbsent("thickness", size.group(1));
            fields.putIfAbsent("height", size.group(2));
        }
        return Optional.empty();
    }

    /** An amount, and the code of the currency that stands with it. */
    private record Price(Optional<String> code, String amount) {
        static Price of(String cell) {
            Matcher coded = CODED.matcher(cell);
            if (!coded.matches()) return new Price(Optional.empty(), cell);
            Optional<String> code = Optional.ofNullable(coded.group(1)).or(() -> Optional.ofNullable(coded.group(3))).map(one -> one.toUpperCase(Locale.ROOT)).filter(MerchantList::isCurrency);
            return new Price(code, code.isPresent() ? coded.group(2).strip() : cell);
        }
    }

    /** What is wrong with the first number that cannot be taken; all are written plainly where nothing is. */
    private static Optional<Bad> numbers(Map<String, String> fields, long number) {
        for (Map.Entry<String, String> field : fields.entrySet()) {
            if (List.of("item", "label", "pack", "unit", "supplier", FOR).contains(field.getKey())) continue;
            boolean length = LENGTHS.contains(field.getKey());
            FieldTable.Field bounds = bounds(field.getKey(), fields.containsKey("length"));
            List<BigDecimal> amounts = possible(bounds, length ? lengthsMm(field.getValue()) : WrittenNumber.readings(field.getValue()));
            String written = field.getKey() + " \"" + BrokenRule.cut(field.getValue()) + "\"";
            if (amounts.isEmpty()) {
                return Optional.of(new Bad(number, written + " is no " + (length ? "length" : "number"), length ? "write it as 2400 mm, 2.4 m or 8 ft" : "write it as 12.50"));
            }
            if (amounts.size() > 1) {
                // three decimals would be asked about again
                String either = amounts.stream().map(BigDecimal::stripTrailingZeros)
                        .map(one -> (one.scale() == 3 ? one.setScale(4) : one).toPlainString() + (length ? " mm" : "")).collect(Collectors.joining(" or "));
                return Optional.of(new Bad(number, written + " of \"" + BrokenRule.cut(fields.get("item")) + "\" can mean " + either, "write " + either));
            }
            BigDecimal amount = amounts.get(0);
            boolean zero = field.getKey().equals("price");
            if (amount.signum() < 0 || amount.signum() == 0 && !zero || zero && amount.doubleValue() > bounds.most()) {
                return Optional.of(new Bad(number, field.getKey() + " " + amount.toPlainString() + " of \"" + BrokenRule.cut(fields.get("item")) + "\" makes no sense",
                        zero ? "give 0 to " + BigDecimal.valueOf(bounds.most()).toBigInteger() + ", or leave it empty where it is not priced yet" : "give a number above 0"));
            }
            field.setValue(amount.toPlainString());
        }
        return Optional.empty();
    }

    /** Of two readings those that a catalogue can hold; both where it can hold neither. */
    private static List<BigDecimal> possible(FieldTable.Field bounds, List<BigDecimal> readings) {
        List<BigDecimal> possible = readings.stream().filter(one -> one.doubleValue() >= bounds.least() && one.doubleValue() <= bounds.most()
                && one.stripTrailingZeros().scale() <= bounds.decimals()).toList();
        return possible.isEmpty() ? readings : possible;
    }

    /** What the schema has of a field of a catalogue's lines. */
    private static FieldTable.Field bounds(String field, boolean section) {
        return Stream.of(section ? "sections" : "packs", "sections", "rolls", "packs").map(FieldTable.GARDEN.inner("catalogue")::inner)
                .flatMap(lines -> Stream.concat(Stream.of(lines), Stream.of("stock", "packs").filter(lines::has).map(lines::inner)))
                .filter(held -> held.has(field)).findFirst().orElseThrow().field(field);
    }

    /** Millimetres to 0.1; without a unit the number is millimetres. */
    private static List<BigDecimal> lengthsMm(String text) {
        Matcher written = LENGTH.matcher(text);
        BigDecimal unitMm = written.matches() ? BigDecimal.valueOf(UNITS_MM.get(written.group(2).toLowerCase(Locale.ROOT))) : BigDecimal.ONE;
        return WrittenNumber.readings(written.matches() ? written.group(1) : text).stream()
                .map(number -> number.multiply(unitMm).setScale(1, RoundingMode.HALF_UP)).map(mm -> new BigDecimal(mm.stripTrailingZeros().toPlainString())).toList();
    }
}

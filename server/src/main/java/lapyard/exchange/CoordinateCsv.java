package lapyard.exchange;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import lapyard.exchange.SiteDrawing.LengthUnit;
import lapyard.exchange.SiteDrawing.Spot;
import lapyard.geometry.Point;
import lapyard.working.BrokenRule;
import lapyard.working.Csv;
import org.apache.commons.csv.CSVRecord;

/**
 * Coordinates as CSV: a heading, then a point a row. {@code x} and {@code y}, {@code longitude} and {@code latitude}; {@code height}
 * or {@code drop}; {@code layer} says what it is of, {@code line} which rows make one line. Each column may say its unit. A row with a height or a drop and without a line is a
 * spot.
 */
public final class CoordinateCsv {
    private static final Map<String, List<String>> HEADINGS = Map.of(
            "x", List.of("x", "easting", "east", "e", "along"), "y", List.of("y", "northing", "north", "n", "away"),
            "longitude", List.of("longitude", "lon", "lng", "long"), "latitude", List.of("latitude", "lat"),
            "height", List.of("z", "height", "elevation", "level"), "drop", List.of("drop"),
            "layer", List.of("layer", "what", "kind", "code", "feature"), "line", List.of("line", "string", "shape"));

    private CoordinateCsv() {}

    /** @param told unit of coordinates whose headings say none, where it is known */
    public static SiteDrawing read(String text, Optional<LengthUnit> told) {
        SiteDrawing.Builder drawing = new SiteDrawing.Builder("csv");
        Rows rows = new Rows(drawing, told);
        Csv.read(text, (row, line) -> rows.take(row, line) && !drawing.isFull()).ifPresent(
                line -> drawing.bad(line, "a quoted cell is not closed or goes on after its quotes", "close each cell that begins with a quote"));
        rows.end();
        rows.ask();
        return drawing.done();
    }

    private static final class Rows {
        /** The comma may part thousands, which metres have none of. */
        private static final Pattern TWO_WAYS = Pattern.compile("[-+]?[1-9][0-9]{0,2},[0-9]{3}");

        private final SiteDrawing.Builder drawing;
        private final Optional<LengthUnit> told;
        private final Map<Long, String> doubts = new LinkedHashMap<>();
        /** Whether a number has a comma that can only be before decimals. */
        private boolean decimalComma;
        private final Map<String, Integer> columns = new HashMap<>();
        /** What a column's heading says that it is in. */
        private final Map<String, LengthUnit> units = new HashMap<>();
        private boolean headed;
        private LocalPlane plane;
        private List<Point> points = new ArrayList<>();
        private String open = "";
        private String layer = "";
        private long from;

        Rows(SiteDrawing.Builder drawing, Optional<LengthUnit> told) {
            this.drawing = drawing;
            this.told = told;
        }

        boolean take(CSVRecord row, long line) {
            if (row.stream().allMatch(String::isBlank)) return true;
            if (!headed) return headings(row, line);
            boolean globe = columns.containsKey("longitude");
            OptionalDouble x = number(row, globe ? "longitude" : "x", line);
            OptionalDouble y = number(row, globe ? "latitude" : "y", line);
            OptionalDouble height = number(row, "height", line);
            OptionalDouble drop = number(row, "drop", line);
            if (x.isEmpty() || y.isEmpty()) {
                drawing.bad(line, "the row has no " + (x.isEmpty() ? "first" : "second") + " coordinate", "write both as numbers");
                return true;
            }
            if (globe && (Math.abs(x.getAsDouble()) > 180 || Math.abs(y.getAsDouble()) > 85)) {
                drawing.bad(line, "longitude " + x.getAsDouble() + " and latitude " + y.getAsDouble() + " are no place of a yard", "write degrees, the longitude from -180 to 180");
                return true;
            }
            if (globe && plane == null) plane = new LocalPlane(x.getAsDouble(), y.getAsDouble());
            Point at = globe ? plane.at(x.getAsDouble(), y.getAsDouble()) : new Point(x.getAsDouble(), y.getAsDouble());
            String of = text(row, "layer");
            boolean spot = (height.isPresent() || drop.isPresent()) && text(row, "line").isEmpty();
            if (spot) {
                drawing.spot(of, new Spot(at, height, drop), line);
                return true;
            }
            String key = of + "\n" + text(row, "line");
            if (!key.equals(open)) {
                end();
                open = key;
                layer = of;
                from = line;
            }
            points.add(at);
            return points.size() <= SiteDrawing.MOST_POINTS + 1; // one more may be the first again
        }

        /** Rows of one layer and line that stand together are one line; a single one is a spot. */
        void end() {
            if (points.size() == 1) drawing.spot(layer, new Spot(points.get(0), OptionalDouble.empty(), OptionalDouble.empty()), from);
            // corners are written round: what encloses something is closed
            else if (points.size() > 1) drawing.line(layer, points, points.size() > 2, from);
            points = new ArrayList<>();
        }

        /** What nothing else in the file decides. */
        void ask() {
            if (!decimalComma) doubts.forEach((line, text) -> {
                String either = text.replace(',', '.').replaceAll("\\.?0+$", "") + " or " + text.replace(",", "");
                drawing.bad(line, "\"" + text + "\" can mean " + either, "write " + either);
            });
        }

        private boolean headings(CSVRecord row, long line) {
            headed = true;
            for (int i = 0; i < row.size(); i++) {
                String heading = row.get(i).toLowerCase(Locale.ROOT);
                String plain = heading.replaceAll("[(\\[]?\\b(mm|cm|m|in|ft|deg)\\b[)\\]]?", "").replaceAll("[^a-z]", "");
                int column = i;
                HEADINGS.forEach((field, names) -> {
                    if (names.contains(plain) && columns.putIfAbsent(field, column) == null) unit(heading).ifPresent(unit -> units.put(field, unit));
                });
            }
            drawing.unit = Stream.of("x", "y").map(units::get).filter(Objects::nonNull).findFirst();
            if (columns.containsKey("longitude") && columns.containsKey("latitude")) drawing.unit = Optional.of(LengthUnit.M);
            else if (!columns.containsKey("x") || !columns.containsKey("y")) {
                drawing.bad(line, "no columns for the coordinates", "head two columns \"x\" and \"y\", or \"longitude\" and \"latitude\"");
                return false;
            } else {
                columns.remove("longitude");
                if (drawing.unit.isEmpty() && !units.isEmpty())
                    drawing.bad(line, "one column says its unit and those of the coordinates do not", "head them \"x (m)\" and \"y (m)\", or in what they are");
            }
            return true;
        }

        private static Optional<LengthUnit> unit(String heading) {
            for (LengthUnit unit : LengthUnit.values()) if (heading.matches(".*\\b" + unit.code() + "\\b.*")) return Optional.of(unit);
            return Optional.empty();
        }

        private String text(CSVRecord row, String field) {
            Integer column = columns.get(field);
            return column == null || column >= row.size() ? "" : row.get(column).strip();
        }

        private OptionalDouble number(CSVRecord row, String field, long line) {
            String text = text(row, field);
            if (text.isEmpty()) return OptionalDouble.empty();
            if (text.matches("[-+]?[0-9]{1,10}([.,][0-9]{1,12})?")) {
                if (!TWO_WAYS.matcher(text).matches()) decimalComma |= text.contains(",");
                else if (Optional.ofNullable(units.get(field)).or(() -> drawing.unit).or(() -> told).filter(unit -> unit != LengthUnit.M).isPresent()) doubts.putIfAbsent(line, text);
                return OptionalDouble.of(Double.parseDouble(text.replace(',', '.')) * scale(field));
            }
            drawing.bad(line, field + " needs a number and has \"" + BrokenRule.cut(text) + "\"", "write it as 12.50");
            return OptionalDouble.of(0);
        }

        /** In one of the coordinates' unit; a column that says none has theirs. */
        private double scale(String field) {
            LengthUnit unit = units.get(field);
            return unit == null || field.endsWith("itude") ? 1 : unit.mm / drawing.unit.orElse(unit).mm;
        }
    }
}

package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import lapyard.geometry.Lengths;
import lapyard.geometry.Measure;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.BedNames;
import lapyard.plan.Garden;
import lapyard.sizes.Resize;
import lapyard.sizes.Side;
import lapyard.sizes.SizeAnswer;
import lapyard.sizes.SizesThatGive;
import lapyard.words.Wording;

/** What changed sizes save, in words and figures, each answer with the whole document that it would make. */
public final class SizesJson {
    private static final String STOPPED = " Somebody stopped it before all steps of this look were done: the same look may find other sizes another time.";

    /** Corners in tenths alone make a slanted wall so much longer or shorter, 2 x 0.05 x sqrt 2 mm. */
    private static final double DRAWN_MM = 0.15;

    private static final String WIDTH = "width";

    private static final String DEPTH = "depth";

    private SizesJson() {}

    /** @param byMm by how much the side moves outwards */
    private record Change(String text, List<String> beds, String side, double byMm) {}

    private record Answer(String text, List<Change> changes, double mm, BigDecimal total, BigDecimal saved, int boardsFewer, boolean proven,
            ObjectNode garden) {}

    private record Growth(String text, Change change, boolean most) {}

    private record Shape(String currency, BigDecimal now, BigDecimal bound, boolean proven, boolean complete, boolean early, String text, List<BigDecimal> bounds,
            List<Growth> growth, List<String> growthOpen, List<Answer> front) {}

    /** @param document that {@code garden} was read from */
    public static ObjectNode of(JsonNode document, Garden garden, SizesThatGive given) {
        Wording words = Wording.of(garden.imperial());
        String currency = garden.terms().currency();
        BigDecimal now = given.now().slip().total();
        List<Growth> growth = given.growth().stream().map(one -> {
            Change change = change(garden, one.change(), words);
            return new Growth(Wording.capital(change.text()) + " at no cost" + (one.most() ? ", which is all that it may give" : ""), change, one.most());
        }).toList();
        return Wire.of(new Shape(currency, now, given.bound(), given.proven(), given.complete(), given.early(),
                summary(given, currency) + (given.early() ? STOPPED : "") + open(given), given.bounds(), growth,
                given.growthOpen().stream().map(side -> place(garden, side)).toList(),
                given.front().stream().map(one -> answer(document, garden, given, one, words)).toList()));
    }

    private static Answer answer(JsonNode document, Garden garden, SizesThatGive given, SizeAnswer one, Wording words) {
        List<Change> changes = one.changes().stream().map(change -> change(garden, change, words)).toList();
        int many = changes.size();
        boolean proven = many <= given.bounds().size() && one.total().compareTo(given.bounds().get(many - 1)) == 0
                || one.total().compareTo(given.bound()) == 0;
        String text = Wording.capital(together(garden, one.changes(), words)) + ": " + boards(one.boards()) + garden.terms().currency() + " "
                + one.saved() + " less" + (many > 1 ? " in all" : "");
        return new Answer(text, changes, one.mm(), one.total(), one.saved(), one.boards(), proven, resized(document, garden, one.changes()));
    }

    private static String summary(SizesThatGive given, String currency) {
        BigDecimal now = given.now().slip().total();
        BigDecimal most = now.subtract(given.bound());
        if (given.front().isEmpty()) {
            return most.signum() == 0 ? "No size within what may give saves anything; that is proved."
                    : "No change that saves was found. At most " + currency + " " + most + " could be saved.";
        }
        BigDecimal found = given.front().stream().map(SizeAnswer::saved).max(BigDecimal::compareTo).orElseThrow();
        return given.proven() ? "No sizes within what may give save more than " + currency + " " + found + "; that is proved."
                : currency + " " + found + " less was found. At most " + currency + " " + most + " could be saved." + longer(given);
    }

    private static String longer(SizesThatGive given) {
        BigDecimal times = BigDecimal.valueOf(given.longer()).setScale(1, RoundingMode.DOWN).stripTrailingZeros();
        return times.compareTo(BigDecimal.ONE) <= 0 ? "" : " Looking " + times.toPlainString() + " times as long found nothing cheaper.";
    }

    /** That the list of growths was cut, if it was. */
    private static String open(SizesThatGive given) {
        int open = given.growthOpen().size();
        return open == 0 ? "" : " How far " + Measure.counted(open, "side") + " could grow at no cost is not known: the look ended first. Look longer to know.";
    }

    private static String boards(int fewer) {
        if (fewer == 0) return "";
        int many = Math.abs(fewer);
        return Measure.counted(many, "board") + " " + (fewer > 0 ? "fewer, " : "more, ");
    }

    private static String place(Garden garden, Side side) {
        String name = BedNames.where(beds(garden, side));
        return plain(garden.beds().get(side.parts().get(0).bed()).outline()) ? (side.parts().get(0).acrossX() ? WIDTH : DEPTH) + " of " + name
                : "walls " + String.join(", ", side.walls()) + " of " + name;
    }

    private static List<String> beds(Garden garden, Side side) {
        return new ArrayList<>(new LinkedHashSet<>(side.parts().stream().map(part -> garden.beds().get(part.bed()).id()).toList()));
    }

    /** Whether one width and one depth say all of its size. */
    private static boolean plain(Outline outline) {
        return outline.sides() == 4 && outline.upright();
    }

    private static Change change(Garden garden, Resize change, Wording words) {
        Side side = change.side();
        boolean width = side.parts().get(0).acrossX();
        return new Change(together(garden, List.of(change), words), beds(garden, side), width ? WIDTH : DEPTH, change.byMm());
    }

    /** What changes, and by how much it is longer than it was. */
    private record Told(String what, double byMm) {}

    /** Each size once, with all that changes it: a wall beside a slanted one changes by another amount than the side that moves. */
    private static String together(Garden garden, List<Resize> changes, Wording words) {
        Garden changed = SizesThatGive.changed(garden, changes);
        Map<Told, List<String>> alike = new LinkedHashMap<>();
        for (int i = 0; i < garden.beds().size(); i++) {
            Bed bed = garden.beds().get(i);
            told(bed.outline(), changed.beds().get(i).outline(), words).forEach(one -> alike.computeIfAbsent(one, key -> new ArrayList<>()).add(bed.id()));
        }
        return alike.entrySet().stream().map(one -> told(one.getKey(), BedNames.where(one.getValue()), words)).collect(Collectors.joining("; "));
    }

    /** The length of each wall as it will be drawn, in tenths, less what it was; of a rectangle one wall each way. */
    private static List<Told> told(Outline was, Outline changed, Wording words) {
        Outline is = new Outline(changed.corners().stream().map(corner -> new Point(Lengths.toTenth(corner.x()), Lengths.toTenth(corner.y()))).toList());
        Map<Double, List<String>> walls = new LinkedHashMap<>();
        List<Told> sizes = new ArrayList<>();
        for (int side = 0; side < (plain(was) ? 2 : was.sides()); side++) {
            double byMm = Lengths.toTenth(Lengths.toTenth(is.sideMm(side)) - Lengths.toTenth(was.sideMm(side)));
            if (Math.abs(byMm) <= DRAWN_MM || words.length(Math.abs(byMm)).equals(words.length(0))) continue;
            if (plain(was)) sizes.add(new Told(was.direction(side).x() != 0 ? WIDTH : DEPTH, byMm));
            else walls.computeIfAbsent(byMm, key -> new ArrayList<>()).add(Bed.wallLetter(side));
        }
        walls.forEach((byMm, letters) -> sizes.add(new Told((letters.size() == 1 ? "wall " : "walls ") + String.join(", ", letters), byMm)));
        return sizes;
    }

    private static String told(Told one, String beds, Wording words) {
        boolean less = one.byMm() < 0;
        String by = " " + words.length(Math.abs(one.byMm()));
        if (one.what().equals(WIDTH)) return beds + by + (less ? " narrower" : " wider");
        if (one.what().equals(DEPTH)) return beds + by + (less ? " shallower" : " deeper");
        return one.what() + " of " + beds + by + (less ? " shorter" : " longer");
    }

    /** The document with other sizes: a type's where all its beds change, else the bed's own. */
    static ObjectNode resized(JsonNode document, Garden garden, List<Resize> changes) {
        ObjectNode copy = document.deepCopy();
        Garden changed = SizesThatGive.changed(garden, changes);
        Set<String> types = new LinkedHashSet<>();
        for (int i = 0; i < garden.beds().size(); i++) {
            Bed was = garden.beds().get(i);
            Outline is = changed.beds().get(i).outline();
            if (is.equals(was.outline())) continue;
            ObjectNode bed = (ObjectNode) copy.withArray("beds").get(i);
            boolean own = bed.has("width") || bed.has("depth") || bed.has("walls") || bed.has("outline");
            if (own || was.type().isEmpty()) {
                size(bed, is);
            } else if (types.add(was.type())) {
                for (JsonNode type : copy.withArray("types")) if (type.path("id").asText().equals(was.type())) size((ObjectNode) type, is);
            }
        }
        return copy;
    }

    private static void size(ObjectNode bed, Outline outline) {
        boolean sized = bed.has("width") || bed.has("depth");
        if (sized && outline.sides() == 4) {
            bed.set("width", Wire.number(outline.sideMm(0), 1));
            bed.set("depth", Wire.number(outline.sideMm(1), 1));
            return;
        }
        bed.remove(List.of("width", "depth", "walls"));
        bed.set("outline", Wire.tree(outline));
    }
}

package lapyard.diagrams;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import lapyard.construction.BedWork;
import lapyard.construction.CornerScrew;
import lapyard.construction.CrossTies;
import lapyard.construction.Course;
import lapyard.construction.Piece;
import lapyard.construction.Seam;
import lapyard.drawing.TextMeasure;
import lapyard.geometry.Lengths;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.Joint;
import lapyard.plan.Ties;
import lapyard.working.Quantity;
import lapyard.working.QuantityKey;
import lapyard.working.QuantityKind;
import lapyard.working.Working.Input;

/** What is done with a course, in the order of doing it. */
final class CourseNotes {
    private static final double SIZE = 3.1;
    private static final int MOST_DIAGONALS = 3;

    private final BedWork work;
    private final List<Quantity> quantities;
    private final BenchSheet sheet;
    private final boolean severalBeds;

    /** @param severalBeds whether the card is for more beds than one */
    CourseNotes(CourseCards.Stack stack, BenchSheet sheet, boolean severalBeds) {
        this.severalBeds = severalBeds;
        this.work = stack.work();
        this.quantities = stack.quantities();
        this.sheet = sheet;
    }

    /** As it is written on the timber; without the bed's code on a card of several beds. */
    String mark(Piece piece) {
        return severalBeds ? piece.course() + piece.wall() + piece.part() : piece.mark();
    }

    /**
     * @param homeless what found no room beside its wall or diagonal
     */
    List<String> lines(List<Course> courses, Set<String> homeless, double widthMm) {
        List<String> sentences = new ArrayList<>();
        if (courses.get(0).number() == 1) {
            Bed bed = work.bed();
            if (!work.frame().notches().isEmpty()) {
                sentences.add("Notches first, " + sheet.written(bed.making().notches().widthMm()) + " wide and " + sheet.written(bed.making().notches().depthMm())
                        + " deep, under course 1, from the outer corner where the wall starts.");
            }
            if (scribed()) sentences.add("Scribe off the underside of course 1 on hard ground, from the start of each wall to its end.");
            String walls = atWalls().entrySet().stream()
                    .filter(wall -> homeless.contains(wall.getKey()))
                    .map(wall -> wall.getKey() + " " + wall.getValue())
                    .collect(Collectors.joining("; "));
            if (!walls.isEmpty()) sentences.add("Also at wall " + walls + ".");
        }
        String far = diagonals().keySet().stream().filter(homeless::contains).collect(Collectors.joining(", "));
        sentences.add((diagonals().isEmpty() ? "Square when sides 1 to " + work.bed().outline().sides() + " measure as drawn"
                : "Square when diagonals are as drawn" + (far.isEmpty() ? "" : ", and " + far))
                + ", within 5, corner to corner of the outer faces.");
        screws(sentences);
        seams(courses, sentences);
        holds(courses, sentences);
        points(courses, sentences);
        sentences.add("Seen from above, wall A in front" + (work.bed().placement().mirror() ? ", mirrored as this bed stands" : "")
                + ". Start and end of a wall as one goes round from A to B. "
                + (severalBeds ? "The bed's code and a hyphen go before each mark; boards are told on Saw Day. " : "")
                + "Parts of a joined wall are a, b from its start. Laps swap from course to course.");
        return TextMeasure.wrap(String.join(" ", sentences), SIZE, false, widthMm);
    }

    /** What is done at each wall of course 1 before it is laid, those that have any. */
    Map<String, String> atWalls() {
        Map<String, String> words = new LinkedHashMap<>();
        for (String wall : work.bed().wallLetters()) {
            List<String> said = new ArrayList<>();
            String notches = work.frame().notches().stream()
                    .filter(notch -> notch.wall().equals(wall))
                    .map(notch -> sheet.written(notch.atMm()))
                    .collect(Collectors.joining(", "));
            if (!notches.isEmpty()) said.add("notch " + notches);
            if (scribed()) {
                said.add("scribe " + sheet.written(Math.round(value(QuantityKind.SCRIBE_START.of(wall)))) + " to "
                        + sheet.written(Math.round(value(QuantityKind.SCRIBE_END.of(wall)))));
            }
            if (!said.isEmpty()) words.put(wall, String.join("; ", said));
        }
        return words;
    }

    private boolean scribed() {
        return value(QuantityKind.SCRIBE_MOST.alone()) >= 1;
    }

    private double value(QuantityKey key) {
        return quantities.stream().filter(quantity -> quantity.key().equals(key)).mapToDouble(Quantity::value).findFirst().orElse(0);
    }

    /** The longest diagonals that run from corner to corner, from 0, by their words. */
    Map<String, int[]> diagonals() {
        Outline outline = work.bed().outline();
        List<int[]> pairs = new ArrayList<>();
        for (int i = 0; i < outline.sides(); i++) {
            for (int j = i + 2; j < outline.sides(); j++) {
                if (!(i == 0 && j == outline.sides() - 1)) {
                    pairs.add(new int[] {i, j});
                }
            }
        }
        pairs.sort((a, b) -> Double.compare(length(outline, b), length(outline, a)));
        Map<String, int[]> longest = new LinkedHashMap<>();
        pairs.stream().limit(MOST_DIAGONALS).forEach(pair ->
                longest.put((pair[0] + 1) + " to " + (pair[1] + 1) + " is " + sheet.written(length(outline, pair)), pair));
        return longest;
    }

    private static double length(Outline outline, int[] pair) {
        Point a = outline.corner(pair[0]);
        return Math.round(a.distanceMm(outline.corner(pair[1])) * 1e6) / 1e6;
    }

    private void screws(List<String> sentences) {
        for (Quantity quantity : work.quantities()) {
            if (quantity.is(QuantityKind.SCREWS)) {
                Bed bed = work.bed();
                List<Input> inputs = quantity.working().inputs();
                String heights = inputs.stream()
                        .filter(input -> input.name().startsWith("height "))
                        .map(input -> sheet.written(input.value()))
                        .collect(Collectors.joining(" and "));
                Map<String, List<String>> ways = new LinkedHashMap<>();
                for (CornerScrew screw : work.frame().screws()) {
                    List<String> corners = ways.computeIfAbsent(way(bed, screw), w -> new ArrayList<>());
                    String corner = String.valueOf(screw.corner());
                    if (!corners.contains(corner)) {
                        corners.add(corner);
                    }
                }
                String where = ways.entrySet().stream()
                        .map(way -> (ways.size() == 1 ? "" : "at corner " + String.join(", ", way.getValue()) + " ") + way.getKey())
                        .collect(Collectors.joining("; "));
                sentences.add("Each corner: " + bed.making().screws().perJoint() + " screws, " + sheet.written(bed.making().screws().lengthMm()) + " long, at "
                        + heights + " above the bottom of the course, " + where + "; pilot each. " + Math.round(quantity.value()) + " in all.");
            }
        }
    }

    private String way(Bed bed, CornerScrew screw) {
        boolean mitre = bed.joint(screw.corner() - 1) == Joint.MITRE;
        return "at " + Lengths.text(Lengths.toTenth(screw.angleDeg())) + "° off the " + screw.face().name().toLowerCase(Locale.ROOT) + " face"
                + (mitre ? " through the mitre, from either timber by turns, " : " of the timber that butts, ")
                + sheet.written(screw.entryMm()) + " from the joint";
    }

    private void seams(List<Course> courses, List<String> sentences) {
        List<String> places = new ArrayList<>();
        for (Course course : courses) {
            List<Seam> own = work.frame().seams().stream().filter(seam -> seam.course() == course.number()).toList();
            if (!own.isEmpty()) {
                places.add("course " + course.number() + " " + own.stream()
                        .map(seam -> seam.wall() + " at " + sheet.written(seam.atMm()))
                        .collect(Collectors.joining(", ")));
            }
        }
        if (!places.isEmpty()) {
            sentences.add("Joints, from the outer corner where the wall starts: " + String.join("; ", places)
                    + ". A plate behind each, 4 screws.");
        }
    }

    /** What fixes the courses to each other and holds the walls between their corners. */
    private void holds(List<Course> courses, List<String> sentences) {
        Bed bed = work.bed();
        Ties ties = bed.making().ties();
        if (ties.courseTies() && courses.get(courses.size() - 1).number() > 1) {
            double height = bed.section().heightMm();
            sentences.add("From course 2 up each timber is fixed to the course below, at most " + sheet.written(ties.courseEveryMm())
                    + " apart, at both ends: " + (ties.strapped(height)
                            ? "straps inside with " + ties.courseFixings() + " screws of " + sheet.written(ties.fixingMm())
                            : "screws of " + sheet.written(Ties.courseScrewMm(height)) + " straight down, clear of joints and notches") + ".");
        }
        if (courses.get(0).number() > 1) {
            return;
        }
        CrossTies across = CrossTies.of(bed, work.frame().inner(), work.frame().seams());
        List<String> places = new ArrayList<>();
        across.ties().forEach(tie -> places.add(tie.wall() + " at " + sheet.written(tie.atMm()) + " to " + tie.toWall()));
        if (!places.isEmpty()) {
            sentences.add("Cross ties, " + sheet.written(across.ties().get(0).heightMm()) + " over the ground, a batten upright at both ends: "
                    + String.join("; ", places) + ".");
        }
        if (!across.posts().isEmpty()) {
            sentences.add("Posts in the ground inside: " + across.posts().stream()
                    .map(post -> post.wall() + " at " + sheet.written(post.atMm()))
                    .collect(Collectors.joining(", ")) + ".");
        }
    }

    private void points(List<Course> courses, List<String> sentences) {
        List<String> angled = courses.get(0).pieces().stream()
                .filter(piece -> !piece.squareEnds())
                .map(piece -> piece.wall() + piece.part() + " " + sheet.written(piece.outerFaceMm()) + " and "
                        + sheet.written(piece.innerFaceMm()))
                .toList();
        if (!angled.isEmpty()) {
            sentences.add("Degrees: sawn so far off square. Outer and inner face in course "
                    + courses.get(0).number() + ": " + String.join("; ", angled) + ".");
        }
    }
}

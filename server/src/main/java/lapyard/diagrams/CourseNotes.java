package lapyard.diagrams;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import lapyard.construction.BedWork;
import lapyard.construction.CornerScrew;
import lapyard.construction.Course;
import lapyard.construction.CrossTies;
import lapyard.construction.Piece;
import lapyard.construction.Seam;
import lapyard.geometry.Lengths;
import lapyard.geometry.Outline;
import lapyard.ground.Pegs;
import lapyard.plan.Bed;
import lapyard.plan.BedNames;
import lapyard.plan.Joint;
import lapyard.plan.Ties;
import lapyard.working.Quantity;
import lapyard.working.QuantityKey;
import lapyard.working.QuantityKind;
import lapyard.working.Working.Input;

/**
 * What is done with a course, in the order of doing it.
 *
 * @param severalBeds whether the card is for more beds than one
 */
record CourseNotes(BedWork work, List<Quantity> quantities, BenchSheet sheet, boolean severalBeds) {
    private static final int MOST_DIAGONALS = 3;

    /** As it is written on the timber; without the bed's code on a card of several beds. */
    String mark(Piece piece) {
        return severalBeds ? piece.course() + piece.wall() + piece.part() : piece.mark();
    }

    /** A line of the foot: what it is about, in bold, and what is done. */
    record Note(String about, String words) {}

    /**
     * In the order of the work, each short enough to be read by itself.
     *
     * @param homeless what found no room beside its wall or diagonal
     */
    List<Note> notes(List<Course> courses, Set<String> homeless) {
        List<Note> notes = new ArrayList<>();
        Bed bed = work.bed();
        if (courses.get(0).number() == 1) {
            if (!work.frame().notches().isEmpty()) {
                notes.add(new Note("Notches first", sheet.written(bed.making().notches().widthMm()) + " wide, " + sheet.written(bed.making().notches().depthMm())
                        + " deep, under course 1, from the wall's start corner."));
            }
            if (scribed()) notes.add(new Note("Scribe", "course 1 off its underside on hard ground, from each wall's start to its end."));
            atWalls().forEach((wall, words) -> {
                if (homeless.contains(wall)) notes.add(new Note("Wall " + wall, words + "."));
            });
        }
        String far = diagonals().keySet().stream().filter(homeless::contains).collect(Collectors.joining(", "));
        notes.add(new Note("Square", (diagonals().isEmpty() ? "when sides 1 to " + bed.outline().sides() + " measure as drawn"
                : far.isEmpty() ? "when diagonals are as drawn" : "when " + far) + ", within " + sheet.written(Pegs.TOLERANCE_MM) + ", between outer corners."));
        screws(notes);
        seams(courses, notes);
        holds(courses, notes);
        points(courses, notes);
        notes.add(new Note("Reading", "from above, wall A in front" + (bed.placement().mirror() ? ", mirrored as this bed stands" : "")
                + "; walls start and end as one goes round from A to B." + (mitred() ? "" : " Laps swap each course.")
                + (severalBeds ? " The bed's code goes before each mark; boards are on Saw Day." : "")
                + (work.frame().seams().isEmpty() ? "" : " Parts a, b of a joined wall from its start.")));
        return notes;
    }

    /** Whether no corner is lapped. */
    boolean mitred() {
        return IntStream.range(0, work.bed().outline().sides()).allMatch(corner -> work.bed().joint(corner) == Joint.MITRE);
    }

    /** What is done at each wall of course 1 before it is laid, those that have any. */
    Map<String, String> atWalls() {
        Map<String, String> words = new LinkedHashMap<>();
        for (String wall : work.bed().wallLetters()) {
            List<String> said = new ArrayList<>();
            say("notch", work.frame().notches().stream().filter(notch -> notch.wall().equals(wall)).map(notch -> sheet.written(notch.atMm())), said);
            CrossTies across = across();
            say("tie", across.ties().stream().filter(tie -> tie.wall().equals(wall)).map(tie -> sheet.written(tie.atMm()) + " to " + tie.toWall()), said);
            say("post", across.posts().stream().filter(post -> post.wall().equals(wall)).map(post -> sheet.written(post.atMm())), said);
            if (scribed()) {
                said.add("scribe " + sheet.written(Math.round(value(QuantityKind.SCRIBE_START.of(wall)))) + " to "
                        + sheet.written(Math.round(value(QuantityKind.SCRIBE_END.of(wall)))));
            }
            if (!said.isEmpty()) words.put(wall, String.join("; ", said));
        }
        return words;
    }

    private static void say(String what, Stream<String> places, List<String> said) {
        String all = places.collect(Collectors.joining(", "));
        if (!all.isEmpty()) said.add(what + " " + all);
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
        Map<String, int[]> longest = new LinkedHashMap<>();
        outline.diagonals().stream().limit(MOST_DIAGONALS).forEach(pair -> longest.put((pair[0] + 1) + " to " + (pair[1] + 1) + " is "
                + sheet.written(Lengths.steady(outline.corner(pair[0]).distanceMm(outline.corner(pair[1])))), pair));
        return longest;
    }

    private void screws(List<Note> notes) {
        for (Quantity quantity : work.quantities()) {
            if (quantity.is(QuantityKind.SCREWS)) {
                Bed bed = work.bed();
                List<Input> inputs = quantity.working().inputs();
                String heights = BedNames.joined(inputs.stream()
                        .filter(input -> input.name().startsWith("height "))
                        .map(input -> sheet.written(input.value()))
                        .toList());
                Map<String, List<String>> ways = new LinkedHashMap<>();
                for (CornerScrew screw : work.frame().screws()) {
                    List<String> corners = ways.computeIfAbsent(way(bed, screw), w -> new ArrayList<>());
                    String corner = String.valueOf(screw.corner());
                    if (!corners.contains(corner)) {
                        corners.add(corner);
                    }
                }
                notes.add(new Note("Corners", bed.making().screws().perJoint() + " screws of " + sheet.screw(bed.making().screws().lengthMm()) + " at "
                        + heights + " above the bottom of the course; pilot each. " + Math.round(quantity.value()) + " in all."));
                ways.forEach((words, corners) -> notes.add(new Note(ways.size() == 1 ? "Screws" : "Corner " + String.join(", ", corners), words + ".")));
            }
        }
    }

    private String way(Bed bed, CornerScrew screw) {
        boolean mitre = bed.joint(screw.corner() - 1) == Joint.MITRE;
        return "at " + Lengths.text(Lengths.toTenth(screw.angleDeg())) + "° off the " + screw.face().name().toLowerCase(Locale.ROOT) + " face"
                + (mitre ? " through the mitre, from either timber by turns, " : " of the timber that butts, ")
                + sheet.written(screw.entryMm()) + " from the joint";
    }

    private void seams(List<Course> courses, List<Note> notes) {
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
            notes.add(new Note("Joints", "from the wall's start corner: " + String.join("; ", places)
                    + ". A plate behind each, 4 screws."));
        }
    }

    /** What fixes the courses to each other and holds the walls between their corners. */
    private void holds(List<Course> courses, List<Note> notes) {
        Bed bed = work.bed();
        Ties ties = bed.making().ties();
        if (ties.courses().courseTies() && courses.get(courses.size() - 1).number() > 1) {
            double height = bed.section().heightMm();
            notes.add(new Note("Course 2 up", (ties.strapped(height)
                    ? "straps inside with " + ties.courses().courseFixings() + " screws of " + sheet.screw(ties.fixingLengthMm())
                    : "screws of " + sheet.screw(Ties.courseScrewMm(height)) + " straight down, clear of joints and notches")
                    + ", at both ends and at most " + sheet.written(ties.courses().courseEveryMm()) + " apart."));
        }
        if (courses.get(0).number() > 1) {
            return;
        }
        CrossTies across = across();
        if (!across.ties().isEmpty()) {
            double usualMm = across.ties().get(0).heightMm();
            String raised = across.ties().stream().filter(tie -> tie.heightMm() != usualMm)
                    .map(tie -> ", wall " + tie.wall() + " at " + sheet.written(tie.atMm()) + ": " + sheet.written(tie.heightMm()))
                    .collect(Collectors.joining());
            notes.add(new Note("Cross ties", sheet.written(usualMm) + " over the ground" + raised + ", a batten upright at both ends."));
        }
        if (!across.posts().isEmpty()) notes.add(new Note("Posts", "in the ground inside the walls as told."));
    }

    private CrossTies across() {
        return CrossTies.of(work.bed(), work.frame().inner(), work.frame().seams());
    }

    private void points(List<Course> courses, List<Note> notes) {
        List<String> angled = courses.get(0).pieces().stream()
                .filter(piece -> !piece.squareEnds())
                .map(piece -> piece.wall() + piece.part() + " " + sheet.written(piece.outerFaceMm()) + " and "
                        + sheet.written(piece.innerFaceMm()))
                .toList();
        if (!angled.isEmpty()) {
            notes.add(new Note("Degrees", "are sawn so far off square. Outer and inner face in course "
                    + courses.get(0).number() + ": " + String.join("; ", angled) + "."));
        }
    }
}

package lapyard.construction;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import lapyard.construction.CornerScrew.Face;
import lapyard.construction.Piece.RunsPast;
import lapyard.geometry.Lengths;
import lapyard.plan.Bed;
import lapyard.plan.Ties;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;
import lapyard.working.Whole;
import lapyard.working.Working;
import lapyard.working.Working.Input;

/** What holds the corners and the courses together: places of the angled screws, brackets, straps, cross ties. */
final class CornerJoints {
    private CornerJoints() {}

    /** At a lap the timber that stops short takes the heads, at a mitre the two by turns. */
    static List<CornerScrew> screws(Bed bed, List<Course> courses) {
        int perJoint = bed.making().screws().perJoint();
        List<Double> heights = heightsMm(bed);
        int corners = bed.outline().sides();
        List<CornerScrew> places = new ArrayList<>();
        for (Course course : courses) {
            for (int corner = 0; corner < corners; corner++) {
                String coming = Bed.wallLetter(Math.floorMod(corner - 1, corners));
                String going = Bed.wallLetter(corner);
                Piece before = null;
                Piece after = null;
                for (Piece piece : course.pieces()) {
                    if (piece.wall().equals(coming)) before = piece;
                    if (piece.wall().equals(going) && after == null) after = piece;
                }
                ScrewWay way = ScrewWay.of(bed, corner, bed.making().screws().lengthMm());
                if (way.mitre()) {
                    places.add(set(course, corner, after, before, way, everySecond(heights, 0)));
                    if (perJoint > 1) places.add(set(course, corner, before, after, way, everySecond(heights, 1)));
                } else {
                    boolean past = after.runsPast() == RunsPast.START || after.runsPast() == RunsPast.BOTH;
                    places.add(set(course, corner, past ? before : after, past ? after : before, way, heights));
                }
            }
        }
        return places;
    }

    /** Of the screws of a joint over the underside of their course, evenly. */
    static List<Double> heightsMm(Bed bed) {
        int perJoint = bed.making().screws().perJoint();
        return IntStream.rangeClosed(1, perJoint).mapToObj(i -> (2 * i - 1) * bed.section().heightMm() / (2 * perJoint)).toList();
    }

    private static CornerScrew set(Course course, int corner, Piece head, Piece into, ScrewWay way, List<Double> heights) {
        return new CornerScrew(
                course.number(), corner + 1, head.mark(), way.outerFace() ? Face.OUTER : Face.INNER, into.mark(),
                way.angleDeg(), way.entryMm(), way.threadMm(), heights);
    }

    private static List<Double> everySecond(List<Double> heights, int first) {
        return IntStream.range(0, heights.size()).filter(i -> i % 2 == first).mapToObj(heights::get).toList();
    }

    static void ties(Bed bed, List<Course> courses, CrossTies across, List<Quantity> quantities) {
        Ties ties = bed.making().ties();
        if (ties.corners().brackets()) brackets(bed, quantities);
        if (ties.courses().courseTies()) courseTies(bed, courses, quantities);
        if (ties.across().crossTies() || !across.ties().isEmpty()) crossTies(bed, across, quantities);
        if (!across.posts().isEmpty()) {
            quantities.add(Quantity.of(QuantityKind.POSTS, across.posts().size(), "posts", "as the bed names them", Working.COMMON_PRACTICE,
                    across.posts().stream().map(post -> Input.of("wall " + post.wall(), post.atMm(), "mm")).toArray(Input[]::new)));
        }
    }

    private static void brackets(Bed bed, List<Quantity> quantities) {
        int corners = bed.outline().sides();
        int brackets = corners * bed.courses();
        quantities.add(Quantity.of(QuantityKind.BRACKETS, brackets, "brackets",
                "corners x courses", Working.COMMON_PRACTICE,
                Input.of("corners", corners, ""), Input.of("courses", bed.courses(), "")));
        fixings(QuantityKind.BRACKET_FIXINGS, "brackets", brackets, bed.making().ties().corners().bracketFixings(), bed, quantities);
    }

    private static void courseTies(Bed bed, List<Course> courses, List<Quantity> quantities) {
        Ties ties = bed.making().ties();
        int count = courses.stream()
                .filter(course -> course.number() > 1)
                .flatMap(course -> course.pieces().stream())
                .mapToInt(piece -> courseTies(piece.lengthMm(), ties.courses().courseEveryMm()))
                .sum();
        boolean strapped = ties.strapped(bed.section().heightMm());
        List<Input> inputs = new ArrayList<>(List.of(
                Input.of("spacing", ties.courses().courseEveryMm(), "mm"), Input.of("courses", bed.courses(), "")));
        if (!strapped) inputs.add(Input.of("length of a screw", Ties.courseScrewMm(bed.section().heightMm()), "mm"));
        quantities.add(Quantity.of(QuantityKind.COURSE_TIES, count, strapped ? "straps" : "long screws",
                "over all pieces from course 2 up: ceil(length / spacing) + 1, each into the course below"
                        + (strapped ? "" : "; screw = course height + " + (int) Ties.INTO_BELOW_MM + ", up to whole 10"),
                Working.COMMON_PRACTICE, inputs.toArray(Input[]::new)));
        if (strapped) fixings(QuantityKind.COURSE_TIE_FIXINGS, "straps", count, ties.courses().courseFixings(), bed, quantities);
    }

    private static void crossTies(Bed bed, CrossTies across, List<Quantity> quantities) {
        List<Input> inputs = new ArrayList<>(List.of(
                Input.of("run without a tie", bed.making().ties().across().crossOverMm(), "mm"),
                Input.of("greatest clear run", bed.making().ties().across().crossEveryMm(), "mm"),
                Input.of("height", CrossTies.heightMm(bed), "mm")));
        across.ties().forEach(tie -> inputs.add(Input.of(
                "wall " + tie.wall() + " at " + Lengths.text(tie.atMm()) + " to wall " + tie.toWall()
                        + (tie.heightMm() == CrossTies.heightMm(bed) ? "" : ", " + Lengths.text(tie.heightMm()) + " high"), tie.lengthMm(), "mm")));
        quantities.add(Quantity.of(QuantityKind.CROSS_TIES, across.ties().size(), "ties",
                "one behind each joint of a wall; then for each clear run that is still over the run without a tie"
                        + " ceil(run / greatest clear run) - 1; a tie serves both its walls",
                Working.COMMON_PRACTICE, inputs.toArray(Input[]::new)));
    }

    /** Two at the ends of a piece at least, none further apart than asked for. */
    static int courseTies(double lengthMm, double everyMm) {
        return (int) Whole.up(lengthMm / everyMm) + 1;
    }

    private static void fixings(QuantityKind kind, String what, int count, int each, Bed bed, List<Quantity> quantities) {
        quantities.add(Quantity.of(kind, count * each, "screws",
                what + " x screws each; at most thickness - " + (int) Ties.BEHIND_MM + " long", Working.COMMON_PRACTICE,
                Input.of(what, count, ""), Input.of("screws each", each, ""),
                Input.of("screw length", bed.making().ties().fixingLengthMm(), "mm"), Input.of("thickness", bed.section().thicknessMm(), "mm")));
    }
}

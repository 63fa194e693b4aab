package lapyard.construction;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import lapyard.geometry.Lengths;
import lapyard.geometry.Outline;
import lapyard.plan.Bed;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Place;
import lapyard.plan.Place.What;
import lapyard.plan.Screws;
import lapyard.plan.WayKind;
import lapyard.plan.WayOut;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;
import lapyard.working.Whole;
import lapyard.working.Working;
import lapyard.working.Working.Input;

/** Corner screws, seam plates and staples. */
final class Fixings {
    static final int SCREWS_A_SEAM = 4;

    /** Timber that must be left over a screw before it can break out. */
    static final double LEAST_COVER_MM = 10;

    /** No shorter screw is offered. */
    private static final double SHORTEST_MM = 30;

    private Fixings() {}

    /**
     * Angled screws through each corner joint; left out, with a finding, where a screw would break out of the timber.
     *
     * @return whether they hold
     */
    static boolean screws(Bed bed, List<Quantity> quantities, List<Finding> findings) {
        double length = bed.making().screws().lengthMm();
        double t = bed.section().thicknessMm();
        ScrewWay worst = worst(bed, length);
        if (worst.coverMm() < LEAST_COVER_MM - 1e-6) {
            double cover = worst.coverMm();
            findings.add(Finding.of(cover < 0 ? FindingKind.SCREW_THROUGH : FindingKind.SCREW_COVER, Place.bed(bed.id()).then(What.CORNER))
                    .with("screw", new Fact.Screw(length)).with("timber", Fact.mm(t)).with("cover", Fact.mm(Math.abs(cover)))
                    .with("least", Fact.mm(LEAST_COVER_MM)).by(Fact.mm(LEAST_COVER_MM - cover))
                    .way(shorterScrew(bed)));
            return false;
        }
        nearTheEnd(bed, findings);
        int count = bed.outline().sides() * bed.courses() * bed.making().screws().perJoint();
        quantities.add(corners(bed, count));
        quantities.add(Quantity.of(QuantityKind.PILOTS, count, "pilot holes",
                "one a corner screw; pilot = share of root x root, root = 2/3 of shank",
                "NDS commentary on wood screws: 70 % of the root in softwood, 90 % in hardwood",
                Input.of("screws", count, "screws"), Input.of("shank", bed.making().screws().diameterMm(), "mm"),
                Input.of("root", Lengths.toTenth(bed.making().screws().diameterMm() * 2 / 3), "mm"),
                Input.of("share of root", pilotShare(bed), ""), Input.of("pilot", Lengths.toTenth(pilotMm(bed)), "mm")));
        return true;
    }

    private static Quantity corners(Bed bed, int count) {
        double length = bed.making().screws().lengthMm();
        int perJoint = bed.making().screws().perJoint();
        int corners = bed.outline().sides();
        List<Input> inputs = new ArrayList<>(List.of(
                Input.of("corners", corners, ""),
                Input.of("courses", bed.courses(), ""),
                Input.of("screws a joint", perJoint, ""),
                Input.of("screw length", length, "mm"),
                Input.of("thickness", bed.section().thicknessMm(), "mm")));
        Map<String, List<Integer>> alike = IntStream.range(0, corners)
                .boxed()
                .collect(Collectors.groupingBy(corner -> kind(ScrewWay.of(bed, corner, length)), LinkedHashMap::new, Collectors.toList()));
        alike.values().forEach(own -> {
            ScrewWay way = worst(bed, own.stream().mapToInt(Integer::intValue), length);
            String corner = alike.size() == 1
                    ? ""
                    : own.stream().map(one -> String.valueOf(one + 1)).collect(Collectors.joining(", ", ", corner ", ""));
            inputs.add(Input.of("angle off the face" + corner, Lengths.toTenth(way.angleDeg()), "degrees"));
            inputs.add(Input.of("entry from the joint" + corner, way.entryMm(), "mm"));
            inputs.add(Input.of("cover left" + corner, Lengths.toTenth(way.coverMm()), "mm"));
        });
        for (int i = 0; i < perJoint; i++) inputs.add(Input.of("height " + (i + 1), CornerJoints.heightsMm(bed).get(i), "mm"));
        return Quantity.of(QuantityKind.SCREWS, count, "screws",
                "corners x courses x screws a joint; half the screw on each side of the joint, the entry to the"
                        + " nearest 5 (0.354 x length where a lap is square); cover = thickness - the larger of the"
                        + " screw's depth at the joint and at its tip; heights (2i - 1) x timber height / (2 x screws a joint)",
                Working.COMMON_PRACTICE, inputs.toArray(Input[]::new));
    }

    /** Width of the pilot hole for the thread. */
    static double pilotMm(Bed bed) {
        return pilotShare(bed) * bed.making().screws().diameterMm() * 2 / 3;
    }

    private static double pilotShare(Bed bed) {
        return bed.section().strength().hardwood() ? 0.9 : 0.7;
    }

    /** Corners of one kind read alike on paper; a corner given to 0.1 mm is a little off its neighbour's. */
    private static String kind(ScrewWay way) {
        return way.mitre() + " " + Lengths.text(Lengths.toTenth(way.angleDeg())) + " " + way.entryMm();
    }

    private static ScrewWay worst(Bed bed, double lengthMm) {
        return worst(bed, IntStream.range(0, bed.outline().sides()), lengthMm);
    }

    private static ScrewWay worst(Bed bed, IntStream corners, double lengthMm) {
        return corners.mapToObj(corner -> ScrewWay.of(bed, corner, lengthMm))
                .min(Comparator.comparingDouble(ScrewWay::coverMm))
                .orElseThrow();
    }

    private static double endCoverMm(Bed bed, double lengthMm) {
        return IntStream.range(0, bed.outline().sides())
                .mapToDouble(corner -> ScrewWay.of(bed, corner, lengthMm).endCoverMm())
                .min()
                .orElseThrow();
    }

    private static void nearTheEnd(Bed bed, List<Finding> findings) {
        double length = bed.making().screws().lengthMm();
        double left = endCoverMm(bed, length);
        if (left < LEAST_COVER_MM - 1e-6) {
            double longest = 5 * Math.floor(length / 5);
            while (longest >= SHORTEST_MM && endCoverMm(bed, longest) < LEAST_COVER_MM) longest -= 5;
            Finding near = Finding.of(FindingKind.SCREW_NEAR_END, Place.bed(bed.id()).then(What.CORNER))
                    .with("screw", new Fact.Screw(length)).with(left < 0 ? "out" : "left", Fact.mm(Math.abs(left)))
                    .by(Fact.mm(LEAST_COVER_MM - left));
            findings.add(longest >= SHORTEST_MM ? near.way(WayKind.SCREWS_AT_MOST, new Fact.Screw(longest)) : near.way(WayKind.SHORTER_SCREWS).way(WayKind.BRACKETS));
        }
    }

    private static WayOut shorterScrew(Bed bed) {
        for (double shorter = 10 * Math.ceil(bed.making().screws().lengthMm() / 10) - 10; shorter >= SHORTEST_MM; shorter -= 10) {
            if (worst(bed, shorter).coverMm() >= LEAST_COVER_MM) return WayOut.of(WayKind.SCREWS_AT_MOST, new Fact.Screw(shorter));
        }
        return WayOut.of(WayKind.BRACKETS);
    }

    static double usualScrewMm(Bed bed) {
        for (double length : Screws.SOLD_MM) {
            if (worst(bed, length).coverMm() >= LEAST_COVER_MM - 1e-6 && endCoverMm(bed, length) >= LEAST_COVER_MM - 1e-6) return length;
        }
        return Screws.SOLD_MM.get(Screws.SOLD_MM.size() - 1);
    }

    static void seams(int seams, List<Quantity> quantities) {
        if (seams > 0) {
            quantities.add(Quantity.of(QuantityKind.JOINT_PLATES, seams, "plates",
                    "one backing plate a joint", Working.COMMON_PRACTICE,
                    Input.of("joints", seams, "")));
            quantities.add(Quantity.of(QuantityKind.JOINT_SCREWS, seams * SCREWS_A_SEAM, "screws",
                    "joints x screws a joint", Working.COMMON_PRACTICE,
                    Input.of("joints", seams, ""), Input.of("screws a joint", SCREWS_A_SEAM, "screws")));
        }
    }

    /** Along the liner's top edge, on folds and patches of corners, and on the laps of a liner that is on the walls alone. */
    static void staples(Bed bed, Outline inner, List<Quantity> quantities) {
        double every = bed.inside().liner().staples().stapleEveryMm();
        int edge = 0;
        for (int side = 0; side < inner.sides(); side++) edge += (int) Whole.down(inner.sideMm(side) / every) + 1;
        int patches = bed.inside().liner().overFloor(bed.inside().base()) ? inner.insideCorners() : 0;
        int folds = inner.sides() - patches;
        int perFold = bed.inside().liner().staples().staplesPerFold();
        int perPatch = bed.inside().liner().staples().staplesPerPatch();
        quantities.add(Quantity.of(QuantityKind.STAPLES, edge + folds * perFold + patches * perPatch, "staples",
                "along the edge: for each inner side floor(side / spacing) + 1; + folds x staples a fold + patches x staples a patch",
                Working.COMMON_PRACTICE,
                Input.of("spacing", every, "mm"), Input.of("along the edge", edge, "staples"), Input.of("folds", folds, ""),
                Input.of("staples a fold", perFold, "staples"), Input.of("patches", patches, ""),
                Input.of("staples a patch", perPatch, "staples")));
    }
}

package lapyard.layout;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lapyard.geometry.Lengths;
import lapyard.geometry.Point;
import lapyard.ground.AccessSheet;
import lapyard.ground.AccessSheet.AccessCheck;
import lapyard.ground.Clashes;
import lapyard.ground.FreeGround;
import lapyard.ground.SunHours;
import lapyard.job.Job;
import lapyard.job.JobSheet;
import lapyard.job.SearchMemory;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.plan.Garden;
import lapyard.plan.GardenPath;
import lapyard.plan.Wish;
import lapyard.working.Progress;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;

/** From boxes in a frame to a whole garden with its paths and figures; what no check lets stand is left out of it. */
record Proposing(
        Garden garden, List<Wish> wishes, List<Bed> pinned, double pathMm, FreeGround ground, Frame frame,
        OutlineFit fit, SearchMemory memory) {
    private static final int ROUNDS = 8;

    /** Rounds in which the places of beds that were left out are filled again. */
    private static final int REFILLED = 4;

    private static final Set<AccessCheck> OF_THE_LAYOUT = EnumSet.of(AccessCheck.GAP, AccessCheck.REACH, AccessCheck.WIDTH, AccessCheck.NARROWEST, AccessCheck.TURNING);
    private static final Set<AccessCheck> OF_THE_GROUND = EnumSet.of(AccessCheck.GRADIENT, AccessCheck.CROSS_FALL);

    /** Empty where nothing fits, or the paths cannot be laid as the standard wants them. */
    Optional<Proposal> of(String order, List<BoxSpot> given) {
        List<BoxSpot> spots = new ArrayList<>(given);
        List<BoxSpot> leftOut = new ArrayList<>();
        for (int round = 0; round < ROUNDS && !(spots.isEmpty() && pinned.isEmpty()); round++) {
            Network.Laid laid = network(spots);
            if (laid == null) return Optional.empty();
            List<BoxSpot> kept = new ArrayList<>();
            for (int i = 0; i < spots.size(); i++) {
                if (laid.reached()[pinned.size() + i]) kept.add(spots.get(i));
            }
            if (kept.size() == spots.size()) {
                Garden proposed = garden(spots, laid);
                Set<String> failing = Clashes.stops(proposed).stream().map(finding -> place(finding.where())).collect(Collectors.toCollection(HashSet::new));
                if (failing.isEmpty()) {
                    JobSheet sheet = Job.prepare(proposed, what -> Progress.UNHEARD, memory);
                    failing.addAll(failing(sheet));
                    if (failing.isEmpty()) return Optional.of(proposal(order, sheet, laid));
                }
                if (failing.stream().anyMatch(where -> where.startsWith("path "))) return Optional.empty();
                kept.clear();
                for (int i = 0; i < spots.size(); i++) {
                    if (!failing.contains("bed " + proposed.beds().get(pinned.size() + i).id())) kept.add(spots.get(i));
                }
                if (kept.size() == spots.size()) return Optional.empty();
            }
            List<BoxSpot> stays = kept;
            spots.stream().filter(spot -> !stays.contains(spot)).forEach(leftOut::add);
            spots = round < REFILLED ? fit.filled(kept, leftOut) : kept;
        }
        return Optional.empty();
    }

    private Network.Laid network(List<BoxSpot> spots) {
        List<List<double[]>> boxes = new ArrayList<>();
        List<List<Point>> off = new ArrayList<>(ground.standing().stream().map(frame::in).toList());
        for (Bed bed : pinned) {
            boxes.add(Boxes.boxes(frame, bed));
            off.add(frame.in(bed.inYard()));
        }
        for (BoxSpot spot : spots) {
            boxes.add(spot.parts(0));
            off.addAll(spot.rings());
        }
        List<Point> yard = frame.in(ground.yard());
        Room walk = new Room(List.of(yard), off, List.of());
        Room swap = new Room(List.of(Boxes.swapped(yard)), off.stream().map(Boxes::swapped).toList(), List.of());
        Point entrance = frame.in(ground.entrance().orElseGet(() -> ground.yard().corner(0).middle(ground.yard().corner(1))));
        Point first = Boxes.inward(ground).map(in -> frame.in(ground.entrance().orElseThrow().moved(in, pathMm / 2, 0))).orElse(entrance);
        List<Double> xs = new ArrayList<>(List.of(first.x()));
        List<Double> ys = new ArrayList<>(List.of(first.y()));
        for (Point corner : yard) {
            xs.addAll(List.of(corner.x() + pathMm / 2, corner.x() - pathMm / 2));
            ys.addAll(List.of(corner.y() + pathMm / 2, corner.y() - pathMm / 2));
        }
        Network network = new Network(walk, swap, boxes, pathMm, xs, ys);
        int root = network.nearest(first);
        if (root < 0) return null;
        Optional<Point> tap = ground.tap().map(frame::in);
        int atTap = tap.map(network::nearest).orElse(-1);
        double before = atTap < 0 ? 0 : network.at(atTap).distanceMm(tap.orElseThrow());
        return network.laid(root, atTap, before);
    }

    private Garden garden(List<BoxSpot> spots, Network.Laid laid) {
        List<Bed> beds = new ArrayList<>(pinned);
        Set<String> taken = pinned.stream().map(Bed::id).collect(Collectors.toCollection(HashSet::new));
        int digits = pinned.size() + spots.size() > 26 ? String.valueOf(pinned.size() + spots.size()).length() : 0;
        int number = 0;
        for (BoxSpot spot : spots) {
            String id;
            do {
                number++;
                id = digits == 0 ? Bed.wallLetter(number - 1) : String.format(Locale.ROOT, "%0" + digits + "d", number);
            } while (!taken.add(id));
            beds.add(wishes.get(spot.kind().wish()).making().placedAs(id, "", Boxes.placement(frame, spot), 1));
        }
        Optional<GardenPath> like = garden.paths().stream().findFirst();
        List<GardenPath> paths = new ArrayList<>();
        for (Network.Leg leg : laid.legs()) {
            Point from = frame.out(leg.across() ? new Point(leg.from(), leg.at()) : new Point(leg.at(), leg.from()));
            Point to = frame.out(leg.across() ? new Point(leg.to(), leg.at()) : new Point(leg.at(), leg.to()));
            List<Point> line = Stream.of(from, to).map(end -> new Point(Lengths.toTenth(end.x()), Lengths.toTenth(end.y()))).toList();
            paths.add(new GardenPath("P" + (paths.size() + 1), "", line, pathMm,
                    like.map(GardenPath::layers).orElse(List.of()), like.map(GardenPath::edging).orElse(""), like.map(GardenPath::membrane).orElse(""), GardenPath.USUAL_LAP_MM));
        }
        return garden.withBeds(beds).withPaths(paths);
    }

    /** Places that a check of the yard does not let stand: what the wishes themselves bring with them is not asked. */
    private Set<String> failing(JobSheet sheet) {
        Set<String> failing = new HashSet<>();
        for (Finding finding : Clashes.of(sheet.garden())) {
            boolean bed = finding.where().startsWith("bed ");
            if (finding.weight() != Finding.Weight.NOTE && bed && sheet.ground().access().findings().stream().noneMatch(finding::equals)) {
                failing.add(place(finding.where()));
            }
        }
        for (AccessSheet.Row row : sheet.ground().access().rows()) {
            if (row.missing() > 0 && OF_THE_LAYOUT.contains(row.what()) && !inherent(row, sheet)) failing.add(place(row.where()));
        }
        return failing;
    }

    /** Whether the place is out of reach even with every wall free. */
    private boolean inherent(AccessSheet.Row row, JobSheet sheet) {
        if (row.what() != AccessCheck.REACH) return false;
        return sheet.garden().beds().stream().filter(bed -> row.where().equals("bed " + bed.id())).anyMatch(bed -> {
            Garden alone = garden.withBeds(List.of(bed.hiding(Set.of()))).withPaths(List.of());
            Garden open = alone.withGround(alone.ground().bare());
            return Job.prepare(open, what -> Progress.UNHEARD, memory).ground().access().rows().stream()
                    .anyMatch(other -> other.what() == AccessCheck.REACH && other.measured() >= row.measured() - 1);
        });
    }

    private static String place(String where) {
        int comma = where.indexOf(',');
        return comma < 0 ? where : where.substring(0, comma);
    }

    private Proposal proposal(String order, JobSheet sheet, Network.Laid laid) {
        double planting = 0;
        double barrow = 0;
        double hose = 0;
        for (int i = 0; i < sheet.beds().size(); i++) {
            List<Quantity> quantities = sheet.beds().get(i).quantities();
            planting += Quantity.sum(quantities, QuantityKind.INNER_AREA);
            barrow += 2 * Quantity.sum(quantities, QuantityKind.BARROWS) * finite(laid.walkMm()[i]) / 1000;
            hose = Math.max(hose, finite(laid.hoseMm()[i]) / 1000);
        }
        double paths = sheet.paths().stream().mapToDouble(path -> Quantity.sum(path.quantities(), QuantityKind.PATH_AREA)).sum();
        double sun = SunHours.of(sheet.garden(), sheet.ground().fall()).map(hours -> {
            Set<String> food = new HashSet<>();
            sheet.garden().beds().stream().filter(bed -> bed.planting().food()).forEach(bed -> food.add(bed.id()));
            return hours.beds().stream().filter(bed -> food.isEmpty() || food.contains(bed.bed()))
                    .mapToDouble(SunHours.BedSun::meanHours).average().orElse(0);
        }).orElse(0.0);
        List<String> fall = sheet.ground().access().rows().stream()
                .filter(row -> row.missing() > 0 && OF_THE_GROUND.contains(row.what()))
                .map(row -> row.where() + ": " + row.what().words + " 1:" + Math.round(row.measured()) + ", asked is 1:" + Math.round(row.limit()))
                .toList();
        return new Proposal(order, sheet.garden(), sheet, new Proposal.Figures(sheet.beds().size(), planting, paths, sun, barrow, hose,
                sheet.slip().total(), sheet.slip().atLeast()), fall);
    }

    private static double finite(double mm) {
        return Double.isInfinite(mm) ? 0 : mm;
    }
}

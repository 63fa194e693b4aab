package lapyard.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import lapyard.geometry.Point;
import lapyard.ground.AccessSheet;
import lapyard.ground.BedFall;
import lapyard.ground.BedGround;
import lapyard.ground.Fall;
import lapyard.ground.GroundSheet;
import lapyard.ground.Nearness;
import lapyard.ground.Pegs;
import lapyard.ground.Rims;
import lapyard.ground.SettingOut;
import lapyard.ground.SunHours;
import lapyard.ground.SurveyedYard;
import lapyard.job.JobSheet;
import lapyard.json.Wire.IfGiven;
import lapyard.json.Wire.To;
import lapyard.plan.AccessStandard;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.plan.Ground;
import lapyard.plan.KeepClearKind;
import lapyard.plan.SurfaceKind;
import lapyard.working.Quantity;

/** The ground in a job sheet, and its parts that are worked out only when asked for: pegs and sun. */
final class GroundJson {
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mmxxx");

    private GroundJson() {}

    private record Whole(List<Point> outline, Usual usual, @IfGiven Optional<SurveyedYard> survey,
            @IfGiven Optional<FallShape> fall, List<Quantity> quantities, List<BedShape> beds,
            List<Nearness> keepClear, List<Rims> rims, AccessSheet access) {}

    private record Usual(@To(1) Map<String, Double> clearances, Map<String, AccessStandard> standards) {}

    private record FallShape(@To(2) double oneIn, List<Double> downhill, List<Reading> readings) {}

    private record Reading(Point at, double dropMm, double residualMm) {}

    private record BedShape(String bed, String surface, String way, List<Scribe> scribes) {}

    private record Scribe(String mark, double startMm, double endMm) {}

    private record PegsShape(Optional<Baseline> baseline, double toleranceMm,
            @IfGiven Optional<SettingOut.Triangle> square, List<BedPegs> beds, List<Finding> snags) {}

    private record Baseline(Point from, Point to, double lengthMm, double standOffMm) {}

    private record BedPegs(String bed, List<Double> runningMm, List<Double> offsetsMm, List<Peg> pegs, List<Pegs.LinePeg> stringPegs,
            List<Pegs.Diagonal> diagonals, @IfGiven Optional<SettingOut.Triangle> square,
            @IfGiven @To(2) OptionalDouble pushForTen, List<Quantity> quantities) {}

    private record Peg(int peg, double alongMm, double offMm, double firstMm, double secondMm, boolean flat,
            @IfGiven OptionalDouble dropMm) {}

    private record Sun(LocalDate day, String zone, Optional<String> rise, Optional<String> set, List<SunHours.BedSun> beds, double cellMm,
            ArrayNode cells) {}

    private record NoSun(Optional<LocalDate> day, List<SunHours.BedSun> beds, List<Double> cells) {}

    static Record of(JobSheet sheet) {
        GroundSheet ground = sheet.ground();
        Ground drawn = sheet.garden().ground();
        return new Whole(
                drawn.outline().stream().flatMap(yard -> yard.corners().stream()).toList(),
                new Usual(
                        Stream.of(KeepClearKind.values()).collect(Collectors.toMap(KeepClearKind::code, kind -> kind.clearanceMm, (one, same) -> one, TreeMap::new)),
                        AccessStandard.all(sheet.garden().imperial()).stream()
                                .collect(Collectors.toMap(AccessStandard::id, one -> one, (a, b) -> a, java.util.LinkedHashMap::new))),
                ground.survey(),
                ground.fall().map(fall -> fall(fall, drawn.levels())),
                ground.quantities(),
                IntStream.range(0, ground.beds().size()).mapToObj(i -> bed(ground.beds().get(i), sheet.beds().get(i))).toList(),
                ground.keepClear(), ground.rims(), ground.access());
    }

    private static FallShape fall(Fall fall, List<Ground.Level> levels) {
        double steep = Math.hypot(fall.a(), fall.b());
        return new FallShape(
                fall.oneIn(), steep == 0 ? List.of(0.0, 0.0) : List.of(fall.a() / steep, fall.b() / steep),
                IntStream.range(0, levels.size())
                        .mapToObj(i -> new Reading(levels.get(i).at(), levels.get(i).dropMm(), fall.residualsMm().get(i)))
                        .toList());
    }

    private static BedShape bed(BedGround ground, JobSheet.BedSheet sheet) {
        Bed bed = sheet.work().bed();
        List<Scribe> scribes = ground.scribes().isEmpty() ? List.of() : sheet.work().pieces().stream()
                .filter(piece -> piece.course() == 1)
                .map(piece -> {
                    int wall = bed.wallLetters().indexOf(piece.wall());
                    BedFall.Scribe scribe = ground.scribes().get(wall);
                    double length = bed.outline().sideMm(wall);
                    return new Scribe(piece.mark(), scribe.atMm(within(piece.fromMm() / length)),
                            scribe.atMm(within((piece.fromMm() + piece.lengthMm()) / length)));
                })
                .toList();
        return new BedShape(ground.bed(), ground.surface().map(SurfaceKind::code).orElse(""), ground.way(), scribes);
    }

    private static double within(double share) {
        return Math.max(0, Math.min(1, share));
    }

    static Record pegs(JobSheet sheet) {
        SettingOut out = SettingOut.of(sheet.garden(), sheet.ground().fall());
        return new PegsShape(
                out.baseline().map(line -> new Baseline(line.from(), line.to(), line.from().distanceMm(line.to()), line.standOffMm())),
                Pegs.TOLERANCE_MM, out.square(), out.beds().stream().map(GroundJson::pegs).toList(),
                out.findings());
    }

    private static BedPegs pegs(SettingOut.BedPegs bed) {
        Pegs pegs = bed.pegs();
        return new BedPegs(
                bed.bed().id(), pegs.runningMm(), pegs.offsetsMm(),
                IntStream.range(0, pegs.pegs().size()).mapToObj(i -> peg(pegs.pegs().get(i), bed.tapes().get(i))).toList(),
                pegs.linePegs(),
                pegs.diagonals(), bed.square(),
                bed.pushForTenMm().map(OptionalDouble::of).orElse(OptionalDouble.empty()), pegs.quantities());
    }

    private static Peg peg(Pegs.Peg peg, SettingOut.Tapes tapes) {
        return new Peg(peg.number(), peg.alongMm(), peg.offMm(), tapes.firstMm(), tapes.secondMm(), tapes.flat(), peg.dropMm());
    }

    static Record sun(JobSheet sheet) {
        Optional<SunHours> hours = SunHours.of(sheet.garden(), sheet.ground().fall());
        if (hours.isEmpty()) return new NoSun(Optional.empty(), List.of(), List.of());
        SunHours sun = hours.get();
        Function<ZonedDateTime, String> minute = MINUTE::format;
        return new Sun(
                sun.day().day(), sun.day().zone().getId(), sun.rise().map(minute), sun.set().map(minute),
                sun.beds(), sun.cellMm(),
                cells(sun.cells()));
    }

    /** Middle and hours of each cell, {@code [x, y, hours]}: the many of them are written short. */
    private static ArrayNode cells(List<SunHours.Cell> cells) {
        ArrayNode json = DocumentText.MAPPER.createArrayNode();
        cells.forEach(cell -> json.addArray()
                .add(Wire.number(cell.middle().x(), 1))
                .add(Wire.number(cell.middle().y(), 1))
                .add(Wire.number(cell.hours(), 2)));
        return json;
    }
}

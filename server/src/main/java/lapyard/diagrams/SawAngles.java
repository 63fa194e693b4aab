package lapyard.diagrams;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import lapyard.construction.BedWork;
import lapyard.construction.Piece;
import lapyard.cutting.Batches;
import lapyard.diagrams.BenchTable.Column;
import lapyard.geometry.Lengths;

/** Timbers whose ends are sawn off square, alike ones on one line: first cut to length, then each end to its degrees. */
final class SawAngles {
    private record Shape(double lengthMm, double outerMm, double innerMm, double startDeg, double endDeg) {}

    private SawAngles() {}

    /** Nothing where all ends are square or sawn in a nest. */
    static void on(Flow flow, List<BedWork> beds, List<SawDay.Work> works, BenchSheet sheet) {
        Set<Piece> nested = works.stream()
                .flatMap(work -> work.nests().stream())
                .flatMap(nest -> nest.pieces().stream())
                .collect(Collectors.toSet());
        Map<Shape, List<String>> alike = new LinkedHashMap<>();
        List<Double> sets = new ArrayList<>();
        for (BedWork work : beds) {
            for (Piece piece : work.pieces()) {
                if (!piece.squareEnds() && !nested.contains(piece)) {
                    alike.computeIfAbsent(shape(piece), s -> new ArrayList<>()).add(piece.mark());
                    sets.addAll(piece.setsDeg());
                }
            }
        }
        if (alike.isEmpty()) {
            return;
        }
        flow.section("Angled ends", "cut square to length first, then saw each end off square by its degrees");
        BenchTable table = new BenchTable(sheet, "Angled ends",
                new Column("Cut to", 0.11, true), new Column("Outer face", 0.11, false),
                        new Column("Inner face", 0.11, false),
                new Column("Start", 0.09, true), new Column("End", 0.09, true), new Column("Pieces", 0.49, false));
        alike.forEach((shape, marks) -> table.row(
                sheet.written(shape.lengthMm()), sheet.written(shape.outerMm()), sheet.written(shape.innerMm()),
                degrees(shape.startDeg()), degrees(shape.endDeg()), String.join(", ", marks)));
        table.on(flow);
        flow.words(
                List.of(minutes(sets, works.isEmpty() ? Batches.Rates.USUAL : works.get(0).batches().rates())), 4.4, false);
        flow.words(
                List.of("The longer face keeps its whole length: the blade leaves its corner and takes the other. Start is where"
                        + " the wall starts, going round from A to B, as on the course card. Try each set on two scraps and put them"
                        + " together before a board is cut. Clamp the piece: an angled cut pushes it along the fence."),
                3.2,
                false);
    }

    /** What slanted cuts take beside the square ones of the batches. */
    static String minutes(List<Double> sets, Batches.Rates rates) {
        int settings = (int) sets.stream().distinct().count();
        return sets.size() + " slanted cuts × " + Lengths.text(rates.minutesACut()) + " min + " + settings
                + (settings == 1 ? " setting × " : " settings × ") + Lengths.text(rates.minutesASetting()) + " min = "
                + Lengths.text(Lengths.toTenth(rates.minutes(sets.size(), settings))) + " min, beside the square cuts of the batches.";
    }

    private static Shape shape(Piece piece) {
        return new Shape(
                piece.lengthMm(), piece.outerFaceMm(), piece.innerFaceMm(), piece.start().setDeg(), piece.end().setDeg());
    }

    private static String degrees(double degrees) {
        return degrees == 0 ? "square" : Lengths.text(degrees) + "°";
    }
}

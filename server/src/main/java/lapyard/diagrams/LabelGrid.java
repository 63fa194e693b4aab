package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import lapyard.drawing.Paper;
import lapyard.plan.CannotAnswer;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Place;
import lapyard.plan.WayKind;
import lapyard.working.BrokenRule;

/**
 * A sheet of labels that are all alike, in columns and rows.
 *
 * @param leftMm   from the left edge of the sheet to the first label, and from the last to the right edge
 * @param topMm    as {@code leftMm}, from the upper and to the lower edge
 * @param acrossMm gap between columns
 * @param downMm   gap between rows
 */
public record LabelGrid(Paper paper, int columns, int rows, double leftMm, double topMm, double acrossMm, double downMm) {
    private static final double LEAST_WIDE = 30;
    private static final double LEAST_HIGH = 15;
    private static final int MOST_EACH_WAY = 40;

    public LabelGrid {
        BrokenRule.between("labels", "columns", columns, 1, MOST_EACH_WAY, "");
        BrokenRule.between("labels", "rows", rows, 1, MOST_EACH_WAY, "");
        double wide = (paper.shortMm - 2 * leftMm - (columns - 1) * acrossMm) / columns;
        double high = (paper.longMm - 2 * topMm - (rows - 1) * downMm) / rows;
        if (!(leftMm >= 0 && topMm >= 0 && acrossMm >= 0 && downMm >= 0) || wide < LEAST_WIDE || high < LEAST_HIGH) {
            throw new CannotAnswer(Finding.of(FindingKind.LABELS_SMALL, Place.field("labels")).with("columns", Fact.count(columns, "columns"))
                    .with("rows", Fact.count(rows, "rows")).with("paper", Fact.name(paper.label())).with("size", Fact.size(wide, high))
                    .with("least", Fact.size(LEAST_WIDE, LEAST_HIGH)).way(WayKind.FEWER_LABELS));
        }
    }

    /** 24 labels of 70 x 37 mm on A4 (ISO 216: 210 x 297); 30 of 2 5/8 x 1 in on Letter. */
    public static LabelGrid usual(boolean imperial) {
        return imperial ? new LabelGrid(Paper.LETTER, 3, 10, 4.7625, 12.7, 3.175, 0) : new LabelGrid(Paper.A4, 3, 8, 0, 0.5, 0, 0);
    }

    /**
     * As it is asked for: {@code 3x8}, {@code 3x8,0,0.5} with margins left and right, above and below, or
     * {@code 3x8,5,10,2,0} with gaps between columns and rows too, in mm.
     *
     * @throws CannotAnswer where it is anything else, with an example
     */
    public static LabelGrid read(String words, Paper paper) {
        String[] parts = words.strip().split(",");
        String[] counts = parts[0].strip().split("x");
        List<Double> mm = new ArrayList<>();
        try {
            for (int i = 1; i < parts.length; i++) mm.add(Double.parseDouble(parts[i].strip()));
            if (counts.length == 2 && (mm.isEmpty() || mm.size() == 2 || mm.size() == 4)) {
                return new LabelGrid(
                        paper, Integer.parseInt(counts[0].strip()), Integer.parseInt(counts[1].strip()), at(mm, 0), at(mm, 1), at(mm, 2), at(mm, 3));
            }
        } catch (NumberFormatException notNumbers) {
            // told below, as for a wrong count
        }
        throw new CannotAnswer(Finding.of(FindingKind.FIELD_SHAPE, Place.field("labels")).with("name", Fact.name("labels"))
                .with("wanted", Fact.name("columns x rows, then margins and gaps in mm")).with("has", Fact.name("\"" + words.strip() + "\""))
                .way(WayKind.WRITE_LIKE, Fact.name("3x8,0,0.5 or 3x8,5,10,2,0")));
    }

    private static double at(List<Double> mm, int i) {
        return i < mm.size() ? mm.get(i) : 0;
    }

    double wideMm() {
        return (paper.shortMm - 2 * leftMm - (columns - 1) * acrossMm) / columns;
    }

    double highMm() {
        return (paper.longMm - 2 * topMm - (rows - 1) * downMm) / rows;
    }

    int onASheet() {
        return columns * rows;
    }

    /** The label that is the {@code n}th of its sheet, from 0, row after row. */
    Box label(int n) {
        double left = leftMm + n % columns * (wideMm() + acrossMm);
        double top = topMm + n / columns * (highMm() + downMm);
        return new Box(left, top, left + wideMm(), top + highMm());
    }
}

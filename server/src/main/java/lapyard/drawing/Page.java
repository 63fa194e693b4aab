package lapyard.drawing;

import java.util.List;

/**
 * A sheet of paper with shapes on it, first shape lowest. The origin is the upper left corner of the sheet,
 * x runs to the right and y down, in paper millimetres.
 *
 * @param title    what the sheet is, for viewers and screen readers
 * @param widthMm  of the trimmed sheet, above 0
 * @param heightMm of the trimmed sheet, above 0
 * @param subjects what stands on it, for an outline; may be empty
 */
public record Page(String title, double widthMm, double heightMm, List<Shape> shapes, List<String> subjects) {
    public Page {
        title = PlainText.of(title);
        shapes = List.copyOf(shapes);
        subjects = List.copyOf(subjects);
        if (!(widthMm > 0 && heightMm > 0 && widthMm <= 10_000 && heightMm <= 10_000)) {
            throw new IllegalArgumentException("a page measures above 0 and up to 10000 mm each way, was " + widthMm + " x " + heightMm);
        }
    }
}

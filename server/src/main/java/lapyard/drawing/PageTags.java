package lapyard.drawing;

import java.util.Arrays;
import java.util.IdentityHashMap;
import java.util.Map;
import java.util.TreeMap;
import lapyard.drawing.Tag.Role;
import org.apache.fop.pdf.PDFText;

/**
 * The logical structure of one page: elements, the first of which is the page's section, and marked content, each numbered from 0.
 * Pages are kept painted until their numbers are known, so it takes few bytes.
 */
final class PageTags {
    private byte[] roles = new byte[32];
    private char[] parents = new char[32];
    private int elements;
    private char[] owners = new char[32];
    private int marks;

    /** What is said of few elements: the words of a figure and its box; the place of a link's annotation on the page. */
    private final Map<Integer, String> said = new TreeMap<>();

    private final Map<Integer, double[]> boxes = new TreeMap<>();
    private final Map<Integer, Integer> links = new TreeMap<>();
    private Map<Tag, Integer> known = new IdentityHashMap<>();

    /** @param title of the page; may be empty */
    PageTags(String title) {
        add(Role.SECTION, 0);
        if (!title.isEmpty()) said.put(0, title);
    }

    /** Nothing is drawn on the page any more. */
    void close() {
        known = new IdentityHashMap<>(1); // one that was cleared would stay as large as it was
        roles = Arrays.copyOf(roles, elements);
        parents = Arrays.copyOf(parents, elements);
        owners = Arrays.copyOf(owners, marks);
    }

    int elements() {
        return elements;
    }

    /** The element of a tag on this page. */
    int of(Tag tag) {
        if (tag.role == Role.CELL || tag.role == Role.HEAD_CELL) return of(tag.within) + 1 + tag.cells;
        Integer there = known.get(tag);
        if (there != null) return there;
        int element = add(tag.role, tag.within == tag ? 0 : of(tag.within));
        known.put(tag, element);
        if (tag.role == Role.ROW || tag.role == Role.HEAD_ROW) {
            // all at once, so that every row of a table has as many cells
            for (int i = 0; i < tag.cells; i++) add(tag.role == Role.ROW ? Role.CELL : Role.HEAD_CELL, element);
        }
        return element;
    }

    int paragraph() {
        return add(Role.PARAGRAPH, 0);
    }

    /** @param words what it shows @param within the cell that it stands in, or {@link Tag#AROUND} for the page itself */
    int figure(String words, Tag within) {
        int element = add(Role.FIGURE, within == Tag.AROUND ? 0 : of(within));
        said.put(element, words);
        return element;
    }

    /** @param box left, low, right and high of a figure, in the units of the page */
    void box(int figure, double[] box) {
        boxes.put(figure, box);
    }

    void link(int element, int annotation) {
        links.put(element, annotation);
    }

    /** The element of each annotation of the page. */
    int[] linked(int annotations) {
        int[] linked = new int[annotations];
        links.forEach((element, annotation) -> linked[annotation] = element);
        return linked;
    }

    Role role(int element) {
        return Role.of(roles[element]);
    }

    /** Begins marked content of an element. @return its number */
    int mark(int element) {
        if (marks == owners.length) owners = Arrays.copyOf(owners, 2 * marks);
        owners[marks] = (char) element;
        return marks++;
    }

    private int add(Role role, int parent) {
        if (elements > Character.MAX_VALUE) throw new IllegalStateException("a page has at most " + (int) Character.MAX_VALUE + " elements");
        if (elements == roles.length) {
            roles = Arrays.copyOf(roles, 2 * elements);
            parents = Arrays.copyOf(parents, 2 * elements);
        }
        roles[elements] = (byte) role.ordinal();
        parents[elements] = (char) parent;
        return elements++;
    }

    /** References to the owner of each marked content, as the parent tree has them (ISO 32000-1:2008, 14.7.4.4). */
    String byMark(int first) {
        StringBuilder text = new StringBuilder("[");
        for (int i = 0; i < marks; i++) text.append(i == 0 ? "" : " ").append(first + owners[i]).append(" 0 R");
        return text.append(']').toString();
    }

    /**
     * Every element as a dictionary of PDF.
     *
     * @param first       number of the first element's object; the others follow
     * @param page        number of the page's object
     * @param whole       number of the object above the section
     * @param annotations number of the object of each annotation
     */
    String[] written(int first, int page, int whole, int[] annotations) {
        StringBuilder[] kids = new StringBuilder[elements];
        for (int i = 1; i < elements; i++) kid(kids, parents[i]).append(first + i).append(" 0 R ");
        for (int i = 0; i < marks; i++) kid(kids, owners[i]).append(i).append(' ');
        links.forEach((element, annotation) -> kid(kids, element).append("<< /Type /OBJR /Obj ").append(annotations[annotation]).append(" 0 R >> "));
        String[] written = new String[elements];
        for (int i = 0; i < elements; i++) {
            StringBuilder text = new StringBuilder(96).append("<< /Type /StructElem /S /").append(role(i).standard);
            text.append(" /P ").append(i == 0 ? whole : first + parents[i]).append(" 0 R /Pg ").append(page).append(" 0 R");
            if (kids[i] != null) {
                kids[i].setLength(kids[i].length() - 1);
                text.append(" /K [").append(kids[i]).append(']');
            }
            if (said.containsKey(i)) text.append(i == 0 ? " /T " : " /Alt ").append(PDFText.escapeText(said.get(i), false));
            if (role(i) == Role.HEAD_CELL) text.append(" /A << /O /Table /Scope /Column >>");
            if (boxes.containsKey(i)) box(text, boxes.get(i));
            written[i] = text.append(" >>").toString();
        }
        return written;
    }

    private static StringBuilder kid(StringBuilder[] kids, int parent) {
        if (kids[parent] == null) kids[parent] = new StringBuilder();
        return kids[parent];
    }

    private static void box(StringBuilder text, double[] box) {
        text.append(" /A << /O /Layout /Placement /Block /BBox [");
        for (double side : box) {
            SvgDocument.number(text, side);
            text.append(' ');
        }
        text.setCharAt(text.length() - 1, ']');
        text.append(" >>");
    }
}

package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import lapyard.drawing.Shape;
import lapyard.drawing.Tag;
import lapyard.drawing.TextMeasure;
import lapyard.working.Abandonable;

/**
 * Fills sheets from top to bottom with blocks that stay whole. A block may be kept with the next, a head stands again on
 * each further sheet, and a section that still finds room goes on the sheet of the one before. Heights are known when a
 * block is handed over, so that no text is measured twice.
 *
 * <p>Drawing by hand at {@link #y()} goes between blocks.
 */
final class Flow {
    /** Height of the words that begin a section in the middle of a sheet. */
    private static final double SECTION = 13;

    private static final double LINE = 1.35;

    /** Between columns of words, cards and tables. */
    static final double APART = 7;

    /** What goes on from the sheet before is little where it takes less than this part of one. */
    static final double LITTLE = 1.0 / 3;

    /** Of a sentence that goes on over sheets or columns, so many lines stay together at its beginning and at its end. */
    private static final int TOGETHER = 2;

    /** Draws a block with its upper left corner at a place. */
    interface Drawer {
        List<? extends Shape> at(double x, double y);
    }

    /**
     * What stands together on a sheet: a row, a bar, a card, a line of text.
     *
     * @param withNext whether the next block has to stand on the same sheet
     * @param again    what stands above it where it begins a column, such as the head of a list that goes on
     */
    record Block(double heightMm, boolean withNext, Drawer drawer, Optional<Block> again) {
        Block(double heightMm, boolean withNext, Drawer drawer) {
            this(heightMm, withNext, drawer, Optional.empty());
        }

        Block below(Block head) {
            return new Block(heightMm, withNext, drawer, Optional.of(head));
        }

        /** With room below it. */
        Block with(double gapMm) {
            return new Block(heightMm + gapMm, withNext, drawer, again);
        }

        private double firstMm() {
            return heightMm + again.map(Block::heightMm).orElse(0.0);
        }

        /** Blocks one below the other, never parted. */
        static Block of(List<Block> blocks) {
            return new Block(high(blocks), false, (x, top) -> {
                List<Shape> shapes = new ArrayList<>();
                double y = top;
                for (Block block : blocks) {
                    shapes.addAll(block.drawer().at(x, y));
                    y += block.heightMm();
                }
                return shapes;
            });
        }

        /** Height of blocks one below the other, mm. */
        static double high(List<Block> blocks) {
            return blocks.stream().mapToDouble(Block::heightMm).sum();
        }

        /** Nothing, as a distance. */
        static Block gap(double heightMm) {
            return new Block(heightMm, false, (x, top) -> List.of());
        }
    }

    private record Section(String kind, String about, double mostUsed) {}

    final BenchSheet sheet;
    private final List<BenchSheet.Draft> done = new ArrayList<>();
    private final List<Block> pending = new ArrayList<>();
    private Optional<Section> begun;
    private List<String> kinds = new ArrayList<>();
    private String about = "";
    /** Whether this sheet begins with the rest of a section, and no other has begun on it. */
    private boolean goesOn;

    private boolean thin;

    /** Of the section that goes on where the sheet ends. */
    private String lastAbout = "";
    private List<Shape> shapes = new ArrayList<>();
    /** Heads as they stand on further sheets, the outermost first. */
    private final List<Block> heads = new ArrayList<>();
    /** Of the heads, those below which nothing stands yet; they are the last of what is pending. */
    private int headsPending;
    private Optional<Block> foot = Optional.empty();
    private boolean footGoesOn;
    private double y;

    /** Whether more goes on to a further sheet where little would. */
    private boolean shares;

    /**
     * @param kind  heading of the first section
     * @param about line below it
     */
    Flow(BenchSheet sheet, String kind, String about) {
        this.sheet = sheet;
        this.begun = Optional.of(new Section(kind, about, 1));
        this.y = sheet.space().low();
        this.shares = sheet.shares;
    }

    /** @param so whether what is laid out goes on to a further sheet with more than a little of it, if at all */
    void shared(boolean so, Runnable laying) {
        boolean before = shares;
        shares = so;
        laying.run();
        if (!pending.isEmpty()) place();
        shares = before;
    }

    /** Begins a section, on this sheet where its first blocks find room there. */
    void section(String kind, String about) {
        section(kind, about, 1);
    }

    /** @param mostUsed a sheet of which more than this part is used is left alone, and the section begins on a fresh one */
    void section(String kind, String about, double mostUsed) {
        if (!pending.isEmpty()) place();
        begun = Optional.of(new Section(kind, about, mostUsed));
    }

    void block(Block block) {
        Abandonable.check();
        pending.add(block);
        if (!block.withNext()) place();
    }

    /** Blocks one below the other. On sheets that share, more go on to a further one where few would. */
    void rows(List<Block> rows) {
        double left = Block.high(rows);
        for (Block row : rows) {
            double goesOn = y + left - bottom();
            boolean nearlyEmpty = goesOn > 1e-9 && goesOn < BenchSheet.NEARLY_EMPTY * sheet.space().height();
            if (shares && pending.isEmpty() && begun.isEmpty() && nearlyEmpty && isLittle(left - row.heightMm())) turn();
            left -= row.heightMm();
            block(row);
        }
    }

    /** Stands above what follows, and in its other form at the top of each sheet on which that goes on; heads may nest. */
    void head(Block first, Block onFurtherSheets) {
        pending.add(new Block(first.heightMm(), true, first.drawer()));
        headsPending++;
        heads.add(onFurtherSheets);
    }

    /** What follows does not stand below the last head any more. A head below which nothing stood is left out. */
    void endHead() {
        heads.remove(heads.size() - 1);
        if (headsPending > 0) {
            headsPending--;
            pending.remove(pending.size() - 1);
        }
    }

    /** Stands at the foot of this sheet and of all that follow, up to {@link #endFoot}. */
    void foot(double heightMm, Drawer drawer) {
        foot = Optional.of(new Block(heightMm, false, drawer));
        footGoesOn = true;
    }

    /** The next sheet has no such foot any more. */
    void endFoot() {
        footGoesOn = false;
        if (fresh()) foot = Optional.empty();
    }

    /** Width of one of several columns side by side. */
    double columnWidth(int count, double gapMm) {
        return (sheet.space().width() - (count - 1) * gapMm) / count;
    }

    /** Blocks in columns, read column by column; as high as each other as blocks that stay whole can be. */
    void columns(int count, double gapMm, List<Block> blocks) {
        List<Block> left = blocks;
        while (!left.isEmpty()) {
            double first = left.get(0).firstMm();
            if (!pending.isEmpty() || begun.isPresent()) {
                pending.add(Block.gap(first));
                place();
                y -= first;
            } else if (!fresh() && !holds(first)) {
                turn();
            }
            left = fill(count, gapMm, left);
            if (!left.isEmpty()) turn();
        }
    }

    /** @return what found no room on this sheet */
    private List<Block> fill(int count, double gapMm, List<Block> blocks) {
        double room = bottom() - y;
        double high = room;
        if (ends(blocks, count, room)[count - 1] == blocks.size()) {
            high = Math.min(room, blocks.stream().mapToDouble(Block::heightMm).max().orElse(0));
            // each step takes in the smallest block that a column is short of
            while (ends(blocks, count, high)[count - 1] < blocks.size()) high = Math.min(room, next(blocks, count, high));
        } else {
            high = room - shared(blocks, count, room);
        }
        int[] ends = ends(blocks, count, high);
        int from = 0;
        double lowest = y;
        for (int column = 0; column < count; column++) {
            double x = sheet.space().left() + column * (columnWidth(count, gapMm) + gapMm);
            Block whole = Block.of(columnOf(blocks, from, ends[column]));
            shapes.addAll(whole.drawer().at(x, y));
            lowest = Math.max(lowest, y + whole.heightMm());
            from = ends[column];
        }
        y = lowest;
        return blocks.subList(from, blocks.size());
    }

    /** By how much columns that do not hold all blocks are shorter on sheets that share, where little would go on. */
    private double shared(List<Block> blocks, int count, double room) {
        List<Block> rest = blocks.subList(ends(blocks, count, room)[count - 1], blocks.size());
        double goesOn = Block.high(rest) / count;
        double little = LITTLE * sheet.space().height();
        return shares && isLittle(goesOn) && room > little ? little - goesOn : 0;
    }

    /** What goes on from another column has its head again. */
    private static List<Block> columnOf(List<Block> blocks, int from, int to) {
        List<Block> column = new ArrayList<>(blocks.subList(from, to));
        if (!column.isEmpty()) column.get(0).again().ifPresent(head -> column.add(0, head));
        return column;
    }

    /** Where each column ends; a block that is higher than a sheet stands in a column of its own. */
    private int[] ends(List<Block> blocks, int count, double high) {
        int[] ends = new int[count];
        int i = 0;
        for (int column = 0; column < count; column++) {
            double used = 0;
            int from = i;
            while (i < blocks.size()) {
                double more = i == from ? blocks.get(i).firstMm() : blocks.get(i).heightMm();
                boolean alone = i == from && more > sheet.space().height() - foot.map(Block::heightMm).orElse(0.0);
                if (used + more > high + 1e-9 && !alone && !(column == 0 && i == 0)) break;
                used += more;
                i++;
            }
            ends[column] = i;
        }
        return ends;
    }

    /** The least height above this one at which a column takes in one block more. */
    private double next(List<Block> blocks, int count, double high) {
        int[] ends = ends(blocks, count, high);
        double least = Double.POSITIVE_INFINITY;
        int from = 0;
        for (int column = 0; column < count; column++) {
            if (ends[column] < blocks.size()) least = Math.min(least, Block.of(columnOf(blocks, from, ends[column] + 1)).heightMm());
            from = ends[column];
        }
        return Math.max(least, high + 1e-6);
    }

    /** Sentences across the whole width, kept together where a sheet is high enough. */
    void words(List<String> sentences, double size, boolean bold) {
        List<Block> lines = lines(sentences, size, bold, sheet.space().width());
        boolean whole = Block.high(lines) <= sheet.space().height() / 2;
        for (int i = 0; i < lines.size(); i++) {
            boolean last = i + 1 == lines.size();
            boolean edge = i + 1 < TOGETHER || i + TOGETHER >= lines.size();
            block(new Block(lines.get(i).heightMm(), !last && (whole || edge), lines.get(i).drawer()));
        }
        gap(2);
    }

    /** Each sentence on as many lines as a width asks for. */
    List<Block> lines(List<String> sentences, double usual, boolean bold, double widthMm) {
        double size = sheet.size(usual);
        List<Block> lines = new ArrayList<>();
        for (String words : sentences) {
            Tag sentence = Tag.paragraph();
            List<Block> own = new ArrayList<>();
            for (String line : TextMeasure.wrap(words, size, bold, widthMm)) {
                own.add(new Block(size * LINE, false, (x, top) -> List.of(sheet.text(x, top + size, line, size, bold).as(sentence))));
            }
            int last = own.size() - TOGETHER;
            if (own.size() < 2 * TOGETHER) {
                lines.add(Block.of(own));
                continue;
            }
            lines.add(Block.of(own.subList(0, TOGETHER)));
            lines.addAll(own.subList(TOGETHER, last));
            lines.add(Block.of(own.subList(last, own.size())));
        }
        return lines;
    }

    /** Room before what comes next on this sheet. */
    void gap(double heightMm) {
        if (!fresh()) y += heightMm * sheet.close;
    }

    double y() {
        flush();
        return y;
    }

    /** Whether so much still finds room on this sheet. */
    boolean holds(double heightMm) {
        flush();
        return y + heightMm <= bottom() + 1e-9;
    }

    /** What is drawn by hand at {@link #y()}; the next comes so much below that. */
    void draw(List<? extends Shape> more, double heightMm) {
        flush();
        shapes.addAll(more);
        y += heightMm;
    }

    /** On to a fresh sheet, unless this one is still empty. */
    void next() {
        if (!pending.isEmpty()) place();
        finish();
    }

    /** Sheets of what is laid out from a fresh one on; none where that is nothing. */
    static Stream<BenchSheet.Draft> drafts(BenchSheet sheet, String kind, Consumer<Flow> laying) {
        Flow flow = new Flow(sheet, kind, "");
        laying.accept(flow);
        return flow.drafts().stream();
    }

    List<BenchSheet.Draft> drafts() {
        if (!pending.isEmpty()) place();
        finish();
        return done;
    }

    private void flush() {
        if (!pending.isEmpty() || begun.isPresent()) place();
    }

    private double bottom() {
        return sheet.space().high() - foot.map(Block::heightMm).orElse(0.0);
    }

    private boolean fresh() {
        return shapes.isEmpty();
    }

    private void place() {
        double high = Block.high(pending);
        double words = begun.isPresent() ? SECTION : 0;
        boolean full = begun.map(section -> y - sheet.space().low() > section.mostUsed() * sheet.space().height()).orElse(false);
        if (!fresh() && (full || y + words + high > bottom() + 1e-9)) {
            turn();
        }
        begun.ifPresent(this::begin);
        begun = Optional.empty();
        headsPending = 0;
        for (Block block : pending) draw(block);
        pending.clear();
    }

    private void begin(Section section) {
        if (fresh()) {
            goesOn = false;
            kinds = new ArrayList<>(List.of(section.kind()));
            about = section.about();
            lastAbout = about;
            return;
        }
        thin |= goesOn && isLittle(y - sheet.space().low());
        goesOn = false;
        kinds.add(section.kind());
        lastAbout = section.about();
        Box space = sheet.space();
        shapes.add(sheet.line(space.left(), y + 1, space.right(), y + 1, Inks.WIDE));
        shapes.add(sheet.text(space.left(), y + 6.6, TextMeasure.cut(section.kind(), 4.6, true, space.width()), 4.6, true).as(Tag.heading()));
        shapes.add(sheet.text(space.left(), y + 11.2, TextMeasure.cut(section.about(), 3.2, false, space.width()), 3.2, false).as(Tag.paragraph()));
        y += section.about().isEmpty() ? 9 : SECTION;
    }

    private boolean isLittle(double heightMm) {
        return heightMm < LITTLE * sheet.space().height();
    }

    private void turn() {
        finish();
        heads.subList(0, heads.size() - headsPending).forEach(this::draw);
    }

    private void draw(Block block) {
        shapes.addAll(block.drawer().at(sheet.space().left(), y));
        y += block.heightMm();
    }

    private void finish() {
        if (!shapes.isEmpty()) {
            foot.ifPresent(block -> shapes.addAll(block.drawer().at(sheet.space().left(), bottom())));
            done.add(new BenchSheet.Draft(kinds, about, shapes, thin || goesOn && isLittle(y - sheet.space().low()), (y - sheet.space().low()) / sheet.space().height()));
            goesOn = true;
            thin = false;
            shapes = new ArrayList<>();
            kinds = new ArrayList<>(kinds.subList(kinds.size() - 1, kinds.size()));
            about = lastAbout;
            if (!footGoesOn) foot = Optional.empty();
        }
        y = sheet.space().low();
    }
}

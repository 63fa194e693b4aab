package lapyard.sheets;

import java.util.List;

/**
 * A rectangle that straight cuts alone take apart into its pieces: one piece, or two blocks beside each other
 * or one after the other along the roll. Lengths are in units of the {@link RollJob}.
 */
final class Block {
    enum Join {
        NONE,
        BESIDE,
        AFTER
    }

    final long width;
    final long height;
    /** What the pieces cover; the rest of width x height is waste. */
    final long area;

    final int pieces;
    /** The size class, for a single piece; -1 for a joined block. */
    final int type;

    final Join join;
    final Block first;
    final Block second;

    private Block turned;

    private Block(long width, long height, long area, int pieces, int type, Join join, Block first, Block second) {
        this.width = width;
        this.height = height;
        this.area = area;
        this.pieces = pieces;
        this.type = type;
        this.join = join;
        this.first = first;
        this.second = second;
    }

    private Block(long width, long height, Join join, Block first, Block second) {
        this(width, height, first.area + second.area, first.pieces + second.pieces, -1, join, first, second);
    }

    static Block piece(int type, long width, long height) {
        return new Block(width, height, width * height, 1, type, Join.NONE, null, null);
    }

    /** Both start at the same running distance; {@code second} lies further across the roll. */
    static Block beside(Block first, Block second) {
        return new Block(first.width + second.width, Math.max(first.height, second.height), Join.BESIDE, first, second);
    }

    /** Both start at the same edge; {@code second} lies further along the roll. */
    static Block after(Block first, Block second) {
        return new Block(Math.max(first.width, second.width), first.height + second.height, Join.AFTER, first, second);
    }

    /** The same block turned by 90 degrees, every piece in it with it. */
    Block turn() {
        if (turned == null) {
            turned = switch (join) {
                case NONE -> piece(type, height, width);
                case BESIDE -> after(first.turn(), second.turn());
                case AFTER -> beside(first.turn(), second.turn());
            };
            turned.turned = this;
        }
        return turned;
    }

    /** Adds where each piece lies, the block's near left corner being at (x, y). */
    void lay(long x, long y, List<Laid> into) {
        Block block = this;
        while (block.join != Join.NONE) {
            block.first.lay(x, y, into);
            if (block.join == Join.BESIDE) x += block.first.width;
            else y += block.first.height;
            block = block.second;
        }
        into.add(new Laid(block.type, x, y, block.width, block.height));
    }

    /** Adds the bands that full-width cuts part, near end first: the parts of a block joined end to end. */
    void bands(List<Block> into) {
        if (join == Join.AFTER) {
            first.bands(into);
            second.bands(into);
        } else {
            into.add(this);
        }
    }

    /** Adds the single pieces. */
    void singles(List<Block> into) {
        if (join == Join.NONE) {
            into.add(this);
        } else {
            first.singles(into);
            second.singles(into);
        }
    }

    /** What is lost beside the pieces where this lies as a band across a roll of that width. */
    long waste(long rollWidth) {
        return height * rollWidth - area;
    }

    /** The share of such a band that the pieces cover. */
    double density(long rollWidth) {
        return (double) area / height / rollWidth;
    }

    /** A piece of a size class where it lies: x across the roll, y along it. */
    record Laid(int type, long x, long y, long width, long height) {}
}

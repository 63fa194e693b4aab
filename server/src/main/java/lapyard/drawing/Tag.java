package lapyard.drawing;

/**
 * What a text is, for whoever has a page read out: an element of a PDF's logical structure (ISO 32000-1:2008, 14.7 and 14.8.4).
 * Texts with the same tag are one element of their page, so one tag is made for each heading, sentence or table.
 */
public final class Tag {
    /** A paragraph together with the texts around it. */
    public static final Tag AROUND = new Tag(Role.PARAGRAPH, null, 0);

    /** What stands above every sheet alike; it is no part of what is read (ISO 14289-1:2014, 7.8). */
    public static final Tag RUNNING_HEAD = new Tag(Role.RUNNING_HEAD, null, 0);

    /** What stands below every sheet alike. */
    public static final Tag RUNNING_FOOT = new Tag(Role.RUNNING_FOOT, null, 0);

    /** What stands a second time on its page and is read once. */
    public static final Tag REPEATED = new Tag(Role.REPEATED, null, 0);

    /** Kinds of elements with their standard names. */
    enum Role {
        SECTION("Sect"),
        HEADING("H1"),
        SUBHEADING("H2"),
        PARAGRAPH("P"),
        FIGURE("Figure"),
        LINK("Link"),
        TABLE("Table"),
        ROW("TR"),
        CELL("TD"),
        HEAD_ROW("TR"),
        HEAD_CELL("TH"),
        RUNNING_HEAD("Header"),
        RUNNING_FOOT("Footer"),
        REPEATED("");

        private static final Role[] ALL = values();
        final String standard;

        Role(String standard) {
            this.standard = standard;
        }

        static Role of(byte ordinal) {
            return ALL[ordinal];
        }
    }

    final Role role;

    /** The row of a cell, the table of a row, the cell of a link; itself for what stands on the page. */
    final Tag within;

    /** Number of cells of a row; place of a cell in its row, from 0. */
    final int cells;

    private Tag(Role role, Tag within, int cells) {
        this.role = role;
        this.within = within == null ? this : within;
        this.cells = cells;
    }

    /** Of a sheet, or of a further kind of sheet on it. */
    public static Tag heading() {
        return new Tag(Role.HEADING, null, 0);
    }

    /** Of what stands below a heading, such as a table or a card. */
    public static Tag subheading() {
        return new Tag(Role.SUBHEADING, null, 0);
    }

    public static Tag paragraph() {
        return new Tag(Role.PARAGRAPH, null, 0);
    }

    public static Tag table() {
        return new Tag(Role.TABLE, null, 0);
    }

    /** A row of this table. @param cells 1 or more; those without a text are empty cells */
    public Tag row(int cells) {
        return new Tag(Role.ROW, within(Role.TABLE), cells);
    }

    /** A row of this table that tells what its columns are. */
    public Tag head(int cells) {
        return new Tag(Role.HEAD_ROW, within(Role.TABLE), cells);
    }

    /** A cell of this row. @param column from 0 */
    public Tag cell(int column) {
        if (role != Role.ROW && role != Role.HEAD_ROW || column < 0 || column >= cells) {
            throw new IllegalArgumentException(role + " has " + cells + " cells, cell " + column + " was asked for");
        }
        return new Tag(role == Role.ROW ? Role.CELL : Role.HEAD_CELL, this, column);
    }

    public Tag link() {
        return new Tag(Role.LINK, within(Role.CELL), 0);
    }

    private Tag within(Role wanted) {
        if (role != wanted) throw new IllegalArgumentException("it stands in a " + wanted + ", was " + role);
        return this;
    }
}

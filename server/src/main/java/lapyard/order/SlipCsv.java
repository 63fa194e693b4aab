package lapyard.order;

/** The slip as RFC 4180 text; a cell never starts a formula. */
public final class SlipCsv {
    private SlipCsv() {}

    public static String write(Slip slip) {
        throw new UnsupportedOperationException();
    }
}

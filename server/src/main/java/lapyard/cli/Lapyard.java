package lapyard.cli;

/** The command line. */
public final class Lapyard {
    private Lapyard() {}

    public static void main(String[] args) {}
}

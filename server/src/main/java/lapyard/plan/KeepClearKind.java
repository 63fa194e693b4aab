package lapyard.plan;

import java.util.Locale;

/** What the ground about it is kept clear of, with the usual clearance: trade defaults, changeable in each garden. */
public enum KeepClearKind {
    GATE(0, false),
    DOOR(900, true),
    COVER(300, true),
    DRAIN(300, true),
    TAP(600, false),
    TREE(1500, false),
    AIR_BRICK(300, false),
    CABLE(300, true),
    WALL(0, false),
    OTHER(0, false);

    /** The ground about it that beds stay off, mm. */
    public final double clearanceMm;
    /** Whether it lies flush or takes no ground, so that one walks over it. */
    public final boolean flush;

    KeepClearKind(double clearanceMm, boolean flush) {
        this.clearanceMm = clearanceMm;
        this.flush = flush;
    }

    /** @throws IllegalArgumentException for a word that is none of these */
    public static KeepClearKind of(String code) {
        return valueOf(code.toUpperCase(Locale.ROOT).replace('-', '_'));
    }

    /** The word of the document: {@code air-brick}. */
    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** As a person says it: {@code air brick}. */
    public String words() {
        return this == OTHER ? "place kept clear" : code().replace('-', ' ');
    }
}

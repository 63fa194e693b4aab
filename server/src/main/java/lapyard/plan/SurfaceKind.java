package lapyard.plan;

import java.util.Locale;
import java.util.OptionalDouble;

/** A kind of ground, with what follows from it for a bed that stands on it. */
public enum SurfaceKind {
    SLAB(false, OptionalDouble.empty()),
    CONCRETE(false, OptionalDouble.empty()),
    /** 2000 psf, IBC 1806.2, sand and gravel with fines. */
    GRAVEL(true, OptionalDouble.of(96)),
    GRASS(true, OptionalDouble.of(SurfaceKind.SOFT_CLAY_KPA)),
    SOIL(true, OptionalDouble.of(SurfaceKind.SOFT_CLAY_KPA)),
    /** Nothing that stands on it is designed here. */
    DECK(false, OptionalDouble.empty());

    /**
     * Soft clay with the turf off, the least of natural ground in the National Building Code of Canada, Table 9.4.4.1 (loose sand
     * 50; IBC 1806.2 has clay and silt at 72, an FAO table loam at 80 to 160).
     */
    private static final double SOFT_CLAY_KPA = 40;

    /** Whether it can be dug: a bed on it has an open base, and a bed on any other a slatted one. */
    public final boolean dug;
    /** Presumed bearing, kN/m2; empty where the ground spreads the load, or is not ground. */
    public final OptionalDouble bearingKpa;

    SurfaceKind(boolean dug, OptionalDouble bearingKpa) {
        this.dug = dug;
        this.bearingKpa = bearingKpa;
    }

    /** @throws IllegalArgumentException for a word that is no kind of ground */
    public static SurfaceKind of(String code) {
        return valueOf(code.toUpperCase(Locale.ROOT));
    }

    /** The word of the document and of people. */
    public String code() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Whether it is sawn or broken where it is in the way. */
    public boolean paved() {
        return this == SLAB || this == CONCRETE;
    }
}

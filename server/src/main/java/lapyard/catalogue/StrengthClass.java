package lapyard.catalogue;

import java.util.Optional;

/**
 * A strength class of structural timber: characteristic values in N/mm2, densities in kg/m3 at about 12 % moisture.
 *
 * @see "EN 338:2016, Tables 1 (softwood, C) and 3 (hardwood, D)"
 */
public enum StrengthClass {
    C14(14, 3.0, 7000, 290, 350),
    C16(16, 3.2, 8000, 310, 370),
    C18(18, 3.4, 9000, 320, 380),
    C20(20, 3.6, 9500, 330, 400),
    C22(22, 3.8, 10000, 340, 410),
    C24(24, 4.0, 11000, 350, 420),
    C27(27, 4.0, 11500, 360, 430),
    C30(30, 4.0, 12000, 380, 460),
    D18(18, 3.5, 9500, 475, 570),
    D24(24, 3.7, 10000, 485, 580),
    D30(30, 3.9, 11000, 530, 640),
    D35(35, 4.1, 12000, 540, 650),
    D40(40, 4.2, 13000, 550, 660),
    D50(50, 4.5, 14000, 620, 740),
    D60(60, 4.8, 17000, 700, 840),
    D70(70, 5.0, 20000, 800, 960);

    /** What timber counts as that nobody has graded. */
    public static final StrengthClass LOWEST = C14;

    /** Characteristic bending strength fm,k. */
    public final double bendingNmm2;
    /** Characteristic shear strength fv,k. */
    public final double shearNmm2;
    /** Mean stiffness along the grain E0,mean. */
    public final double stiffnessNmm2;
    /** Characteristic density. */
    public final double densityKgM3;
    public final double meanDensityKgM3;

    StrengthClass(double bendingNmm2, double shearNmm2, double stiffnessNmm2, double densityKgM3, double meanDensityKgM3) {
        this.bendingNmm2 = bendingNmm2;
        this.shearNmm2 = shearNmm2;
        this.stiffnessNmm2 = stiffnessNmm2;
        this.densityKgM3 = densityKgM3;
        this.meanDensityKgM3 = meanDensityKgM3;
    }

    public boolean hardwood() {
        return name().startsWith("D");
    }

    /** Empty for a name that is no class. */
    public static Optional<StrengthClass> named(String name) {
        for (StrengthClass one : values()) if (one.name().equals(name)) return Optional.of(one);
        return Optional.empty();
    }
}

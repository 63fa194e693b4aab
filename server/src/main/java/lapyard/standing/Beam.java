package lapyard.standing;

import lapyard.catalogue.StrengthClass;

/**
 * A timber on two supports under an even load: N and mm. Outdoors and in soil it is service class 3, and soil rests on
 * it for good.
 *
 * @param acrossMm  size square to the load
 * @param deepMm    size along the load
 * @see "EN 1995-1-1, 2.2.3, 2.4.1, 6.1.6, 6.1.7, Tables 2.3, 3.1, 3.2"
 */
record Beam(StrengthClass timber, double acrossMm, double deepMm) {
    /** kmod, solid timber, service class 3, permanent load. */
    static final double KMOD = 0.5;

    /** gamma_M, solid timber. */
    static final double GAMMA_M = 1.3;

    /** kdef, solid timber, service class 3: what bends 1 at once has bent 3 in the end. */
    static final double KDEF = 2.0;

    /** gamma_G and gamma_Q, unfavourable. */
    static final double GAMMA_G = 1.35;

    static final double GAMMA_Q = 1.5;

    /** k_cr: sawn timber shrinks and splits. */
    static final double CRACKED = 0.67;

    /** f_m,d. */
    double bendingStrength() {
        return design(timber.bendingNmm2);
    }

    /** f_v,d. */
    double shearStrength() {
        return design(timber.shearNmm2);
    }

    static double design(double characteristic) {
        return KMOD * characteristic / GAMMA_M;
    }

    /** k_h: small timber is stronger than the tested one of 150. */
    static double sizeFactor(double deepMm) {
        return deepMm >= 150 ? 1 : Math.min(Math.pow(150 / deepMm, 0.2), 1.3);
    }

    /** W. */
    double modulusMm3() {
        return acrossMm * deepMm * deepMm / 6;
    }

    /** I. */
    double inertiaMm4() {
        return acrossMm * deepMm * deepMm * deepMm / 12;
    }

    static double momentNmm(double loadNmm, double spanMm) {
        return loadNmm * spanMm * spanMm / 8;
    }

    double stress(double loadNmm, double spanMm) {
        return momentNmm(loadNmm, spanMm) / modulusMm3();
    }

    /** Share of the bending strength that a design load takes. */
    double bendingUse(double designNmm, double spanMm) {
        return stress(designNmm, spanMm) / bendingStrength();
    }

    /** Share of the shear strength that a design load takes. */
    double shearUse(double designNmm, double spanMm) {
        return 1.5 * designNmm * spanMm / 2 / (CRACKED * acrossMm * deepMm) / shearStrength();
    }

    double sagAtOnceMm(double loadNmm, double spanMm) {
        return 5 * loadNmm * Math.pow(spanMm, 4) / (384 * timber.stiffnessNmm2 * inertiaMm4());
    }

    double sagMm(double loadNmm, double spanMm) {
        return sagAtOnceMm(loadNmm, spanMm) * (1 + KDEF);
    }

    /**
     * Longest clear span by strength and by sag of a timber of any width under pressure on its face.
     *
     * @param pressure N/mm2 on the face, design for strength, characteristic for sag
     * @param part     it may sag by this part of the span
     */
    static double clearSpanMm(StrengthClass timber, double deepMm, double pressure, double design, double part) {
        double byStrength = deepMm * Math.sqrt(design(timber.bendingNmm2) / (0.75 * design));
        double bySag = Math.cbrt(timber.stiffnessNmm2 * Math.pow(deepMm, 3) / (0.15625 * (1 + KDEF) * part * pressure));
        return Math.min(byStrength, bySag);
    }
}

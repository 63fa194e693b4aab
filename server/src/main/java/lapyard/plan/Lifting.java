package lapyard.plan;

import lapyard.working.Whole;

/**
 * The one rule for lifting by hand. Pieces, boards, days, deliveries, sheets and findings all use it.
 *
 * @param limitKg that one person lifts, above 0
 * @param crew    people who can lift and come on one day, at least 1
 * @see "HSE L23, Manual handling, guidance on regulation 4, team handling: two people manage about two thirds of the sum of
 *     what each manages alone, three about half; 25 kg is its guideline for a load close to the body; from memory"
 */
public record Lifting(double limitKg, int crew) {
    public static final String SOURCE = "HSE L23, Manual handling, team handling: two people manage two thirds of the sum of"
            + " what each manages alone, three half; from memory";

    private static final double NOISE = 1e-9;

    public Lifting {
        if (!(limitKg > 0) || crew < 1) {
            throw new IllegalArgumentException("a lift limit is above 0 kg and a crew is 1 or more, were " + limitKg + " and " + crew);
        }
    }

    /** People for a lift: mass / limit, rounded up, at least 1. */
    public int people(double massKg) {
        return Math.max(1, (int) Whole.up(massKg / limitKg));
    }

    /** Whether it is more than one person lifts. */
    public boolean heavy(double massKg) {
        return people(massKg) > 1;
    }

    /** Whether it takes more people than come: wheels, a machine, or a lighter thing. */
    public boolean beyondCrew(double massKg) {
        return people(massKg) > crew;
    }

    /** People who take it by hand; where it takes more than come, all who do, with wheels under it. */
    public int hands(double massKg) {
        return Math.min(people(massKg), crew);
    }

    /** The mass that so many people together are good for, kg. */
    public double guideKg(int people) {
        return limitKg * people * share(people);
    }

    /** Whether it is more than the people that it takes are good for together. */
    public boolean overGuide(double massKg) {
        return massKg > guideKg(people(massKg)) + NOISE;
    }

    /** What one of a team is good for, as a share of what one person lifts alone. */
    private static double share(int people) {
        return people == 1 ? 1 : people == 2 ? 2.0 / 3 : 0.5;
    }
}

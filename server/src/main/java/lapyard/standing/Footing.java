package lapyard.standing;

import java.util.Set;
import lapyard.catalogue.StrengthClass;
import lapyard.plan.SurfaceKind;

/**
 * What one bed stands on and is made of.
 *
 * @param surfaces       kinds of ground under the bed; empty if none is drawn
 * @param bearerMm       width of its bearers on the ground, 0 where the catalogue does not know
 * @param bearers        what its bearers count as: the class stamped on their section, which ripping takes away
 * @param fromRack       whether boards on hand went into it: they carry no grade
 * @param unknownTimber  ids of boards of unknown treatment that went into it, in words; empty for none
 */
public record Footing(Set<SurfaceKind> surfaces, double bearerMm, StrengthClass bearers, boolean fromRack, String unknownTimber) {
    public Footing {
        surfaces = Set.copyOf(surfaces);
    }
}

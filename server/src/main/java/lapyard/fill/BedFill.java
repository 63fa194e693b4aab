package lapyard.fill;

import java.util.List;
import lapyard.construction.BedWork;
import lapyard.plan.Finding;
import lapyard.working.Quantity;

/**
 * What one bed takes.
 *
 * @param quantities soil.depth, soil.settled, soil.loose, soil.mass, mulch, barrows, and one a layer by its item ({@code soil.topsoil})
 */
public record BedFill(List<Quantity> quantities, List<Finding> findings) {
    public BedFill {
        quantities = List.copyOf(quantities);
        findings = List.copyOf(findings);
    }

    public static BedFill of(BedWork work) {
        throw new UnsupportedOperationException();
    }
}

package lapyard.plan;

import java.util.List;

/** One way out of a finding, tried before it is offered: what to do and its figures, in the order its sentence names them. */
public record WayOut(WayKind kind, List<Fact> values) {
    public WayOut {
        values = List.copyOf(values);
    }

    public static WayOut of(WayKind kind, Fact... values) {
        return new WayOut(kind, List.of(values));
    }
}

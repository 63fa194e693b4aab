package lapyard.plan;

/** How two timbers of one course meet at a corner. */
public enum Joint {
    /** One runs past and the other stops short; they swap in the next course. */
    LAP,
    /** Both are sawn to half the turn. */
    MITRE
}

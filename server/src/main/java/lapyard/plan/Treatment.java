package lapyard.plan;

/** What was done to a board against rot and pests, as far as anybody knows. */
public enum Treatment {
    UNKNOWN("of unknown treatment", false, true),
    NONE("untreated", false, false),
    /** Heat only, as pallets marked HT. */
    HEAT("heated", false, false),
    /** New timber that its maker sells for beds. */
    GARDEN("treated for gardens", false, false),
    /** Fumigated, as pallets marked MB. */
    METHYL_BROMIDE("treated with methyl bromide", true, true),
    /** Copper, chrome and arsenic: old pressure-treated timber, often green. */
    CCA("treated with CCA (arsenic)", true, true),
    /** Coal tar oil, as on old track sleepers. */
    CREOSOTE("creosoted", true, true);

    /** As people read it, after the board's name. */
    public final String words;
    /** Barred wherever something is planted. */
    public final boolean nowhere;
    /** Barred from beds marked food. */
    public final boolean notFood;

    Treatment(String words, boolean nowhere, boolean notFood) {
        this.words = words;
        this.nowhere = nowhere;
        this.notFood = notFood;
    }
}

package lapyard.working;

/** How much is looked for before an answer is handed out. */
public enum Look {
    /**
     * All amounts and a plan that can be cut, laid and bought, looked for shortly: it may still improve. What was searched for
     * before is taken as it was found. What the beds would take alone, and so every saving, is left out.
     */
    FIRST,
    /** Everything; the same garden always gives the same sheet, whatever was searched for before. */
    WHOLE
}

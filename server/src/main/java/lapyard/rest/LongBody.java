package lapyard.rest;

/** The text of a garden's file, which may be longer than other bodies. */
record LongBody(String text) {}

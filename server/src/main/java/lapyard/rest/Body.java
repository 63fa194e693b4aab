package lapyard.rest;

/** The text of a request's body. */
record Body(String text) {}

package lapyard.drawing;

/** Makes any string fit to stand on one line of a page and in an XML document. */
final class PlainText {
    private PlainText() {}

    /**
     * White space becomes single spaces; controls, direction overrides and code points that XML 1.0 does not allow
     * (section 2.2, Char) are left out, halves of surrogate pairs become U+FFFD.
     */
    static String of(String any) {
        StringBuilder out = new StringBuilder(any.length());
        boolean space = false;
        for (int i = 0; i < any.length(); ) {
            int c = any.codePointAt(i);
            i += Character.charCount(c);
            if (Character.isWhitespace(c) || Character.isSpaceChar(c)) {
                space = !out.isEmpty();
                continue;
            }
            if (Character.isISOControl(c) || turnsDirection(c) || c == 0xFFFE || c == 0xFFFF) {
                continue;
            }
            if (space) {
                out.append(' ');
                space = false;
            }
            out.appendCodePoint(c >= 0xD800 && c <= 0xDFFF ? 0xFFFD : c);
        }
        return out.toString();
    }

    private static boolean turnsDirection(int c) {
        return c >= 0x202A && c <= 0x202E || c >= 0x2066 && c <= 0x2069;
    }
}

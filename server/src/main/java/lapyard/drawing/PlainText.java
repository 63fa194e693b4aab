package lapyard.drawing;

/** Makes any string fit to stand on one line of a page and in an XML document. */
final class PlainText {
    private PlainText() {}

    /**
     * White space becomes single spaces; controls, direction overrides and code points that XML 1.0 does not allow
     * (section 2.2, Char) are left out, halves of surrogate pairs become U+FFFD.
     */
    static String of(String any) {
        if (isPlain(any)) return any;
        StringBuilder out = new StringBuilder(any.length());
        boolean space = false;
        for (int i = 0; i < any.length(); ) {
            int c = any.codePointAt(i);
            i += Character.charCount(c);
            if (Character.isWhitespace(c) || Character.isSpaceChar(c)) {
                space = !out.isEmpty();
                continue;
            }
            if (Character.isISOControl(c) || turnsDirection(c) || c == 0xFFFE || c == 0xFFFF) continue;
            if (space) {
                out.append(' ');
                space = false;
            }
            out.appendCodePoint(c >= 0xD800 && c <= 0xDFFF ? 0xFFFD : c);
        }
        return out.toString();
    }

    /** Whether the text is printable signs of Latin-1 with single spaces between them, of which nothing needs to be changed. */
    private static boolean isPlain(String any) {
        boolean blank = true;
        for (int i = 0; i < any.length(); i++) {
            char c = any.charAt(i);
            if (c == ' ' ? blank : c < 0x21 || c > 0x7E && c < 0xA1 || c > 0xFF) return false;
            blank = c == ' ';
        }
        return any.isEmpty() || !blank;
    }

    private static boolean turnsDirection(int c) {
        return c >= 0x202A && c <= 0x202E || c >= 0x2066 && c <= 0x2069;
    }
}

package lapyard.json;

import java.math.BigDecimal;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Numbers as merchants write them: with a currency sign before or after, thousands parted in threes by blanks, points or commas, and a
 * point or comma before the decimals. {@code 1.250} and {@code 1,250} can mean two numbers; all others one.
 */
final class WrittenNumber {
    private static final String BLANK = "[\\s\\u00A0\\u202F]";
    private static final String SIGNS = "[\\p{Sc}\\s\\u00A0\\u202F]*+";
    /** Without a currency sign and blanks at either end; what stands between the digits stays. */
    private static final Pattern BARE = Pattern.compile(SIGNS + "(-?)" + SIGNS + "([0-9](?:.*[0-9])?)" + SIGNS, Pattern.DOTALL);
    private static final Pattern PLAIN = Pattern.compile("(-?[0-9]{1,12})(?:([.,])([0-9]{1,6}))?");
    private static final Pattern THOUSANDS = Pattern.compile("-?[0-9]{1,3}(?:(?:" + BLANK + "[0-9]{3}){1,3}(?:[.,][0-9]{1,6})?|(?:,[0-9]{3}){1,3}(?:\\.[0-9]{1,6})?|(?:\\.[0-9]{3}){1,3}(?:,[0-9]{1,6})?)");
    private static final Pattern TWO_WAYS = Pattern.compile("-?[1-9][0-9]{0,2}[.,][0-9]{3}");

    private WrittenNumber() {}

    /** What the text can mean: nothing, one number, or two with that of the decimals first. */
    static List<BigDecimal> readings(String text) {
        Matcher signed = BARE.matcher(text);
        if (!signed.matches()) return List.of();
        String bare = signed.group(1) + signed.group(2);
        Matcher plain = PLAIN.matcher(bare);
        if (plain.matches()) {
            BigDecimal decimal = new BigDecimal(plain.group(2) == null ? plain.group(1) : plain.group(1) + "." + plain.group(3));
            return TWO_WAYS.matcher(bare).matches() ? List.of(decimal, decimal.movePointRight(3)) : List.of(decimal);
        }
        if (!THOUSANDS.matcher(bare).matches()) return List.of();
        int last = Math.max(bare.lastIndexOf('.'), bare.lastIndexOf(','));
        boolean decimals = last >= 0 && bare.indexOf(bare.charAt(last)) == last;
        String whole = (decimals ? bare.substring(0, last) : bare).replaceAll("[^0-9-]", "");
        return List.of(new BigDecimal(decimals ? whole + "." + bare.substring(last + 1) : whole));
    }
}

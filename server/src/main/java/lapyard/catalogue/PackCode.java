package lapyard.catalogue;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lapyard.geometry.Length;
import lapyard.geometry.Lengths;
import lapyard.geometry.Measure;

/**
 * The code by which a pack is known in orders and tallies, and its words. A pack of the catalogue has its merchant's name for
 * code; boards and lengths off a roll, which are named here, are written in the garden's measures.
 */
public final class PackCode {
    private static final Pattern BOARD = Pattern.compile("board of ([\\d.]+)( m)?");
    private static final Pattern STOCK = Pattern.compile("[1-9]\\d{2,4}(\\.\\d)?");
    private static final Pattern ROLL = Pattern.compile("([\\d.]+) m of ([\\d.]+) wide roll");

    private PackCode() {}

    public static String board(double lengthMm) {
        return board(Lengths.text(lengthMm));
    }

    /** @param stock id of a stock length, which is its length in mm */
    public static String board(String stock) {
        return "board of " + stock;
    }

    /** Whether this is the id of a stock length, which is its length in mm. */
    public static boolean isStock(String id) {
        return STOCK.matcher(id).matches();
    }

    /** The stock length of which this pack is a board; empty where it is something else. */
    public static Optional<String> stock(String code) {
        String before = board("");
        return Optional.of(code).filter(one -> one.startsWith(before)).map(one -> one.substring(before.length())).filter(PackCode::isStock);
    }

    public static String roll(double metres, double widthMm) {
        return Lengths.text(metres) + " m of " + Lengths.text(widthMm) + " wide roll";
    }

    /** Whether it is some length off a roll of this width. */
    public static boolean isRoll(String code, double widthMm) {
        Matcher roll = ROLL.matcher(code);
        return roll.matches() && roll.group(2).equals(Lengths.text(widthMm));
    }

    /** As a person asks for it: {@code board of 2400 mm}, {@code board of 8'}, {@code 5.5 m of 4 m wide roll}, {@code bag of 60 l}. */
    public static String words(String code, boolean imperial) {
        Matcher board = BOARD.matcher(code);
        if (board.matches()) {
            return "board of " + Length.withUnit(Double.parseDouble(board.group(1)) * (board.group(2) == null ? 1 : 1000), imperial);
        }
        Matcher roll = ROLL.matcher(code);
        return roll.matches()
                ? ofRoll(Double.parseDouble(roll.group(1)) * 1000, imperial) + " of " + ofRoll(Double.parseDouble(roll.group(2)), imperial) + " wide roll"
                : TradeName.pack(code, imperial);
    }

    /** Rolls are spoken of in metres, or in feet and inches. */
    private static String ofRoll(double mm, boolean imperial) {
        return imperial ? Length.feetAndInches(mm) : Measure.METRES.plain(mm / 1000, 2, false);
    }
}

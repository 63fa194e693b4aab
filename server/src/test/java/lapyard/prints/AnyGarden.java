package lapyard.prints;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/** Gardens made by seed: beds of every shape, with paths, ways, levels and what is kept clear, in millimetres and in feet. */
final class AnyGarden {
    static final List<String> NAMES = List.of("Herbs", "Tomatoes and aubergines by the old kitchen wall", "", "Salad", "Mrs Lindqvist's roses", "Cut flowers");

    private AnyGarden() {}

    static boolean feet(long seed) {
        return seed % 3 == 0;
    }

    static String of(long seed) {
        Random random = new Random(seed);
        int count = 2 + random.nextInt(9);
        int across = 2 + random.nextInt(3);
        List<String> beds = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            double turn = random.nextInt(4) == 0 ? 5 * random.nextInt(9) : 0;
            beds.add(String.format(Locale.ROOT, "{\"id\":\"%s\",\"name\":\"%s\",%s,\"courses\":%d,\"stage\":%d,\"turn\":%s,\"food\":%s%s,\"at\":[%d,%d]}",
                    random.nextBoolean() ? "B" + (i + 1) : String.valueOf((char) ('A' + i)) + (i > 4 ? "-east" : ""), NAMES.get(random.nextInt(NAMES.size())), shape(random), 1 + random.nextInt(5), 1 + i / 3, turn,
                    random.nextBoolean(), random.nextInt(3) == 0 ? ",\"base\":\"slatted\"" : "", 2200 + 5600 * (i % across), 2000 + 5200 * (i / across)));
        }
        int wide = 2600 + 5600 * across;
        int deep = 2400 + 5200 * ((count + across - 1) / across);
        String yard = String.format(Locale.ROOT, "[[0,0],[%d,0],[%d,%d],[%d,%d],[0,%d]]", wide, wide, deep - 700, wide - 900, deep, deep);
        String ground = "\"outline\":" + yard + ",\"surfaces\":[{\"kind\":\"" + (random.nextBoolean() ? "grass" : "slab") + "\",\"outline\":" + yard + "}],\"north\":" + (random.nextInt(360) - 180)
                + ",\"keepClear\":[{\"kind\":\"door\",\"at\":[" + wide / 2 + ",0]},{\"kind\":\"cover\",\"outline\":[[300,300],[900,300],[900,900],[300,900]],\"clearance\":200}]"
                + ",\"access\":{\"standard\":\"usual\",\"rim\":\"seated\"}"
                + (random.nextBoolean() ? ",\"baseline\":{\"from\":[0,0],\"to\":[" + wide + ",0],\"standOff\":400}" : "")
                + (random.nextBoolean() ? String.format(Locale.ROOT, ",\"levels\":[{\"at\":[0,0],\"drop\":300},{\"at\":[%d,0],\"drop\":%d},{\"at\":[0,%d],\"drop\":%d},{\"at\":[%d,%d],\"drop\":%d}]",
                        wide, 300 + random.nextInt(60), deep, 330 + random.nextInt(90), wide - 1000, deep - 900, 350 + random.nextInt(90)) : "");
        String path = random.nextInt(3) > 0 ? ",\"paths\":[{\"id\":\"P1\",\"name\":\"From the door\",\"line\":[[" + 1100 + ",300],[1100," + (deep - 600) + "]],\"width\":1000,\"layers\":[{\"material\":\"sub-base\",\"depth\":75},"
                + "{\"material\":\"gravel\",\"depth\":40}],\"edging\":\"edging.board\",\"membrane\":\"membrane\"}]" : "";
        return "{\"name\":\"Any garden " + seed + "\"" + (feet(seed) ? ",\"units\":\"imperial\"" : "") + (random.nextBoolean() ? ",\"crew\":{\"start\":\"2027-04-03\"}" : "")
                + ",\"quote\":{\"client\":\"M. Vale\",\"margin\":15,\"tax\":20},\"ground\":{" + ground + "},\"beds\":[" + String.join(",", beds) + "]" + path + "}";
    }

    private static String shape(Random random) {
        int w = 1200 + 100 * random.nextInt(25);
        int d = 900 + 50 * random.nextInt(20);
        return switch (random.nextInt(7)) {
            case 0 -> "\"outline\":" + outline(0, 0, w, 0, w, d + 900, w - 800, d + 900, w - 800, d, 0, d);
            case 1 -> "\"outline\":" + outline(0, 0, 3000, 0, 3000, 2200, 2100, 2200, 2100, 900, 900, 900, 900, 2200, 0, 2200);
            case 2 -> "\"outline\":" + outline(0, 0, 3000, 0, 3000, 900, 1950, 900, 1950, 2300, 1050, 2300, 1050, 900, 0, 900);
            case 3 -> "\"outline\":" + outline(0, 0, w + 600, 0, w / 2, d + 1000);
            case 4 -> "\"outline\":" + outline(0, 0, w + 400, 0, w + 400, d, 0, d + 350);
            case 5 -> "\"outline\":" + outline(0, 0, 1400, 0, 2100, 1212, 1400, 2424, 0, 2424, -700, 1212);
            default -> "\"width\":" + w + ",\"depth\":" + d;
        };
    }

    private static String outline(int... numbers) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < numbers.length; i += 2) text.append(i == 0 ? "[[" : ",[").append(numbers[i]).append(',').append(numbers[i + 1]).append(']');
        return text.append(']').toString();
    }
}

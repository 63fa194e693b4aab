package lapyard.ground;

import java.util.List;
import java.util.Locale;

/** Weights of a cubic metre as delivered, by a word in the name of the material. */
final class LooseMaterial {
    /** Bark and chip are common practice, no source. */
    static final String SOURCE = "Engineering ToolBox, Dirt and Mud densities (gravel, sand, earth); bark, no source";

    private record Weight(List<String> words, double kgM3) {}

    private static final List<Weight> WEIGHTS = List.of(
            new Weight(List.of("bark", "chip", "mulch"), 300),
            new Weight(List.of("gravel", "shingle", "sub-base", "stone", "hoggin"), 1680),
            new Weight(List.of("sand", "grit"), 1555),
            new Weight(List.of("soil", "earth"), 1220));

    private LooseMaterial() {}

    /** 0 for a material that is not known. */
    static double kgM3(String item) {
        String name = item.toLowerCase(Locale.ROOT);
        return WEIGHTS.stream()
                .filter(weight -> weight.words().stream().anyMatch(name::contains))
                .mapToDouble(Weight::kgM3)
                .findFirst()
                .orElse(0);
    }
}

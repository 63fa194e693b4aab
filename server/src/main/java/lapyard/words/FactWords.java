package lapyard.words;

import java.util.Optional;
import java.util.stream.Collectors;
import lapyard.catalogue.TradeName;
import lapyard.geometry.Length;
import lapyard.geometry.Measure;
import lapyard.geometry.ScrewLength;
import lapyard.plan.BedNames;
import lapyard.plan.Fact;
import lapyard.working.DayNames;

/** Single figures with their units, as people read them. */
record FactWords(boolean imperial) {
    String text(Fact fact) {
        return lengths(fact).map(written -> imperial ? written : written + " mm").orElseGet(() -> other(fact));
    }

    /** What is told in millimetres or in feet and inches, without its unit. */
    private Optional<String> lengths(Fact fact) {
        if (fact instanceof Fact.Length length) {
            return Optional.of(length(length.mm()));
        } else if (fact instanceof Fact.Size size) {
            return Optional.of(size.mm().stream().map(this::length).collect(Collectors.joining(" x ")));
        } else if (fact instanceof Fact.Lengths all) {
            return Optional.of(BedNames.joined(all.mm().stream().map(this::length).toList()));
        } else if (fact instanceof Fact.Spot spot) {
            return Optional.of("(" + length(spot.xMm()) + ", " + length(spot.yMm()) + ")");
        }
        return Optional.empty();
    }

    private String other(Fact fact) {
        if (fact instanceof Fact.Screw screw) {
            return ScrewLength.words(screw.mm(), imperial);
        } else if (fact instanceof Fact.Measured measured) {
            boolean area = measured.measure() == Measure.SQUARE_METRES;
            boolean tiny = area && measured.value() != 0 && Math.abs(measured.value()) < 0.005;
            return tiny && imperial ? "under 0.1 sq ft" : measured.measure().plain(measured.value(), tiny ? 4 : Math.min(2, measured.decimals()), imperial);
        } else if (fact instanceof Fact.Money money) {
            return money.currency() + " " + money.amountOf().toPlainString();
        } else if (fact instanceof Fact.PersonHours hours) {
            return Measure.plain(hours.hours(), 1) + " person-hours";
        } else if (fact instanceof Fact.Count count) {
            return (count.count() == 0 ? "no" : count.count()) + " " + (count.count() == 1 ? one(count.noun()) : count.noun());
        } else if (fact instanceof Fact.Percent percent) {
            boolean nearlyAll = Math.abs(percent.share() - 1) < 0.005 && percent.share() != 1;
            return Measure.plain(percent.share() * 100, nearlyAll ? 1 : 0) + " %";
        } else if (fact instanceof Fact.Angle angle) {
            return Measure.plain(angle.degrees(), 1) + " degrees";
        } else if (fact instanceof Fact.Slope slope) {
            return Double.isInfinite(slope.run()) ? "level" : "1:" + Measure.plain(slope.run(), 1);
        } else if (fact instanceof Fact.Day day) {
            return DayNames.full(day.date());
        } else if (fact instanceof Fact.Name name) {
            return name.name();
        } else if (fact instanceof Fact.Section section) {
            return TradeName.section(section.id(), imperial);
        } else if (fact instanceof Fact.Names all) {
            return BedNames.listed(all.names());
        } else if (fact instanceof Fact.Choice choice) {
            int last = choice.words().size() - 1;
            return last == 0 ? choice.words().get(0) : String.join(", ", choice.words().subList(0, last)) + " or " + choice.words().get(last);
        } else if (fact instanceof Fact.Plain plain) {
            return Measure.of(plain.unit()).map(measure -> measure.plain(plain.value(), 3, imperial))
                    .orElseGet(() -> Measure.plain(plain.value(), 3) + (plain.unit().isEmpty() ? "" : " " + Measure.sign(plain.unit())));
        }
        throw new IllegalArgumentException("no words for a figure such as " + fact);
    }

    /** The number alone, where the unit stands beside it already: {@code 24} of {@code 24 person-hours}. */
    String bare(Fact fact) {
        return text(fact).split(" ")[0];
    }

    /** The number in a figure, for the choice between one and many. */
    static double number(Fact fact) {
        return fact instanceof Fact.Names names ? names.names().size() : fact instanceof Fact.Lengths all ? all.mm().size() : fact.amount().value();
    }

    static String one(String noun) {
        return noun.equals("people") ? "person"
                : noun.endsWith("ties") ? noun.substring(0, noun.length() - 1)
                : noun.endsWith("ches") ? noun.substring(0, noun.length() - 2)
                : noun.endsWith("ies") ? noun.substring(0, noun.length() - 3) + "y"
                : noun.endsWith("s") ? noun.substring(0, noun.length() - 1) : noun;
    }

    private String length(double mm) {
        return Length.written(mm, imperial);
    }
}

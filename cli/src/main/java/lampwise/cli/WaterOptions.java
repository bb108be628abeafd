package lampwise.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lampwise.service.GuideException;
import lampwise.service.Volume;
import lampwise.service.WaterFound;
import lampwise.service.WaterPrice;
import lampwise.service.WaterUnit;
import lampwise.sheet.FixtureKind;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** What {@code lampwise water} is given: figures with their units. */
final class WaterOptions {
  private static final String NUMBER = "[0-9]+(?:[.,][0-9]+)?";
  private static final Pattern AMOUNT = Pattern.compile("(" + NUMBER + ") *([A-Za-z/]+)");
  private static final Pattern METER =
      Pattern.compile("(" + NUMBER + ") *(?:\\.\\.|to) *(" + NUMBER + ") *([A-Za-z]+)");
  private static final Pattern PRICE =
      Pattern.compile(
          "(" + NUMBER + ") *(\\p{L}{1,4}|\\p{Sc}) *(?:/|per) *(" + NUMBER + ") *(L|gal)");
  private static final List<String> BOWLS = List.of("siphonic", "blowout");
  private static final double MOST_FLUSHES = 10_000;

  /** A meter's accuracy where none is said: COMAR 20.70.06, 1.5 %. */
  private static final double METER_ACCURACY = 0.015;

  private final ParseResult parsed;

  WaterOptions(ParseResult parsed) {
    this.parsed = parsed;
  }

  static void addTo(CommandSpec spec) {
    DiagnoseOptions.KIND.addOnce(spec, "KIND", "");
    ReadingFlags.one(spec, "--bowl", "WORD", "siphonic or blowout, if that is known");
    ReadingFlags.one(spec, "--static", "AMOUNT", "pressure at rest, such as \"65 psi\"");
    ReadingFlags.one(spec, "--flowing", "AMOUNT", "pressure while the fixture runs");
    ReadingFlags.many(
        spec, "--volume", "AMOUNT", "a flush that was caught, such as \"6.1 L\"; once for each");
    ReadingFlags.one(spec, "--scale", "AMOUNT", "a step of its scale; 0.1 L if not given");
    ReadingFlags.one(spec, "--meter", "FROM..TO UNIT", "the meter, such as \"1234.5..1247.6 gal\"");
    ReadingFlags.one(spec, "--flushes", "N", "how many flushes that were");
    ReadingFlags.one(spec, "--resolution", "AMOUNT", "a step of the meter's scale");
    ReadingFlags.one(spec, "--accuracy", "PERCENT", "the meter's own; 1.5 if not given");
    ReadingFlags.one(spec, "--flow", "AMOUNT", "a flow, such as \"1.9 L/min\"");
    ReadingFlags.one(spec, "--timed", "AMOUNT", "how long that flow ran in a flush");
    ReadingFlags.one(spec, "--rated", "AMOUNT", "the volume marked on the valve");
    ReadingFlags.one(spec, "--fixture-rated", "AMOUNT", "the one marked on bowl or urinal");
    ReadingFlags.one(spec, "--basis", "NAME", "one basis of the limits; --list names all");
    ReadingFlags.one(spec, "--site", "FILE", "the site's own limits, price and units");
    ReadingFlags.one(spec, "--loss", "AMOUNT", "what runs for nothing, such as \"50 mL/min\"");
    ReadingFlags.one(spec, "--hole", "AMOUNT", "a round hole under --static, as a loss");
    ReadingFlags.one(spec, "--price", "PRICE", "of water, such as \"4.5 EUR per 1000 L\"");
    ReadingFlags.one(spec, "--at", "AMOUNT", "what --flow at --flowing becomes at this pressure");
    ReadingFlags.one(spec, "--wsfu", "N", "demand of so many fixture units of flush valves");
    ReadingFlags.one(spec, "--pipe", "AMOUNT", "inside diameter; what --flow leaves of --static");
    ReadingFlags.one(spec, "--length", "AMOUNT", "the pipe's length, fittings counted in");
    ReadingFlags.one(spec, "--height", "AMOUNT", "how much higher the fixture is than the gauge");
  }

  boolean has(String option) {
    return parsed.hasMatchedOption(option);
  }

  Optional<String> text(String option) {
    return ReadingFlags.text(parsed, option);
  }

  /** An amount in the base unit of its quantity. */
  OptionalDouble amount(String option, WaterUnit.Of of) throws UsageException {
    Optional<String> text = text(option);
    return text.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(amount(option, text.get(), of));
  }

  double needed(String option, WaterUnit.Of of, String why) throws UsageException {
    OptionalDouble amount = amount(option, of);
    if (amount.isEmpty()) {
      throw new UsageException(why + " needs " + option);
    }
    return amount.getAsDouble();
  }

  private static double amount(String option, String text, WaterUnit.Of of) throws UsageException {
    Matcher amount = AMOUNT.matcher(text.strip());
    if (amount.matches()) {
      Optional<WaterUnit> unit = WaterUnit.of(amount.group(2)).filter(u -> u.of() == of);
      if (unit.isPresent()) {
        return unit.get().toBase(number(amount.group(1)));
      }
    }
    throw new UsageException(
        option
            + " takes a number and one of "
            + String.join(", ", WaterUnit.words(of))
            + ", not "
            + Layout.clean(text));
  }

  private static double number(String text) {
    return Double.parseDouble(text.replace(',', '.'));
  }

  double whole(String option, double most) throws UsageException {
    double value = NumberOption.of(option, text(option).orElse(""));
    if (!(value >= 0 && value <= most)) {
      throw new UsageException(option + " takes 0 to " + Words.decimal(most, 0));
    }
    return value;
  }

  /** The unit that the user wrote an amount in. */
  Optional<WaterUnit> unit(String option) {
    return text(option)
        .map(text -> AMOUNT.matcher(text.strip()))
        .filter(Matcher::matches)
        .flatMap(amount -> WaterUnit.of(amount.group(2)));
  }

  Optional<FixtureKind> kind() throws UsageException {
    return DiagnoseOptions.KIND.one(parsed);
  }

  /** All that was measured. */
  WaterFound found(FixtureKind kind) throws UsageException {
    String bowl = text("--bowl").orElse("");
    if (!bowl.isEmpty() && !BOWLS.contains(bowl)) {
      throw new UsageException("--bowl takes siphonic or blowout, not " + Layout.clean(bowl));
    }
    return new WaterFound(
        kind,
        bowl,
        amount("--static", WaterUnit.Of.PRESSURE),
        amount("--flowing", WaterUnit.Of.PRESSURE),
        volume(),
        kind == FixtureKind.FAUCET ? amount("--flow", WaterUnit.Of.FLOW) : OptionalDouble.empty(),
        amount("--rated", WaterUnit.Of.VOLUME),
        amount("--fixture-rated", WaterUnit.Of.VOLUME),
        unit("--fixture-rated").or(() -> unit("--rated")).orElse(WaterUnit.LITRE));
  }

  /** The volume of a flush, by whichever way it was measured. */
  Optional<Volume> volume() throws UsageException {
    int ways = (has("--volume") ? 1 : 0) + (has("--meter") ? 1 : 0) + (has("--timed") ? 1 : 0);
    if (ways > 1) {
      throw new UsageException("a volume is measured by one of --volume, --meter, --timed");
    }
    try {
      if (has("--meter")) {
        return Optional.of(byMeter());
      }
      if (has("--timed")) {
        double flow = needed("--flow", WaterUnit.Of.FLOW, "--timed");
        return Optional.of(Volume.byTime(flow, needed("--timed", WaterUnit.Of.TIME, "")));
      }
      if (has("--volume")) {
        List<Double> caught = new ArrayList<>();
        for (String text : parsed.<List<String>>matchedOptionValue("--volume", List.of())) {
          caught.add(amount("--volume", text, WaterUnit.Of.VOLUME));
        }
        return Optional.of(
            Volume.byCatch(caught, amount("--scale", WaterUnit.Of.VOLUME).orElse(0.1)));
      }
    } catch (GuideException e) {
      throw new UsageException(Layout.clean(String.valueOf(e.getMessage())));
    }
    return Optional.empty();
  }

  private Volume byMeter() throws UsageException {
    String text = text("--meter").orElse("");
    Matcher meter = METER.matcher(text.strip());
    Optional<WaterUnit> unit =
        meter.matches()
            ? WaterUnit.of(meter.group(3)).filter(u -> u.of() == WaterUnit.Of.VOLUME)
            : Optional.empty();
    if (unit.isEmpty()) {
      throw new UsageException(
          "--meter takes two readings and a unit, such as \"1234.5..1247.6 gal\", not "
              + Layout.clean(text));
    }
    if (!has("--flushes")) {
      throw new UsageException("--meter needs --flushes, how many there were between the readings");
    }
    double flushes = whole("--flushes", MOST_FLUSHES);
    double step = needed("--resolution", WaterUnit.Of.VOLUME, "--meter");
    double accuracy = has("--accuracy") ? whole("--accuracy", 50) / 100 : METER_ACCURACY;
    double through = number(meter.group(2)) - number(meter.group(1));
    return Volume.byMeter(unit.get().toBase(through), (int) flushes, step, accuracy);
  }

  /** The price of water, the option's before the site's. */
  Optional<WaterPrice> price(Optional<WaterPrice> site) throws UsageException {
    Optional<String> text = text("--price");
    if (text.isEmpty()) {
      return site;
    }
    Matcher price = PRICE.matcher(text.get().strip());
    if (!price.matches()) {
      throw new UsageException(
          "--price takes an amount, a currency and a volume, such as \"4.5 EUR per 1000 L\", not "
              + Layout.clean(text.get()));
    }
    double litres = WaterUnit.of(price.group(4)).orElseThrow().toBase(number(price.group(3)));
    try {
      return Optional.of(new WaterPrice(number(price.group(1)), price.group(2), litres));
    } catch (GuideException e) {
      throw new UsageException(Layout.clean("--price: " + e.getMessage()));
    }
  }
}

package lampwise.file;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import lampwise.service.Cause;
import lampwise.service.Check;
import lampwise.service.Complaint;
import lampwise.service.Guide;
import lampwise.service.Measure;
import lampwise.service.Remedy;
import lampwise.service.Site;
import lampwise.service.SiteLimit;
import lampwise.service.SiteUnits;
import lampwise.service.Urgency;
import lampwise.service.WaterPrice;
import lampwise.service.Who;

/** Reads what a site knows better than the guide, {@code site.yaml}: YAML 1.2, strictly. */
public final class SiteReader {
  private static final String VERSION_KEY = "lampwise-site";
  private static final String MINUTES = "a number of minutes over 0 such as 12";
  private static final String WEIGHT = "a number of 0 or more such as 20";

  private static final GuideFields.Keys KEYS =
      GuideFields.Keys.of(
          List.of(VERSION_KEY, "title"),
          "shares",
          "minutes",
          "hand-over-minutes",
          "second-trip-minutes",
          "who",
          "water",
          "units",
          "limits",
          "urgency");

  private final Guide guide;
  private final FaultList faults;
  private final GuideFields fields;

  private SiteReader(YamlNode.Table root, Guide guide, FaultList faults) {
    this.guide = guide;
    this.faults = faults;
    this.fields = new GuideFields(root, root, faults, KEYS);
  }

  /**
   * Reads a site.
   *
   * @param name the file's name, for messages
   * @param content its bytes, UTF-8, at most 1 MiB
   * @param guide the guide whose causes, checks and remedies the site may name
   * @return the site
   * @throws FileException with every fault of the file, sorted by line and column; if the file says
   *     a newer version of the format, with that alone
   */
  public static Site read(String name, byte[] content, Guide guide) throws FileException {
    FaultList faults = new FaultList(name);
    Optional<YamlNode> root =
        StrictYaml.read(content, "a site that starts with " + VERSION_KEY + ": 1", faults);
    Optional<Site> site = Optional.empty();
    if (root.isPresent() && root.get() instanceof YamlNode.Table node) {
      if (FormatVersion.accept(VERSION_KEY, node, faults)) {
        site = new SiteReader(node, guide, faults).site();
      }
    } else {
      root.ifPresent(
          node -> faults.add(node, "a site must be a table of keys" + YamlTable.found(node)));
    }
    faults.throwIfAny();
    return site.orElseThrow(() -> new FileException(name, 0, 0, "not a site"));
  }

  private Optional<Site> site() {
    String title = fields.text("title");
    Map<String, Map<Complaint, Double>> shares = shares();
    Map<String, Double> minutes = minutes();
    OptionalDouble handOver = minutes("hand-over-minutes");
    OptionalDouble secondTrip = minutes("second-trip-minutes");
    Map<String, Who> who = who();
    Optional<WaterPrice> water = water();
    SiteUnits units = units();
    List<SiteLimit> limits = limits();
    Map<Urgency, Double> urgency = urgency();
    return faults.any()
        ? Optional.empty()
        : Optional.of(
            new Site(
                title, shares, minutes, handOver, secondTrip, who, water, units, limits, urgency));
  }

  private Map<String, Map<Complaint, Double>> shares() {
    Map<String, Map<Complaint, Double>> shares = new LinkedHashMap<>();
    List<String> causes = guide.causes().stream().map(Cause::id).toList();
    fields
        .subTable("shares", "a table such as {cells-low: {dead: 30}}", causes)
        .ifPresent(
            table -> {
              GuideFields byCause = new GuideFields(table, faults);
              for (String cause : causes) {
                if (table.has(cause)) {
                  shares.put(cause, byCause.weights(cause, Complaint.values(), Complaint::word));
                }
              }
            });
    return shares;
  }

  private List<String> work() {
    return Stream.concat(
            guide.checks().stream().map(Check::id), guide.remedies().stream().map(Remedy::id))
        .distinct()
        .toList();
  }

  private Map<String, Double> minutes() {
    Map<String, Double> minutes = new LinkedHashMap<>();
    fields
        .subTable("minutes", "a table of checks or remedies such as {new-cells: 6}", work())
        .ifPresent(
            table -> {
              for (String id : work()) {
                table
                    .quantity(id, Quantities::number, GuideFields::isPositive, MINUTES)
                    .ifPresent(value -> minutes.put(id, value));
              }
            });
    return minutes;
  }

  private OptionalDouble minutes(String key) {
    return fields.table().quantity(key, Quantities::number, GuideFields::isPositive, MINUTES);
  }

  private Map<String, Who> who() {
    Map<String, Who> who = new LinkedHashMap<>();
    List<String> words = YamlTable.wordsOf(Who.values(), Who::word);
    fields
        .subTable("who", "a table of checks or remedies such as {new-sensor: plumber}", work())
        .ifPresent(
            table ->
                work()
                    .forEach(
                        id -> table.word(id, Who::of, words).ifPresent(one -> who.put(id, one))));
    return who;
  }

  private Optional<WaterPrice> water() {
    List<String> keys = List.of("price", "currency", "per");
    Optional<YamlNode> value = fields.table().node("water");
    if (value.isEmpty()) {
      return Optional.empty();
    }
    if (!(value.get() instanceof YamlNode.Table node)) {
      faults.add(
          value.get(),
          "water must be a table such as {price: 4.20, currency: EUR, per: 1 m3}"
              + YamlTable.found(value.get()));
      return Optional.empty();
    }
    YamlTable table = YamlTable.of(node, node, keys, keys, faults);
    OptionalDouble price =
        table.quantity("price", Quantities::number, SiteReader::isWeight, WEIGHT);
    Optional<String> currency = table.text("currency");
    OptionalDouble litres =
        table.quantity(
            "per",
            Amount::litres,
            GuideFields::isPositive,
            "a volume over 0 in gal, ft3, L or m3 such as 1000 gal");
    return price.isPresent() && currency.isPresent() && litres.isPresent()
        ? Optional.of(new WaterPrice(price.getAsDouble(), currency.get(), litres.getAsDouble()))
        : Optional.empty();
  }

  private SiteUnits units() {
    Optional<YamlTable> table =
        fields.subTable(
            "units",
            "a table such as {pressure: psi, volume: gal, flow: gpm, temperature: F}",
            List.of("pressure", "volume", "flow", "temperature"));
    return new SiteUnits(
        unit(table, "pressure", Measure.STATIC_PRESSURE),
        unit(table, "volume", Measure.FLUSH_VOLUME),
        unit(table, "flow", Measure.FLOW),
        unit(table, "temperature", Measure.TEMPERATURE));
  }

  private static Optional<String> unit(Optional<YamlTable> table, String key, Measure of) {
    return table.flatMap(
        t -> t.word(key, word -> Optional.of(word).filter(of.units()::contains), of.units()));
  }

  private List<SiteLimit> limits() {
    List<SiteLimit> limits = new ArrayList<>();
    Optional<YamlNode> value = fields.table().node("limits");
    if (value.isPresent() && value.get() instanceof YamlNode.Items list) {
      list.items().forEach(node -> LimitReader.read(node, faults).ifPresent(limits::add));
    } else {
      value.ifPresent(
          node ->
              faults.add(
                  node,
                  "limits must be a list of tables with of, at-most or at-least, and basis"
                      + YamlTable.found(node)));
    }
    return limits;
  }

  private Map<Urgency, Double> urgency() {
    Map<Urgency, Double> weights = new LinkedHashMap<>();
    List<String> words = YamlTable.wordsOf(Urgency.values(), Urgency::word);
    fields
        .subTable("urgency", "a table such as {running: 60}", words)
        .ifPresent(
            table -> {
              for (Urgency reason : Urgency.values()) {
                table
                    .quantity(reason.word(), Quantities::number, SiteReader::isWeight, WEIGHT)
                    .ifPresent(weight -> weights.put(reason, weight));
              }
            });
    return weights;
  }

  private static boolean isWeight(double value) {
    return value >= 0 && value <= Double.MAX_VALUE;
  }
}

package lampwise.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.file.WaterJson;
import lampwise.service.GuideException;
import lampwise.service.Hydraulics;
import lampwise.service.Site;
import lampwise.service.WaterCheck;
import lampwise.service.WaterFound;
import lampwise.service.WaterLoss;
import lampwise.service.WaterPrice;
import lampwise.service.WaterUnit;
import lampwise.sheet.FixtureKind;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code lampwise water}: pressures, volumes and flows beside the limits that there are. */
final class WaterCommand implements Command {
  private static final double MOST_UNITS = 1e6;

  @Override
  public String name() {
    return "water";
  }

  @Override
  public String summary() {
    return "pressure, flush volume and losses beside the limits there are";
  }

  @Override
  public CommandSpec spec() {
    CommandSpec spec = CommandSpec.create();
    WaterOptions.addTo(spec);
    ReadingFlags.flag(spec, "--list", "list the limits with their basis, and check nothing");
    ReadingFlags.flag(spec, "--json", "print one JSON object");
    spec.usageMessage()
        .description(
            "Says of each figure whether it passes, fails or is not decided, by which basis, and"
                + " what stays unproven. The sources disagree: all are shown unless one is"
                + " chosen. A locally adopted code (in --site) and the marking on the fixture"
                + " override them.")
        .footer(
            "",
            "Units: kPa, psi, bar; L, mL, gal; L/min, L/s, mL/min, gpm; mm, m, in, ft; s, min.",
            "Exit status: 0 done, whatever the verdicts, 2 wrong use.",
            "",
            "Example: a meter read before and after ten flushes, marked for 1.28 gal:",
            "  lampwise water --kind water-closet --static \"65 psi\" --flowing \"38 psi\" \\",
            "    --meter \"1234.5..1247.6 gal\" --flushes 10 --resolution \"0.1 gal\" \\",
            "    --fixture-rated \"1.28 gal\"",
            "Example: what a weep costs:",
            "  lampwise water --loss \"50 mL/min\" --price \"4.5 EUR per 1000 L\"")
        .sortOptions(false);
    return spec;
  }

  @Override
  public int run(ParseResult parsed, Surroundings here) throws UsageException {
    WaterOptions options = new WaterOptions(parsed);
    Site site = new SiteOption(parsed, here).site();
    if (parsed.hasMatchedOption("--list")) {
      WaterText.limits(options.kind(), site).forEach(here.out()::println);
      return Main.DONE;
    }
    try {
      Optional<FixtureKind> kind = options.kind();
      Optional<WaterCheck> check = Optional.empty();
      if (kind.isPresent()) {
        WaterFound found = options.found(kind.get());
        check = Optional.of(WaterCheck.of(found, site, basis(options)));
      }
      List<WaterJson.Computed> computed = computed(options, site);
      if (check.isEmpty() && computed.isEmpty()) {
        throw new UsageException(
            "nothing to check or to compute; give --kind and what was measured, or --loss, --hole,"
                + " --at, --wsfu or --pipe; see lampwise water --help");
      }
      if (parsed.hasMatchedOption("--json")) {
        here.out().println(WaterJson.object(kind, options.volume(), check, computed));
      } else {
        WaterText.lines(options, site, check, computed).forEach(here.out()::println);
      }
      return Main.DONE;
    } catch (GuideException e) {
      throw new UsageException(Layout.clean(String.valueOf(e.getMessage())));
    }
  }

  private static Optional<String> basis(WaterOptions options) throws UsageException {
    Optional<String> basis = options.text("--basis").filter(name -> !name.equals("all"));
    if (basis.isPresent()
        && WaterCheck.bases().stream()
            .noneMatch(
                known ->
                    known
                        .toLowerCase(Locale.ROOT)
                        .contains(basis.get().toLowerCase(Locale.ROOT)))) {
      throw new UsageException(
          "--basis: there is no "
              + Layout.clean(basis.get())
              + "; known: "
              + String.join("; ", WaterCheck.bases())
              + "; all");
    }
    return basis;
  }

  /** What is computed and not checked. */
  private static List<WaterJson.Computed> computed(WaterOptions options, Site site)
      throws UsageException {
    List<WaterJson.Computed> all = new ArrayList<>();
    if (options.has("--at")) {
      double flow = options.needed("--flow", WaterUnit.Of.FLOW, "--at");
      double from = options.needed("--flowing", WaterUnit.Of.PRESSURE, "--at");
      double other = options.needed("--at", WaterUnit.Of.PRESSURE, "");
      all.add(
          WaterJson.Computed.of(
              "flow at that pressure",
              Hydraulics.flowAt(flow, from, other),
              options.unit("--flow").orElse(WaterUnit.LITRE_PER_MINUTE),
              "through the same opening; a flush's volume changes less than its flow"));
    }
    if (options.has("--wsfu")) {
      all.add(
          WaterJson.Computed.of(
              "demand",
              Hydraulics.demand(options.whole("--wsfu", MOST_UNITS)),
              site.units().flow().flatMap(WaterUnit::of).orElse(WaterUnit.LITRE_PER_MINUTE),
              "IPC table E103.3(3), flush valves, seen in secondary text"));
    }
    if (options.has("--pipe")) {
      pipe(options, all);
    }
    loss(options, site, all);
    return all;
  }

  private static void pipe(WaterOptions options, List<WaterJson.Computed> all)
      throws UsageException {
    double flow = options.needed("--flow", WaterUnit.Of.FLOW, "--pipe");
    double inside = options.needed("--pipe", WaterUnit.Of.LENGTH, "");
    double length = options.needed("--length", WaterUnit.Of.LENGTH, "--pipe") / 1000;
    double height = options.amount("--height", WaterUnit.Of.LENGTH).orElse(0) / 1000;
    WaterUnit unit = options.unit("--static").orElse(WaterUnit.KPA);
    double friction = Hydraulics.friction(flow, inside, length, 140);
    OptionalDouble before = options.amount("--static", WaterUnit.Of.PRESSURE);
    all.add(WaterJson.Computed.of("friction", friction, unit, "Hazen-Williams, C = 140"));
    if (before.isPresent()) {
      all.add(
          WaterJson.Computed.of(
              "residual pressure",
              before.getAsDouble() - Hydraulics.height(height) - friction,
              unit,
              "meter and backflow preventer not counted"));
    }
    all.add(
        new WaterJson.Computed(
            "speed",
            Hydraulics.speed(flow, inside),
            "m/s",
            "at most 2.44 m/s (8 ft/s) by NSPC 10.14.1"));
  }

  private static void loss(WaterOptions options, Site site, List<WaterJson.Computed> all)
      throws UsageException {
    if (options.has("--loss") && options.has("--hole")) {
      throw new UsageException("a loss is given by one of --loss, --hole");
    }
    OptionalDouble runs = options.amount("--loss", WaterUnit.Of.FLOW);
    if (options.has("--hole")) {
      double hole = options.needed("--hole", WaterUnit.Of.LENGTH, "");
      double pressure = options.needed("--static", WaterUnit.Of.PRESSURE, "--hole");
      double flow = Hydraulics.hole(hole, pressure, Hydraulics.SHARP_HOLE);
      runs = OptionalDouble.of(flow);
      all.add(
          WaterJson.Computed.of(
              "through the hole", flow, WaterUnit.LITRE_PER_MINUTE, "sharp hole, Cd = 0.62"));
    }
    if (runs.isEmpty()) {
      return;
    }
    WaterLoss loss = new WaterLoss(runs.getAsDouble());
    WaterUnit volume = site.units().volume().flatMap(WaterUnit::of).orElse(lossUnit(options));
    Optional<WaterPrice> price = options.price(site.water());
    add(all, "lost in an hour", loss.hour(), volume, price);
    add(all, "lost in a day", loss.day(), volume, price);
    add(all, "lost in a year", loss.year(), volume, price);
  }

  private static WaterUnit lossUnit(WaterOptions options) {
    return options.unit("--loss").filter(unit -> unit == WaterUnit.GPM).isPresent()
        ? WaterUnit.GALLON
        : WaterUnit.LITRE;
  }

  private static void add(
      List<WaterJson.Computed> all,
      String what,
      double litres,
      WaterUnit unit,
      Optional<WaterPrice> price) {
    String cost =
        price
            .map(p -> Words.decimal(p.of(litres), 2) + " " + Layout.clean(p.currency()))
            .orElse("");
    all.add(WaterJson.Computed.of(what, litres, unit, cost));
  }
}

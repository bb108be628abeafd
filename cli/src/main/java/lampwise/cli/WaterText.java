package lampwise.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.file.WaterJson;
import lampwise.service.Measure;
import lampwise.service.Site;
import lampwise.service.Volume;
import lampwise.service.WaterCheck;
import lampwise.service.WaterFigure;
import lampwise.service.WaterLimit;
import lampwise.service.WaterUnit;
import lampwise.sheet.FixtureKind;

/** A check of water figures in lines of 80 columns. */
final class WaterText {
  private WaterText() {}

  static List<String> lines(
      WaterOptions options,
      Site site,
      Optional<WaterCheck> check,
      List<WaterJson.Computed> computed)
      throws UsageException {
    List<String> lines = new ArrayList<>();
    Optional<Volume> volume = options.volume();
    if (volume.isPresent()) {
      WaterUnit unit =
          site.units()
              .volume()
              .flatMap(WaterUnit::of)
              .orElse(gallons(options) ? WaterUnit.GALLON : WaterUnit.LITRE);
      lines.addAll(VisitText.wrapped("Volume: ", said(volume.get(), unit)));
    }
    if (check.isPresent()) {
      figures(lines, check.get());
      check.get().says().forEach(text -> lines.addAll(VisitText.wrapped("> ", text)));
      if (!check.get().unproven().isEmpty()) {
        lines.add("Unproven:");
        check.get().unproven().forEach(text -> lines.addAll(VisitText.wrapped("  - ", text)));
      }
    }
    for (WaterJson.Computed one : computed) {
      String how = one.how().isEmpty() ? "" : " (" + one.how() + ")";
      String figure = number(one.value()) + " " + one.unit() + how;
      lines.addAll(VisitText.wrapped(Layout.padded(one.what() + ": ", 12), figure));
    }
    return lines;
  }

  private static boolean gallons(WaterOptions options) {
    return options.text("--meter").or(() -> options.text("--rated")).orElse("").contains("gal")
        || options.text("--flow").orElse("").contains("gpm");
  }

  private static String said(Volume volume, WaterUnit unit) {
    return number(unit.fromBase(volume.litres()))
        + " "
        + unit.word()
        + " a flush, give or take "
        + number(unit.fromBase(volume.unsure()))
        + " (k = 2), by "
        + volume.method().word()
        + " over "
        + volume.flushes()
        + (volume.flushes() == 1 ? " flush" : " flushes");
  }

  private static void figures(List<String> lines, WaterCheck check) {
    Optional<Measure> last = Optional.empty();
    for (WaterFigure figure : check.figures()) {
      if (last.isEmpty() || last.get() != figure.limit().of()) {
        last = Optional.of(figure.limit().of());
        lines.add(figure.limit().of().word());
      }
      String label = "  " + Layout.padded(figure.verdict().word(), 13);
      lines.addAll(
          VisitText.wrapped(
              label,
              number(figure.value())
                  + " "
                  + figure.limit().unit().word()
                  + ", "
                  + bounds(figure.limit())));
    }
  }

  /** What a limit asks for, by whom, and how sure that is. */
  private static String bounds(WaterLimit limit) {
    String unit = " " + limit.unit().word();
    String range =
        limit.atLeast().isEmpty()
            ? "at most " + number(limit.atMost().orElseThrow()) + unit
            : limit.atMost().isEmpty()
                ? "at least " + number(limit.atLeast().getAsDouble()) + unit
                : number(limit.atLeast().getAsDouble())
                    + " to "
                    + number(limit.atMost().getAsDouble())
                    + unit;
    String bowl = limit.bowl().isEmpty() ? "" : " (" + limit.bowl() + " bowl)";
    return range + bowl + ": " + limit.basis() + ", " + limit.sure();
  }

  /** All limits, those of the site first. */
  static List<String> limits(Optional<FixtureKind> kind, Site site) {
    List<String> lines = new ArrayList<>();
    for (FixtureKind each : FixtureKind.values()) {
      if (kind.isEmpty() || kind.get() == each) {
        lines.add(each.word());
        List<WaterLimit> limits = new ArrayList<>(WaterLimit.of(site));
        limits.addAll(WaterCheck.published());
        for (WaterLimit limit : limits) {
          if (limit.isFor(each, "")) {
            lines.addAll(
                VisitText.wrapped("  " + Layout.padded(limit.of().word(), 18), bounds(limit)));
          }
        }
      }
    }
    return lines;
  }

  private static String number(double value) {
    double size = Math.abs(value);
    return Fixed.of(value, size >= 100 ? 0 : size >= 10 ? 1 : size >= 0.1 ? 2 : 4, 0);
  }
}

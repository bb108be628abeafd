package lampwise.service;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.sheet.FixtureKind;

/**
 * Figures measured at a fixture beside the limits that there are.
 *
 * @param figures each figure beside each limit for it, in the order of measuring
 * @param says what follows from them, a sentence each
 * @param unproven what was not measured, and how it could be
 */
public record WaterCheck(List<WaterFigure> figures, List<String> says, List<String> unproven) {
  /** Markings closer than this part are the same: legal SI values are rounded. */
  private static final double SAME_MARK = 0.02;

  /** Keeps copies of the lists. */
  public WaterCheck {
    figures = List.copyOf(figures);
    says = List.copyOf(says);
    unproven = List.copyOf(unproven);
  }

  /**
   * Checks.
   *
   * @param found what was measured
   * @param site the site; where it sets a limit to a measure, no published one is looked at
   * @param basis the basis to take of the published limits, as it is named or a part of it in small
   *     letters; empty for all
   * @return the check; for a volume the marking on the fixture stands before all but the site
   */
  public static WaterCheck of(WaterFound found, Site site, Optional<String> basis) {
    List<WaterFigure> figures = new ArrayList<>();
    for (WaterLimit limit : limits(Measure.STATIC_PRESSURE, found, site, basis)) {
      read(figures, limit, found.staticPressure());
    }
    for (WaterLimit limit : limits(Measure.FLOWING_PRESSURE, found, site, basis)) {
      read(figures, limit, found.flowingPressure());
    }
    for (WaterLimit limit : limits(Measure.FLUSH_VOLUME, found, site, basis)) {
      found.volume().ifPresent(volume -> figures.add(WaterFigure.of(limit, volume)));
    }
    for (WaterLimit limit : limits(Measure.FLOW, found, site, basis)) {
      read(figures, limit, found.flow());
    }
    return new WaterCheck(figures, says(found, figures), unproven(found));
  }

  private static void read(List<WaterFigure> figures, WaterLimit limit, OptionalDouble value) {
    value.ifPresent(base -> figures.add(WaterFigure.read(limit, base, 0)));
  }

  /**
   * The limits of a measure that count for a fixture.
   *
   * @param of the measure
   * @param found the fixture
   * @param site the site
   * @param basis the basis to take of the published ones; empty for all
   * @return the site's if it has any, else the marking if there is one, else the published ones
   */
  static List<WaterLimit> limits(Measure of, WaterFound found, Site site, Optional<String> basis) {
    List<WaterLimit> own = fitting(WaterLimit.of(site), of, found);
    if (!own.isEmpty()) {
      return own;
    }
    OptionalDouble mark =
        found.fixtureRated().isPresent() ? found.fixtureRated() : found.valveRated();
    if (of == Measure.FLUSH_VOLUME && mark.isPresent() && basis.isEmpty()) {
      return List.of(
          new WaterLimit(
              of,
              List.of(),
              "",
              OptionalDouble.empty(),
              OptionalDouble.of(found.markUnit().fromBase(mark.getAsDouble())),
              found.markUnit(),
              found.fixtureRated().isPresent() ? "marking on the fixture" : "marking on the valve",
              "marking"));
    }
    return fitting(WaterLimit.PUBLISHED, of, found).stream()
        .filter(limit -> basis.isEmpty() || isNamed(limit.basis(), basis.get()))
        .toList();
  }

  private static List<WaterLimit> fitting(List<WaterLimit> limits, Measure of, WaterFound found) {
    return limits.stream()
        .filter(limit -> limit.of() == of && limit.isFor(found.kind(), found.bowl()))
        .toList();
  }

  private static boolean isNamed(String basis, String name) {
    return basis.toLowerCase(Locale.ROOT).contains(name.toLowerCase(Locale.ROOT));
  }

  /**
   * The published limits.
   *
   * @return all of them; what is only from memory is not among them
   */
  public static List<WaterLimit> published() {
    return WaterLimit.PUBLISHED;
  }

  /**
   * The bases that there are.
   *
   * @return their names, each once, in the order of the list
   */
  public static List<String> bases() {
    return WaterLimit.PUBLISHED.stream().map(WaterLimit::basis).distinct().toList();
  }

  private static List<String> says(WaterFound found, List<WaterFigure> figures) {
    List<String> says = new ArrayList<>();
    if (found.valveRated().isPresent() && found.fixtureRated().isPresent()) {
      double valve = found.valveRated().getAsDouble();
      double fixture = found.fixtureRated().getAsDouble();
      if (Math.abs(valve - fixture) > SAME_MARK * Math.max(valve, fixture)) {
        says.add(
            "Valve and fixture are marked for different volumes; they must be rated alike (EPA"
                + " WaterSense at Work, p. 63 and 69).");
      }
    }
    boolean high = any(figures, Measure.STATIC_PRESSURE, true);
    boolean low = any(figures, Measure.STATIC_PRESSURE, false);
    boolean collapses = failsByMost(figures);
    if (high) {
      says.add(
          "The pressure at rest is above a limit: a pressure regulator is for a licensed plumber."
              + " Too much makes a valve use more and be noisy (common practice, no source).");
    }
    if (low) {
      says.add(
          "The pressure at rest is low, so it is the supply. Too little makes a valve run on or"
              + " flush short (common practice, no source).");
    }
    if (collapses && !low && found.staticPressure().isPresent()) {
      says.add(
          "The pressure is good at rest and falls away in use: something restricts it, such as a"
              + " stop partly closed, a clogged strainer, a branch too narrow or a regulator.");
    }
    boolean pressures = found.staticPressure().isPresent() && found.flowingPressure().isPresent();
    boolean volume = figures.stream().anyMatch(f -> f.limit().of() == Measure.FLUSH_VOLUME);
    if (pressures && !high && !low && !collapses && volume) {
      says.add("Pressures are good: what is wrong with the volume is the valve's.");
    }
    for (WaterFigure figure : figures) {
      if (figure.verdict() == WaterVerdict.NOT_DECIDED) {
        says.add(undecided(figure));
      }
    }
    return says;
  }

  private static String undecided(WaterFigure figure) {
    String by = " by " + figure.limit().basis();
    if (figure.moreFlushes() > 0) {
      return figure.moreFlushes()
          + (figure.moreFlushes() == 1 ? " more flush" : " more flushes")
          + " would decide"
          + by
          + ", each only into a bowl that is clear and drains.";
    }
    return "No number of further flushes decides"
        + by
        + "; a finer scale or a better meter is needed.";
  }

  private static boolean any(List<WaterFigure> figures, Measure of, boolean above) {
    return figures.stream()
        .filter(figure -> figure.limit().of() == of && figure.verdict() == WaterVerdict.FAIL)
        .anyMatch(
            figure -> figure.value() > figure.limit().atMost().orElse(Double.MAX_VALUE) == above);
  }

  /** Whether the flowing pressure is too low by at least half of the bases. */
  private static boolean failsByMost(List<WaterFigure> figures) {
    List<WaterFigure> flowing =
        figures.stream().filter(f -> f.limit().of() == Measure.FLOWING_PRESSURE).toList();
    long failed = flowing.stream().filter(f -> f.verdict() == WaterVerdict.FAIL).count();
    return failed > 0 && 2 * failed >= flowing.size();
  }

  private static List<String> unproven(WaterFound found) {
    List<String> unproven = new ArrayList<>();
    if (found.staticPressure().isEmpty()) {
      unproven.add(
          "The pressure at rest: a gauge at a port or hose bibb nearby, nothing running; a gauge"
              + " hose can be a cross-connection, take it off again.");
    }
    if (found.flowingPressure().isEmpty()) {
      unproven.add("The pressure in use: the same gauge while this fixture runs.");
    }
    boolean faucet = found.kind() == FixtureKind.FAUCET;
    if (found.volume().isEmpty() && !faucet) {
      unproven.add(
          "The volume: the branch's own meter over ten flushes with all else closed, or three"
              + " flushes caught; never flush into a bowl that is full or drains slowly.");
    }
    if (found.flow().isEmpty() && faucet) {
      unproven.add("The flow: ten seconds into a measuring jug.");
    }
    if (!faucet && (found.valveRated().isEmpty() || found.fixtureRated().isEmpty())) {
      unproven.add("That valve and fixture are rated alike: read the marking on both.");
    }
    return unproven;
  }
}

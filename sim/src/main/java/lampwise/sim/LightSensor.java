package lampwise.sim;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.DoublePredicate;
import lampwise.light.Blink;
import lampwise.light.LightCurve;
import lampwise.light.Marks;
import lampwise.light.Origin;
import lampwise.light.TargetSpan;
import lampwise.light.Targets;
import lampwise.light.Window;

/**
 * A light sensor, or a camera whose pictures are averaged, held to a lamp. It is switched on as the
 * window starts and writes rows of time and level. Every effect draws its numbers from a source of
 * its own: changing one leaves the others as they were.
 *
 * <p>Settings, each with its range; what is left out has the value in brackets. Light is in lux at
 * the sensor.
 *
 * <ul>
 *   <li>{@code rate-hz} 0.01 to 1000 [50]: rows a second; {@code jitter} 0 to 0.3 [0]: standard
 *       deviation of the time from row to row as a fraction of its mean, which is drawn for each
 *       row anew and held within nine tenths of the mean.
 *   <li>{@code averaging-s} 0.0001 to 2 [0.01]: a value is the exact mean of the light over this
 *       time; {@code dead-s} 0 to 2 [0]: the least idle time after it. Where the two together take
 *       no longer than a row, each row has a value of its own, whose averaging ends at the row's
 *       time. Where they take longer, the sensor converts at its own pace, one conversion after
 *       another at a random phase, and a row repeats the newest finished value.
 *   <li>{@code dropout} 0 to 0.9 [0]: the chance that a row is not written.
 *   <li>{@code lamp-lux} [20], {@code room-lux} [150], both 0 to 100000: the light of the lamp and
 *       of the room; the room's is a mean.
 *   <li>{@code noise-lux} 0 to 10000 [0]: standard deviation of Gaussian noise, a new number for
 *       each value; {@code step-lux} 0.001 to 1000 [0.1]: values are rounded to its nearest
 *       multiple after that, half to even. A level is never below 0.
 *   <li>{@code full-scale-lux} 0 to 1000000 [0, none]: brighter levels read as this, before
 *       rounding.
 *   <li>{@code auto-range-lux} 0 to 1000000 [0, none]: full scale of the lowest of ranges that
 *       double up to {@code full-scale-lux}. Where a level is above the range, the value is thrown
 *       away, so that the row is missing (or, at an own pace, the last value repeated), and the
 *       range goes up by one; it comes down by one after a value below four tenths of it.
 *   <li>{@code on-change} 0 or 1 [0]: if 1, the first row is written, and then a row where the
 *       rounded level differs from that of the row before by at least {@code change-threshold} (0
 *       to 0.9 [0], a fraction of the row before) and {@code change-lux} (0 to 1000 [0]). These two
 *       do nothing without it. The recording marks its window, from the first row to the end of the
 *       scene's; without {@code on-change} the rows say it.
 *   <li>{@code drift-lux} 0 to 10000 [0]: standard deviation of the change that the room's light
 *       makes over 90 s, slowly and smoothly.
 *   <li>{@code flicker-lux} 0 to 100000 [0]: amplitude of a sine in the room's light before
 *       averaging; {@code flicker-hz} 1 to 1000 [120]: its frequency; {@code flicker-off-hz} 0 to
 *       0.5 [0.1]: how far that is off at the most, drawn evenly once a recording (mains 0.05 Hz
 *       off: twice that).
 *   <li>{@code shadows} 0 to 30 [0]: how many begin in 90 s on average, at random. Each takes 0.8
 *       to 4 s and 10 to 40 % of the room's light, with edges of 0.1 to 0.3 s; where two meet they
 *       add.
 *   <li>{@code hands} 0 to 30 [0]: the same, and the lamp is hidden from start to end. A hand so
 *       meant is not a target; targets are the scene's.
 *   <li>{@code room-switch} 0 to 1 [0]: the chance that the room's light is switched once in the
 *       window, as often on as off, and 5 to 50 % of it stay; it takes 0.02 to 0.1 s.
 *   <li>{@code phone-target} 0 to 1 [0]: the chance that the sensor is itself a target, all the
 *       time.
 * </ul>
 *
 * <p>In the truth, a blink is missed if it moved no row that was written by half a step, noise
 * apart; added are the moments at which the room's light begins to rise by a step or more: shadows
 * and hands going, the light switched on.
 *
 * @param settings the settings by their names, any of them; read, it has all, in a fixed order
 */
public record LightSensor(Map<String, Double> settings) implements Observer {
  /** A longer recording of one sensor would not fit into an array. */
  private static final double MOST_ROWS = 200_000_000;

  private static final double MOST_JITTER = 0.9;

  /** Rows that every recording has room for. */
  private static final double LEAST_PERIODS = 3;

  /**
   * Checks the settings and adds those left out.
   *
   * @throws SimulationException if there is no such setting, or a value is out of its range
   */
  public LightSensor {
    settings = SensorSetting.complete(settings);
  }

  /**
   * A sensor of a modern phone: 50 rows a second.
   *
   * @return a sensor of the project's bench
   */
  public static LightSensor fast() {
    return new LightSensor(
        Map.of(
            "rate-hz",
            50.0,
            "jitter",
            0.08,
            "averaging-s",
            0.01,
            "lamp-lux",
            20.0,
            "room-lux",
            150.0,
            "noise-lux",
            1.0,
            "step-lux",
            0.1,
            "drift-lux",
            3.0));
  }

  /**
   * The brightness of 30 pictures a second.
   *
   * @return a sensor of the project's bench
   */
  public static LightSensor camera() {
    return fast()
        .with("rate-hz", 30)
        .with("averaging-s", 0.016)
        .with("lamp-lux", 10)
        .with("room-lux", 120)
        .with("noise-lux", 1.5)
        .with("drift-lux", 25)
        .with("shadows", 1);
  }

  /**
   * Ten values a second in whole lux, written on change, under mains light.
   *
   * @return a sensor of the project's bench
   */
  public static LightSensor meter() {
    return fast()
        .with("rate-hz", 10)
        .with("averaging-s", 0.1)
        .with("lamp-lux", 30)
        .with("room-lux", 200)
        .with("noise-lux", 2)
        .with("step-lux", 1)
        .with("on-change", 1)
        .with("drift-lux", 15)
        .with("shadows", 1)
        .with("flicker-lux", 4);
  }

  /**
   * Five values a second in whole lux, written on change, with shadows, under mains light.
   *
   * @return a sensor of the project's bench
   */
  public static LightSensor slow() {
    return meter()
        .with("rate-hz", 5)
        .with("averaging-s", 0.15)
        .with("lamp-lux", 40)
        .with("room-lux", 300)
        .with("noise-lux", 3)
        .with("drift-lux", 30)
        .with("shadows", 3)
        .with("flicker-lux", 6);
  }

  /**
   * A fast sensor before a lamp that is hardly brighter than the noise.
   *
   * @return a sensor of the project's bench
   */
  public static LightSensor faint() {
    return fast().with("lamp-lux", 3).with("noise-lux", 2).with("drift-lux", 5);
  }

  @Override
  public LightSensor with(String setting, double value) {
    Map<String, Double> changed = new HashMap<>(settings);
    changed.put(setting, value);
    return new LightSensor(changed);
  }

  @Override
  public Scene joining(Scene scene, Chance chance) {
    return chance.happens(SensorSetting.PHONE_TARGET.in(settings))
        ? scene.with(List.of(TargetSpan.always()), scene.events(), scene.marked())
        : scene;
  }

  /**
   * Records what a lamp shows.
   *
   * @throws SimulationException if the window is too short for two rows, or so long that there
   *     would be more than 200 million, or a blink has no end
   */
  @Override
  public Labelled observe(Shown shown, Chance chance) {
    return observe(shown, chance, converter -> {});
  }

  /**
   * What {@link #observe} measures with the same numbers, written or not.
   *
   * @param shown what the lamp shows
   * @param chance where numbers come from
   * @return the values and what is true of them
   * @throws SimulationException as {@link #observe} does
   */
  public Measured measured(Shown shown, Chance chance) {
    Window window = shown.scene().window();
    double start = window.fromSeconds();
    List<Window> hidden = room(window, chance).hidden();
    List<Measured.Value> values = new ArrayList<>();
    observe(
        shown,
        chance,
        converter -> {
          Measured.Value value = converter.measured(start);
          boolean again =
              !values.isEmpty() && values.get(values.size() - 1).toSeconds() == value.toSeconds();
          if (!again && hidden.stream().noneMatch(hand -> meets(hand, value, start))) {
            values.add(value);
          }
        });
    return new Measured(window, values);
  }

  private static boolean meets(Window hand, Measured.Value value, double start) {
    return value.fromSeconds() - start < hand.toSeconds()
        && value.toSeconds() - start > hand.fromSeconds();
  }

  private Surroundings room(Window window, Chance chance) {
    return new Surroundings(settings, window.lengthSeconds(), chance.branch("room"));
  }

  private Labelled observe(Shown shown, Chance chance, Consumer<Converter> taken) {
    Window window = shown.scene().window();
    double length = window.lengthSeconds();
    double start = window.fromSeconds();
    double expected = checkedRows(length);
    Surroundings room = room(window, chance);
    LitTime lit = new LitTime(shown.blinks(), room.hidden(), start);
    Converter converter = new Converter(settings, lit, room, chance.branch("noise"));
    Rows rows = new Rows(settings, start, (int) (expected * 1.01) + 16);
    boolean[] seen = new boolean[shown.blinks().size()];
    record(length, converter, rows, seen, taken, chance);
    double[] seconds = rows.seconds();
    LightCurve curve =
        LightCurve.of(
            Origin.named("light"),
            marks(shown.scene(), seconds.length == 0 ? start : seconds[0]),
            LightCurve.Lit.BRIGHTER,
            seconds,
            rows.levels());
    return new Labelled(curve, new Truth(shown, missed(shown, seen), added(room, start)));
  }

  private double checkedRows(double length) {
    double rate = SensorSetting.RATE_HZ.in(settings);
    double first = SensorSetting.AVERAGING_S.in(settings) + (ownPace() ? cycle() : 0);
    if (!((length - first) * rate >= LEAST_PERIODS)) {
      double least = Math.ceil((first + LEAST_PERIODS / rate) * 1000) / 1000;
      throw new SimulationException(
          "a window of "
              + SensorSetting.plain(length)
              + " s is too short for "
              + SensorSetting.plain(rate)
              + " rows a second: it must be at least "
              + SensorSetting.plain(least)
              + " s");
    }
    if (!(length * rate <= MOST_ROWS)) {
      throw new SimulationException(
          "a window of "
              + SensorSetting.plain(length)
              + " s has more than 200 million rows at "
              + SensorSetting.plain(rate)
              + " a second");
    }
    return length * rate;
  }

  /** From the start of one conversion to that of the next, where they follow their own pace. */
  private double cycle() {
    return SensorSetting.AVERAGING_S.in(settings) + SensorSetting.DEAD_S.in(settings);
  }

  private boolean ownPace() {
    return cycle() * SensorSetting.RATE_HZ.in(settings) > 1 + 1e-9;
  }

  private void record(
      double length,
      Converter converter,
      Rows rows,
      boolean[] seen,
      Consumer<Converter> taken,
      Chance chance) {
    double averaging = SensorSetting.AVERAGING_S.in(settings);
    double dropout = SensorSetting.DROPOUT.in(settings);
    Chance losing = chance.branch("dropout");
    double begin = ownPace() ? chance.branch("pace").uniform(0, cycle()) : 0;
    DoublePredicate converted =
        ownPace()
            ? new OwnPace(converter, averaging, cycle(), begin)
            : at -> converter.convert(at - averaging, at);
    Beat beat = beat(begin + averaging, chance.branch("rows"));
    for (double at = beat.first(); at <= length; at = beat.after(at)) {
      boolean valid = converted.test(at);
      boolean lost = dropout > 0 && losing.happens(dropout);
      if (valid && !lost) {
        taken.accept(converter);
        if (rows.offer(at, converter.value())) {
          converter.mark(seen);
        }
      }
    }
  }

  private Beat beat(double from, Chance chance) {
    double period = 1 / SensorSetting.RATE_HZ.in(settings);
    double first = from + chance.uniform(0, period);
    return new Beat(first, period, SensorSetting.JITTER.in(settings), chance);
  }

  /** The times of the rows. */
  private record Beat(double first, double period, double jitter, Chance chance) {
    double after(double at) {
      if (jitter == 0) {
        return at + period;
      }
      double off = jitter * chance.normal();
      return at + period * (1 + Math.max(-MOST_JITTER, Math.min(MOST_JITTER, off)));
    }
  }

  private Marks marks(Scene scene, double firstRow) {
    double end = scene.window().toSeconds();
    Optional<Window> window =
        SensorSetting.ON_CHANGE.in(settings) == 1
            ? Optional.of(new Window(Math.min(firstRow, end), end))
            : Optional.empty();
    return scene.marked()
        ? new Marks(window, Targets.during(scene.targets()), scene.events(), List.of())
        : new Marks(window, Targets.likely(), List.of(), List.of());
  }

  private static List<Blink> missed(Shown shown, boolean[] seen) {
    List<Blink> missed = new ArrayList<>();
    for (int i = 0; i < seen.length; i++) {
      Blink blink = shown.blinks().get(i);
      if (!seen[i] && shown.scene().window().contains(blink.onSeconds())) {
        missed.add(blink);
      }
    }
    return missed;
  }

  private static List<Double> added(Surroundings room, double start) {
    return room.rises().stream().map(at -> Math.rint((start + at) * 1e6) / 1e6).toList();
  }
}

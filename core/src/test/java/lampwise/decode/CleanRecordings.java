package lampwise.decode;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.LightCurve;
import lampwise.light.Marks;
import lampwise.light.Origin;

/**
 * Clean recordings of a lamp that shows one pulse train: nothing missed, no stray, no timing error
 * but the clock's. Immutable; every recording is a pure function of the settings.
 *
 * @param cycleSeconds the time after which the train repeats; infinite if it shows once
 * @param onOff starts and ends inside one cycle in turn, rising
 * @param clock how many times as long everything takes
 * @param phase the part of a cycle, from 0 to below 1, that was over when the window began; for a
 *     train that shows once the seconds, negative to start inside the window
 * @param windowSeconds how long was watched, from 0
 */
record CleanRecordings(
    double cycleSeconds, double[] onOff, double clock, double phase, double windowSeconds) {

  /**
   * A train given by its starts and ends inside a cycle; clock 1, phase 0, three cycles watched.
   */
  static CleanRecordings of(double cycleSeconds, double... onOff) {
    return new CleanRecordings(cycleSeconds, onOff, 1, 0, 3 * cycleSeconds);
  }

  /** A train given by its light and dark phases in turn, light first. */
  static CleanRecordings ofPhases(double... lightDark) {
    double[] onOff = new double[lightDark.length];
    double time = 0;
    for (int i = 0; i < lightDark.length; i++) {
      onOff[i] = time;
      time += lightDark[i];
    }
    return of(time, onOff);
  }

  /** Equal blinks in a cycle. */
  static CleanRecordings blinks(double blinkSeconds, double cycleSeconds, double... starts) {
    double[] onOff = new double[2 * starts.length];
    for (int i = 0; i < starts.length; i++) {
      onOff[2 * i] = starts[i];
      onOff[2 * i + 1] = starts[i] + blinkSeconds;
    }
    return of(cycleSeconds, onOff);
  }

  CleanRecordings clock(double factor) {
    return new CleanRecordings(cycleSeconds, onOff, factor, phase, windowSeconds);
  }

  CleanRecordings phase(double part) {
    return new CleanRecordings(cycleSeconds, onOff, clock, part, windowSeconds);
  }

  CleanRecordings window(double seconds) {
    return new CleanRecordings(cycleSeconds, onOff, clock, phase, seconds);
  }

  /** The window in cycles of the unit's own clock. */
  CleanRecordings cycles(double count) {
    return window(count * cycleSeconds * clock);
  }

  /** Clock and phase drawn evenly: the clock within a fraction of 1 either way. */
  CleanRecordings drawn(SplittableRandom random, double tolerance) {
    return clock(1 + tolerance * (2 * random.nextDouble() - 1)).phase(random.nextDouble());
  }

  /** Every blink that shines inside the window, uncut. */
  List<Blink> lit() {
    List<Blink> lit = new ArrayList<>();
    boolean repeats = cycleSeconds < Double.POSITIVE_INFINITY;
    double before = repeats ? phase * cycleSeconds : phase;
    double start = -before * clock;
    for (int cycle = 0; start <= windowSeconds; cycle++) {
      for (int i = 0; i < onOff.length; i += 2) {
        double on = start + onOff[i] * clock;
        double off = start + onOff[i + 1] * clock;
        if (off > 0 && on < windowSeconds) {
          lit.add(new Blink(on, off));
        }
      }
      start = repeats ? ((cycle + 1) * cycleSeconds - before) * clock : Double.POSITIVE_INFINITY;
    }
    return lit;
  }

  Marks watched() {
    return Marks.watched(0, windowSeconds);
  }

  /** The starts inside the window, which is stated. */
  BlinkLog starts() {
    return starts(watched());
  }

  /** The starts inside the window, with these marks. */
  BlinkLog starts(Marks marks) {
    return BlinkLog.ofStarts(
        marks, lit().stream().mapToDouble(Blink::onSeconds).filter(on -> on >= 0).toArray());
  }

  /** Starts and ends; blinks that the window cuts are clipped at its borders. */
  BlinkLog onAndOff() {
    return new BlinkLog(
        Origin.named("log"),
        watched(),
        lit().stream()
            .map(
                blink ->
                    new Blink(
                        Math.max(0, blink.onSeconds()),
                        Math.min(windowSeconds, blink.offSeconds())))
            .toList());
  }

  /** The level of the lamp, 0 or 1, at a time. */
  double shining(List<Blink> lit, double seconds) {
    for (Blink blink : lit) {
      if (seconds >= blink.onSeconds() && seconds < blink.offSeconds()) {
        return 1;
      }
    }
    return 0;
  }

  /** Light levels at an even rate from 0 to the end of the window, with Gaussian noise. */
  LightCurve curve(double rateHz, double room, double lamp, double noiseSd, long seed) {
    return curve(Marks.nothing(), rateHz, room, lamp, noiseSd, seed);
  }

  /** The same with these marks. */
  LightCurve curve(
      Marks marks, double rateHz, double room, double lamp, double noiseSd, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    List<Blink> lit = lit();
    int count = (int) Math.floor(windowSeconds * rateHz) + 1;
    double[] seconds = new double[count];
    double[] levels = new double[count];
    for (int i = 0; i < count; i++) {
      seconds[i] = i / rateHz;
      levels[i] = room + lamp * shining(lit, seconds[i]) + noiseSd * normal(random);
    }
    return LightCurve.of(Origin.named("curve"), marks, LightCurve.Lit.BRIGHTER, seconds, levels);
  }

  /** A standard normal number (Box and Muller 1958). */
  static double normal(SplittableRandom random) {
    double radius = Math.sqrt(-2 * Math.log(1 - random.nextDouble()));
    return radius * Math.cos(2 * Math.PI * random.nextDouble());
  }

  /** Blinks at random (Poisson), as starts inside a stated window. */
  static BlinkLog atRandom(double perSecond, double windowSeconds, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    List<Double> starts = new ArrayList<>();
    double time = 0;
    while (true) {
      time -= Math.log(1 - random.nextDouble()) / perSecond;
      if (time >= windowSeconds) {
        break;
      }
      starts.add(time);
    }
    return BlinkLog.ofStarts(
        Marks.watched(0, windowSeconds), starts.stream().mapToDouble(d -> d).toArray());
  }
}

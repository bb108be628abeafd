package lampwise.sim;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.light.Blink;
import lampwise.light.Description;
import lampwise.light.Window;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.PhraseException;

/**
 * What a person says of the lights that were seen. All borders between one way to say it and the
 * next are chosen (common practice, no source).
 */
final class Telling {
  /**
   * Lights longer than this are no blinks; most of the lights: the lamp is steady but for winks.
   */
  private static final double STEADY_SECONDS = 2;

  /** Closer blinks than this cannot be counted in an even row. */
  private static final double FAST_SECONDS = 0.4;

  /** From here on one counts the seconds from blink to blink, below it the blinks in a second. */
  private static final double COUNTED_SECONDS = 1;

  /** Blinks that come less often on average are not called slow blinks. */
  private static final double SLOWEST_SECONDS = 10;

  private static final int FEW_GAPS = 3;

  /** The share of gaps near the middle one that makes a row even. */
  private static final double EVEN_SHARE = 0.6;

  /** Seconds are said to the half below this and to the whole from it on, with "about". */
  private static final double WHOLE_SECONDS = 5;

  /** Seconds that lie farther from the nearest half are told as lying between two of them. */
  private static final double BETWEEN = 0.15;

  /** A blink or a dark that lasts as long is told with its length. */
  private static final double LENGTH_TOLD_SECONDS = 1;

  private final double countError;
  private final double secondsError;
  private final Window window;
  private final List<Blink> lights;
  private final Chance chance;

  /**
   * What is to be told.
   *
   * @param lights what was seen, in order; with ends, except where the end was not seen
   */
  Telling(Map<String, Double> settings, Window window, List<Blink> lights, Chance chance) {
    this.countError = PersonSetting.COUNT_ERROR.in(settings);
    this.secondsError = PersonSetting.SECONDS_ERROR.in(settings);
    this.window = window;
    this.lights = lights;
    this.chance = chance;
  }

  /** A phrase, or {@value Description#NOTHING}. */
  String told() {
    if (lights.isEmpty()) {
      return Description.NOTHING;
    }
    if (lights.size() == 1 && startsLit() && endsLit()) {
      return "steady";
    }
    double[] lengths = lights.stream().mapToDouble(Telling::length).toArray();
    if (Gaps.middle(lengths) > STEADY_SECONDS) {
      return lights.size() == 1 ? oneLight() : winks();
    }
    Optional<Bursts> bursts = Bursts.in(lights, window);
    return bursts.isPresent() ? bursts(bursts.get()) : row();
  }

  private boolean startsLit() {
    return lights.get(0).onSeconds() <= window.fromSeconds();
  }

  private boolean endsLit() {
    Blink last = lights.get(lights.size() - 1);
    return last.hasOff() && last.offSeconds() >= window.toSeconds();
  }

  private static double length(Blink light) {
    return light.hasOff() ? light.offSeconds() - light.onSeconds() : 0;
  }

  private String oneLight() {
    return startsLit() || endsLit()
        ? "steady once"
        : first("steady " + seconds(length(lights.get(0))) + " once", "steady once");
  }

  /** A lamp that is on but for darks. */
  private String winks() {
    double[] darks = new double[lights.size() - 1];
    double[] from = new double[darks.length];
    for (int i = 0; i < darks.length; i++) {
      from[i] = lights.get(i).hasOff() ? lights.get(i).offSeconds() : lights.get(i).onSeconds();
      darks[i] = lights.get(i + 1).onSeconds() - from[i];
    }
    double dark = Gaps.middle(darks);
    String said = "steady then dark" + (dark < LENGTH_TOLD_SECONDS ? "" : " " + seconds(dark));
    OptionalDouble every = Gaps.even(Gaps.of(from), EVEN_SHARE);
    return every.isPresent()
        ? first(said + " every " + seconds(every.getAsDouble()), said, "steady then dark")
        : first(said, "steady then dark");
  }

  /** Blinks in bursts that come again and again, or one burst. */
  private String bursts(Bursts bursts) {
    List<String> parts = new ArrayList<>();
    for (List<Bursts.Run> burst : bursts.cycle()) {
      for (Bursts.Run run : burst) {
        int count = count(run.count());
        parts.add(count + run.size().word() + (count == 1 ? " blink" : " blinks"));
      }
    }
    String said = String.join(" then ", parts);
    if (parts.size() > 1) {
      return first(said + " repeating", "blinks");
    }
    return bursts.everySeconds().isPresent()
        ? first(said + " every " + seconds(bursts.everySeconds().getAsDouble()), said, "blinks")
        : first(said, "blinks");
  }

  /** Blinks in a row, even or not. */
  private String row() {
    if (lights.size() == 1) {
      return "1 blink";
    }
    double[] gaps = Gaps.of(lights.stream().mapToDouble(Blink::onSeconds).toArray());
    double middle = Gaps.middle(gaps);
    if (middle < FAST_SECONDS) {
      return "fast blinks";
    }
    OptionalDouble even = Gaps.even(gaps, EVEN_SHARE);
    if (even.isEmpty()) {
      return uneven(gaps);
    }
    return even.getAsDouble() < COUNTED_SECONDS
        ? rate(1 / judged(even.getAsDouble()))
        : first("1 blink" + length() + " every " + seconds(even.getAsDouble()), "slow blinks");
  }

  /** How long the blinks last, if they are long enough to tell. */
  private String length() {
    double length = Gaps.middle(lights.stream().mapToDouble(Telling::length).toArray());
    return length < LENGTH_TOLD_SECONDS ? "" : " of " + seconds(length);
  }

  /** Few blinks are told by the least and the most seconds between them, more by how it looks. */
  private String uneven(double[] gaps) {
    double[] sorted = gaps.clone();
    Arrays.sort(sorted);
    double mean = Arrays.stream(gaps).sum() / gaps.length;
    boolean few = gaps.length <= FEW_GAPS || mean > SLOWEST_SECONDS;
    if (few && sorted[0] >= COUNTED_SECONDS) {
      long least = Math.max(1, Math.round(judged(sorted[0])));
      long most = Math.max(least + 1, Math.round(judged(sorted[sorted.length - 1])));
      return first("1 blink every " + least + " to " + most + " s", "blinks");
    }
    return Gaps.middle(gaps) >= COUNTED_SECONDS && mean <= SLOWEST_SECONDS
        ? "slow blinks"
        : "blinks";
  }

  /** So many a second, between one and three or so. */
  private static String rate(double perSecond) {
    long near = Math.max(1, (long) Math.rint(perSecond));
    if (Math.abs(perSecond - near) <= BETWEEN * near) {
      return "about " + near + (near == 1 ? " blink" : " blinks") + " per second";
    }
    long least = (long) Math.floor(perSecond);
    return least < 1 ? "slow blinks" : least + " to " + (least + 1) + " blinks per second";
  }

  /** A count as a person has it. */
  private int count(int real) {
    if (real < 2 || !(countError > 0) || !chance.happens(countError)) {
      return real;
    }
    return real + (chance.happens(0.5) ? 1 : -1);
  }

  private double judged(double seconds) {
    double error = secondsError > 0 ? secondsError * chance.normal() : 0;
    return seconds * Math.max(0.25, 1 + error);
  }

  /** Seconds as a person says them. */
  private String seconds(double real) {
    double judged = judged(real);
    if (judged >= WHOLE_SECONDS) {
      return "about " + halves(2 * Math.round(judged)) + " s";
    }
    long near = Math.max(1, (long) Math.rint(2 * judged));
    if (Math.abs(near / 2.0 - judged) <= BETWEEN * judged) {
      return halves(near) + " s";
    }
    long least = (long) Math.floor(2 * judged);
    return least < 1 ? "under 0.5 s" : halves(least) + " to " + halves(least + 1) + " s";
  }

  /** So many half seconds in figures. */
  private static String halves(long halves) {
    return halves / 2 + (halves % 2 == 0 ? "" : ".5");
  }

  /** The first of these that is a phrase; the last is one. */
  private static String first(String... said) {
    for (int i = 0; i + 1 < said.length; i++) {
      if (isPhrase(said[i])) {
        return said[i];
      }
    }
    return said[said.length - 1];
  }

  private static boolean isPhrase(String said) {
    try {
      Phrase.parse(said);
      return true;
    } catch (PhraseException e) {
      return false;
    }
  }
}

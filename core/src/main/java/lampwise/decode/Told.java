package lampwise.decode;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import lampwise.light.Description;
import lampwise.light.Event;
import lampwise.light.Marks;
import lampwise.light.Window;
import lampwise.rhythm.Limits;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.PhraseException;
import lampwise.rhythm.Rhythm;
import lampwise.rhythm.Size;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;

/**
 * The likelihood of what a person says of a lamp, given what it shows. People count up to four
 * right and are off by one above it, judge seconds to about an eighth and half a second and round
 * them to what they like, cannot time below a second, and take a group for two or two for one now
 * and then. The chances are chosen, not measured (common practice, no source).
 */
final class Told {
  /** Chance that a person who watches a blinking lamp sees nothing, or a dark one blink. */
  private static final double LAPSE = 0.004;

  /** Chance to take two groups for one of all their blinks, or to tell them from the other end. */
  private static final double REGROUPED = 0.04;

  /** Chance to miss or invent the difference of long and short. */
  private static final double SIZE_WRONG = 0.08;

  /** Chance to say only how it blinks in general, where a count could be said. */
  private static final double VAGUE = 0.2;

  /** Part of a time by which people misjudge it, standard deviation. */
  private static final double JUDGED = 0.13;

  private static final double ROUNDED_SECONDS = 0.5;

  /** Spread of the logarithm of a rate that is too fast to count. */
  private static final double FAST_SPREAD = 0.4;

  private static final double FAST_BELOW_SECONDS = 1;

  /** Blinks this close together look like one light. */
  private static final double FUSED_SECONDS = 0.15;

  /** A lamp lit for this share of the time or more may be called steady, with this chance. */
  private static final double MOSTLY_LIT = 0.8;

  private static final double SEEN_AS_STEADY = 0.3;

  /** Below this share of a cycle a person who watched cannot know how long it is. */
  private static final double TOO_SHORT = 0.05;

  private final Optional<Rhythm> said;
  private final OptionalDouble watched;

  /** The blinks that were said, counted; empty if nothing or steady was said. */
  private final Optional<Counted> counted;

  private Told(Optional<Rhythm> said, OptionalDouble watched) {
    this(said, said.flatMap(Told::counted), watched);
  }

  private Told(Optional<Rhythm> said, Optional<Counted> counted, OptionalDouble watched) {
    this.said = said;
    this.counted = counted;
    this.watched = watched;
  }

  private static Optional<Counted> counted(Rhythm said) {
    return said instanceof Rhythm.Blinking words
        ? Optional.of(Counted.of(words, Templates.of(words, OptionalDouble.empty(), 0)))
        : Optional.empty();
  }

  /** The same of a lamp that could be seen for so long only, if it is known how long at all. */
  private Told seenFor(double seconds) {
    return new Told(
        said, counted, watched.isPresent() ? OptionalDouble.of(seconds) : OptionalDouble.empty());
  }

  /** What a person says they observed: the rhythm, dark where nothing was seen. */
  static Optional<Rhythm> observed(Description description) {
    return description.said().equals(Description.NOTHING)
        ? Optional.of(new Rhythm.Dark())
        : rhythm(description);
  }

  /** The rhythm that was said; empty for {@code nothing}, and where it is no phrase. */
  private static Optional<Rhythm> rhythm(Description description) {
    try {
      return Optional.of(Phrase.parse(description.said()));
    } catch (PhraseException e) {
      return Optional.empty();
    }
  }

  /** Why a description cannot carry an answer; empty if it can. */
  static Optional<String> unreadable(Description description) {
    if (description.window().filter(window -> !(window.lengthSeconds() > 0)).isPresent()) {
      return Optional.of("the window has no length");
    }
    if (description.said().equals(Description.NOTHING)) {
      return description.window().isPresent()
          ? Optional.empty()
          : Optional.of("nothing was seen, and it is not said how long the lamp was watched");
    }
    try {
      Phrase.parse(description.said());
      return Optional.empty();
    } catch (PhraseException e) {
      return Optional.of("what was said is no phrase: " + e.getMessage());
    }
  }

  /** The longest cycle from the first mark on, where it is not said when somebody watched. */
  private static Window unsaid(Marks marks) {
    double first =
        DoubleStream.concat(
                marks.targets().spans().stream()
                    .flatMapToDouble(s -> DoubleStream.of(s.fromSeconds(), s.toSeconds())),
                marks.events().stream().mapToDouble(Event::atSeconds))
            .filter(Double::isFinite)
            .min()
            .orElse(0);
    return new Window(first, first + Limits.CYCLE_MOST_SECONDS);
  }

  /** Logarithms of the likelihoods, in the order of the priors. */
  static double[] logLikelihoods(CodeSheet sheet, Description description) {
    Optional<Rhythm> said = rhythm(description).filter(r -> !(r instanceof Rhythm.Dark));
    Window window = description.window().orElseGet(() -> unsaid(description.marks()));
    OptionalDouble watched =
        description.window().isPresent()
            ? OptionalDouble.of(window.lengthSeconds())
            : OptionalDouble.empty();
    Told told = new Told(said, watched);
    int states = sheet.states().size();
    double[] logs = new double[states + 2];
    for (int i = 0; i < states; i++) {
      LampState state = sheet.states().get(i);
      double sum = 0;
      for (Visibility way : Visibility.of(state.seen(), description.marks(), window)) {
        double shown = way.stretches().stream().mapToDouble(Window::lengthSeconds).sum();
        Told here = told.seenFor(shown);
        sum += way.probability() * (shown > 0 ? here.ofState(sheet, state) : here.ofDark());
      }
      logs[i] = Math.log(sum);
    }
    logs[states] = Math.log(told.ofUnlisted());
    logs[states + 1] = Math.log(told.ofRandom());
    return logs;
  }

  private double ofDark() {
    return said.isEmpty() ? 1 - LAPSE : LAPSE * broadly();
  }

  private double ofState(CodeSheet sheet, LampState state) {
    if (state.rhythm() instanceof Rhythm.Dark) {
      return ofDark();
    }
    if (state.rhythm() instanceof Rhythm.Steady) {
      boolean steady = said.isPresent() && said.get() instanceof Rhythm.Steady;
      return steady ? 1 - LAPSE : said.isEmpty() ? LAPSE : LAPSE * broadly();
    }
    Rhythm.Blinking rhythm = (Rhythm.Blinking) state.rhythm();
    List<Train> trains = Templates.of(rhythm, sheet.blinkSeconds(), sheet.clockTolerance());
    Counted real = Counted.of(rhythm, trains);
    double unseen = unseen(trains);
    if (said.isEmpty()) {
      return unseen + (1 - unseen) * LAPSE;
    }
    if (counted.isEmpty()) {
      boolean tooFast = real.cycleSeconds().orElse(1) < FUSED_SECONDS;
      return tooFast || mostlyLit(trains) ? SEEN_AS_STEADY : LAPSE;
    }
    return LAPSE * broadly() + (1 - unseen) * said(counted.get(), real, sheet.clockTolerance());
  }

  private static boolean mostlyLit(List<Train> trains) {
    for (Train train : trains) {
      double lit = 0;
      for (int i = train.prelude(); i < train.size(); i++) {
        lit += Double.isNaN(train.length(i)) ? 0 : train.length(i);
      }
      if (train.repeats() && lit >= MOSTLY_LIT * train.cycleSeconds()) {
        return true;
      }
    }
    return false;
  }

  /** Chance that no pulse falls into what was watched. */
  private double unseen(List<Train> trains) {
    if (watched.isEmpty()) {
      return 0;
    }
    double sum = 0;
    for (Train train : trains) {
      double longest = 0;
      for (int i = 0; i < train.size(); i++) {
        double next = train.repeats() ? train.on(i + 1) : train.on(i);
        longest = Math.max(longest, next - train.on(i));
      }
      double chance =
          train.repeats()
              ? Math.max(0, longest - watched.getAsDouble()) / train.cycleSeconds()
              : 0.5;
      sum += Math.exp(train.logWeight()) * chance;
    }
    return Math.min(1, sum);
  }

  /** Chance (density over the cycle, where one was said) that a person says this of that. */
  private double said(Counted told, Counted shown, double clock) {
    if (told.bare()) {
      return VAGUE * rate(told, shown);
    }
    double counts = groups(told.groups(), shown.groups());
    OptionalDouble cycle = told.cycleSeconds();
    if (cycle.isEmpty()) {
      return VAGUE * counts;
    }
    double half = 0.5 * (told.mostSeconds() - told.leastSeconds());
    return counts * cycle(cycle.getAsDouble(), half, shown, clock);
  }

  /** Density of the cycle a person says. */
  private double cycle(double seconds, double half, Counted shown, double clock) {
    if (shown.cycleSeconds().isEmpty()) {
      return 1 / (seconds * Math.log(Limits.CYCLE_MOST_SECONDS / Limits.APART_LEAST_SECONDS));
    }
    double real = shown.cycleSeconds().getAsDouble();
    double spread = 0.5 * (shown.mostSeconds() - shown.leastSeconds()) / Math.sqrt(3);
    double judged = JUDGED + (real < FAST_BELOW_SECONDS ? 0.3 : 0);
    double sd =
        Math.sqrt(
            square(judged * real)
                + square(ROUNDED_SECONDS)
                + square(spread)
                + square(clock * real / Math.sqrt(3))
                + square(half / 2));
    double known = watched.isPresent() && watched.getAsDouble() < 0.9 * real ? TOO_SHORT : 1;
    return known * Math.exp(Gauss.logDensity(seconds - real, sd));
  }

  private static double square(double value) {
    return value * value;
  }

  /** Chance of a rate in words or numbers. */
  private static double rate(Counted told, Counted shown) {
    if (shown.cycleSeconds().isEmpty()) {
      return shown.once() ? 0.3 * REGROUPED : 0.3;
    }
    double share = 0;
    int steps = 8;
    double from = Math.log(shown.leastSeconds());
    double to = Math.log(shown.mostSeconds());
    double low = Math.log(told.leastSeconds());
    double high = Math.log(told.mostSeconds());
    for (int i = 0; i < steps; i++) {
      double at = from + (to - from) * (i + 0.5) / steps;
      share += within(at, low, high) / steps;
    }
    double width = Math.max(high - low, 0.2);
    boolean single = shown.blinks() == 1;
    // Groups that come often are sometimes called fast blinks too.
    return share / Math.max(1, width) * (single ? 1 : REGROUPED);
  }

  /** How well a time fits a range of times, all as logarithms. */
  private static double within(double at, double low, double high) {
    double off = Math.max(0, Math.max(low - at, at - high));
    return Math.exp(-0.5 * square(off / FAST_SPREAD));
  }

  private static double groups(List<Counted.Group> told, List<Counted.Group> shown) {
    double same = told.size() == shown.size() ? inOrder(told, shown, 0) : 0;
    double turned = 0;
    if (told.size() == shown.size() && told.size() > 1) {
      for (int turn = 1; turn < told.size(); turn++) {
        turned = Math.max(turned, inOrder(told, shown, turn));
      }
    }
    double merged = 0;
    if (told.size() == 1 && shown.size() > 1) {
      int blinks = shown.stream().mapToInt(Counted.Group::max).sum();
      merged = count(told.get(0), new Counted.Group(blinks, blinks, Size.UNSAID));
    }
    return (1 - 2 * REGROUPED) * same + REGROUPED * turned + REGROUPED * merged + 1e-5;
  }

  private static double inOrder(List<Counted.Group> told, List<Counted.Group> shown, int turn) {
    double chance = 1;
    for (int i = 0; i < told.size(); i++) {
      Counted.Group real = shown.get((i + turn) % shown.size());
      chance *= count(told.get(i), real) * size(told.get(i).size(), real.size());
    }
    return chance;
  }

  private static double size(Size told, Size real) {
    if (told == real || told == Size.UNSAID || (told == Size.SHORT && real == Size.UNSAID)) {
      return 1;
    }
    return SIZE_WRONG;
  }

  /** Chance that this many blinks are counted as that many. */
  private static double count(Counted.Group told, Counted.Group real) {
    double sum = 0;
    for (int shown = real.min(); shown <= real.max(); shown++) {
      double best = 0;
      for (int counted = told.min(); counted <= told.max(); counted++) {
        best += counted(counted, shown);
      }
      sum += best / (told.max() - told.min() + 1);
    }
    return sum / (real.max() - real.min() + 1);
  }

  private static double counted(int told, int real) {
    double wrong = real <= 2 ? 0.01 : real <= 4 ? 0.05 : 0.2;
    int off = Math.abs(told - real);
    return off == 0 ? 1 - wrong : off == 1 ? wrong / 2 : off == 2 && real > 4 ? wrong / 10 : 1e-5;
  }

  private double ofUnlisted() {
    if (said.isEmpty()) {
      double seconds = Math.min(watched.orElse(30), Limits.CYCLE_MOST_SECONDS);
      double span = Math.log(Limits.CYCLE_MOST_SECONDS / Limits.APART_LEAST_SECONDS);
      double longer = Math.log(Limits.CYCLE_MOST_SECONDS / Math.max(seconds, 1));
      return LAPSE + Math.max(0, 0.5 * longer / span);
    }
    return broadly();
  }

  private double ofRandom() {
    if (said.isEmpty()) {
      return Math.exp(-0.1 * watched.orElse(30));
    }
    boolean bare = counted.isPresent() && counted.get().bare();
    return (bare ? 0.5 : 0.02) * broadly();
  }

  /** Chance of what was said of a lamp of which nothing is known. */
  private double broadly() {
    if (counted.isEmpty()) {
      return 0.05;
    }
    Counted told = counted.get();
    if (told.bare()) {
      return VAGUE * 0.3;
    }
    double counts = 0.5;
    for (int i = 0; i < told.groups().size(); i++) {
      counts *= i == 0 ? 0.2 : 0.1;
    }
    OptionalDouble cycle = told.cycleSeconds();
    if (cycle.isEmpty()) {
      return VAGUE * counts;
    }
    double span = Math.log(Limits.CYCLE_MOST_SECONDS / Limits.APART_LEAST_SECONDS);
    return counts / (cycle.getAsDouble() * span);
  }
}

package lampwise.sim;

import java.util.List;

/** What a lamp shows while it is in one state. */
final class ActLight {
  private static final double DELAY_LEAST_SECONDS = 0.1;
  private static final double DELAY_MOST_SECONDS = 1.5;

  /** How far a light that was always on, or stays on, reaches beyond the window, seconds. */
  private static final double BEYOND_SECONDS = 1;

  /** The length of a blink in no order where the scene gives none, and the dark after it. */
  private static final double RANDOM_BLINK_SECONDS = 0.1;

  private static final double RANDOM_DARK_SECONDS = 0.05;

  private final Scene scene;
  private final Act act;

  /** From the act's beginning to the next one's. */
  private final Stretch own;

  private final UnitClock clock;
  private final Light light;

  ActLight(Scene scene, int number, UnitClock clock, Light light) {
    List<Act> acts = scene.acts();
    this.scene = scene;
    this.act = acts.get(number);
    boolean last = number + 1 == acts.size();
    double end = last ? Double.POSITIVE_INFINITY : acts.get(number + 1).fromSeconds();
    this.own = new Stretch(act.fromSeconds(), end);
    this.clock = clock;
    this.light = light;
  }

  /** From a trigger to the light that follows. */
  static double delay(Chance chance) {
    return chance.uniform(DELAY_LEAST_SECONDS, DELAY_MOST_SECONDS);
  }

  /**
   * Adds the light of the act.
   *
   * @param delay from a trigger to the light that follows
   * @param drawing where the values of the rhythm come from
   * @param chance where phases come from
   */
  void shine(double delay, Chance drawing, Chance chance) {
    if (act.show() instanceof Show.Random random) {
      atRandom(random, chance);
      return;
    }
    DrawnRhythm rhythm =
        DrawnRhythm.of(((Show.Rhythmic) act.show()).rhythm(), scene.blinkSeconds(), drawing);
    if (!rhythm.repeats()) {
      once(rhythm, delay, chance);
    } else if (Stretch.isTriggered(act.seen())) {
      triggered(rhythm, delay, chance);
    } else {
      free(rhythm, own, chance);
    }
  }

  /** A lamp that runs on by itself, seen or not. */
  private void free(DrawnRhythm rhythm, Stretch within, Chance chance) {
    Run run = run(rhythm, chance);
    for (Stretch stretch : Stretch.of(act.seen(), scene)) {
      run.shine(stretch.within(within));
    }
  }

  private void triggered(DrawnRhythm rhythm, double delay, Chance chance) {
    for (Stretch stretch : Stretch.of(act.seen(), scene)) {
      Stretch seen = stretch.within(own);
      double start = stretch.fromSeconds() + delay;
      if (start >= own.fromSeconds() && start > Double.NEGATIVE_INFINITY) {
        double printed = clock.printed(start);
        Run run = new Run(rhythm, printed, printed + rhythm.preludeSeconds());
        run.shine(seen);
      } else {
        run(rhythm, chance).shine(seen);
      }
    }
  }

  /** A rhythm that has run since the act began, or for ever. */
  private Run run(DrawnRhythm rhythm, Chance chance) {
    boolean begins = own.fromSeconds() > Double.NEGATIVE_INFINITY;
    if (begins && rhythm.preludeSeconds() > 0) {
      double printed = clock.printed(own.fromSeconds());
      return new Run(rhythm, printed, printed + rhythm.preludeSeconds());
    }
    double cycle = rhythm.cycleSeconds();
    double phase = Double.isInfinite(cycle) ? 0 : cycle * chance.uniform();
    double since = begins ? clock.printed(own.fromSeconds()) : 0;
    return new Run(rhythm, Double.NaN, since - phase);
  }

  private void once(DrawnRhythm rhythm, double delay, Chance chance) {
    double whole = rhythm.preludeSeconds() + rhythm.cycleSeconds();
    List<Double> triggers =
        Stretch.triggers(act.seen(), scene).stream().filter(t -> t >= own.fromSeconds()).toList();
    boolean shown = false;
    for (int i = 0; i < triggers.size(); i++) {
      double start = triggers.get(i) + delay;
      boolean last = i + 1 == triggers.size();
      double again = last ? Double.POSITIVE_INFINITY : triggers.get(i + 1) + delay;
      double printed = clock.printed(start);
      double end = Math.min(again, clock.time(printed + whole));
      Stretch show = new Stretch(start, end).within(own);
      shown |= show.within(watched()).isSome();
      showOnce(rhythm, printed, show);
    }
    boolean waits = !Stretch.isTriggered(act.seen()) || triggers.isEmpty();
    if (!shown && waits) {
      unprompted(rhythm, whole, chance);
    }
  }

  private void showOnce(DrawnRhythm rhythm, double printed, Stretch show) {
    Run run = new Run(rhythm, printed, printed + rhythm.preludeSeconds());
    for (Stretch stretch : Stretch.of(act.seen(), scene)) {
      run.shineOnce(stretch.within(show));
    }
  }

  /** Shows once at a moment without a mark, while the lamp can be seen. */
  private void unprompted(DrawnRhythm rhythm, double whole, Chance chance) {
    Stretch longest = new Stretch(0, 0);
    for (Stretch stretch : Stretch.of(act.seen(), scene)) {
      boolean open =
          !Stretch.isTriggered(act.seen()) || stretch.fromSeconds() == Double.NEGATIVE_INFINITY;
      Stretch seen = stretch.within(own).within(watched());
      if (open && seen.length() > longest.length()) {
        longest = seen;
      }
    }
    if (!longest.isSome()) {
      return;
    }
    double from = clock.printed(longest.fromSeconds());
    double room = clock.printed(longest.toSeconds()) - from;
    double start = from + chance.uniform() * (room > whole ? room - whole : room);
    showOnce(rhythm, start, longest.beginning(clock.time(start)).within(own));
  }

  private Stretch watched() {
    return new Stretch(light.window().fromSeconds(), light.window().toSeconds());
  }

  private void atRandom(Show.Random random, Chance chance) {
    double length = scene.blinkSeconds().orElse(RANDOM_BLINK_SECONDS);
    double time =
        Math.max(own.fromSeconds(), watched().fromSeconds() - 2 * (length + RANDOM_DARK_SECONDS));
    List<Stretch> seen = Stretch.of(act.seen(), scene);
    double end = Math.min(own.toSeconds(), watched().toSeconds());
    double free = Double.NEGATIVE_INFINITY;
    for (time += chance.waiting(random.perSecond());
        time < end;
        time += chance.waiting(random.perSecond())) {
      if (time < free) {
        continue;
      }
      free = time + length + RANDOM_DARK_SECONDS;
      Stretch blink = new Stretch(time, time + length).within(own);
      for (Stretch stretch : seen) {
        Stretch shows = stretch.within(blink);
        if (shows.isSome()) {
          light.add(shows.fromSeconds(), shows.toSeconds());
        }
      }
    }
  }

  /** A rhythm set running. */
  private final class Run {
    private final DrawnRhythm rhythm;

    /** Printed time of the prelude's start; NaN if it is long over, or there is none. */
    private final double preludeStart;

    /** Printed time of the start of a cycle: the first one if a prelude comes before. */
    private final double cycleStart;

    Run(DrawnRhythm rhythm, double preludeStart, double cycleStart) {
      this.rhythm = rhythm;
      this.preludeStart = preludeStart;
      this.cycleStart = cycleStart;
    }

    /** Adds the light inside a stretch; a blink is cut at its borders. */
    void shine(Stretch stretch) {
      if (!stretch.within(watched()).isSome()) {
        return;
      }
      prelude(stretch);
      double cycle = rhythm.cycleSeconds();
      if (Double.isInfinite(cycle)) {
        pulses(rhythm.cycle(), cycleStart, stretch);
        return;
      }
      double from = Math.max(stretch.fromSeconds(), watched().fromSeconds());
      double to = Math.min(stretch.toSeconds(), watched().toSeconds());
      double first = Math.floor((clock.printed(from) - cycleStart) / cycle) - 1;
      double last = Math.ceil((clock.printed(to) - cycleStart) / cycle);
      if (!Double.isNaN(preludeStart)) {
        first = Math.max(0, first);
      }
      if ((last - first) * rhythm.cycle().size() > Light.MOST_BLINKS) {
        throw new SimulationException(
            "the lamp would blink more than " + Light.MOST_BLINKS + " times in the window");
      }
      int cycles = (int) (last - first);
      for (int i = 0; i <= cycles; i++) {
        pulses(rhythm.cycle(), cycleStart + (first + i) * cycle, stretch);
      }
    }

    /** Adds the light of the prelude and of one cycle. */
    void shineOnce(Stretch stretch) {
      if (stretch.within(watched()).isSome()) {
        prelude(stretch);
        pulses(rhythm.cycle(), cycleStart, stretch);
      }
    }

    private void prelude(Stretch stretch) {
      if (!Double.isNaN(preludeStart)) {
        pulses(rhythm.prelude(), preludeStart, stretch);
      }
    }

    private void pulses(List<DrawnRhythm.Pulse> pulses, double start, Stretch stretch) {
      for (DrawnRhythm.Pulse pulse : pulses) {
        double printed = start + pulse.onSeconds();
        if (Double.isInfinite(pulse.lengthSeconds())) {
          endless(printed, stretch);
          return;
        }
        double on = Math.max(stretch.fromSeconds(), clock.time(printed));
        double off = Math.min(stretch.toSeconds(), clock.time(printed + pulse.lengthSeconds()));
        if (off > on) {
          light.add(on, off);
        }
      }
    }

    /** A light that stays on. */
    private void endless(double printed, Stretch stretch) {
      double start = Double.isNaN(preludeStart) ? Double.NEGATIVE_INFINITY : clock.time(printed);
      double on = Math.max(start, Math.max(stretch.fromSeconds(), own.fromSeconds()));
      double off = Math.min(stretch.toSeconds(), watched().toSeconds() + BEYOND_SECONDS);
      if (Double.isInfinite(on)) {
        on = watched().fromSeconds() - BEYOND_SECONDS;
      }
      if (off > on) {
        light.add(on, off);
      }
    }
  }
}

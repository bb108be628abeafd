package lampwise.rhythm;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import lampwise.rhythm.Lights.After;
import lampwise.rhythm.Lights.Kind;
import lampwise.rhythm.Lights.Light;

/**
 * The form in which rhythms of one light are alike; {@link Rhythms#sameLamp} says how.
 *
 * @param course what the lamp does in the end
 * @param led whether it begins with a dark that counts
 * @param lead that dark
 * @param prelude the lights before the cycle, or the lights at all where nothing repeats
 * @param cycle the lights that repeat
 * @param total the time of the whole cycle, where the lights do not give it
 */
record LampForm(
    Course course, boolean led, Span lead, List<Light> prelude, List<Light> cycle, Span total) {
  private enum Course {
    DARK,
    STEADY,
    ONCE,
    REPEATS
  }

  static LampForm of(Rhythm rhythm) {
    if (rhythm instanceof Rhythm.Blinking blinking) {
      return blinking(blinking.prelude(), blinking.cycle());
    }
    Course course = rhythm instanceof Rhythm.Dark ? Course.DARK : Course.STEADY;
    return new LampForm(course, false, Span.UNSAID, List.of(), List.of(), Span.UNSAID);
  }

  boolean same(LampForm other) {
    return course == other.course
        && led == other.led
        && lead.same(other.lead)
        && total.same(other.total)
        && same(prelude, other.prelude, 0)
        && (same(cycle, other.cycle, 0) || (!isAnchored() && turnedSame(other)));
  }

  /** Whether something comes before the cycle, so that its beginning is seen. */
  private boolean isAnchored() {
    return led || !prelude.isEmpty();
  }

  private boolean turnedSame(LampForm other) {
    for (int turn = 1; turn < cycle.size(); turn++) {
      if (same(cycle, other.cycle, turn)) {
        return true;
      }
    }
    return false;
  }

  private static boolean same(List<Light> a, List<Light> b, int turn) {
    if (a.size() != b.size()) {
      return false;
    }
    for (int i = 0; i < a.size(); i++) {
      if (!a.get(i).same(b.get((i + turn) % b.size()))) {
        return false;
      }
    }
    return true;
  }

  private static LampForm blinking(List<Part> prelude, Cycle cycle) {
    Lights before = new Lights(prelude);
    if (cycle instanceof Cycle.Rated rated) {
      Light blink = Light.blink(Size.UNSAID, Span.UNSAID);
      Light spaced = blink.then(After.START, Lights.spacing(rated.rate()));
      return repeating(before, List.of(spaced), Span.UNSAID);
    }
    Cycle.Parts whole = (Cycle.Parts) cycle;
    Lights lights = new Lights(whole.parts());
    if (lights.lights().isEmpty() || whole.ending() instanceof Ending.Once) {
      return once(prelude, whole.parts());
    }
    if (!before.needsSizes() && !lights.needsSizes()) {
      before.dropSizes();
      lights.dropSizes();
    }
    if (whole.parts().size() == 1 && whole.parts().get(0) instanceof Part.Lit) {
      // Of no length, for it never goes off.
      return new LampForm(
          Course.STEADY, before.isLed(), before.lead(), started(before), List.of(), Span.UNSAID);
    }
    if (lights.isOpen()) {
      lights.follow(After.CLOSING, Span.UNSAID);
    }
    if (lights.isLed()) {
      lights.follow(After.DARK, lights.lead());
      if (!before.lights().isEmpty()) {
        before.follow(After.DARK, lights.lead());
      }
    }
    Span every = whole.ending() instanceof Ending.Every e ? Span.of(e.cycle()) : Span.UNSAID;
    return repeating(before, lights.lights(), every);
  }

  private static LampForm once(List<Part> prelude, List<Part> parts) {
    Lights all = new Lights(Stream.concat(prelude.stream(), parts.stream()).toList());
    if (!all.needsSizes()) {
      all.dropSizes();
    }
    if (!all.lights().isEmpty()) {
      all.follow(After.END, Span.UNSAID);
    }
    return new LampForm(Course.ONCE, false, Span.UNSAID, started(all), List.of(), Span.UNSAID);
  }

  private static List<Light> started(Lights lights) {
    return lights.lights().stream().map(Light::fromStart).toList();
  }

  private static LampForm repeating(Lights before, List<Light> lights, Span every) {
    List<Light> cycle = new ArrayList<>(lights.stream().map(Light::fromStart).toList());
    Span total = every.isKnown() && closed(cycle, every) ? Span.UNSAID : every;
    List<Light> prelude = new ArrayList<>(started(before));
    boolean definite = !total.isKnown() && cycle.stream().allMatch(Light::isDefinite);
    if (definite) {
      cycle = smallest(cycle);
      while (!prelude.isEmpty() && last(prelude).same(last(cycle))) {
        prelude.remove(prelude.size() - 1);
        cycle.add(0, cycle.remove(cycle.size() - 1));
      }
    }
    return new LampForm(
        Course.REPEATS,
        before.isLed(),
        before.lead(),
        List.copyOf(prelude),
        List.copyOf(cycle),
        total);
  }

  /** Gives the one thing that the whole time leaves open; false if that cannot be done. */
  private static boolean closed(List<Light> cycle, Span every) {
    Span sum = Span.ZERO;
    int unknown = -1;
    for (int i = 0; i < cycle.size(); i++) {
      Light light = cycle.get(i);
      if (light.after() == After.START && light.gap().isPoint() && isSingle(light)) {
        sum = sum.plus(light.gap());
      } else if (unknown >= 0) {
        return false;
      } else {
        unknown = i;
      }
    }
    if (unknown < 0) {
      return true;
    }
    Light open = cycle.get(unknown);
    if (!isSingle(open) || open.after() == After.START) {
      return false;
    }
    Span gap = every.minus(sum);
    if (open.after() != After.DARK || !open.gap().isKnown()) {
      cycle.set(unknown, open.then(After.START, gap));
      return true;
    }
    if (open.on().isKnown() || !open.gap().isPoint()) {
      return false;
    }
    cycle.set(unknown, open.lasting(gap.minus(open.gap())).then(After.START, gap));
    return true;
  }

  private static boolean isSingle(Light light) {
    return light.kind() == Kind.BLINK || light.kind() == Kind.STEADY;
  }

  /** The shortest cycle that, repeated, gives this one. */
  private static List<Light> smallest(List<Light> cycle) {
    int size = cycle.size();
    for (int period = 1; period <= size / 2; period++) {
      if (size % period == 0 && repeats(cycle, period)) {
        return new ArrayList<>(cycle.subList(0, period));
      }
    }
    return cycle;
  }

  private static boolean repeats(List<Light> cycle, int period) {
    for (int i = period; i < cycle.size(); i++) {
      if (!cycle.get(i).same(cycle.get(i - period))) {
        return false;
      }
    }
    return true;
  }

  private static Light last(List<Light> lights) {
    return lights.get(lights.size() - 1);
  }
}

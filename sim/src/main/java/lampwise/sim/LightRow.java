package lampwise.sim;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The lights of a prelude or a cycle in order, with the dark before, between and after them.
 *
 * @param lights the lights
 * @param darks one more than there are lights: before the first, between them, after the last; the
 *     only one where there is no light
 */
record LightRow(List<LaidLight> lights, List<Dark> darks) {
  /** What is known of a dark. */
  enum Kind {
    /** There is none. */
    NONE,
    /** Its length was said, or is drawn like a spacing. */
    SET,
    /** An unsaid pause between groups. */
    GROUP,
    /** The unsaid pause that closes a cycle. */
    CLOSING
  }

  /**
   * A dark.
   *
   * @param kind what is known of it
   * @param length how long it is
   */
  record Dark(Kind kind, Amount length) {
    static Dark none() {
      return new Dark(Kind.NONE, Amount.fixed(0));
    }

    /** One whose length is given later. */
    static Dark open(Kind kind) {
      return new Dark(kind, Amount.fixed(0));
    }

    boolean isOpen() {
      return kind == Kind.GROUP || kind == Kind.CLOSING;
    }
  }

  Dark lead() {
    return darks.get(0);
  }

  Dark tail() {
    return darks.get(darks.size() - 1);
  }

  LightRow withTail(Dark tail) {
    List<Dark> changed = new ArrayList<>(darks);
    changed.set(changed.size() - 1, tail);
    return new LightRow(lights, changed);
  }

  boolean isSound() {
    return lights.stream().allMatch(LaidLight::isSound);
  }

  /** The lights of unsaid length. */
  List<Amount> openLights() {
    return lights.stream().filter(LaidLight::isOpen).map(LaidLight::length).toList();
  }

  List<Amount> openDarks(Kind kind) {
    return darks.stream().filter(dark -> dark.kind() == kind).map(Dark::length).toList();
  }

  /** The time of everything whose length is not open. */
  double setSeconds() {
    double sum = 0;
    for (LaidLight light : lights) {
      sum += light.isOpen() ? 0 : light.extent();
    }
    for (Dark dark : darks) {
      sum += dark.isOpen() ? 0 : dark.length().value();
    }
    return sum;
  }

  /** The time of everything that was said. */
  double saidSeconds() {
    double sum = 0;
    for (Map.Entry<Amount, Integer> entry : weights().entrySet()) {
      sum += entry.getKey().isSaid() ? entry.getKey().value() * entry.getValue() : 0;
    }
    return sum;
  }

  /** The largest spacing inside a group; zero if no group has two blinks. */
  double largestSpacing() {
    double most = 0;
    for (int i = 0; i < lights.size(); i++) {
      most = Math.max(most, lights.get(i).spacing());
      if (i > 0 && isJoin(i)) {
        most = Math.max(most, lights.get(i - 1).length().value() + darks.get(i).length().value());
      }
    }
    return most;
  }

  /** The longest dark between two lights that is not open and no spacing of a group. */
  double longestSetPause() {
    double most = 0;
    for (int i = 1; i < lights.size(); i++) {
      if (!darks.get(i).isOpen() && !isJoin(i)) {
        most = Math.max(most, darks.get(i).length().value());
      }
    }
    return most;
  }

  /** Whether a dark, by its number, is the unsaid spacing between a long and a short blink. */
  private boolean isJoin(int dark) {
    return darks.get(dark).kind() == Kind.SET && !darks.get(dark).length().isSaid();
  }

  /** How often each duration counts in the whole time. */
  Map<Amount, Integer> weights() {
    Map<Amount, Integer> weights = new LinkedHashMap<>();
    for (LaidLight light : lights) {
      weights.merge(light.length(), 1, Integer::sum);
      if (light.count() > 1) {
        weights.merge(light.apart(), light.count() - 1, Integer::sum);
      }
    }
    for (Dark dark : darks) {
      weights.merge(dark.length(), 1, Integer::sum);
    }
    return weights;
  }

  /** Adds all pulses from a time on and gives the time of the end. */
  double lay(double from, List<DrawnRhythm.Pulse> pulses) {
    double time = from + lead().length().value();
    for (int i = 0; i < lights.size(); i++) {
      time = lights.get(i).lay(time, pulses) + darks.get(i + 1).length().value();
    }
    return time;
  }
}

package lampwise.sim;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import lampwise.sheet.Basis;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.Condition;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;

/**
 * The rhythms of real marine lights as one code sheet. Source: US NGA List of Lights, Pub. 114, as
 * published in February 2022; testdata/rhythms/light-list.csv.
 */
final class LightList {
  private static final Path TABLE = Path.of("..", "testdata", "rhythms", "light-list.csv");

  /** How far a light's clock may run from the printed times. */
  static final double CLOCK = 0.02;

  /** Standard deviation of a start or end that a careful person notes, seconds. */
  static final double NOTED_SD = 0.04;

  /** How many cycles are watched, at the least. */
  static final int CYCLES = 3;

  /**
   * Two rhythms whose starts and ends lie less than this many standard deviations apart cannot be
   * told apart with 99 % certainty by the best of tests (twice the normal quantile of 0.99).
   */
  static final double TOLD_APART = 2 * 2.326;

  /**
   * How late the end of a light is noted at the most; how late it is in one recording, nobody knows
   * (chosen, as in the decoder).
   */
  static final double RELEASE_SECONDS = 0.12;

  private static final int STRETCHES = 40;
  private static final int RELEASES = 12;

  private LightList() {}

  /**
   * A row of the table.
   *
   * @param phases light and dark in turn, seconds, light first
   */
  record Light(String id, double[] phases, String phrase) {
    String state() {
      return id.toLowerCase(Locale.ROOT);
    }

    double cycleSeconds() {
      return Arrays.stream(phases).sum();
    }

    /** Starts and ends of some cycles, beginning with one of the lights. */
    private double[] edges(int turn) {
      double[] edges = new double[CYCLES * phases.length];
      double time = 0;
      for (int i = 0; i < edges.length; i++) {
        edges[i] = time;
        time += phases[(2 * turn + i) % phases.length];
      }
      return edges;
    }

    @Override
    public String toString() {
      return id;
    }
  }

  static List<Light> lights() {
    try (Stream<String> lines = Files.lines(TABLE)) {
      return lines
          .skip(1)
          .map(line -> line.split(";"))
          .map(cells -> new Light(cells[0], seconds(cells[3]), cells[5]))
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static double[] seconds(String milliseconds) {
    return Stream.of(milliseconds.split(","))
        .mapToDouble(text -> Double.parseDouble(text.trim()) / 1000)
        .toArray();
  }

  static CodeSheet sheet(List<Light> lights) {
    List<LampState> states = new ArrayList<>();
    for (Light light : lights) {
      states.add(
          new LampState(
              light.state(),
              Phrases.rhythm(light.phrase()),
              "The light " + light.id(),
              Condition.OTHER,
              Seen.ALWAYS,
              1,
              Optional.empty(),
              Optional.empty(),
              Optional.empty()));
    }
    return new CodeSheet(
        "Lights of Pub. 114",
        Basis.LABEL,
        Optional.empty(),
        List.of(),
        List.of(),
        Optional.empty(),
        Optional.empty(),
        CLOCK,
        OptionalDouble.empty(),
        states);
  }

  /**
   * The states of the lights that three cycles, noted with starts and ends by a careful person who
   * misses nothing, do not tell from this one with 99 % certainty; itself is one of them. A light
   * need not be a twin of its twin: ends are noted late, never early.
   */
  static Set<String> twins(Light light, List<Light> lights) {
    Set<String> twins = new TreeSet<>();
    for (Light other : lights) {
      if (apart(light, other) < TOLD_APART) {
        twins.add(other.state());
      }
    }
    return twins;
  }

  /**
   * How far apart what is noted of a light is from what it would be of another, in standard
   * deviations, as a root of summed squares over the starts and ends of three cycles; at the worst
   * beginning and the worst two clocks within the tolerance, the ends of the other noted late by up
   * to {@link #RELEASE_SECONDS}. Infinite if they have different numbers of lights.
   */
  static double apart(Light light, Light other) {
    if (light.phases().length != other.phases().length) {
      return Double.POSITIVE_INFINITY;
    }
    double least = Double.POSITIVE_INFINITY;
    double[] first = light.edges(0);
    for (int turn = 0; turn < other.phases().length / 2; turn++) {
      double[] second = other.edges(turn);
      for (int i = -STRETCHES; i <= STRETCHES; i++) {
        // From the one clock slow and the other fast to the opposite.
        double root = Math.pow((1 + CLOCK) / (1 - CLOCK), 0.5 * i / STRETCHES);
        for (int late = 0; late <= RELEASES; late++) {
          double release = RELEASE_SECONDS * late / RELEASES;
          least = Math.min(least, squares(first, second, root, release));
        }
      }
    }
    return Math.sqrt(least) / NOTED_SD;
  }

  /**
   * The sum of the squared differences of two rows of starts and ends, at the best phase.
   *
   * @param root how many times as long the first is, and as short the second
   * @param release how late the ends of the second would be noted
   */
  private static double squares(double[] first, double[] second, double root, double release) {
    double sum = 0;
    double squares = 0;
    for (int k = 0; k < first.length; k++) {
      double off = first[k] * root - second[k] / root - (k % 2 == 1 ? release : 0);
      sum += off;
      squares += off * off;
    }
    return Math.max(0, squares - sum * sum / first.length);
  }
}

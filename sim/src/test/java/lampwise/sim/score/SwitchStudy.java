package lampwise.sim.score;

import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import lampwise.decode.Decoder;
import lampwise.decode.LampDecoder;
import lampwise.decode.Reading;
import lampwise.decode.Segment;
import lampwise.light.Recording;
import lampwise.rhythm.Cycle;
import lampwise.rhythm.Ending;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sim.Act;
import lampwise.sim.Chance;
import lampwise.sim.Labelled;
import lampwise.sim.Observer;
import lampwise.sim.Presets;
import lampwise.sim.Scene;
import lampwise.sim.Scenes;
import lampwise.sim.Simulator;

/**
 * How well a change of state is found: recordings of two different states of a sheet, three cycles
 * of each. A rate counts as its slowest, a dark lamp as the longest cycle of the sheet.
 *
 * <p>Run it as a program: {@code SwitchStudy [observer [count [seed]]]}.
 */
final class SwitchStudy {
  /** How many cycles of each state are shown. */
  static final int CYCLES = 3;

  private final CodeSheet sheet;
  private final Decoder decoder = new LampDecoder();

  /** Recordings with a change, and how many of them were read well. */
  private int count;

  private int cut;
  private int found;
  private int right;
  private int both;

  /** The pairs of states that were not read right, and how often. */
  private final Map<String, Integer> faults = new TreeMap<>();

  SwitchStudy(CodeSheet sheet) {
    this.sheet = sheet;
  }

  /** The longest that a cycle of a state lasts; 0 if it has none. */
  static double cycleSeconds(LampState state) {
    if (state.rhythm() instanceof Rhythm.Blinking blinking) {
      if (blinking.cycle() instanceof Cycle.Rated rated) {
        return 1 / rated.rate().leastPerSecond();
      }
      if (blinking.cycle() instanceof Cycle.Parts parts
          && parts.ending() instanceof Ending.Every every) {
        return every.cycle().mostSeconds();
      }
    }
    return 0;
  }

  private double countedSeconds(LampState state) {
    double own = cycleSeconds(state);
    return own > 0
        ? own
        : sheet.states().stream().mapToDouble(SwitchStudy::cycleSeconds).max().orElseThrow();
  }

  /** Reads recordings with one change each. */
  void changes(Observer observer, int recordings, long seed) {
    List<LampState> states = sheet.states();
    for (int i = 0; i < recordings; i++) {
      Chance chance = Chance.of(seed).branch("change").branch(i);
      Chance drawing = chance.branch("states");
      int first = drawing.below(states.size());
      int then = (first + 1 + drawing.below(states.size() - 1)) % states.size();
      LampState a = states.get(first);
      LampState b = states.get(then);
      double change = CYCLES * countedSeconds(a);
      double end = change + CYCLES * countedSeconds(b);
      Scene scene = Scenes.switching(sheet, List.of(a, b), List.of(change), end);
      Labelled labelled = Simulator.record(scene, observer, chance);
      judge(labelled, a, b, change);
    }
  }

  private void judge(Labelled labelled, LampState a, LampState b, double change) {
    Reading reading = decoder.decode(sheet, List.of(labelled.recording()));
    List<Segment> segments = reading.segments();
    double slower = Math.max(countedSeconds(a), countedSeconds(b));
    List<String> tops = new ArrayList<>();
    segments.forEach(segment -> tops.add(segment.candidates().get(0).state()));
    boolean two = segments.size() == 2;
    boolean near = two && Math.abs(segments.get(0).stretch().toSeconds() - change) <= slower;
    boolean named = tops.equals(List.of(a.name(), b.name()));
    count++;
    cut += segments.size() > 1 ? 1 : 0;
    found += near ? 1 : 0;
    right += named ? 1 : 0;
    both += near && named ? 1 : 0;
    if (!(near && named)) {
      String fault = a.name() + " " + b.name() + " -> " + String.join(" ", tops);
      faults.merge(fault + (named ? " (elsewhere)" : ""), 1, Integer::sum);
    }
  }

  /** Share of the recordings with a change in which it was found and both states were right. */
  double share() {
    return both / (double) count;
  }

  /** Share of recordings without a change that are cut all the same. */
  static double wronglyCut(
      CodeSheet sheet, Observer observer, double seconds, int recordings, long seed) {
    Decoder decoder = new LampDecoder();
    int cut = 0;
    for (int i = 0; i < recordings; i++) {
      Chance chance = Chance.of(seed).branch("none").branch(i);
      LampState state = sheet.states().get(chance.branch("states").below(sheet.states().size()));
      Scene scene = Scene.of(sheet, Act.of(state), seconds);
      Recording recording = Simulator.record(scene, observer, chance).recording();
      cut += decoder.decode(sheet, List.of(recording)).segments().size() > 1 ? 1 : 0;
    }
    return cut / (double) recordings;
  }

  private String shown() {
    return String.format(
        Locale.ROOT,
        "%d recordings: cut %.3f, change found %.3f, both states right %.3f, all %.3f",
        count,
        cut / (double) count,
        found / (double) count,
        right / (double) count,
        share());
  }

  private static long cpuNanos() {
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
  }

  /** Prints the study's figures. */
  public static void main(String[] arguments) {
    int recordings = arguments.length > 1 ? Integer.parseInt(arguments[1]) : Bench.COUNT;
    long seed = arguments.length > 2 ? Long.parseLong(arguments[2]) : Bench.SEED;
    List<String> observers =
        arguments.length > 0 ? List.of(arguments[0].split(",")) : List.of("exact", "careful");
    CodeSheet sheet = Bench.sheet();
    for (String name : observers) {
      SwitchStudy study = new SwitchStudy(sheet);
      long start = cpuNanos();
      study.changes(Presets.named(name), recordings, seed);
      double each = (cpuNanos() - start) / 1e6 / recordings;
      System.out.println(name + ", " + study.shown());
      System.out.printf(Locale.ROOT, "  %.1f ms a recording%n", each);
      study.faults.forEach((fault, times) -> System.out.println("  " + times + " " + fault));
      for (double seconds : new double[] {20, 45, 90}) {
        start = cpuNanos();
        double share = wronglyCut(sheet, Presets.named(name), seconds, recordings, seed);
        each = (cpuNanos() - start) / 1e6 / recordings;
        System.out.printf(
            Locale.ROOT, "  no change, %.0f s: cut %.4f, %.1f ms%n", seconds, share, each);
      }
    }
  }
}

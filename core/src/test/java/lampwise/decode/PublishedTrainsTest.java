package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeSet;
import java.util.stream.Stream;
import lampwise.Testdata;
import lampwise.light.Recording;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Rhythms that standards and authorities publish, all on one code sheet. The values, their sources
 * and how sure each is stand in testdata/rhythms.
 */
class PublishedTrainsTest {
  /** How far a phrase's light may lie from the published train: the CFR's thirds are rounded. */
  private static final double TRAIN_TOLERANCE_SECONDS = 1e-5;

  private static final double CLOCK = 0.05;
  private static final int SEEDS = 6;

  private static final List<Published> ALL = read();
  private static final CodeSheet SHEET = sheet();

  /** A row of the table. */
  record Published(String id, String state, String status, String train, String phrase) {
    CleanRecordings recordings() {
      return CleanRecordings.ofPhases(
          Stream.of(train.split(",")).mapToDouble(ms -> Double.parseDouble(ms) / 1000).toArray());
    }

    @Override
    public String toString() {
      return id;
    }
  }

  private static List<Published> read() {
    String text =
        new String(Testdata.bytes("rhythms", "published-trains.csv"), StandardCharsets.UTF_8);
    List<Published> rows = new ArrayList<>();
    for (String line : text.lines().skip(1).toList()) {
      String[] cells = line.split(";");
      String state = cells[0].toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9-]", "-");
      rows.add(new Published(cells[0], state, cells[1], cells[3], cells[4]));
    }
    return rows;
  }

  private static CodeSheet sheet() {
    List<LampState> states = new ArrayList<>();
    for (Published row : ALL) {
      states.add(Sheets.state(row.state(), row.phrase(), Seen.ALWAYS));
    }
    return Sheets.of(CLOCK, OptionalDouble.empty(), states);
  }

  static List<Published> all() {
    return ALL;
  }

  /** The states whose published train is the same light, itself included. */
  private static Set<String> twins(Published row) {
    Set<String> twins = new TreeSet<>();
    for (Published other : ALL) {
      if (other.train().equals(row.train())) {
        twins.add(other.state());
      }
    }
    return twins;
  }

  @Test
  void theTableHoldsOnlyWhatWasSeen() {
    assertEquals(47, ALL.size());
    for (Published row : ALL) {
      assertTrue(Set.of("seen", "seen-secondary").contains(row.status()), row.id());
    }
  }

  @ParameterizedTest
  @MethodSource("all")
  void thePhraseSaysTheTrain(Published row) {
    Rhythm.Blinking rhythm = (Rhythm.Blinking) Sheets.rhythm(row.phrase());
    List<Train> trains = Templates.of(rhythm, OptionalDouble.empty(), 0);
    assertEquals(1, trains.size());
    Train train = trains.get(0);
    CleanRecordings published = row.recordings();
    assertEquals(published.cycleSeconds(), train.cycleSeconds(), TRAIN_TOLERANCE_SECONDS);
    assertEquals(published.onOff().length / 2, train.perCycle());
    for (int i = 0; i < train.perCycle(); i++) {
      double on = published.onOff()[2 * i];
      double off = published.onOff()[2 * i + 1];
      assertEquals(on, train.on(i) - train.on(0), TRAIN_TOLERANCE_SECONDS, row.phrase());
      assertEquals(off - on, train.length(i), TRAIN_TOLERANCE_SECONDS, row.phrase());
    }
  }

  @ParameterizedTest
  @MethodSource("all")
  void threeCyclesNotedOnAndOff(Published row) {
    for (int seed = 0; seed < SEEDS; seed++) {
      right(row, drawn(row, seed).onAndOff(), "log, seed " + seed);
    }
  }

  @ParameterizedTest
  @MethodSource("all")
  void threeCyclesAsALightCurve(Published row) {
    // 250 samples a second: twelve in the shortest phase, 50 ms.
    right(row, drawn(row, 71).curve(250, 100, 20, 0.3, 71), "light curve");
  }

  /** Three blinks of a train that never pauses may as well be a stretch of a longer train. */
  @ParameterizedTest
  @MethodSource("parts")
  void aStretchOfALongerTrainIsNotDecided(Published row) {
    for (int seed = 0; seed < SEEDS; seed++) {
      Reading reading = Answers.decode(SHEET, drawn(row, seed).cycles(3).onAndOff());
      Verdict.Undecided undecided =
          assertInstanceOf(
              Verdict.Undecided.class, reading.verdict(), () -> Answers.shown(reading));
      assertTrue(twins(row).contains(Answers.top(reading)), () -> Answers.shown(reading));
      assertTrue(Answers.open(undecided).containsAll(twins(row)), () -> Answers.shown(reading));
    }
  }

  static List<Published> parts() {
    return ALL.stream().filter(row -> longest(row) > row.recordings().cycleSeconds()).toList();
  }

  /** The cycle of the longest train that holds three cycles of this one in a row. */
  private static double longest(Published row) {
    double longest = row.recordings().cycleSeconds();
    String three = String.join(", ", row.train(), row.train(), row.train().split(",")[0]);
    for (Published other : ALL) {
      if (!other.train().equals(row.train()) && other.train().startsWith(three)) {
        longest = Math.max(longest, other.recordings().cycleSeconds());
      }
    }
    return longest;
  }

  /** Three cycles, but as long as the longest train of which they could be a stretch. */
  private static CleanRecordings drawn(Published row, int seed) {
    SplittableRandom random = new SplittableRandom(1000L * ALL.indexOf(row) + seed);
    CleanRecordings drawn = row.recordings().drawn(random, CLOCK);
    return drawn.cycles(Math.max(3, longest(row) / drawn.cycleSeconds()));
  }

  /** The right state, or it and its twins and nothing else. */
  private static void right(Published row, Recording recording, String what) {
    Reading reading = Answers.decode(SHEET, recording);
    Set<String> twins = twins(row);
    if (twins.size() == 1) {
      Answers.assertDecoded(row.state(), reading, what);
    } else {
      Answers.assertUndecided(twins, reading, what);
    }
    assertTrue(twins.contains(Answers.top(reading)), () -> Answers.shown(reading));
  }
}

package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import lampwise.file.SheetReader;
import lampwise.light.Description;
import lampwise.light.Marks;
import lampwise.light.Origin;
import lampwise.light.Targets;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What people say of a lamp. */
class ToldTest {
  private static final CodeSheet DEMO = SheetReader.demo();

  private static Description said(String words, double watched) {
    return new Description(
        Origin.named("said"), Marks.watched(0, watched).withTargets(Targets.none()), words);
  }

  private static Reading decode(String words, double watched) {
    return Answers.decode(DEMO, said(words, watched));
  }

  @ParameterizedTest
  @CsvSource({
    "1 blink every 3 s, cells-low",
    "1 blink every 6 s, sees-too-near",
    "3 blinks every 10 s, window-covered",
    "3 blinks then 2 blinks, coil-shorted",
    "3 blinks then 2 blinks every 10 s, coil-shorted",
    "1 long blink then 2 short blinks every 10 s, hygiene-flush",
    "steady, held-off",
    "nothing, resting",
  })
  void theLikeliestStateIsTheOneMeant(String words, String state) {
    Reading reading = decode(words, 60);
    assertEquals(state, Answers.top(reading), () -> Answers.shown(reading));
    Answers.assertSound(DEMO, reading);
  }

  @ParameterizedTest
  @CsvSource({"fast blinks", "slow blinks", "blinks", "3 blinks", "nothing", "steady"})
  void vagueWordsDecideNothingAndSayWhatWould(String words) {
    Reading reading = decode(words, 40);
    Verdict.Undecided undecided =
        assertInstanceOf(Verdict.Undecided.class, reading.verdict(), () -> Answers.shown(reading));
    Next next = undecided.next();
    assertTrue(
        next instanceof Next.Check || (next instanceof Next.Watch watch && watch.seconds() >= 20),
        next::toString);
  }

  @Test
  void wordsThatAreNoPhraseAndNothingWithoutATimeAreUnreadable() {
    assertInstanceOf(Verdict.Unreadable.class, decode("three flashes", 40).verdict());
    Description untimed = new Description(Origin.named("said"), Marks.nothing(), "nothing");
    assertInstanceOf(Verdict.Unreadable.class, Answers.decode(DEMO, untimed).verdict());
  }

  @Test
  void howLongSomebodyWatchedSaysWhatNothingMeans() {
    CodeSheet two = Sheets.of(0.05, "often", "1 blink every 20 s", "out", "dark");
    double briefly = Answers.probability(Answers.decode(two, said("nothing", 5)), "often");
    double long_ = Answers.probability(Answers.decode(two, said("nothing", 100)), "often");
    assertTrue(briefly > 0.3, "briefly " + briefly);
    assertTrue(long_ < 0.02, "long " + long_);
  }

  /**
   * People after a small model of their own, not the decoder's: up to three blinks are counted
   * right but for one in fifty, four and more are off by one in one of six; the time of a cycle is
   * judged within a tenth (normal error) and said in whole seconds, in halves below five; one in
   * ten names a range of a second either way. Chosen; common practice, no source.
   */
  @Test
  void whatIsDecidedFromPeoplesCountsIsRight() {
    SplittableRandom random = new SplittableRandom(2026);
    int decided = 0;
    int wrong = 0;
    List<String> faults = new ArrayList<>();
    for (int i = 0; i < 3000; i++) {
      LampState state = DEMO.states().get(random.nextInt(DEMO.states().size()));
      if (state.seen() != Seen.ALWAYS || !(state.rhythm() instanceof Rhythm.Blinking rhythm)) {
        continue;
      }
      Train train = Templates.of(rhythm, DEMO.blinkSeconds(), DEMO.clockTolerance()).get(0);
      Counted counted = Counted.of(rhythm, List.of(train));
      String words = words(counted, train, random);
      Reading reading = decode(words, 60);
      if (reading.verdict() instanceof Verdict.Decoded answer) {
        decided++;
        if (!answer.state().equals(state.name())) {
          wrong++;
          faults.add(state.name() + " as \"" + words + "\" -> " + Answers.shown(reading));
        }
      }
    }
    assertTrue(decided > 200, "decided " + decided);
    assertTrue(wrong <= 0.03 * decided, wrong + " of " + decided + ": " + faults);
  }

  private static String words(Counted counted, Train train, SplittableRandom random) {
    StringBuilder words = new StringBuilder();
    for (Counted.Group group : counted.groups()) {
      int count = group.max();
      if (random.nextDouble() < (count <= 3 ? 0.02 : 1 / 6.0)) {
        count = Math.max(1, count + (random.nextBoolean() ? 1 : -1));
      }
      words.append(words.length() == 0 ? "" : " then ").append(count);
      words.append(count == 1 ? " blink" : " blinks");
    }
    double clock = 1 + 0.05 * (2 * random.nextDouble() - 1);
    double cycle = train.cycleSeconds() * clock * (1 + 0.1 * normal(random));
    double said = cycle < 5 ? Math.rint(2 * cycle) / 2 : Math.rint(cycle);
    if (random.nextDouble() < 0.1 && said > 2) {
      return String.format(Locale.ROOT, "%s every %.1f to %.1f s", words, said - 1, said + 1);
    }
    return String.format(Locale.ROOT, "%s every %.1f s", words, said);
  }

  /** Sum of twelve even numbers less six. */
  private static double normal(SplittableRandom random) {
    double sum = -6;
    for (int i = 0; i < 12; i++) {
      sum += random.nextDouble();
    }
    return sum;
  }
}

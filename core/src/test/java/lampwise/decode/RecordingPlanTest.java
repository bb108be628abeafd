package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.atomic.AtomicInteger;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;
import org.junit.jupiter.api.Test;

class RecordingPlanTest {
  private static final Watching CAREFUL = Watching.byHand(0.04, 0.03, 0.3 / 60, 0);
  private static final Watching CARELESS = Watching.byHand(0.08, 0.2, 3.0 / 60, 0.15);

  private static final LampState QUICK = Sheets.state("quick", "1 blink every 3.4 s", Seen.ALWAYS);
  private static final LampState SLOW = Sheets.state("slow", "1 blink every 6.8 s", Seen.ALWAYS);
  private static final LampState DARK = Sheets.state("dark", "dark", Seen.ALWAYS);
  private static final LampState IDLE = Sheets.state("idle", "dark", Seen.IDLE);
  private static final LampState HAND = Sheets.state("hand", "steady", Seen.TARGET);
  private static final LampState FIVE =
      Sheets.state("five", "5 to 6 blinks per second", Seen.ALWAYS);
  private static final LampState EIGHT =
      Sheets.state("eight", "8 to 9 blinks per second", Seen.ALWAYS);

  private static RecordingPlan plan(Watching watching, LampState... states) {
    CodeSheet sheet = Sheets.of(0.05, OptionalDouble.of(0.09), List.of(states));
    return new RecordingPlan(sheet, watching);
  }

  private static double seconds(Watching watching, LampState first, LampState second) {
    return plan(watching, first, second).between(first, second).seconds().orElseThrow();
  }

  @Test
  void whoMissesMoreWatchesLonger() {
    double careful = seconds(CAREFUL, QUICK, SLOW);
    assertTrue(careful >= 6.8 && careful < 20, "careful " + careful);
    double careless = seconds(CARELESS, QUICK, SLOW);
    assertTrue(careless > 1.5 * careful, "careless " + careless);
  }

  @Test
  void aSlowBlinkIsToldFromDarkAfterSeveralCycles() {
    double seconds = seconds(CAREFUL, SLOW, DARK);
    assertTrue(seconds > 6.8 && seconds < 40, "seconds " + seconds);
  }

  @Test
  void theSameEachTimeAndEitherWayRound() {
    RecordingPlan plan = plan(CAREFUL, QUICK, SLOW);
    assertEquals(plan.between(QUICK, SLOW), plan.between(QUICK, SLOW));
    double back = plan(CAREFUL, SLOW, QUICK).between(SLOW, QUICK).seconds().orElseThrow();
    assertEquals(plan.between(QUICK, SLOW).seconds().orElseThrow(), back);
  }

  @Test
  void statesThatLookAlikeHaveTheSameAnswers() {
    LampState night = Sheets.state("night", "dark", Seen.ALWAYS);
    RecordingPlan plan = plan(CAREFUL, DARK, QUICK, night);
    double dark = plan.between(DARK, QUICK).seconds().orElseThrow();
    assertEquals(dark, plan.between(QUICK, night).seconds().orElseThrow());
    assertEquals(dark, plan(CAREFUL, QUICK, night).pairs(() -> {}).get(0).seconds().orElseThrow());
  }

  @Test
  void theSameLampIsNotToldApart() {
    RecordingPlan.Pair pair = plan(CAREFUL, DARK, IDLE).between(DARK, IDLE);
    assertTrue(pair.seconds().isEmpty());
    assertTrue(pair.otherwise().orElseThrow().startsWith("the lamp is the same"));
  }

  @Test
  void whatShowsWithATargetIsProvoked() {
    RecordingPlan.Pair pair = plan(CAREFUL, IDLE, HAND).between(IDLE, HAND);
    assertTrue(pair.seconds().isPresent());
    assertTrue(pair.provoke().orElseThrow().startsWith("hold a hand"), pair.toString());
  }

  @Test
  void fastOnesAreForAFilm() {
    RecordingPlan byHand = plan(CAREFUL, FIVE, EIGHT);
    assertTrue(byHand.isTooFast(FIVE.rhythm()));
    assertFalse(byHand.isTooFast(QUICK.rhythm()));
    assertEquals(
        "too fast to tap: say \"fast blinks\", or film it",
        byHand.between(FIVE, EIGHT).otherwise().orElseThrow());
    RecordingPlan bySensor = plan(Watching.bySensor(50), FIVE, EIGHT);
    assertTrue(bySensor.between(FIVE, EIGHT).seconds().isPresent());
    RecordingPlan slowSensor = plan(Watching.bySensor(5), FIVE, EIGHT);
    assertEquals(
        "too fast: so many samples follow up to 2.5 blinks a second, and faster ones look slower"
            + " than they are; sample faster",
        slowSensor.between(FIVE, EIGHT).otherwise().orElseThrow());
    assertEquals(byHand.between(FIVE, EIGHT).otherwise(), byHand.between(QUICK, FIVE).otherwise());
  }

  /** A dark of 0.2 s every 8 s is waited for, and for another where it can be missed. */
  @Test
  void aSteadyLampIsWatchedUntilTheOtherWasDark() {
    LampState steady = Sheets.state("lit", "steady", Seen.ALWAYS);
    LampState winking = Sheets.state("wink", "steady then dark 0.2 s every 8 s", Seen.ALWAYS);
    assertEquals(8.2, seconds(Watching.bySensor(50), steady, winking));
    assertEquals(17, seconds(CAREFUL, winking, steady));
    assertEquals(25, seconds(CARELESS, winking, steady));
    assertEquals(RecordingPlan.LEAST_SECONDS, seconds(CARELESS, steady, QUICK));
    assertEquals(RecordingPlan.LEAST_SECONDS, seconds(CARELESS, steady, DARK));
  }

  /** As short as it may be: two or three blinks of two a second, which are not all missed. */
  @Test
  void aQuickLampIsToldFromDarkAtOnce() {
    LampState rapid = Sheets.state("rapid", "1.5 to 2.5 blinks per second", Seen.ALWAYS);
    double careful = seconds(CAREFUL, rapid, DARK);
    assertTrue(careful >= RecordingPlan.LEAST_SECONDS && careful < 3, "careful " + careful);
    assertEquals(Math.rint(10 * careful), 10 * careful, 1e-9);
    double careless = seconds(CARELESS, rapid, DARK);
    assertTrue(careless > careful && careless < 6, "careless " + careless);
  }

  /** Rhythms that differ in how long their blinks are, and in nothing else. */
  @Test
  void endsTellBlinksOfOtherLengths() {
    LampState brief = Sheets.state("brief", "1 blink of 0.3 s every 5 s", Seen.ALWAYS);
    LampState lasting = Sheets.state("lasting", "1 blink of 1.5 s every 5 s", Seen.ALWAYS);
    assertTrue(plan(CAREFUL, brief, lasting).between(brief, lasting).seconds().isEmpty());
    double held = seconds(CAREFUL.withEnds(), brief, lasting);
    assertTrue(held <= 25, "held " + held);
    double sensed = seconds(Watching.bySensor(20), brief, lasting);
    assertTrue(sensed <= 10, "sensed " + sensed);
  }

  @Test
  void aSingleShowIsBroughtAboutTwice() {
    LampState once = Sheets.state("once", "1 blink once", Seen.AFTER_FLUSH);
    RecordingPlan.Pair pair = plan(CAREFUL, once, DARK).between(once, DARK);
    assertTrue(pair.seconds().isEmpty(), pair.toString());
    assertTrue(pair.otherwise().orElseThrow().contains("bring it about twice"), pair.toString());
  }

  @Test
  void everyPairOnce() {
    AtomicInteger done = new AtomicInteger();
    RecordingPlan plan = plan(CAREFUL, QUICK, SLOW, DARK);
    assertEquals(3, plan.count());
    List<RecordingPlan.Pair> pairs = plan.pairs(done::incrementAndGet);
    assertEquals(3, done.get());
    assertEquals(
        List.of("quick slow", "quick dark", "slow dark"),
        pairs.stream().map(p -> p.first() + " " + p.second()).toList());
  }

  @Test
  void whatCannotBeIsRefused() {
    for (double wrong : new double[] {Double.NaN, -0.1, 6, Double.POSITIVE_INFINITY}) {
      PlanException e = assertThrows(PlanException.class, () -> Watching.byHand(wrong, 0.03, 0, 0));
      assertEquals("timing error is " + wrong + "; expected 0.0 to 5.0", e.getMessage());
    }
    assertThrows(PlanException.class, () -> Watching.bySensor(0));
    assertThrows(PlanException.class, () -> Watching.bySensor(Double.NaN));
    assertThrows(PlanException.class, () -> Watching.byHand(0.04, 0.95, 0, 0));
  }
}

package lampwise.sim.score;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import lampwise.light.BlinkLog;
import lampwise.light.Marks;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.Seen;
import lampwise.sim.Chance;
import lampwise.sim.Mix;
import lampwise.sim.Person;
import lampwise.sim.PlainSheet;
import org.junit.jupiter.api.Test;

/** The average over free rhythms against plain sums, and by what it says of its own draws. */
class FreeSumTest {
  private static final double TO = 12;
  private static final double BLINK = 0.1;
  private static final double LATE = 0.15;
  private static final double BURST_GAP = 1;

  private static Taps evidence(Sighting sighting) {
    return new Taps(sighting, LATE, BURST_GAP);
  }

  private static FreeSum.Estimate estimate(FreePrior prior, Sighting sighting) {
    FreeGuess guess = new FreeGuess(sighting, LATE, BURST_GAP + BLINK);
    double floor = sighting.logAllStrays() - 40;
    return new FreeSum(prior, evidence(sighting), guess, BLINK, floor).estimate();
  }

  private static void assertNear(double expected, FreeSum.Estimate estimate) {
    String said = "expected " + expected + ", " + estimate;
    assertTrue(estimate.error() < 0.1, said);
    assertEquals(expected, estimate.log(), 4 * estimate.error() + 0.03, said);
  }

  private static double at(FreeForm form, Sighting sighting, double... point) {
    Fold fold = form.fold(point, BLINK);
    double start = TO / 2 + point[0];
    return Math.exp(evidence(sighting).log(fold, start, 1, 0, 0, Double.NEGATIVE_INFINITY));
  }

  /** Single blinks: every cycle and start of a fine grid, the prior written out. */
  @Test
  void singleBlinksLikeAPlainSum() {
    FreeForm form = FreeForm.even(1);
    double usual = 0.8 / Math.log(20 / 0.5);
    double any = 0.2 / Math.log(60 / 0.1);
    for (double[] taps : new double[][] {{1.2, 4.3, 7.1, 10.2}, {5}, {}, {2, 2.7, 9}}) {
      Sighting sighting = new Sighting(taps, 0, TO, 0.15, 0.2, 0.05);
      int fine = 1500;
      double width = Math.log(60 / 0.1) / fine;
      double sum = 0;
      for (int i = 0; i < fine; i++) {
        double cycle = 0.1 * Math.exp((i + 0.5) * width);
        double share = (any + (cycle >= 0.5 && cycle <= 20 ? usual : 0)) * width;
        int starts = (int) Math.ceil(cycle / 0.06);
        for (int k = 0; k < starts; k++) {
          sum += share / starts * at(form, sighting, -(k + 0.5) / starts * cycle, cycle);
        }
      }
      assertNear(Math.log(sum), estimate(FreePrior.of(List.of(form), 1), sighting));
    }
  }

  /** Pairs: every spacing, cycle and start of a grid, the prior written out. */
  @Test
  void pairsLikeAPlainSum() {
    FreeForm form = FreeForm.even(2);
    double[] taps = {0.9, 1.75, 6.1, 6.95, 11.2};
    Sighting sighting = new Sighting(taps, 0, TO, 0.25, 0.2, 0.05);
    int fine = 40;
    double sum = 0;
    double width = Math.log(3 / 0.12) / fine;
    for (int i = 0; i < fine; i++) {
      double apart = 0.12 * Math.exp((i + 0.5) * width);
      double least = 2.5 * apart;
      double low = Math.max(0.5, least);
      int cycles = 150;
      double step = Math.log(60 / least) / cycles;
      for (int c = 0; c < cycles; c++) {
        double cycle = least * Math.exp((c + 0.5) * step);
        double density =
            0.2 / Math.log(60 / least)
                + (cycle >= low && cycle <= 20 ? 0.8 / Math.log(20 / low) : 0);
        int starts = (int) Math.ceil(cycle / 0.12);
        for (int k = 0; k < starts; k++) {
          double start = -(k + 0.5) / starts * cycle;
          sum += density * step / fine / starts * at(form, sighting, start, apart, cycle);
        }
      }
    }
    assertNear(Math.log(sum), estimate(FreePrior.of(List.of(form), 1), sighting));
  }

  /** Rhythms that are known but for their stretch: the sum over the plane, by bounds. */
  @Test
  void knownRhythmsLikeTheGrid() {
    Fold code =
        new Fold(
            new double[] {0, 0.45, 1.84, 2.29, 2.74},
            new double[] {0.1, 0.55, 1.94, 2.39, 2.84},
            5,
            new Fold.Stretch(0.05, 0, 0));
    Fold rate =
        new Fold(new double[] {0, 1}, new double[] {0.1, 1.1}, 3, new Fold.Stretch(0.05, 1.5, 2.5));
    double[] taps = {0.3, 1.0, 2.15, 2.6, 3.1, 7.2, 7.6, 8.05, 10.2, 10.7};
    Sighting sighting = new Sighting(taps, 0, TO, 0.1, 0.2, 0.05);
    for (Fold fold : List.of(code, rate)) {
      Grid grid = new Grid(fold, evidence(sighting));
      double least = sighting.logAllStrays() - 40;
      double plain = grid.logSum(grid.first(least), least, 40);
      FreePrior prior = FreePrior.of(List.of(FreeForm.known(fold)), 1);
      assertNear(plain, estimate(prior, sighting));
    }
  }

  /**
   * Where nothing is ever noted every rhythm is as likely, so that the average is that of the
   * prior, which must be 1: for each form, and for all beside a sheet, what it lists left out.
   */
  @Test
  void thePriorSumsToOne() {
    Sighting blind = new Sighting(new double[0], 0, TO, 0.1, 1, 0.05);
    Mix mix = mix();
    Candidates candidates = new Candidates(mix, 1);
    FreePrior all = new FreePrior(candidates.folds(), NearRhythms.of(mix.sheet(), candidates));
    assertNear(-0.05 * TO, estimate(all, blind));
    for (FreeForm form :
        List.of(
            FreeForm.even(1),
            FreeForm.even(4),
            FreeForm.onBeat(3, 2),
            FreeForm.twoGroups(2, 3, true),
            FreeForm.twoGroups(3, 2, false),
            FreeForm.once(1),
            FreeForm.once(3))) {
      assertNear(-0.05 * TO, estimate(FreePrior.of(List.of(form), 1), blind));
    }
  }

  private static Mix mix() {
    CodeSheet sheet =
        PlainSheet.of(
            0.05,
            OptionalDouble.of(BLINK),
            List.of(
                PlainSheet.state("tick", "1 blink every 3 s", Seen.ALWAYS, 1),
                PlainSheet.state("three", "3 blinks 0.6 s apart every 6 s", Seen.ALWAYS, 1),
                PlainSheet.state("rapid", "1.5 to 2.5 blinks per second", Seen.ALWAYS, 1)));
    return new Mix(
        sheet,
        List.of(PlainSheet.state("x", "steady", Seen.ALWAYS, 1).rhythm()),
        List.of(0.3),
        0.4,
        0.1);
  }

  /** Taps of a person who watches what a fold shows from a start on. */
  private static double[] taps(
      Fold fold, double start, double stretch, Person person, Chance chance) {
    double cycle = fold.cycle() * stretch;
    double dark = Double.NEGATIVE_INFINITY;
    double[] taps = new double[1000];
    int count = 0;
    int first = (int) Math.floor(-start / cycle) - 1;
    for (int n = first; start + n * cycle < TO; n++) {
      for (int i = 0; i < fold.blinks(); i++) {
        double on = start + n * cycle + fold.on(i) * stretch;
        if (on >= 0 && on <= TO && !chance.happens(person.missed())) {
          boolean late = on - dark > person.burstGapSeconds();
          taps[count++] =
              on + (late ? person.firstLateSeconds() : 0) + person.timingSd() * chance.normal();
        }
        dark = on >= 0 ? on + BLINK : Double.NEGATIVE_INFINITY;
      }
    }
    return Arrays.copyOf(taps, count);
  }

  private static double[] random(double rate, Chance chance) {
    double[] taps = new double[1000];
    int count = 0;
    for (double at = chance.waiting(rate); at < TO; at += chance.waiting(rate)) {
      taps[count++] = at;
    }
    return Arrays.copyOf(taps, count);
  }

  /** What is shown, and how probable the reference takes each candidate to be. */
  private record Answer(int truth, double[] chances) {}

  private static final List<String> NAMES =
      List.of("tick", "three", "rapid", "unlisted", "no-rhythm");

  /** Recordings drawn from the very prior, and the answers to them. */
  private record Drawing(
      Mix mix, Person person, Reference reference, List<Fold> listed, FreePrior prior) {
    static Drawing of(Mix mix, Person person) {
      Candidates candidates = new Candidates(mix, 1);
      return new Drawing(
          mix,
          person,
          new Reference(mix, person),
          candidates.folds(),
          new FreePrior(candidates.folds(), NearRhythms.of(mix.sheet(), candidates)));
    }

    /** One by its number. */
    Answer answer(int number) {
      Chance chance = Chance.of(1125).branch(number);
      int which = chance.pick(Arrays.stream(mix.priors()).boxed().toList());
      double[] seen = seen(which, chance);
      double[] strays = random(person.straysPerMinute() / 60, chance);
      double[] kept =
          DoubleStream.concat(Arrays.stream(seen), Arrays.stream(strays))
              .filter(time -> time >= 0 && time <= TO)
              .sorted()
              .distinct()
              .toArray();
      BlinkLog log = BlinkLog.ofStarts(Marks.watched(0, TO), kept);
      return new Answer(which, reference.probabilities(log).same());
    }

    private double[] seen(int which, Chance chance) {
      if (which < listed.size()) {
        Fold fold = listed.get(which);
        double stretch = fold.stretch().draw(chance);
        return taps(fold, -chance.uniform() * fold.cycle() * stretch, stretch, person, chance);
      }
      if (which > listed.size()) {
        return random(chance.logUniform(0.05, 3) * (1 - person.missed()), chance);
      }
      double[] point = new double[0];
      int form = 0;
      while (point.length == 0 || Double.isInfinite(prior.logPrior(form, point, TO))) {
        form = prior.pick(chance);
        point = prior.forms().get(form).draw(TO, chance);
      }
      return taps(prior.forms().get(form).fold(point, BLINK), TO / 2 + point[0], 1, person, chance);
    }
  }

  /**
   * The proof of the whole: recordings drawn from the prior itself are right as often as stated,
   * and as many are unlisted as the sum of what is stated. 40 readings, the seed fixed; five
   * standard deviations.
   */
  @Test
  void itIsCalibratedOnItsOwnPrior() {
    Person person =
        Person.plain()
            .with("timing-sd-s", 0.06)
            .with("missed", 0.1)
            .with("strays-per-minute", 2)
            .with("first-late-s", LATE);
    Drawing drawing = Drawing.of(mix(), person);
    List<Answer> answers = IntStream.range(0, 40).parallel().mapToObj(drawing::answer).toList();
    List<Outcome> outcomes =
        answers.stream().map(a -> Outcome.of(NAMES.get(a.truth()), NAMES, a.chances())).toList();
    long right = Stated.assertRightAsOftenAsStated(outcomes);
    assertTrue(right > 22 && right < 39, "too hard or too easy to show anything: " + right);
    for (int i = 0; i < NAMES.size(); i++) {
      int candidate = i;
      double stated = answers.stream().mapToDouble(a -> a.chances()[candidate]).sum();
      double variance =
          answers.stream()
              .mapToDouble(a -> a.chances()[candidate] * (1 - a.chances()[candidate]))
              .sum();
      long shown = answers.stream().filter(a -> a.truth() == candidate).count();
      assertEquals(stated, shown, 5 * Math.sqrt(variance), NAMES.get(i));
    }
    // Proper chances: the mean log loss is what they state of themselves.
    double gap = 0;
    double spread = 0;
    for (Answer answer : answers) {
      double mean = 0;
      double square = 0;
      for (double chance : answer.chances()) {
        double loss = -Math.log(Math.max(Tally.LEAST_PROBABILITY, chance));
        mean += chance * loss;
        square += chance * loss * loss;
      }
      gap -= Math.log(Math.max(Tally.LEAST_PROBABILITY, answer.chances()[answer.truth()])) + mean;
      spread += square - mean * mean;
    }
    assertEquals(0, gap, 5 * Math.sqrt(spread), "log loss less what is stated");
  }
}

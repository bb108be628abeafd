package lampwise.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import lampwise.light.Blink;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.apache.commons.statistics.distribution.ExponentialDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.PoissonDistribution;
import org.apache.commons.statistics.distribution.UniformContinuousDistribution;
import org.apache.commons.statistics.inference.ChiSquareTest;
import org.apache.commons.statistics.inference.KolmogorovSmirnovTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What chance does to the notes of people. Seeds are fixed; each test is of size 0.001. At 20,000
 * values the Kolmogorov-Smirnov test sees a distance of 0.02 with more than 99 % certainty: a
 * standard deviation 9 % off, or a mean 5 % of it off.
 */
class PersonChanceTest {
  private static final int BLINKS = 20_000;
  private static final Shown SLOW = Notebook.beat(BLINKS, 10, 5);

  private static double[] errors(Person person, long seed) {
    double[] starts = Notebook.starts(person, SLOW, seed);
    assertEquals(BLINKS, starts.length);
    for (int i = 0; i < starts.length; i++) {
      starts[i] -= SLOW.blinks().get(i).onSeconds();
    }
    return starts;
  }

  private static void assertNormal(double[] values, double mean, double deviation) {
    double p =
        KolmogorovSmirnovTest.withDefaults()
            .test(values, NormalDistribution.of(mean, deviation)::cumulativeProbability)
            .getPValue();
    assertTrue(p > 0.001, "p = " + p);
    // 3.3 standard errors.
    assertEquals(mean, Watched.mean(values), 3.3 * deviation / Math.sqrt(values.length));
    assertEquals(deviation, Watched.deviation(values), 3.3 * deviation / Math.sqrt(2.0 * BLINKS));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.01, 0.04, 0.08})
  void timingIsNormal(double deviation) {
    double[] errors = errors(Notebook.faultless().with("timing-sd-s", deviation), 70);
    assertNormal(errors, 0, deviation);
    double together = 0;
    for (int i = 1; i < errors.length; i++) {
      together += errors[i] * errors[i - 1] / (deviation * deviation);
    }
    // Neighbours have nothing to do with each other; the standard error is 0.007.
    assertEquals(0, together / errors.length, 0.024);
  }

  /** Single blinks far apart are all firsts of a burst: all are later by the same. */
  @Test
  void firstsAreLateOnAverage() {
    Person person = Notebook.faultless().with("timing-sd-s", 0.08).with("first-late-s", 0.15);
    assertNormal(errors(person, 71), 0.15, 0.08);
  }

  @Test
  void endsAreAsUncertainAsStartsAndMore() {
    Person person =
        Notebook.faultless()
            .withNotes(Person.Notes.HOLDS)
            .with("timing-sd-s", 0.03)
            .with("release-sd-s", 0.04)
            .with("release-late-s", 0.5);
    List<Blink> blinks = Notebook.blinks(person.observe(SLOW, Chance.of(72)));
    double[] errors = new double[BLINKS];
    for (int i = 0; i < BLINKS; i++) {
      errors[i] = blinks.get(i).offSeconds() - SLOW.blinks().get(i).offSeconds();
    }
    assertNormal(errors, 0.5, 0.05);
  }

  /**
   * The number of missed blinks lies between the 0.05 % and the 99.95 % point of the binomial
   * distribution; at 20,000 blinks a chance one point off is seen with more than 95 % certainty.
   */
  @ParameterizedTest
  @ValueSource(doubles = {0.03, 0.1, 0.2})
  void missesAreBinomial(double missed) {
    Person person = Notebook.faultless().with("missed", missed);
    List<Blink> lost = person.observe(SLOW, Chance.of(73)).truth().missed();
    assertBinomial(lost.size(), BLINKS, missed);
    // Whether the blink before was missed makes no difference.
    int both = 0;
    for (int i = 1; i < lost.size(); i++) {
      both += lost.get(i).onSeconds() - lost.get(i - 1).onSeconds() < 7 ? 1 : 0;
    }
    assertBinomial(both, lost.size() - 1, missed);
  }

  private static void assertBinomial(int count, int of, double chance) {
    BinomialDistribution binomial = BinomialDistribution.of(of, chance);
    int least = binomial.inverseCumulativeProbability(0.0005);
    int most = binomial.inverseCumulativeProbability(0.9995);
    assertTrue(count >= least && count <= most, count + ", not " + least + " to " + most);
  }

  /**
   * Strays of 4,000 minutes, by chi-square against Poisson: a rate 10 % off is seen with more than
   * 99 % certainty.
   */
  @ParameterizedTest
  @ValueSource(doubles = {0.3, 1, 3})
  void straysArePoisson(double perMinute) {
    Person person = Notebook.faultless().with("strays-per-minute", perMinute);
    int minutes = 4000;
    long[] counts = new long[perMinute < 1 ? 4 : 8];
    for (int seed = 0; seed < minutes; seed++) {
      Labelled labelled = person.observe(Watched.lamp(60), Chance.of(seed));
      int count = labelled.truth().added().size();
      assertEquals(count, Notebook.blinks(labelled).size());
      counts[Math.min(count, counts.length - 1)]++;
    }
    // Two less than 0.05 s apart are one: 0.05 s of a minute for each is less than a thousandth.
    PoissonDistribution poisson = PoissonDistribution.of(perMinute);
    double[] expected = new double[counts.length];
    for (int i = 0; i < expected.length - 1; i++) {
      expected[i] = minutes * poisson.probability(i);
    }
    expected[expected.length - 1] = minutes * poisson.survivalProbability(expected.length - 2);
    double p = ChiSquareTest.withDefaults().test(expected, counts).getPValue();
    assertTrue(p > 0.001, "p = " + p);
  }

  /**
   * Some 20,000 gaps: exponential beyond the 0.05 s that nobody undercuts (the exponential
   * distribution has no memory), and evenly spread over the window.
   */
  @Test
  void straysComeAtAnyTime() {
    Person person = Notebook.faultless().with("strays-per-minute", 6);
    double[] starts = Notebook.starts(person, Watched.lamp(200_000), 74);
    double[] gaps = Gaps.of(starts);
    for (int i = 0; i < gaps.length; i++) {
      gaps[i] -= 0.05;
    }
    double p =
        KolmogorovSmirnovTest.withDefaults()
            .test(gaps, ExponentialDistribution.of(10)::cumulativeProbability)
            .getPValue();
    assertTrue(p > 0.001, "gaps: p = " + p);
    p =
        KolmogorovSmirnovTest.withDefaults()
            .test(starts, UniformContinuousDistribution.of(0, 200_000)::cumulativeProbability)
            .getPValue();
    assertTrue(p > 0.001, "times: p = " + p);
  }

  @Test
  void lapsesAreLateByHalfASecondAndMore() {
    double[] errors = errors(Notebook.faultless().with("lapse", 0.05), 75);
    List<Double> further = new ArrayList<>();
    for (double error : errors) {
      assertTrue(Math.abs(error) < 1e-9 || error > 0.5 - 1e-9, "late by " + error);
      if (error > 0.4) {
        further.add(error - 0.5);
      }
    }
    assertBinomial(further.size(), BLINKS, 0.05);
    double p =
        KolmogorovSmirnovTest.withDefaults()
            .test(
                further.stream().mapToDouble(Double::doubleValue).toArray(),
                ExponentialDistribution.of(0.3)::cumulativeProbability)
            .getPValue();
    assertTrue(p > 0.001, "p = " + p);
  }

  @Test
  void someTapsAreDouble() {
    Person person = Notebook.faultless().with("double-tap", 0.1);
    Labelled labelled = person.observe(SLOW, Chance.of(76));
    List<Double> added = labelled.truth().added();
    assertBinomial(added.size(), BLINKS, 0.1);
    assertEquals(BLINKS + added.size(), Notebook.blinks(labelled).size());
    double[] after = new double[added.size()];
    for (int i = 0; i < after.length; i++) {
      // The blinks begin at 10 s and come every 5 s.
      after[i] = added.get(i) % 5;
    }
    double p =
        KolmogorovSmirnovTest.withDefaults()
            .test(after, UniformContinuousDistribution.of(0.06, 0.2)::cumulativeProbability)
            .getPValue();
    assertTrue(p > 0.001, "p = " + p);
    // What was missed is not tapped twice.
    assertEquals(List.of(), person.with("missed", 1).observe(SLOW, Chance.of(76)).truth().added());
  }

  /** Each effect has numbers of its own, so that one more leaves the others as they were. */
  @Test
  void effectsDoNotTouchEachOther() {
    Person person = Person.careful().with("strays-per-minute", 0);
    List<Blink> taps = Notebook.blinks(person.observe(SLOW, Chance.of(77)));
    Labelled twice = person.with("double-tap", 0.05).observe(SLOW, Chance.of(77));
    List<Blink> first = new ArrayList<>(Notebook.blinks(twice));
    first.removeIf(blink -> twice.truth().added().contains(blink.onSeconds()));
    assertTrue(first.equals(taps));
    Labelled all = person.with("missed", 0).observe(SLOW, Chance.of(77));
    assertTrue(new HashSet<>(Notebook.blinks(all)).containsAll(taps));
    Labelled exact = person.with("timing-sd-s", 0.01).observe(SLOW, Chance.of(77));
    assertTrue(exact.truth().missed().equals(person.observe(SLOW, Chance.of(77)).truth().missed()));
  }
}

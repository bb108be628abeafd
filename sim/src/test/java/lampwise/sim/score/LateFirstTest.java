package lampwise.sim.score;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.IntStream;
import lampwise.decode.LampDecoder;
import lampwise.sim.Person;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** People of no preset: exact ones who react late to the first blink of a burst. */
class LateFirstTest {
  private static final int COUNT = 40;

  /**
   * On average -ln of a right state's probability; 0.3 and more where exact people are taken for
   * prompt.
   */
  private static final double MOST_LOSS = 0.15;

  @ParameterizedTest
  @ValueSource(doubles = {0.04, 0.07, 0.11})
  void areUnderstood(double late) {
    Person person =
        Person.exact()
            .with("timing-sd-s", 0.015)
            .with("first-late-s", late)
            .with("missed", 0.06)
            .with("strays-per-minute", 1);
    Score score = new Score(Bench.mix(Bench.sheet()), 5077);
    Cell cell = new Cell("own", person, 90);
    List<Outcome> listed =
        IntStream.range(0, COUNT)
            .mapToObj(number -> score.outcome(new LampDecoder(), cell, number))
            .filter(Outcome::isOfListedState)
            .toList();
    assertTrue(listed.size() > COUNT / 2);
    double loss = listed.stream().mapToDouble(Outcome::logLoss).average().orElseThrow();
    assertEquals(0, Tally.of(listed).listedCalledUnlisted(), "called unlisted");
    assertTrue(loss < MOST_LOSS, () -> "log loss " + loss);
  }
}

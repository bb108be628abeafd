package lampwise.speed;

import java.util.Optional;
import java.util.concurrent.TimeUnit;
import lampwise.file.GuideReader;
import lampwise.service.Complaint;
import lampwise.service.Diagnosis;
import lampwise.service.Finding;
import lampwise.service.Step;
import lampwise.sheet.FixtureKind;
import lampwise.sheet.Power;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * Milliseconds for one step of a visit to a dead water closet on cells, with the built-in guide.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class DiagnoseSpeed {
  private Diagnosis first;
  private Diagnosis afterThree;

  /** Answers what comes before. */
  @Setup
  public void answer() {
    first =
        Diagnosis.start(
                GuideReader.builtIn(),
                FixtureKind.WATER_CLOSET,
                Optional.of(Power.CELLS),
                Complaint.DEAD)
            .with(new Finding("danger", "none"));
    afterThree = first.with(new Finding("bowl", "clear")).with(new Finding("override", "flushes"));
  }

  /**
   * The first step that is weighed: before it, danger is asked for at every visit.
   *
   * @return the step
   */
  @Benchmark
  public Step firstStep() {
    return first.next();
  }

  /**
   * The step after three answers.
   *
   * @return the step
   */
  @Benchmark
  public Step afterThreeAnswers() {
    return afterThree.next();
  }
}

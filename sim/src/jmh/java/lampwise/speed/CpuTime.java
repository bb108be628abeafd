package lampwise.speed;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.util.Collection;
import java.util.List;
import org.openjdk.jmh.infra.BenchmarkParams;
import org.openjdk.jmh.infra.IterationParams;
import org.openjdk.jmh.profile.InternalProfiler;
import org.openjdk.jmh.results.AggregationPolicy;
import org.openjdk.jmh.results.IterationResult;
import org.openjdk.jmh.results.ScalarResult;

/**
 * Microseconds that the processor worked for a call, beside the time that passed: where others work
 * on the same cores the second says more about them. What collects garbage and compiles counts.
 */
public final class CpuTime implements InternalProfiler {
  private static final OperatingSystemMXBean PROCESS =
      ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class);

  private long before;

  @Override
  public String getDescription() {
    return "processor time of a call";
  }

  @Override
  public void beforeIteration(BenchmarkParams benchmark, IterationParams iteration) {
    before = PROCESS.getProcessCpuTime();
  }

  @Override
  public Collection<ScalarResult> afterIteration(
      BenchmarkParams benchmark, IterationParams iteration, IterationResult result) {
    double micros = (PROCESS.getProcessCpuTime() - before) / 1e3;
    double calls = result.getMetadata().getAllOps();
    return List.of(new ScalarResult("cpu", micros / calls, "us/op", AggregationPolicy.AVG));
  }
}

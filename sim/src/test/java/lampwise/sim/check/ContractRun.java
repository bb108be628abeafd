package lampwise.sim.check;

import static org.junit.platform.engine.discovery.DiscoverySelectors.selectClass;

import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.platform.engine.TestExecutionResult;
import org.junit.platform.engine.reporting.ReportEntry;
import org.junit.platform.launcher.EngineFilter;
import org.junit.platform.launcher.LauncherDiscoveryRequest;
import org.junit.platform.launcher.TestExecutionListener;
import org.junit.platform.launcher.TestIdentifier;
import org.junit.platform.launcher.core.LauncherDiscoveryRequestBuilder;
import org.junit.platform.launcher.core.LauncherFactory;

/** What came of running the properties of a class, by their labels. */
final class ContractRun {
  private final Set<String> held = new TreeSet<>();
  private final Map<String, String> broken = new TreeMap<>();
  private final Map<String, String> skipped = new TreeMap<>();
  private final Map<String, String> reports = new TreeMap<>();

  private ContractRun() {}

  static ContractRun of(Class<?> type) {
    LauncherDiscoveryRequest request =
        LauncherDiscoveryRequestBuilder.request()
            .selectors(selectClass(type))
            .filters(EngineFilter.includeEngines("jqwik"))
            .configurationParameter("jqwik.reporting.usejunitplatform", "true")
            .build();
    ContractRun run = new ContractRun();
    LauncherFactory.create().execute(request, run.new Listener());
    return run;
  }

  /** The laws that held. */
  Set<String> held() {
    return held;
  }

  /** The laws that were broken, each with the message. */
  Map<String, String> broken() {
    return broken;
  }

  /** The laws that were not tried, each with the reason. */
  Map<String, String> skipped() {
    return skipped;
  }

  /** What jqwik reported of a law: sample and seed. */
  String report(String law) {
    return reports.getOrDefault(law, "");
  }

  private final class Listener implements TestExecutionListener {
    @Override
    public void executionFinished(TestIdentifier test, TestExecutionResult result) {
      if (!test.isTest()) {
        return;
      }
      if (result.getStatus() == TestExecutionResult.Status.SUCCESSFUL) {
        held.add(test.getDisplayName());
      } else {
        broken.put(
            test.getDisplayName(),
            result.getThrowable().map(Throwable::toString).orElse("no reason"));
      }
    }

    @Override
    public void executionSkipped(TestIdentifier test, String reason) {
      skipped.put(test.getDisplayName(), reason);
    }

    @Override
    public void reportingEntryPublished(TestIdentifier test, ReportEntry entry) {
      String text = String.join("\n", entry.getKeyValuePairs().values());
      reports.merge(test.getDisplayName(), text, (a, b) -> a + "\n" + b);
    }
  }
}

package lampwise.sim.check;

import java.util.List;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.Description;
import lampwise.light.Event;
import lampwise.light.LightCurve;
import lampwise.light.Marks;
import lampwise.light.Recording;
import lampwise.light.TargetSpan;
import lampwise.light.Targets;
import lampwise.light.Window;

/** The same recording on a clock with another zero. */
final class Shifted {
  private final double by;

  private Shifted(double by) {
    this.by = by;
  }

  static Sample of(Sample sample, double seconds) {
    Shifted shifted = new Shifted(seconds);
    List<Recording> recordings = sample.recordings().stream().map(shifted::recording).toList();
    return new Sample(sample.sheet(), recordings);
  }

  static Recording of(Recording recording, double seconds) {
    return new Shifted(seconds).recording(recording);
  }

  private Recording recording(Recording recording) {
    Marks marks = marks(recording.marks());
    if (recording instanceof BlinkLog log) {
      return new BlinkLog(log.origin(), marks, log.blinks().stream().map(this::blink).toList());
    }
    if (recording instanceof Description description) {
      return new Description(description.origin(), marks, description.said());
    }
    LightCurve curve = (LightCurve) recording;
    double[] seconds = new double[curve.size()];
    double[] levels = new double[curve.size()];
    for (int i = 0; i < seconds.length; i++) {
      seconds[i] = curve.seconds(i) + by;
      levels[i] = curve.level(i);
    }
    return LightCurve.of(curve.origin(), marks, curve.lit(), seconds, levels);
  }

  private Blink blink(Blink blink) {
    return new Blink(blink.onSeconds() + by, blink.offSeconds() + by);
  }

  private Marks marks(Marks marks) {
    Targets targets =
        new Targets(
            marks.targets().knowledge(),
            marks.targets().spans().stream()
                .map(span -> new TargetSpan(span.fromSeconds() + by, span.toSeconds() + by))
                .toList());
    return new Marks(
        marks.window().map(this::window),
        targets,
        marks.events().stream().map(e -> new Event(e.kind(), e.atSeconds() + by)).toList(),
        marks.covered().stream().map(this::window).toList());
  }

  private Window window(Window window) {
    return new Window(window.fromSeconds() + by, window.toSeconds() + by);
  }
}

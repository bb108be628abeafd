package lampwise.sim.check;

import lampwise.light.BlinkLog;
import lampwise.light.LightCurve;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.domains.Domain;

/** Laws that nothing holds: what their samples shrink to is the shortest there is. */
@Domain(LampwiseDomain.class)
class AlwaysFailing {
  @Property
  void noLogHasThreeBlinks(@ForAll BlinkLog log) {
    if (log.blinks().size() > 2) {
      throw new AssertionError("three blinks");
    }
  }

  @Property
  void noCurveIsLit(@ForAll LightCurve curve) {
    for (int i = 0; i < curve.size(); i++) {
      if (curve.level(i) > 102) {
        throw new AssertionError("lit");
      }
    }
  }

  @Property
  void noSimulatedRecordingIsMade(@ForAll LabelledSample sample) {
    throw new AssertionError("made");
  }
}

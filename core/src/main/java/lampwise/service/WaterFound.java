package lampwise.service;

import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.sheet.FixtureKind;

/**
 * What was measured at a fixture; whatever was not is empty.
 *
 * @param kind the kind of fixture
 * @param bowl {@code siphonic}, {@code blowout}, or empty
 * @param staticPressure with no flow anywhere nearby, kPa
 * @param flowingPressure while this fixture runs, kPa
 * @param volume of a flush, or of a run of a metering faucet
 * @param flow of a faucet, L/min
 * @param valveRated the volume marked on the valve, L
 * @param fixtureRated the volume marked on the bowl or urinal, L
 * @param markUnit the unit of the marking, in which it is compared: legal values are rounded in
 *     each
 */
public record WaterFound(
    FixtureKind kind,
    String bowl,
    OptionalDouble staticPressure,
    OptionalDouble flowingPressure,
    Optional<Volume> volume,
    OptionalDouble flow,
    OptionalDouble valveRated,
    OptionalDouble fixtureRated,
    WaterUnit markUnit) {
  /**
   * Nothing was measured.
   *
   * @param kind the kind of fixture
   * @return an empty find
   */
  public static WaterFound nothing(FixtureKind kind) {
    OptionalDouble none = OptionalDouble.empty();
    return new WaterFound(
        kind, "", none, none, Optional.empty(), none, none, none, WaterUnit.LITRE);
  }
}

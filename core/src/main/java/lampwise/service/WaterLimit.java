package lampwise.service;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import lampwise.sheet.FixtureKind;

/**
 * A limit of pressure, volume or flow, and where it comes from. The sources disagree; none of them
 * is the default, and a locally adopted code and the marking on the fixture override all.
 *
 * @param of what is limited
 * @param kinds the kinds of fixture it is for; empty for all
 * @param bowl the kind of bowl it is for, such as {@code siphonic}; empty for all
 * @param atLeast the smallest value that is right, inclusive; empty for none
 * @param atMost the largest, inclusive; empty for none
 * @param unit the unit in which the source writes it; it is compared in that
 * @param basis the source
 * @param sure how sure the value is: {@code seen}, {@code seen in secondary text}, {@code common
 *     practice, no source}, {@code site}, {@code marking}
 */
public record WaterLimit(
    Measure of,
    List<FixtureKind> kinds,
    String bowl,
    OptionalDouble atLeast,
    OptionalDouble atMost,
    WaterUnit unit,
    String basis,
    String sure) {
  private static final String SEEN = "seen";
  private static final String SECONDARY = "seen in secondary text";
  private static final String PRACTICE = "common practice, no source";

  private static final List<FixtureKind> VALVES =
      List.of(FixtureKind.WATER_CLOSET, FixtureKind.URINAL);
  private static final List<FixtureKind> CLOSET = List.of(FixtureKind.WATER_CLOSET);
  private static final List<FixtureKind> URINAL = List.of(FixtureKind.URINAL);
  private static final List<FixtureKind> FAUCET = List.of(FixtureKind.FAUCET);

  /** The published limits. What is only from memory is not among them. */
  static final List<WaterLimit> PUBLISHED =
      List.of(
          most(Measure.STATIC_PRESSURE, List.of(), 80, WaterUnit.PSI, "UPC 608.2", SEEN),
          most(Measure.STATIC_PRESSURE, List.of(), 80, WaterUnit.PSI, "IRC P2903.3.1", SECONDARY),
          most(
              Measure.STATIC_PRESSURE,
              List.of(),
              100,
              WaterUnit.PSI,
              "Chicago 18-29-604.10.1.3",
              SEEN),
          most(Measure.STATIC_PRESSURE, FAUCET, 10, WaterUnit.BAR, "EN 15091 type 1", SEEN),
          range(Measure.STATIC_PRESSURE, VALVES, 25, 80, WaterUnit.PSI, "general range", PRACTICE),
          range(
              Measure.STATIC_PRESSURE,
              VALVES,
              140,
              860,
              WaterUnit.KPA,
              "ASME A112.1037 3.1, the device",
              SECONDARY),
          least(Measure.FLOWING_PRESSURE, URINAL, "", 25, "IPC table 604.3", SEEN),
          least(Measure.FLOWING_PRESSURE, CLOSET, "siphonic", 35, "IPC table 604.3", SEEN),
          least(Measure.FLOWING_PRESSURE, CLOSET, "blowout", 45, "IPC table 604.3", SEEN),
          least(Measure.FLOWING_PRESSURE, CLOSET, "siphonic", 20, "NSPC 10.14.2", SEEN),
          least(Measure.FLOWING_PRESSURE, CLOSET, "blowout", 25, "NSPC 10.14.2", SEEN),
          least(Measure.FLOWING_PRESSURE, VALVES, "", 15, "IPC E103.1, top floor", SEEN),
          least(Measure.FLOWING_PRESSURE, VALVES, "", 15, "UPC 608.1", SECONDARY),
          least(Measure.FLOWING_PRESSURE, FAUCET, "", 8, "IPC table 604.3", SEEN),
          new WaterLimit(
              Measure.FLOWING_PRESSURE,
              FAUCET,
              "",
              OptionalDouble.of(0.5),
              OptionalDouble.empty(),
              WaterUnit.BAR,
              "EN 15091 type 1",
              SEEN),
          most(Measure.FLUSH_VOLUME, CLOSET, 1.6, WaterUnit.GALLON, "EPAct 1992", SEEN),
          most(Measure.FLUSH_VOLUME, URINAL, 1.0, WaterUnit.GALLON, "EPAct 1992", SEEN),
          range(
              Measure.FLUSH_VOLUME,
              CLOSET,
              1.0,
              1.28,
              WaterUnit.GALLON,
              "EPA WaterSense",
              SECONDARY),
          most(Measure.FLUSH_VOLUME, URINAL, 0.5, WaterUnit.GALLON, "EPA WaterSense", SECONDARY),
          most(Measure.FLUSH_VOLUME, CLOSET, 6, WaterUnit.LITRE, "UK guidance R4.10", SEEN),
          most(Measure.FLUSH_VOLUME, FAUCET, 0.25, WaterUnit.GALLON, "IPC table 604.4", SEEN),
          most(Measure.FLOW, FAUCET, 0.5, WaterUnit.GPM, "IPC table 604.4, public", SEEN));

  /** Keeps a copy of the list. */
  public WaterLimit {
    kinds = List.copyOf(kinds);
  }

  private static WaterLimit most(
      Measure of, List<FixtureKind> kinds, double most, WaterUnit unit, String basis, String sure) {
    return new WaterLimit(
        of, kinds, "", OptionalDouble.empty(), OptionalDouble.of(most), unit, basis, sure);
  }

  private static WaterLimit range(
      Measure of,
      List<FixtureKind> kinds,
      double least,
      double most,
      WaterUnit unit,
      String basis,
      String sure) {
    return new WaterLimit(
        of, kinds, "", OptionalDouble.of(least), OptionalDouble.of(most), unit, basis, sure);
  }

  private static WaterLimit least(
      Measure of, List<FixtureKind> kinds, String bowl, double psi, String basis, String sure) {
    return new WaterLimit(
        of,
        kinds,
        bowl,
        OptionalDouble.of(psi),
        OptionalDouble.empty(),
        WaterUnit.PSI,
        basis,
        sure);
  }

  /**
   * The limits that a site sets, in this form.
   *
   * @param site the site
   * @return its limits in its order
   */
  public static List<WaterLimit> of(Site site) {
    List<WaterLimit> limits = new ArrayList<>();
    for (SiteLimit limit : site.limits()) {
      WaterUnit.of(limit.unit())
          .ifPresent(
              unit ->
                  limits.add(
                      new WaterLimit(
                          limit.of(),
                          limit.kinds(),
                          "",
                          limit.atLeast(),
                          limit.atMost(),
                          unit,
                          limit.basis(),
                          "site")));
    }
    return limits;
  }

  /**
   * Whether it is for a fixture.
   *
   * @param kind the kind of fixture
   * @param bowlSaid the kind of bowl; empty if that is not known, which every bowl's limit fits
   * @return true if it is
   */
  public boolean isFor(FixtureKind kind, String bowlSaid) {
    boolean bowlFits = bowl.isEmpty() || bowlSaid.isEmpty() || bowl.equals(bowlSaid);
    return (kinds.isEmpty() || kinds.contains(kind)) && bowlFits;
  }
}

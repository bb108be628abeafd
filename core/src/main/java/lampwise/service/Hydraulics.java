package lampwise.service;

/**
 * What follows from pressures, openings and pipes. Pressures in kPa above that of the air, flows in
 * L/min, lengths in mm unless said. A NaN that is given comes back as NaN.
 */
public final class Hydraulics {
  /** Discharge coefficient of a sharp round hole: 0.60 to 0.65 (seen in secondary text). */
  public static final double SHARP_HOLE = 0.62;

  /** Water of about 20 C, kilograms a cubic metre. */
  private static final double DENSITY = 998.2;

  /** Pressure of a column of water of about 20 C, kPa a metre. */
  private static final double KPA_PER_METRE = 9.79;

  /** WSFU of the demand tables. */
  private static final double[] UNITS = {
    5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 60, 80, 90, 100, 120, 140, 160, 180, 200, 250, 300,
    400, 500, 750, 1000, 2000
  };

  private static final double[] IPC_GPM = {
    15.0, 17.4, 22.2, 27.0, 28.6, 31.0, 35.0, 38.0, 42.0, 46.0, 50.0, 54.0, 61.2, 64.3, 67.5, 73.0,
    77.0, 81.0, 85.5, 90.0, 101.0, 108.0, 127.0, 143.0, 177.0, 208.0, 325.0
  };

  private Hydraulics() {}

  /**
   * The flow through the same opening at another pressure: it goes with the square root of the
   * pressure drop (Bernoulli; an orifice to the open air).
   *
   * @param flow the flow at the first pressure, L/min
   * @param at the first pressure, over 0
   * @param other the other pressure, 0 or more
   * @return the flow there, L/min
   * @throws GuideException if a pressure is out of range
   */
  public static double flowAt(double flow, double at, double other) {
    Rules.that(!(at <= 0), "a flow can be carried over from a pressure over 0 only: " + at);
    Rules.that(!(other < 0), "a pressure must be 0 or more: " + other);
    return flow * Math.sqrt(other / at);
  }

  /**
   * The flow through a round hole into the air: Q = Cd A sqrt(2 p / rho).
   *
   * @param diameter of the hole, mm, 0 or more
   * @param pressure before it, kPa, 0 or more
   * @param coefficient of discharge, over 0 and at most 1
   * @return the flow, L/min
   * @throws GuideException if a value is out of range
   */
  public static double hole(double diameter, double pressure, double coefficient) {
    Rules.that(!(diameter < 0), "a hole must be 0 mm or more across: " + diameter);
    Rules.that(!(pressure < 0), "a pressure must be 0 or more: " + pressure);
    Rules.that(
        !(coefficient <= 0) && !(coefficient > 1),
        "a discharge coefficient must be over 0 and at most 1: " + coefficient);
    double area = Math.PI * diameter * diameter / 4e6;
    double speed = Math.sqrt(2 * pressure * 1000 / DENSITY);
    return coefficient * area * speed * 60_000;
  }

  /**
   * What friction takes along a straight pipe (Hazen-Williams, in US units 4.52 Q^1.852 / (C^1.852
   * d^4.8704) psi a foot; seen in secondary text).
   *
   * @param flow L/min, 0 or more
   * @param inside the pipe's inside diameter, mm, over 0
   * @param metres its length, fittings counted as length, 0 or more
   * @param smoothness the coefficient C: 140 for clean copper
   * @return the loss, kPa
   * @throws GuideException if a value is out of range
   */
  public static double friction(double flow, double inside, double metres, double smoothness) {
    Rules.that(!(flow < 0), "a flow must be 0 or more: " + flow);
    Rules.that(!(inside <= 0), "a pipe must be over 0 mm across: " + inside);
    Rules.that(!(metres < 0), "a pipe must be 0 m long or more: " + metres);
    Rules.that(!(smoothness <= 0), "the coefficient C must be over 0: " + smoothness);
    double gpm = WaterUnit.GPM.fromBase(flow);
    double inches = WaterUnit.INCH.fromBase(inside);
    double feet = WaterUnit.FOOT.fromBase(metres * 1000);
    double psi =
        4.52
            * Math.pow(gpm, 1.852)
            / (Math.pow(smoothness, 1.852) * Math.pow(inches, 4.8704))
            * feet;
    return WaterUnit.PSI.toBase(psi);
  }

  /**
   * What height takes.
   *
   * @param metres how much higher the fixture is than the gauge; below 0 if it is lower
   * @return the loss, kPa
   */
  public static double height(double metres) {
    return KPA_PER_METRE * metres;
  }

  /**
   * How fast the water runs in a pipe.
   *
   * @param flow L/min
   * @param inside the pipe's inside diameter, mm, over 0
   * @return the mean speed, metres a second
   * @throws GuideException if the diameter is not over 0
   */
  public static double speed(double flow, double inside) {
    Rules.that(!(inside <= 0), "a pipe must be over 0 mm across: " + inside);
    return flow / 60_000 / (Math.PI * inside * inside / 4e6);
  }

  /**
   * What a group of fixtures takes at once, where flush valves predominate: IPC table E103.3(3),
   * the column for flushometer valves, straight between its rows (seen in secondary text).
   *
   * @param units water supply fixture units, 5 to 2000, both inclusive
   * @return the demand, L/min
   * @throws GuideException outside of the table
   */
  public static double demand(double units) {
    int last = UNITS.length - 1;
    Rules.that(
        !(units < UNITS[0]) && !(units > UNITS[last]),
        "the demand table runs from 5 to 2000 fixture units, not " + units);
    int row = 1;
    while (row < last && units > UNITS[row]) {
      row++;
    }
    double part = (units - UNITS[row - 1]) / (UNITS[row] - UNITS[row - 1]);
    return WaterUnit.GPM.toBase(IPC_GPM[row - 1] + part * (IPC_GPM[row] - IPC_GPM[row - 1]));
  }
}

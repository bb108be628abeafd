package lampwise.service;

import java.util.List;
import java.util.Optional;

/** Units of water figures. Factors are exact, from NIST SP 811, appendix B, unless said. */
public enum WaterUnit {
  /** Kilopascals. */
  KPA("kPa", Of.PRESSURE, 1),
  /** Pounds-force per square inch. */
  PSI("psi", Of.PRESSURE, 6.894757293168361),
  /** Bars. */
  BAR("bar", Of.PRESSURE, 100),
  /** Litres. */
  LITRE("L", Of.VOLUME, 1),
  /** Millilitres. */
  MILLILITRE("mL", Of.VOLUME, 0.001),
  /** US gallons. */
  GALLON("gal", Of.VOLUME, 3.785411784),
  /** Litres a minute. */
  LITRE_PER_MINUTE("L/min", Of.FLOW, 1),
  /** Litres a second. */
  LITRE_PER_SECOND("L/s", Of.FLOW, 60),
  /** Millilitres a minute. */
  MILLILITRE_PER_MINUTE("mL/min", Of.FLOW, 0.001),
  /** US gallons a minute. */
  GPM("gpm", Of.FLOW, 3.785411784),
  /** Millimetres. */
  MILLIMETRE("mm", Of.LENGTH, 1),
  /** Metres. */
  METRE("m", Of.LENGTH, 1000),
  /** Inches. */
  INCH("in", Of.LENGTH, 25.4),
  /** Feet. */
  FOOT("ft", Of.LENGTH, 304.8),
  /** Seconds. */
  SECOND("s", Of.TIME, 1),
  /** Minutes. */
  MINUTE("min", Of.TIME, 60),
  /** Degrees Celsius. */
  CELSIUS("C", Of.TEMPERATURE, 1),
  /** Degrees Fahrenheit; 32 F is 0 C. */
  FAHRENHEIT("F", Of.TEMPERATURE, 5.0 / 9);

  /** What is measured in it. */
  public enum Of {
    /** Pressure above that of the air, in kPa. */
    PRESSURE,
    /** Volume, in L. */
    VOLUME,
    /** Flow, in L/min. */
    FLOW,
    /** Length, in mm. */
    LENGTH,
    /** Time, in s. */
    TIME,
    /** Temperature, in C. */
    TEMPERATURE
  }

  private final String word;
  private final Of of;
  private final double base;

  WaterUnit(String word, Of of, double base) {
    this.word = word;
    this.of = of;
    this.base = base;
  }

  /**
   * How it is written.
   *
   * @return the unit's sign
   */
  public String word() {
    return word;
  }

  /**
   * What is measured in it.
   *
   * @return the quantity
   */
  public Of of() {
    return of;
  }

  /**
   * A value in the unit in which this package computes: kPa, L, L/min, mm, s, C.
   *
   * @param value a value in this unit
   * @return the same in the base unit; NaN stays NaN
   */
  public double toBase(double value) {
    return (value - zero()) * base;
  }

  /**
   * The way back.
   *
   * @param value a value in the base unit
   * @return the same in this unit; NaN stays NaN
   */
  public double fromBase(double value) {
    return value / base + zero();
  }

  private double zero() {
    return this == FAHRENHEIT ? 32 : 0;
  }

  /**
   * Finds one by how it is written.
   *
   * @param word the unit's sign, exactly
   * @return the unit; empty for any other word
   */
  public static Optional<WaterUnit> of(String word) {
    for (WaterUnit unit : values()) {
      if (unit.word.equals(word)) {
        return Optional.of(unit);
      }
    }
    return Optional.empty();
  }

  /**
   * The units of a quantity.
   *
   * @param of the quantity
   * @return their signs, the base unit first
   */
  public static List<String> words(Of of) {
    return List.of(values()).stream().filter(u -> u.of == of).map(WaterUnit::word).toList();
  }
}

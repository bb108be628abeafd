package lampwise.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Water figures beside published ones, each with its source. */
class WaterFiguresTest {
  private static double in(WaterUnit unit, double value, WaterUnit other) {
    return other.fromBase(unit.toBase(value));
  }

  /** NIST SP 811, appendix B: factors of conversion. */
  @Nested
  class Nist {
    @ParameterizedTest
    @CsvSource({
      "GALLON,1.28,LITRE,4.845,0.001",
      "GALLON,1.6,LITRE,6.057,0.001",
      "GALLON,0.125,LITRE,0.473,0.001",
      "PSI,35,KPA,241.3,0.05",
      "PSI,35,BAR,2.413,0.0005",
      "PSI,80,KPA,551.6,0.05",
      "GPM,25,LITRE_PER_SECOND,1.577,0.0005",
      "LITRE_PER_SECOND,1.2,GPM,19.0,0.05",
      "INCH,1,MILLIMETRE,25.4,1e-9",
      "FOOT,1,METRE,0.3048,1e-9",
      "FAHRENHEIT,120,CELSIUS,48.889,0.001",
      "MILLILITRE_PER_MINUTE,50,GPM,0.0132,0.00005"
    })
    void unitsConvert(WaterUnit from, double value, WaterUnit to, double expected, double within) {
      assertEquals(expected, in(from, value, to), within);
    }

    @Property(tries = 200)
    void everyUnitGivesBackWhatItWasGiven(
        @ForAll WaterUnit unit, @ForAll @DoubleRange(min = -1e4, max = 1e4) double value) {
      assertEquals(value, unit.fromBase(unit.toBase(value)), 1e-9 * Math.max(1, Math.abs(value)));
      assertEquals(unit, WaterUnit.of(unit.word()).orElseThrow());
    }
  }

  /** IPC table 604.3 (2018), 25 gpm at 35 psi and 12 gpm at 25 psi, by the square root law. */
  @Nested
  class Ipc6043 {
    @ParameterizedTest
    @CsvSource({
      "25,35,10,13.36",
      "25,35,15,16.37",
      "25,35,20,18.90",
      "25,35,45,28.35",
      "25,35,80,37.80",
      "12,25,10,7.59",
      "12,25,15,9.30",
      "12,25,80,21.47"
    })
    void flowGoesWithTheSquareRoot(double gpm, double psi, double other, double expected) {
      double flow =
          Hydraulics.flowAt(
              WaterUnit.GPM.toBase(gpm), WaterUnit.PSI.toBase(psi), WaterUnit.PSI.toBase(other));
      assertEquals(expected, WaterUnit.GPM.fromBase(flow), 0.005);
    }

    @Property(tries = 100)
    void thereAndBackIsTheSameFlow(
        @ForAll @DoubleRange(min = 1, max = 900) double at,
        @ForAll @DoubleRange(min = 1, max = 900) double other) {
      assertEquals(30, Hydraulics.flowAt(Hydraulics.flowAt(30, at, other), other, at), 1e-9);
      assertEquals(
          other > at, Hydraulics.flowAt(30, at, other) > 30, "more pressure gives more flow");
    }

    @Test
    void aPressureOfNoneGivesNothing() {
      assertEquals(0, Hydraulics.flowAt(30, 100, 0));
      assertThrows(GuideException.class, () -> Hydraulics.flowAt(30, 0, 100));
      assertThrows(GuideException.class, () -> Hydraulics.flowAt(30, 100, -1));
    }
  }

  /** Orifice equation with Cd = 0.62 (derived from Bernoulli; the hole of 1/16 in at 60 psi). */
  @Nested
  class Orifice {
    @ParameterizedTest
    @CsvSource({"0.015625,50", "0.03125,202", "0.0625,806", "0.125,3226", "0.25,12902"})
    void holesAtSixtyPsi(double inches, double gallonsADay) {
      double flow = Hydraulics.hole(WaterUnit.INCH.toBase(inches), WaterUnit.PSI.toBase(60), 0.62);
      double day = WaterUnit.GALLON.fromBase(new WaterLoss(flow).day());
      assertEquals(gallonsADay, day, 0.005 * gallonsADay + 0.5);
    }

    @Test
    void threeMillimetresAtFourBars() {
      assertEquals(7.44, Hydraulics.hole(3, 400, Hydraulics.SHARP_HOLE), 0.01);
    }

    @Property(tries = 100)
    void twiceTheDiameterIsFourTimesTheFlow(
        @ForAll @DoubleRange(min = 0.1, max = 20) double diameter) {
      double one = Hydraulics.hole(diameter, 400, 0.62);
      assertEquals(4 * one, Hydraulics.hole(2 * diameter, 400, 0.62), 1e-9 * one);
    }
  }

  /** IPC table E103.3(3), flushometer valves (seen in secondary text). */
  @Nested
  class IpcE103 {
    @ParameterizedTest
    @CsvSource({"5,15.0", "10,27", "96,66.22", "100,67.5", "200,90", "1000,208", "2000,325"})
    void demandOfAGroup(double units, double gpm) {
      assertEquals(gpm, WaterUnit.GPM.fromBase(Hydraulics.demand(units)), 0.005);
    }

    @Property(tries = 200)
    void moreFixturesNeverTakeLess(
        @ForAll @DoubleRange(min = 5, max = 2000) double a,
        @ForAll @DoubleRange(min = 5, max = 2000) double b) {
      assertEquals(
          0, Math.signum(a - b) - Math.signum(Hydraulics.demand(a) - Hydraulics.demand(b)));
    }

    @Test
    void outsideOfTheTableIsRefused() {
      assertThrows(GuideException.class, () -> Hydraulics.demand(4.9));
      assertThrows(GuideException.class, () -> Hydraulics.demand(2001));
    }
  }

  /** Hazen-Williams, 60 psi, 30 ft up, 60 ft of 1-1/4 in type L, C = 140, 25 gpm. */
  @Nested
  class HazenWilliams {
    @Test
    void theResidualOfTheExample() {
      double flow = WaterUnit.GPM.toBase(25);
      double inside = WaterUnit.INCH.toBase(1.265);
      double friction = Hydraulics.friction(flow, inside, WaterUnit.FOOT.toBase(60) / 1000, 140);
      assertEquals(3.55, WaterUnit.PSI.fromBase(friction), 0.01);
      double height = Hydraulics.height(WaterUnit.FOOT.toBase(30) / 1000);
      double residual = WaterUnit.PSI.toBase(60) - height - friction;
      assertEquals(43.46, WaterUnit.PSI.fromBase(residual), 0.05);
    }

    /** NSPC 10.14.1 limits it to 8 ft/s. */
    @ParameterizedTest
    @CsvSource({"25,1.025,9.72", "25,1.265,6.38", "12,0.785,7.96"})
    void speeds(double gpm, double inches, double feet) {
      double metres = Hydraulics.speed(WaterUnit.GPM.toBase(gpm), WaterUnit.INCH.toBase(inches));
      assertEquals(feet, metres / 0.3048, 0.01);
    }
  }

  /** JCGM 100 on two readings of a meter: u = r / (N sqrt 6). */
  @Nested
  class Jcgm100 {
    @ParameterizedTest
    @CsvSource({"0.1,1,0.0408", "0.1,10,0.0041", "1,10,0.0408", "1,100,0.0041", "7.48,5,0.611"})
    void twoReadings(double gallons, int flushes, double expected) {
      double step = WaterUnit.GALLON.toBase(gallons);
      Volume volume = Volume.byMeter(flushes, flushes, step, 0);
      assertEquals(expected, WaterUnit.GALLON.fromBase(volume.unsure()) / 2, 0.0005);
    }

    @Test
    void theMeterOfTheExample() {
      double through = WaterUnit.GALLON.toBase(1247.6 - 1234.5);
      Volume volume = Volume.byMeter(through, 10, WaterUnit.GALLON.toBase(0.1), 0.015);
      assertEquals(1.310, WaterUnit.GALLON.fromBase(volume.litres()), 0.0005);
      assertEquals(0.024, WaterUnit.GALLON.fromBase(volume.unsure()), 0.0005);
    }

    @Property(tries = 200)
    void soManyMoreFlushesDoDecide(
        @ForAll @DoubleRange(min = 3, max = 6) double limit,
        @ForAll @IntRange(min = 1, max = 5) int flushes) {
      Volume volume = Volume.byMeter(4.8 * flushes, flushes, 1, 0.001);
      int more = volume.moreFlushes(limit);
      if (more >= 0) {
        int all = flushes + more;
        Volume later = Volume.byMeter(4.8 * all, all, 1, 0.001);
        assertTrue(later.unsure() <= Math.abs(4.8 - limit) + 1e-9);
        if (more > 0) {
          Volume sooner = Volume.byMeter(4.8 * (all - 1), all - 1, 1, 0.001);
          assertTrue(sooner.unsure() > Math.abs(4.8 - limit));
        }
      }
    }
  }

  /** EPA and municipal figures of losses: half a gallon a minute is 21,600 gallons in 30 days. */
  @Nested
  class Losses {
    @Test
    void halfAGallonAMinute() {
      WaterLoss loss = new WaterLoss(WaterUnit.GPM.toBase(0.5));
      assertEquals(720, WaterUnit.GALLON.fromBase(loss.day()), 1e-9);
      assertEquals(262_800, WaterUnit.GALLON.fromBase(loss.year()), 1e-6);
      assertEquals(21_600, 30 * WaterUnit.GALLON.fromBase(loss.day()), 1e-6);
    }

    @Test
    void aValveThatIsStuckOpen() {
      WaterLoss loss = new WaterLoss(WaterUnit.GPM.toBase(25));
      assertEquals(1500, WaterUnit.GALLON.fromBase(loss.hour()), 1e-9);
      assertEquals(136_275, loss.day(), 1);
      assertThrows(GuideException.class, () -> new WaterLoss(-1));
      assertThrows(GuideException.class, () -> new WaterLoss(Double.NaN));
    }

    @Test
    void whatItCosts() {
      WaterPrice price = new WaterPrice(10, "USD", WaterUnit.GALLON.toBase(1000));
      WaterLoss trickle = new WaterLoss(WaterUnit.GPM.toBase(0.1));
      assertEquals(526, price.of(trickle.year()), 0.5);
    }
  }

  /** Common practice, no source: a stopwatch is off by about a quarter second at each end. */
  @Test
  void aTimedFlushIsAScreenOnly() {
    Volume volume = Volume.byTime(WaterUnit.GPM.toBase(25), 3.84);
    assertEquals(1.6, WaterUnit.GALLON.fromBase(volume.litres()), 0.001);
    assertTrue(volume.unsure() / volume.litres() > 0.1, "it is hardly surer than a tenth");
  }

  /** Decision 2013/641/EU, appendix 1: three runs, the arithmetic mean. */
  @Test
  void caughtFlushesAreAveraged() {
    Volume volume = Volume.byCatch(List.of(5.9, 6.0, 6.1), 0.1);
    assertEquals(6.0, volume.litres(), 1e-9);
    assertEquals(3, volume.flushes());
    assertEquals(2 * Math.hypot(0.1 / Math.sqrt(3), 0.1 / Math.sqrt(12)), volume.unsure(), 1e-9);
    assertThrows(GuideException.class, () -> Volume.byCatch(List.of(), 0.1));
  }
}

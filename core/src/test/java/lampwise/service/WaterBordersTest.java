package lampwise.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Which values of pipes, holes and volumes are taken, which are not, and what comes of the last.
 */
class WaterBordersTest {
  private static final double NAN = Double.NaN;

  private static void isRefused(String why, Executable call) {
    GuideException refused = assertThrows(GuideException.class, call);
    assertTrue(refused.getMessage().startsWith(why), refused::getMessage);
  }

  @Test
  void holesReachTheirBorders() {
    assertEquals(0, Hydraulics.hole(0, 400, 0.62));
    assertEquals(0, Hydraulics.hole(3, 0, 0.62));
    assertEquals(Hydraulics.hole(3, 400, 0.5), Hydraulics.hole(3, 400, 1) / 2, 1e-12);
    isRefused("a hole must be 0 mm or more", () -> Hydraulics.hole(-0.1, 400, 0.62));
    isRefused("a pressure must be 0 or more", () -> Hydraulics.hole(3, -0.1, 0.62));
    isRefused("a discharge coefficient", () -> Hydraulics.hole(3, 400, 0));
    isRefused("a discharge coefficient", () -> Hydraulics.hole(3, 400, 1.001));
    assertEquals(NAN, Hydraulics.hole(3, NAN, 0.62));
  }

  @Test
  void pipesReachTheirBorders() {
    assertEquals(0, Hydraulics.friction(0, 32, 20, 140));
    assertEquals(0, Hydraulics.friction(90, 32, 0, 140));
    isRefused("a flow must be 0 or more", () -> Hydraulics.friction(-1, 32, 20, 140));
    isRefused("a pipe must be over 0 mm", () -> Hydraulics.friction(90, 0, 20, 140));
    isRefused("a pipe must be 0 m long or more", () -> Hydraulics.friction(90, 32, -1, 140));
    isRefused("the coefficient C must be over 0", () -> Hydraulics.friction(90, 32, 20, 0));
    isRefused("a pipe must be over 0 mm", () -> Hydraulics.speed(90, 0));
    assertEquals(NAN, Hydraulics.friction(NAN, 32, 20, 140));
    assertEquals(NAN, Hydraulics.demand(NAN));
  }

  @Test
  void aMeterIsReadWithinItsBorders() {
    assertEquals(0, Volume.byMeter(0, 1, 0.1, 0).litres());
    isRefused("the meter's readings must rise", () -> Volume.byMeter(-0.1, 1, 0.1, 0));
    isRefused("the meter's readings must rise", () -> Volume.byMeter(1e9, 1, 0.1, 0));
    isRefused("the meter's readings must rise", () -> Volume.byMeter(NAN, 1, 0.1, 0));
    isRefused("a volume needs a flush or more", () -> Volume.byMeter(6, 0, 0.1, 0));
    isRefused("a step of the meter's scale", () -> Volume.byMeter(6, 1, 0, 0));
    isRefused("an accuracy must be", () -> Volume.byMeter(6, 1, 0.1, -0.01));
    isRefused("an accuracy must be", () -> Volume.byMeter(6, 1, 0.1, 1));
  }

  @Test
  void caughtFlushesSpreadAboutTheirMean() {
    Volume volume = Volume.byCatch(List.of(5.0, 6.0, 8.5), 0.1);
    assertEquals(6.5, volume.litres(), 1e-9);
    double scale = 0.1 / Math.sqrt(12);
    assertEquals(2 * Math.hypot(Math.sqrt(3.25 / 3), scale), volume.unsure(), 1e-9);
    assertEquals(2 * scale, volume.step(), 1e-12);
    // The spread of one flush is not known: a tenth is taken.
    Volume one = Volume.byCatch(List.of(6.0), 0.1);
    assertEquals(2 * Math.hypot(0.6, scale), one.unsure(), 1e-9);
    assertEquals(0, Volume.byCatch(List.of(0.0), 0.1).litres());
    isRefused("a step of the scale", () -> Volume.byCatch(List.of(6.0), 0));
    isRefused("a volume must be 0 or more", () -> Volume.byCatch(List.of(6.0, -0.1), 0.1));
    isRefused("a volume must be 0 or more", () -> Volume.byCatch(List.of(1e6), 0.1));
  }

  @Test
  void aTimedFlushIsUnsureByHalfASecondOfItsFlow() {
    Volume volume = Volume.byTime(30, 8);
    assertEquals(4, volume.litres(), 1e-12);
    assertEquals(0.5 * 0.5 * Math.sqrt(2), volume.unsure(), 1e-12);
    isRefused("a flow must be over 0", () -> Volume.byTime(0, 8));
    isRefused("a flow must be over 0", () -> Volume.byTime(1e6, 8));
    isRefused("a time must be over 0 s", () -> Volume.byTime(30, 0));
    isRefused("a time must be over 0 s", () -> Volume.byTime(30, 1e6));
  }

  /** The part that repeats improve goes with 1 / N for a meter, with 1 / sqrt N else. */
  @ParameterizedTest
  @CsvSource({
    "METER, 1, 0.5, 0.3, 6.34, 2",
    "CATCH, 1, 0.5, 0.3, 6.34, 6",
    "CATCH, 1, 0.5, 0.3, 5.66, 6",
    "CATCH, 1, 0.5, 0, 6.5, 0",
    "CATCH, 1, 0.5, 0.3, 6.2, -1",
    "CATCH, 50, 1, 0, 6.708, 50",
    "CATCH, 50, 1, 0, 6.7, -1",
    "CATCH, 1, 0.1, 0.2, 6.2, 0"
  })
  void soManyMoreFlushesDecide(
      Volume.Method method, int flushes, double unsure, double step, double limit, int more) {
    assertEquals(more, new Volume(6, unsure, flushes, method, step).moreFlushes(limit));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 5, 1e8})
  void aLossIsCountedFromAMinute(double litres) {
    assertEquals(60 * litres, new WaterLoss(litres).hour());
    assertEquals(1440 * litres, new WaterLoss(litres).day());
    assertEquals(365 * 1440 * litres, new WaterLoss(litres).year());
  }

  @Test
  void noLossIsEndless() {
    isRefused("a flow must be 0 or more", () -> new WaterLoss(1e9));
  }
}

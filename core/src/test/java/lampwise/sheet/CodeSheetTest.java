package lampwise.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.rhythm.Rhythm;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CodeSheetTest {
  private static final LampState AWAKE = state("awake");

  private static LampState state(String name) {
    return LampState.of(name, new Rhythm.Dark(), "M", Condition.READY);
  }

  private static LampState weighing(double weight) {
    return new LampState(
        "awake",
        new Rhythm.Dark(),
        "M",
        Condition.READY,
        Seen.ALWAYS,
        weight,
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  private static CodeSheet sheet(double clock, OptionalDouble blink) {
    return new CodeSheet(
        "T",
        Basis.OBSERVED,
        Optional.empty(),
        List.of(),
        List.of(),
        Optional.empty(),
        Optional.empty(),
        clock,
        blink,
        List.of(AWAKE));
  }

  @ParameterizedTest
  @ValueSource(doubles = {-0.01, 0.5, 1, Double.NaN, Double.POSITIVE_INFINITY})
  void refusesClocks(double clock) {
    assertThrows(SheetException.class, () -> sheet(clock, OptionalDouble.empty()));
  }

  @ParameterizedTest
  @ValueSource(doubles = {-1, 0, 60.1, Double.NaN, Double.POSITIVE_INFINITY})
  void refusesBlinks(double seconds) {
    assertThrows(SheetException.class, () -> sheet(0.1, OptionalDouble.of(seconds)));
  }

  @Test
  void keepsTheBorders() {
    assertEquals(0, sheet(0, OptionalDouble.of(60)).clockTolerance());
    assertEquals(60, sheet(0.499, OptionalDouble.of(60)).blinkSeconds().orElseThrow());
  }

  @Test
  void refusesNoStateAndDoubledStates() {
    assertThrows(SheetException.class, () -> CodeSheet.of("T", Basis.LABEL, List.of()));
    SheetException e =
        assertThrows(
            SheetException.class,
            () -> CodeSheet.of("T", Basis.LABEL, List.of(AWAKE, state("b"), AWAKE)));
    assertEquals("the state awake stands twice", e.getMessage());
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "A", "9", "-a", "a b", "a_b", "\u00e4", "unlisted", "no-rhythm"})
  void refusesNames(String name) {
    assertThrows(SheetException.class, () -> state(name));
  }

  @ParameterizedTest
  @ValueSource(strings = {"a", "a9", "a-b-", "z0-z9", "no", "unlisted-2"})
  void keepsNames(String name) {
    assertEquals(name, state(name).name());
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
  void refusesWeights(double weight) {
    assertThrows(SheetException.class, () -> weighing(weight));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.MIN_VALUE, 1, Double.MAX_VALUE})
  void keepsWeights(double weight) {
    assertEquals(weight, weighing(weight).weight());
  }

  @Test
  void aClockIsRefusedInPercent() {
    SheetException e = assertThrows(SheetException.class, () -> sheet(0.5, OptionalDouble.empty()));
    assertEquals("the clock tolerance must be 0 % to below 50 %: 50.0 %", e.getMessage());
  }

  @Test
  void findsStatesByName() {
    CodeSheet sheet = CodeSheet.of("T", Basis.LABEL, List.of(state("b"), AWAKE));
    assertEquals(Optional.of(AWAKE), sheet.state("awake"));
    assertEquals(Optional.empty(), sheet.state("unlisted"));
  }

  @Test
  void onlyTheInventedBasisIsInvented() {
    for (Basis basis : Basis.values()) {
      CodeSheet sheet = CodeSheet.of("T", basis, List.of(AWAKE));
      assertEquals(basis.word().equals("invented"), sheet.isInvented());
    }
  }

  @Test
  void everyWordFindsItsValue() {
    for (Basis value : Basis.values()) {
      assertEquals(Optional.of(value), Basis.of(value.word()));
    }
    for (Condition value : Condition.values()) {
      assertEquals(Optional.of(value), Condition.of(value.word()));
    }
    for (FixtureKind value : FixtureKind.values()) {
      assertEquals(Optional.of(value), FixtureKind.of(value.word()));
    }
    for (Power value : Power.values()) {
      assertEquals(Optional.of(value), Power.of(value.word()));
    }
    for (Seen value : Seen.values()) {
      assertEquals(Optional.of(value), Seen.of(value.word()));
    }
    assertTrue(Condition.of("READY").isEmpty());
    assertFalse(CodeSheet.isReserved("ready"));
  }
}

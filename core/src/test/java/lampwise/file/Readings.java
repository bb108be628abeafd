package lampwise.file;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Optional;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.LightCurve;
import lampwise.light.Recording;

/** Reads texts for tests, with few words. */
final class Readings {
  private Readings() {}

  /** Options of which only some are set. */
  record Said(
      Optional<ReadOptions.Shape> shape,
      Optional<String> column,
      Optional<String> time,
      Optional<ReadOptions.Unit> unit,
      Optional<String> from,
      Optional<String> to,
      List<String> targets,
      List<String> events,
      List<String> covered) {
    static Said nothing() {
      return new Said(
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          List.of(),
          List.of(),
          List.of());
    }

    Said as(ReadOptions.Shape value) {
      return new Said(Optional.of(value), column, time, unit, from, to, targets, events, covered);
    }

    Said column(String value) {
      return new Said(shape, Optional.of(value), time, unit, from, to, targets, events, covered);
    }

    Said time(String value) {
      return new Said(shape, column, Optional.of(value), unit, from, to, targets, events, covered);
    }

    Said unit(ReadOptions.Unit value) {
      return new Said(shape, column, time, Optional.of(value), from, to, targets, events, covered);
    }

    Said from(String value) {
      return new Said(shape, column, time, unit, Optional.of(value), to, targets, events, covered);
    }

    Said to(String value) {
      return new Said(
          shape, column, time, unit, from, Optional.of(value), targets, events, covered);
    }

    Said targets(String... values) {
      return new Said(shape, column, time, unit, from, to, List.of(values), events, covered);
    }

    Said events(String... values) {
      return new Said(shape, column, time, unit, from, to, targets, List.of(values), covered);
    }

    Said covered(String... values) {
      return new Said(shape, column, time, unit, from, to, targets, events, List.of(values));
    }

    ReadOptions options() {
      return new ReadOptions(
          shape, column, time, unit, LightCurve.Lit.BRIGHTER, from, to, targets, events, covered);
    }
  }

  static Said said() {
    return Said.nothing();
  }

  static Recording read(byte[] content, Said said) throws FileException, OptionException {
    List<Recording> recordings = RecordingReader.read("r.txt", content, said.options());
    assertEquals(1, recordings.size());
    return recordings.get(0);
  }

  static BlinkLog log(String text, Said said) throws FileException, OptionException {
    return assertInstanceOf(BlinkLog.class, read(text.getBytes(UTF_8), said));
  }

  static BlinkLog log(String text) throws FileException, OptionException {
    return log(text, said());
  }

  static LightCurve curve(String text, Said said) throws FileException, OptionException {
    return assertInstanceOf(LightCurve.class, read(text.getBytes(UTF_8), said));
  }

  static LightCurve curve(String text) throws FileException, OptionException {
    return curve(text, said());
  }

  static double[] starts(BlinkLog log) {
    return log.blinks().stream().mapToDouble(Blink::onSeconds).toArray();
  }

  static double[] ends(BlinkLog log) {
    return log.blinks().stream().mapToDouble(Blink::offSeconds).toArray();
  }

  static double[] seconds(LightCurve curve) {
    double[] seconds = new double[curve.size()];
    for (int i = 0; i < seconds.length; i++) {
      seconds[i] = curve.seconds(i);
    }
    return seconds;
  }

  static double[] levels(LightCurve curve) {
    double[] levels = new double[curve.size()];
    for (int i = 0; i < levels.length; i++) {
      levels[i] = curve.level(i);
    }
    return levels;
  }

  static FileFault refused(String text, Said said) {
    return refused(text.getBytes(UTF_8), said);
  }

  static FileFault refused(byte[] content, Said said) {
    FileException refused = assertThrows(FileException.class, () -> read(content, said));
    assertEquals(1, refused.faults().size());
    return refused.faults().get(0);
  }

  static String wrongOption(String text, Said said) {
    return assertThrows(OptionException.class, () -> read(text.getBytes(UTF_8), said)).getMessage();
  }
}

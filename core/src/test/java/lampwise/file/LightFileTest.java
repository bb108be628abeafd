package lampwise.file;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static lampwise.file.Readings.curve;
import static lampwise.file.Readings.levels;
import static lampwise.file.Readings.said;
import static lampwise.file.Readings.seconds;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import lampwise.file.ReadOptions.Shape;
import lampwise.file.ReadOptions.Unit;
import lampwise.light.LightCurve;
import lampwise.light.Targets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LightFileTest {
  @ParameterizedTest
  @ValueSource(
      strings = {
        "time,lux\n0.000,12.4\n0.181,15.3\n0.362,12.4\n",
        "0.000,12.4\n0.181,15.3\n0.362,12.4",
        "\"Time (s)\",\"Illuminance (lx)\"\n0.0E0,1.24E1\n1.81E-1,1.53E1\n3.62E-1,1.24E1",
        "Time (s);Illuminance (lx)\n0,000;12,4\n0,181;15,3\n0,362;12,4",
        "Time (s);Illuminance (lx)\n0.000;12.4\n0.181;15.3\n0.362;12.4",
        "time_s\tlux\n0.000\t12.4\n0.181\t15.3\n0.362\t12.4",
        "time_s\tlux\n0,000\t12,4\n0,181\t15,3\n0,362\t12,4",
        "\uFEFFtime,light\n0.000,12.4\n0.181,15.3\n0.362,12.4",
        "time lux\n 0.000   12.4\n 0.181   15.3\n 0.362   12.4",
        "# device: X1\n# started: 2030-01-01 08:00\ntime,lux\n0,12.4\n.181,15.3\n.362,12.4",
        "0.000,12.4\n\n0.181,15.3\n\n0.362,12.4\n\n",
        "0.000,12.4\r\r\n0.181,15.3\r\r\n0.362,12.4\r\r\n",
        "time,lux,\n0.000,12.4,\n0.181,15.3,\n0.362,12.4,\n\n\n",
        "time,lux\r0.000,12.4\r0.181,15.3\r0.362,12.4",
        "time,\tLDR,\tLED\n0,\t12.4,\t0\n181,\t15.3,\t0\n362,\t12.4,\t0",
        "// time microseconds, LUX*100\n0,12.4\n181000,15.3\n362000,12.4",
        "t_ms;value\n0;12.4\n181;15.3\n362;12.4",
        "timestamp_us,light\n0,12.4\n181000,15.3\n362000,12.4",
        "elapsedMs,light\n0,12.4\n181,15.3\n362,12.4",
        "frame,pts_ms,mean_luma\n0,0.0,12.4\n1,181.0,15.3\n2,362.0,12.4",
        "0,0.000,12.4\n1,0.181,15.3\n2,0.362,12.4\n3,0.362,12.4",
        "time,lux\n1893456000000,12.4\n1893456000181,15.3\n1893456000362,12.4",
        "sensor_timestamp_ns,lux\n86412345678901,12.4\n86412526678901,15.3\n86412707678901,12.4",
        "time,lux\n1893456000000000000,12.4\n1893456000181000000,15.3\n1893456000362000000,12.4",
        "time;lux\n23:59:59.900;12.4\n00:00:00.081;15.3\n00:00:00.262;12.4",
        "time,lux\n00:01.000,12.4\n00:01.181,15.3\n00:01.362,12.4",
        "t,accX,light,pressure\n0,0.1,12.4,1\n0.1,9,,1\n.181,.1,15.3,\n.362,,12.4,2",
        "time,lux\n"
            + "0.000,12.4\n"
            + "0.1,NaN\n"
            + "0.181,15.3\n"
            + "0.2,Infinity\n"
            + "0.3,null\n"
            + "0.31,-\n"
            + "0.362,12.4\n"
            + "0.4",
        "time,lux\n0.000,12.4\n0.362,12.4\n0.181,15.3\n0.362,12.4\n0.362,12.4\n",
        "lux,duty,time\n12.4,0,0\n15.3,0,181\n12.4,0,362"
      })
  void readsEveryWritingOfTheSameCurve(String text) throws Exception {
    LightCurve curve = curve(text);
    assertArrayEquals(new double[] {0, 0.181, 0.362}, seconds(curve), 1e-6, text);
    assertArrayEquals(new double[] {12.4, 15.3, 12.4}, levels(curve), text);
    assertEquals(Targets.likely(), curve.marks().targets());
    assertEquals(LightCurve.Lit.BRIGHTER, curve.lit());
  }

  @Test
  void findsTheColumnsByWhatTheyHold() throws Exception {
    String text = "33.2, 0.2, 1, 0\n30.6, 0.2, 1, 100\n38.2, 0.1, 1, 203\n35.4, 0.2, 1, 300\n";
    LightCurve curve = curve(text);
    assertArrayEquals(new double[] {0, 0.1, 0.203, 0.3}, seconds(curve));
    assertArrayEquals(new double[] {33.2, 30.6, 38.2, 35.4}, levels(curve));
    assertNote(curve, "times are column 4, levels are column 1");
    assertNote(curve, "times were taken as ms");
  }

  @Test
  void obeysTheOptions() throws Exception {
    String text = "a,b,c\n1,10,100\n2,20,150\n3,15,120\n";
    LightCurve named = curve(text, said().time("A").column("c").unit(Unit.S));
    assertArrayEquals(new double[] {1, 2, 3}, seconds(named));
    assertArrayEquals(new double[] {100, 150, 120}, levels(named));
    LightCurve numbered = curve(text, said().time("1").column("2").unit(Unit.MS));
    assertArrayEquals(new double[] {0.001, 0.002, 0.003}, seconds(numbered));
    assertArrayEquals(new double[] {10, 20, 15}, levels(numbered));
    LightCurve spans = curve("0.00 0.21\n0.80 1.02", said().as(Shape.LEVELS));
    assertArrayEquals(new double[] {0.21, 1.02}, levels(spans));
    assertArrayEquals(new double[] {0, 0.8}, seconds(spans));
  }

  @Test
  void keepsTheZeroOfSmallNumbersOnly() throws Exception {
    assertEquals(9999.5, curve("time,lux\n9999.5,1\n9999.7,2").seconds(0));
    assertEquals(0, curve("time,lux\n10000.5,1\n10000.7,2").seconds(0));
    assertEquals(-0.2, curve("time,lux\n-0.2,1\n0.0,2").seconds(0));
    assertEquals(9.5, curve("time_ms,lux\n9500,1\n9700,2").seconds(0));
  }

  @Test
  void saysWhatItDidWithRows() throws Exception {
    LightCurve curve =
        curve("time,lux\n0.0,1\n0.2,2\n0.1,3\n0.2,4\n0.3,NaN\n0.4,\n0.5,Inf\n0.6,6\n");
    assertArrayEquals(new double[] {0, 0.1, 0.2, 0.6}, seconds(curve));
    assertArrayEquals(new double[] {1, 3, 4, 6}, levels(curve));
    assertNote(curve, "3 rows without a level left out");
    assertNote(curve, "1 row was out of order");
    assertNote(curve, "1 row has the time of the next one");
    assertNote(curve, "taken as s");
  }

  @Test
  void sortsRowsAroundMidnight() throws Exception {
    LightCurve curve = curve("time,lux\n23:59:59.8,1\n00:00:00.1,3\n23:59:59.9,2\n00:00:00.3,4\n");
    assertArrayEquals(new double[] {0, 0.1, 0.3, 0.5}, seconds(curve), 1e-9);
    assertArrayEquals(new double[] {1, 2, 3, 4}, levels(curve));
  }

  @Test
  void prefersSecondsForDecimalsAndOneUnitForWholeNumbers() throws Exception {
    assertEquals(1.5, curve("time,lux\n0.0,1\n1.5,2").seconds(1));
    assertEquals(0.02, curve("time,lux\n0,1\n20,2").seconds(1));
    assertEquals(0.005, curve("time,lux\n0,1\n5000,2").seconds(1));
    assertEquals(0.0334, curve("time,lux\n0.0,1\n33.4,2").seconds(1), 1e-12);
    assertEquals(1, curve("time,lux\n1893456000,1\n1893456001,2").seconds(1));
  }

  @Test
  void readsLatinHeaders() throws Exception {
    byte[] content = "Temps (s);\u00C9clairement (lx)\n0,0;12,4\n0,2;15,3\n".getBytes(ISO_8859_1);
    LightCurve curve = assertInstanceOf(LightCurve.class, Readings.read(content, said()));
    assertArrayEquals(new double[] {12.4, 15.3}, levels(curve));
    assertNote(curve, "Latin-1");
    assertEquals(0.2, curve("time (\u00B5s),lux\n0,1\n200000,2").seconds(1));
  }

  @Test
  void keepsQuotedCellsAndTheirLines() throws Exception {
    LightCurve curve = curve("\"time, s\",\"lux\"\n\"0.0\",\"12\"\n\"0.2\",\"13\"");
    assertArrayEquals(new double[] {12, 13}, levels(curve));
    FileFault fault =
        Readings.refused("\"time\",\"lux\"\n\n# c\n\"0.0\",\"12\"\n\"0.2\", \"x,y\"", said());
    assertEquals(5, fault.line());
    assertEquals(8, fault.column());
  }

  private static void assertNote(LightCurve curve, String part) {
    List<String> notes = curve.origin().notes();
    assertTrue(notes.stream().anyMatch(note -> note.contains(part)), notes::toString);
  }
}

package lampwise.sim.score;

import java.io.PrintStream;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import lampwise.decode.LampDecoder;
import lampwise.decode.Reading;
import lampwise.decode.Verdict;
import lampwise.file.SheetReader;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.CodeSheet;

/**
 * Decodes light curves in which no lamp blinks: {@code NoLampStudy COUNT FIRST}, so many of each
 * kind from this number on, against the bench's sheet and the demonstration's in turn. Settings
 * were chosen on numbers 0 to 124.
 */
final class NoLampStudy {
  private NoLampStudy() {}

  public static void main(String[] args) {
    PrintStream out = System.out;
    int count = args.length > 0 ? Integer.parseInt(args[0]) : 125;
    int first = args.length > 1 ? Integer.parseInt(args[1]) : 0;
    for (NoLamp kind : NoLamp.values()) {
      out.println(kind + " " + verdicts(kind, first, count));
    }
  }

  /** How often each verdict was given; {@code BLINKS} is a blinking state decoded. */
  static Map<String, Integer> verdicts(NoLamp kind, int first, int count) {
    Map<String, Integer> verdicts = new TreeMap<>();
    for (int i = first; i < first + count; i++) {
      CodeSheet sheet = i % 2 == 0 ? Bench.sheet() : SheetReader.demo();
      Reading reading = new LampDecoder().decode(sheet, List.of(kind.curve(i)));
      verdicts.merge(word(sheet, reading.verdict()), 1, Integer::sum);
    }
    return verdicts;
  }

  private static String word(CodeSheet sheet, Verdict verdict) {
    boolean blinks =
        verdict instanceof Verdict.Decoded decoded
            && sheet.state(decoded.state()).orElseThrow().rhythm() instanceof Rhythm.Blinking;
    return blinks ? "BLINKS" : verdict.word();
  }
}

package example;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import lampwise.decode.LampDecoder;
import lampwise.decode.Reading;
import lampwise.file.FileException;
import lampwise.file.OptionException;
import lampwise.file.ReadOptions;
import lampwise.file.RecordingReader;
import lampwise.file.SheetReader;
import lampwise.light.Recording;
import lampwise.sheet.CodeSheet;

/** Reads one recording against a sheet: {@code ReadLamp unit.sheet.yaml taps.txt}. */
public final class ReadLamp {
  private ReadLamp() {}

  static Reading read(Path sheetFile, Path recordingFile)
      throws IOException, FileException, OptionException {
    CodeSheet sheet = SheetReader.read(sheetFile.toString(), Files.readAllBytes(sheetFile));
    List<Recording> recordings =
        RecordingReader.read(recordingFile.toString(), recordingFile, ReadOptions.none());
    return new LampDecoder().decode(sheet, recordings);
  }

  public static void main(String[] args) throws Exception {
    System.out.println(read(Path.of(args[0]), Path.of(args[1])).verdict());
  }
}

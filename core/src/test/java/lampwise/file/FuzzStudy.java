package lampwise.file;

import java.io.File;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Fuzzes one reader guided by coverage: {@code FuzzStudy SHEETS 600}. It starts from the corpus
 * that is kept, and packs what is worth keeping beside it as {@code NAME.zip.new}, never over it.
 * Findings stay as files in {@code target/fuzz/NAME}. Inputs are at most 4,096 bytes; one that
 * takes over 10 s or 1 GB of heap is a finding. The fuzzer must be on the class path (profile
 * {@code fuzz}).
 */
final class FuzzStudy {
  private static final String FUZZER = "com.code_intelligence.jazzer.Jazzer";

  private final FuzzCorpus corpus;
  private final Path work;

  private FuzzStudy(FuzzCorpus corpus) throws IOException {
    this.corpus = corpus;
    work = Files.createDirectories(Path.of("target", "fuzz", corpus.target())).toAbsolutePath();
  }

  public static void main(String[] args) throws IOException, InterruptedException {
    PrintStream out = System.out;
    if (args.length != 2) {
      out.println("usage: FuzzStudy RECORDINGS|LOGS|SHEETS|GUIDES|... SECONDS");
      System.exit(2);
    }
    FuzzStudy study = new FuzzStudy(FuzzCorpus.valueOf(args[0]));
    int status = study.run(Integer.parseInt(args[1]));
    out.println("kept in " + study.kept());
    System.exit(status);
  }

  private int run(int seconds) throws IOException, InterruptedException {
    Path found = Files.createDirectories(work.resolve("corpus"));
    for (Map.Entry<String, byte[]> input : corpus.inputs().entrySet()) {
      Files.write(found.resolve(input.getKey()), input.getValue());
    }
    int status =
        start("--keep_going=100", "-max_total_time=" + seconds, "-timeout=10", found.toString());
    Path least = Files.createDirectories(work.resolve("least"));
    start("-merge=1", least.toString(), found.toString());
    return status;
  }

  private Path kept() throws IOException {
    Map<String, byte[]> inputs = new TreeMap<>();
    try (Stream<Path> files = Files.list(work.resolve("least"))) {
      for (Path file : files.sorted().toList()) {
        inputs.put(file.getFileName().toString().substring(0, 12), Files.readAllBytes(file));
      }
    }
    Path beside = corpus.archive().resolveSibling(corpus.target() + ".zip.new");
    Files.createDirectories(beside.getParent());
    FuzzCorpus.pack(inputs, beside);
    return beside;
  }

  private int start(String... options) throws IOException, InterruptedException {
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx1g",
                "-cp",
                absolute(System.getProperty("java.class.path")),
                FUZZER,
                "--target_class=lampwise.file.FuzzTargets$" + corpus.target(),
                "--instrumentation_includes=lampwise.**:org.snakeyaml.**",
                "--disabled_hooks=com.code_intelligence.jazzer.sanitizers.**",
                "-max_len=4096",
                "-rss_limit_mb=3000"));
    command.addAll(List.of(options));
    return new ProcessBuilder(command).directory(work.toFile()).inheritIO().start().waitFor();
  }

  private static String absolute(String classPath) {
    return Stream.of(classPath.split(File.pathSeparator))
        .map(part -> Path.of(part).toAbsolutePath().toString())
        .collect(Collectors.joining(File.pathSeparator));
  }
}

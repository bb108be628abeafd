package lampwise.file;

import java.util.List;
import java.util.Optional;
import lampwise.decode.Verdict;
import lampwise.service.Cause;
import lampwise.service.Job;
import lampwise.service.LampRead;
import lampwise.service.MakeSafe;
import lampwise.service.Remedy;
import lampwise.service.Round;
import lampwise.service.Step;
import lampwise.service.Urgency;
import lampwise.service.Who;

/**
 * Writes the jobs of a round as rows for a spreadsheet (RFC 4180, lines ended by CR LF). A cell
 * that would start a formula has an apostrophe before it.
 */
public final class RoundCsv {
  /** The columns. */
  public static final List<String> COLUMNS =
      List.of(
          "order",
          "fixture",
          "place",
          "kind",
          "complaint",
          "urgent",
          "weight",
          "recording",
          "lamp",
          "probability",
          "cause",
          "cause-probability",
          "make-safe",
          "next",
          "minutes",
          "parts",
          "waits-for");

  private RoundCsv() {}

  /**
   * Writes a round.
   *
   * @param round the round
   * @return the header and a row for each job, in order
   */
  public static String write(Round round) {
    StringBuilder text = new StringBuilder(CsvRows.text(COLUMNS));
    int order = 1;
    for (Job job : round.worklist().jobs()) {
      text.append(CsvRows.text(cells(order++, job)));
    }
    return text.toString();
  }

  private static List<String> cells(int order, Job job) {
    Optional<LampRead> lamp = job.lamp();
    Optional<Cause> cause = job.causes().keySet().stream().findFirst();
    return List.of(
        Integer.toString(order),
        CellText.cell(job.fixture().id()),
        CellText.cell(job.fixture().place()),
        job.fixture().kind().word(),
        job.complaint().word(),
        CellText.cell(job.reasons().stream().map(Urgency::word).toList()),
        number(job.weight()),
        CellText.cell(lamp.map(LampRead::recording).orElse("")),
        CellText.cell(lamp.map(one -> one.seen().state()).orElse("")),
        lamp.map(LampRead::verdict)
            .filter(Verdict.Decoded.class::isInstance)
            .map(verdict -> number(((Verdict.Decoded) verdict).probability()))
            .orElse(""),
        CellText.cell(cause.map(Cause::name).orElse("")),
        cause.map(one -> number(job.causes().getOrDefault(one, Double.NaN))).orElse(""),
        job.safe().map(MakeSafe::id).orElse(""),
        CellText.cell(job.next().map(RoundCsv::said).orElse("")),
        number(job.minutes()),
        CellText.cell(job.parts()),
        job.waitsFor().map(Who::word).orElse(""));
  }

  private static String number(double value) {
    return value >= 0 && value <= Double.MAX_VALUE ? JsonNumber.of(value, 6, 0) : "";
  }

  private static String said(Step step) {
    if (step instanceof Step.Look look) {
      return "check: " + look.check().question();
    }
    if (step instanceof Step.Mend mend) {
      return "repair: " + mend.remedy().name();
    }
    if (step instanceof Step.HandOver over) {
      return "hand over to "
          + over.to().word()
          + over.remedy().map(Remedy::name).map(name -> ": " + name).orElse("");
    }
    return step.why();
  }
}

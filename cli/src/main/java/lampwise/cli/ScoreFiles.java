package lampwise.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwise.sim.score.Calibration;
import lampwise.sim.score.Interval;
import lampwise.sim.score.Outcome;
import lampwise.sim.score.Tally;

/** What the command score found, as CSV and JSON: shares from 0 to 1, log loss in nat. */
final class ScoreFiles {
  private static final int DECIMALS = 6;

  private ScoreFiles() {}

  /** A row for each cell. */
  static String cellsCsv(ScoreResult result) {
    StringBuilder csv = new StringBuilder();
    csv.append("observer,window_s,n,right,right_low,right_high,reference,difference,")
        .append("difference_low,difference_high,decoded,misread,undecided,unreadable,unlisted,")
        .append("listed_called_unlisted,log_loss,reference_log_loss,same_right,same_difference,")
        .append("same_difference_low,same_difference_high,same_log_loss\n");
    for (CellScore cell : result.cells()) {
      Tally tally = cell.tally();
      Interval right = tally.rightShare();
      List<String> row = new ArrayList<>();
      row.add(cell.cell().observer());
      row.add(Fixed.of(cell.cell().seconds(), DECIMALS, 0));
      row.add(Integer.toString(tally.all()));
      row.add(number(right.value()));
      row.add(number(right.low()));
      row.add(number(right.high()));
      row.addAll(beside(cell, cell.told()));
      for (int count :
          new int[] {
            tally.decoded(),
            tally.misread(),
            tally.undecided(),
            tally.unreadable(),
            tally.unlisted(),
            tally.listedCalledUnlisted()
          }) {
        row.add(Integer.toString(count));
      }
      row.add(number(tally.logLoss()));
      row.add(cell.told().map(others -> number(Tally.of(others).logLoss())).orElse(""));
      row.addAll(beside(cell, cell.same()));
      row.add(cell.same().map(others -> number(Tally.of(others).logLoss())).orElse(""));
      csv.append(String.join(",", row)).append('\n');
    }
    return csv.toString();
  }

  /** How often a reference is right, and the difference with its interval; empty without one. */
  private static List<String> beside(CellScore cell, Optional<List<Outcome>> others) {
    return List.of(
        others.map(other -> number(Tally.of(other).rightShare().value())).orElse(""),
        cell.difference(others).map(difference -> number(difference.value())).orElse(""),
        cell.difference(others).map(difference -> number(difference.low())).orElse(""),
        cell.difference(others).map(difference -> number(difference.high())).orElse(""));
  }

  /** A row for each recording. */
  static String readingsCsv(ScoreResult result) {
    StringBuilder csv = new StringBuilder();
    csv.append("observer,window_s,number,truth,top,top_probability,truth_probability,verdict,")
        .append("answer,reference_top,reference_top_probability,reference_truth_probability,")
        .append("same_top,same_top_probability,same_truth_probability\n");
    for (CellScore cell : result.cells()) {
      for (int i = 0; i < cell.outcomes().size(); i++) {
        int number = i;
        Outcome outcome = cell.outcomes().get(i);
        csv.append(cell.cell().observer())
            .append(',')
            .append(Fixed.of(cell.cell().seconds(), DECIMALS, 0))
            .append(',')
            .append(number)
            .append(',')
            .append(outcome.truth())
            .append(',')
            .append(chances(outcome))
            .append(',')
            .append(outcome.verdict())
            .append(',')
            .append(outcome.answer().orElse(""))
            .append(',')
            .append(cell.told().map(others -> chances(others.get(number))).orElse(",,"))
            .append(',')
            .append(cell.same().map(others -> chances(others.get(number))).orElse(",,"))
            .append('\n');
      }
    }
    return csv.toString();
  }

  private static String chances(Outcome outcome) {
    return outcome.top()
        + ","
        + number(outcome.topProbability())
        + ","
        + number(outcome.truthProbability());
  }

  /** All of it as one JSON object. */
  static String json(ScoreResult result) {
    StringBuilder json = new StringBuilder("{\"lampwise-score\":1");
    put(json, "sheet", PageTemplate.quoted(result.sheet()));
    put(json, "invented", Boolean.toString(result.invented()));
    put(json, "decoder", PageTemplate.quoted(result.decoder()));
    put(json, "seed", Long.toString(result.seed()));
    put(json, "count", Integer.toString(result.count()));
    put(json, "own_observer", result.own().map(PageTemplate::quoted).orElse("null"));
    put(json, "unlisted_only", Boolean.toString(result.unlisted()));
    put(json, "cells", list(result.cells().stream().map(ScoreFiles::cell).toList()));
    StringBuilder all = new StringBuilder("{\"cell\":\"all\"");
    tally(all, result.tally());
    put(json, "all", all.append('}').toString());
    compared(json, "", result.compared(CellScore::told));
    compared(json, "same_", result.compared(CellScore::same));
    // Where only what is unlisted is shown, probabilities cannot mean what they say.
    put(json, "calibration", result.unlisted() ? "null" : calibration(result.calibration()));
    put(json, "confusion", confusion(Tally.confusion(result.outcomes())));
    return json.append("}\n").toString();
  }

  private static void compared(StringBuilder json, String reference, ScoreResult.Compared part) {
    boolean none = part.own().isEmpty();
    put(
        json,
        reference + "difference",
        none ? "null" : interval(Interval.difference(part.own(), part.reference())));
    put(json, reference + "log_loss_compared", none ? "null" : losses(part));
    put(json, reference + "listed_compared", gap(part.listed(true)));
    put(json, reference + "others_compared", gap(part.listed(false)));
  }

  /** By how much the decoder is more often right, and its log loss higher, than the reference. */
  private static String gap(ScoreResult.Compared part) {
    return part.own().size() < 2
        ? "null"
        : "{\"n\":"
            + part.own().size()
            + ",\"difference\":"
            + interval(Interval.difference(part.own(), part.reference()))
            + ",\"log_loss_gap\":"
            + interval(part.logLossGap())
            + "}";
  }

  private static String losses(ScoreResult.Compared compared) {
    return "{\"decoder\":"
        + value(Tally.of(compared.own()).logLoss())
        + ",\"reference\":"
        + value(Tally.of(compared.reference()).logLoss())
        + "}";
  }

  private static String cell(CellScore cell) {
    StringBuilder json = new StringBuilder("{\"cell\":" + PageTemplate.quoted(cell.name()));
    put(json, "observer", PageTemplate.quoted(cell.cell().observer()));
    put(json, "window_s", value(cell.cell().seconds()));
    tally(json, cell.tally());
    put(json, "reference", tally("reference", cell.told()));
    put(json, "difference", cell.difference(cell.told()).map(ScoreFiles::interval).orElse("null"));
    put(json, "same_candidates", tally("same candidates", cell.same()));
    put(
        json,
        "same_difference",
        cell.difference(cell.same()).map(ScoreFiles::interval).orElse("null"));
    return json.append('}').toString();
  }

  private static String tally(String name, Optional<List<Outcome>> outcomes) {
    return outcomes
        .map(
            all -> {
              StringBuilder json = new StringBuilder("{\"cell\":" + PageTemplate.quoted(name));
              tally(json, Tally.of(all));
              return json.append('}').toString();
            })
        .orElse("null");
  }

  private static void tally(StringBuilder json, Tally tally) {
    put(json, "n", Integer.toString(tally.all()));
    put(json, "right", interval(tally.rightShare()));
    put(json, "decoded", Integer.toString(tally.decoded()));
    put(json, "misread", Integer.toString(tally.misread()));
    put(json, "undecided", Integer.toString(tally.undecided()));
    put(json, "unreadable", Integer.toString(tally.unreadable()));
    put(json, "unlisted", Integer.toString(tally.unlisted()));
    put(json, "listed_called_unlisted", Integer.toString(tally.listedCalledUnlisted()));
    put(json, "log_loss", value(tally.logLoss()));
  }

  private static String calibration(Calibration calibration) {
    List<String> bins = new ArrayList<>();
    for (Calibration.Bin bin : calibration.bins()) {
      bins.add(
          "{\"n\":"
              + bin.count()
              + ",\"stated\":"
              + value(bin.stated())
              + ",\"right\":"
              + interval(bin.right())
              + "}");
    }
    return "{\"error\":"
        + value(calibration.error())
        + ",\"by_chance\":"
        + value(calibration.byChance())
        + ",\"excess\":"
        + value(calibration.excess())
        + ",\"bins\":"
        + list(bins)
        + "}";
  }

  private static String confusion(Map<String, Map<String, Integer>> counts) {
    List<String> truths = new ArrayList<>();
    counts.forEach(
        (truth, tops) -> {
          List<String> pairs = new ArrayList<>();
          tops.forEach((top, count) -> pairs.add(PageTemplate.quoted(top) + ":" + count));
          truths.add(PageTemplate.quoted(truth) + ":{" + String.join(",", pairs) + "}");
        });
    return "{" + String.join(",", truths) + "}";
  }

  private static String interval(Interval interval) {
    return "["
        + value(interval.value())
        + ","
        + value(interval.low())
        + ","
        + value(interval.high())
        + "]";
  }

  private static void put(StringBuilder json, String key, String value) {
    json.append(",\"").append(key).append("\":").append(value);
  }

  private static String list(List<String> values) {
    return "[" + String.join(",", values) + "]";
  }

  private static String value(double value) {
    return Double.isNaN(value) ? "null" : number(value);
  }

  private static String number(double value) {
    return Double.isNaN(value) ? "" : Fixed.of(value, DECIMALS, 0);
  }
}

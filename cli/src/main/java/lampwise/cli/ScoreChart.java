package lampwise.cli;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import lampwise.sim.score.Calibration;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYErrorRenderer;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XYIntervalSeries;
import org.jfree.data.xy.XYIntervalSeriesCollection;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;

/** A decoder's calibration drawn: how often it is right over how sure it says it is. */
final class ScoreChart implements Drawing {
  private static final int SIZE = 560;
  private static final double DOT = 7;

  private final JFreeChart chart;

  ScoreChart(Calibration calibration) {
    ChartInk ink = new ChartInk(14, 19);
    XYIntervalSeries measured = new XYIntervalSeries("measured");
    for (Calibration.Bin bin : calibration.bins()) {
      measured.add(
          bin.stated(),
          bin.stated(),
          bin.stated(),
          bin.right().value(),
          bin.right().low(),
          bin.right().high());
    }
    XYIntervalSeriesCollection bins = new XYIntervalSeriesCollection();
    bins.addSeries(measured);
    XYErrorRenderer dots = new XYErrorRenderer();
    dots.setSeriesShape(0, new Ellipse2D.Double(-DOT / 2, -DOT / 2, DOT, DOT));
    dots.setSeriesPaint(0, ChartInk.LEVEL);
    dots.setErrorStroke(new BasicStroke(1.2f));
    XYPlot plot = new XYPlot(bins, axis(ink, "stated"), axis(ink, "right"), dots);
    XYSeries same = new XYSeries("as stated");
    same.add(0, 0);
    same.add(1, 1);
    XYLineAndShapeRenderer line = new XYLineAndShapeRenderer(true, false);
    line.setSeriesPaint(0, ChartInk.RULE);
    line.setSeriesStroke(0, ChartInk.DASHED);
    plot.setDataset(1, new XYSeriesCollection(same));
    plot.setRenderer(1, line);
    plot.setBackgroundPaint(ChartInk.PAPER);
    plot.setDomainGridlinePaint(ChartInk.GRID);
    plot.setRangeGridlinePaint(ChartInk.GRID);
    chart = new JFreeChart("How often it is right, by how sure it is", ink.strong(), plot, false);
    chart.setBackgroundPaint(ChartInk.PAPER);
    chart.getTitle().setPaint(ChartInk.TEXT);
  }

  private static NumberAxis axis(ChartInk ink, String name) {
    NumberAxis axis = ChartAxes.ranged(ink, 0, 1.02);
    axis.setLabel(name);
    axis.setLabelFont(ink.plain());
    axis.setLabelPaint(ChartInk.TEXT);
    return axis;
  }

  @Override
  public int width() {
    return SIZE;
  }

  @Override
  public int height() {
    return SIZE;
  }

  @Override
  public void draw(Graphics2D g) {
    chart.draw(g, new Rectangle2D.Double(0, 0, SIZE, SIZE));
  }
}

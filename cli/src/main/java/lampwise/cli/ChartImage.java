package lampwise.cli;

import java.awt.Dimension;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGGraphics2D;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/** The two kinds of file that a chart can be, by the ending of their names. */
enum ChartImage {
  PNG {
    @Override
    byte[] bytes(Drawing picture) {
      BufferedImage image =
          new BufferedImage(picture.width(), picture.height(), BufferedImage.TYPE_INT_RGB);
      Graphics2D g = image.createGraphics();
      ChartInk.smooth(g);
      picture.draw(g);
      g.dispose();
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      try {
        ImageIO.setUseCache(false);
        ImageIO.write(image, "png", bytes);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
      return bytes.toByteArray();
    }
  },

  SVG {
    @Override
    byte[] bytes(Drawing picture) {
      try {
        Document document =
            DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .getDOMImplementation()
                .createDocument(NAMESPACE, "svg", null);
        SVGGeneratorContext context = SVGGeneratorContext.createDefault(document);
        context.setComment(null);
        context.setEmbeddedFontsOn(false);
        context.setPrecision(2);
        // Letters stay letters.
        SVGGraphics2D g = new SVGGraphics2D(context, false);
        g.setSVGCanvasSize(new Dimension(picture.width(), picture.height()));
        ChartInk.smooth(g);
        picture.draw(g);
        Element root = g.getRoot();
        root.setAttributeNS(null, "viewBox", "0 0 " + picture.width() + " " + picture.height());
        StringWriter text = new StringWriter();
        g.stream(root, text, true, false);
        return withoutDoctype(text.toString()).getBytes(StandardCharsets.UTF_8);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      } catch (ParserConfigurationException e) {
        throw new IllegalStateException("this Java has no XML", e);
      }
    }
  };

  private static final String NAMESPACE = "http://www.w3.org/2000/svg";

  /** The document without the one thing in it that refers to another place. */
  private static String withoutDoctype(String document) {
    int start = document.indexOf("<!DOCTYPE");
    int root = document.indexOf("<svg");
    return start < 0 || start > root
        ? document
        : document.substring(0, start) + document.substring(root);
  }

  /** The whole file. The same picture gives the same bytes on the same machine. */
  abstract byte[] bytes(Drawing picture);

  /**
   * Whether this machine can draw letters. A Java without fonts says so in ways of its own, by
   * exceptions and by errors.
   */
  static boolean hasLetters() {
    try {
      return new ChartInk(14, 19).width("seconds", new Font(Font.SANS_SERIF, Font.PLAIN, 14)) > 0;
    } catch (RuntimeException | LinkageError | InternalError e) {
      return false;
    }
  }

  /** The ending of its files' names, with the point. */
  String ending() {
    return "." + name().toLowerCase(Locale.ROOT);
  }

  /** The kind of a file by its name's ending, large or small letters; empty for any other. */
  static Optional<ChartImage> of(String name) {
    for (ChartImage image : values()) {
      if (name.toLowerCase(Locale.ROOT).endsWith(image.ending())) {
        return Optional.of(image);
      }
    }
    return Optional.empty();
  }
}

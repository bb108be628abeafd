package lampwise.cli;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.SAXException;

/** What an SVG picture holds. */
record Pictures(Document document, String source) {
  static Pictures of(ChartSubject subject, int width) {
    ChartPicture picture = new ChartPicture(subject, OptionalDouble.of(0.1), width);
    return of(new String(ChartImage.SVG.bytes(picture), StandardCharsets.UTF_8));
  }

  static Pictures of(Path file) throws IOException {
    return of(Files.readString(file));
  }

  static Pictures of(String source) {
    try {
      DocumentBuilder builder = DocumentBuilderFactory.newInstance().newDocumentBuilder();
      return new Pictures(
          builder.parse(new ByteArrayInputStream(source.getBytes(StandardCharsets.UTF_8))), source);
    } catch (ParserConfigurationException | SAXException | IOException e) {
      throw new AssertionError("no XML: " + source, e);
    }
  }

  /** The texts, in the order they are drawn. */
  List<String> texts() {
    List<String> texts = new ArrayList<>();
    NodeList nodes = document.getElementsByTagName("text");
    for (int i = 0; i < nodes.getLength(); i++) {
      texts.add(nodes.item(i).getTextContent());
    }
    return texts;
  }

  /** The texts that are not the numbers of an axis. */
  List<String> labels() {
    return texts().stream().filter(text -> !text.matches("-?[0-9.E-]+")).toList();
  }

  /** The data of the paths drawn with a style that holds this. */
  List<String> paths(String style) {
    List<String> found = new ArrayList<>();
    NodeList nodes = document.getElementsByTagName("path");
    for (int i = 0; i < nodes.getLength(); i++) {
      Element path = (Element) nodes.item(i);
      Element group = (Element) path.getParentNode();
      if ((path.getAttribute("style") + group.getAttribute("style")).contains(style)) {
        found.add(path.getAttribute("d"));
      }
    }
    return found;
  }

  /** The height of the highest point of the first path of a style, downwards from the top. */
  double topOf(String style) {
    String[] numbers = paths(style).get(0).replaceAll("[A-Za-z,]", " ").strip().split("\\s+");
    double top = Double.POSITIVE_INFINITY;
    for (int i = 1; i < numbers.length; i += 2) {
      top = Math.min(top, Double.parseDouble(numbers[i]));
    }
    return top;
  }

  /** The height of the line on which a text stands, downwards from the top. */
  double baselineOf(String words) {
    NodeList nodes = document.getElementsByTagName("text");
    for (int i = 0; i < nodes.getLength(); i++) {
      if (nodes.item(i).getTextContent().equals(words)) {
        return Double.parseDouble(((Element) nodes.item(i)).getAttribute("y"));
      }
    }
    throw new AssertionError("no text " + words + " in " + texts());
  }
}

package platecall.report;

import java.awt.Dimension;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.batik.svggen.SVGGraphics2D;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;

/** Makes picture files of charts. */
final class Image {

    private static final String SVG = "http://www.w3.org/2000/svg";

    /** A bigger picture is made smaller, so that it fits into memory beside a search. */
    private static final double MOST_PIXELS = 40e6;

    private Image() {}

    static byte[] png(TimeChart chart) {
        TimeChart.Picture picture = chart.picture();
        double scale = Math.min(1, Math.sqrt(MOST_PIXELS / ((double) picture.width * picture.height)));
        BufferedImage image = new BufferedImage(
                (int) Math.round(picture.width * scale),
                (int) Math.round(picture.height * scale),
                BufferedImage.TYPE_3BYTE_BGR);
        Graphics2D g = image.createGraphics();
        g.scale(scale, scale);
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
        picture.draw(g);
        g.dispose();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            ImageIO.write(image, "png", bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    private static final String ABOUT =
            "A chart over the hours of the day. Run sheet and sequence.csv say the same line by line.";

    static byte[] svg(TimeChart chart, String title) {
        TimeChart.Picture picture = chart.picture();
        try {
            Document document = DocumentBuilderFactory.newInstance()
                    .newDocumentBuilder()
                    .getDOMImplementation()
                    .createDocument(SVG, "svg", null);
            SVGGraphics2D g = new SVGGraphics2D(document);
            g.setSVGCanvasSize(new Dimension(picture.width, picture.height));
            picture.draw(g);
            Element root = g.getRoot();
            root.setAttribute("viewBox", "0 0 " + picture.width + " " + picture.height);
            Element name = document.createElementNS(SVG, "title");
            name.setTextContent(title);
            root.setAttribute("role", "img");
            root.setAttribute("lang", "en");
            Element about = document.createElementNS(SVG, "desc");
            about.setTextContent(ABOUT);
            root.insertBefore(about, root.getFirstChild());
            root.insertBefore(name, about);
            keepWidths(root);
            StringWriter text = new StringWriter();
            g.stream(root, text, false, false);
            return text.toString().getBytes(StandardCharsets.UTF_8);
        } catch (ParserConfigurationException e) {
            throw new IllegalStateException("every Java can make a document", e);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Writes the measured width beside every text, so that a viewer with another typeface makes it no wider. */
    private static void keepWidths(Element root) {
        NodeList texts = root.getElementsByTagNameNS(SVG, "text");
        for (int i = 0; i < texts.getLength(); i++) {
            Element text = (Element) texts.item(i);
            float pixels = Float.parseFloat(inherited(text, "font-size", "14").replace("px", ""));
            Font font = inherited(text, "font-weight", "normal").equals("bold")
                    ? Fonts.bold(pixels)
                    : Fonts.regular(pixels);
            double width = Labels.width(font, text.getTextContent());
            text.setAttribute("textLength", String.valueOf(Math.round(width * 10) / 10.0));
            text.setAttribute("lengthAdjust", "spacingAndGlyphs");
            text.setAttribute("font-family", "'" + Fonts.FAMILY + "', Arial, sans-serif");
        }
    }

    private static String inherited(Element element, String attribute, String otherwise) {
        for (Node node = element; node instanceof Element at; node = node.getParentNode()) {
            if (at.hasAttribute(attribute)) {
                return at.getAttribute(attribute);
            }
        }
        return otherwise;
    }
}

package platecall.intake;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * Cells of a workbook with a formula whose value is not in the file, as programs leave them that write formulas without
 * reckoning them. The reader of workbooks can't tell them from formulas whose value is an empty text.
 */
final class UnreckonedFormulas {

    private static final String RELATIONSHIPS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

    private UnreckonedFormulas() {}

    /** Their addresses, by name of the worksheet. */
    static Map<String, Set<String>> of(Path file) throws IOException {
        try (ZipFile zip = new ZipFile(file.toFile())) {
            Map<String, String> targets = new HashMap<>();
            each(zip, "xl/_rels/workbook.xml.rels", xml -> {
                if (xml.isStartElement() && xml.getLocalName().equals("Relationship")) {
                    targets.put(xml.getAttributeValue(null, "Id"), xml.getAttributeValue(null, "Target"));
                }
            });
            Map<String, String> parts = new HashMap<>();
            each(zip, "xl/workbook.xml", xml -> {
                if (xml.isStartElement() && xml.getLocalName().equals("sheet")) {
                    String target = targets.getOrDefault(xml.getAttributeValue(RELATIONSHIPS, "id"), "");
                    parts.put(
                            xml.getAttributeValue(null, "name"),
                            target.startsWith("/") ? target.substring(1) : "xl/" + target);
                }
            });
            Map<String, Set<String>> addresses = new HashMap<>();
            for (Map.Entry<String, String> part : parts.entrySet()) {
                Cells cells = new Cells();
                each(zip, part.getValue(), cells::see);
                addresses.put(part.getKey(), cells.found);
            }
            return addresses;
        } catch (XMLStreamException malformed) {
            throw new IOException(malformed);
        }
    }

    private interface Visitor {
        void see(XMLStreamReader xml) throws XMLStreamException;
    }

    private static void each(ZipFile zip, String part, Visitor visitor) throws IOException, XMLStreamException {
        ZipEntry entry = zip.getEntry(part);
        if (entry == null) {
            return;
        }
        XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        try (InputStream in = zip.getInputStream(entry)) {
            XMLStreamReader xml = factory.createXMLStreamReader(in);
            while (xml.hasNext()) {
                xml.next();
                visitor.see(xml);
            }
        }
    }

    /** The cell that is being read, and those found before. */
    private static final class Cells {

        private final Set<String> found = new HashSet<>();
        private String address;
        private boolean text;
        private boolean formula;
        private boolean value;
        private boolean inValue;

        void see(XMLStreamReader xml) {
            if (xml.isStartElement()) {
                switch (xml.getLocalName()) {
                    case "c" -> {
                        address = xml.getAttributeValue(null, "r");
                        text = "str".equals(xml.getAttributeValue(null, "t"));
                        formula = false;
                        value = false;
                    }
                    case "f" -> formula = true;
                    case "v" -> inValue = true;
                    default -> {}
                }
            } else if (xml.isCharacters()) {
                value |= inValue && !xml.isWhiteSpace();
            } else if (xml.isEndElement()) {
                inValue = false;
                if (xml.getLocalName().equals("c") && formula && !value && !text && address != null) {
                    found.add(address);
                }
            }
        }
    }
}

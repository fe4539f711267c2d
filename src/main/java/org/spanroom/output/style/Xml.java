package org.spanroom.output.style;

import java.io.StringWriter;
import java.util.function.Consumer;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/** Writes one XML document, element by element; attributes are given as pairs of a name and a value. */
final class Xml {
    private final XMLStreamWriter writer;
    private int depth;

    private Xml(XMLStreamWriter writer) {
        this.writer = writer;
    }

    /** Returns a document in UTF-8 that ends with a line break. */
    static String document(Consumer<Xml> content) {
        var text = new StringWriter();
        try {
            XMLStreamWriter writer = XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(text);
            writer.writeStartDocument("UTF-8", "1.0");
            content.accept(new Xml(writer));
            writer.writeEndDocument();
            writer.close();
        } catch (XMLStreamException failure) {
            throw new IllegalStateException(failure);
        }
        return text.append('\n').toString();
    }

    /** Declares the type of the document; before the first element. */
    void type(String declaration) {
        write(() -> {
            writer.writeCharacters("\n");
            writer.writeDTD(declaration);
        });
    }

    void open(String name, String... attributes) {
        write(() -> {
            breakLine();
            writer.writeStartElement(name);
            put(attributes);
        });
        depth++;
    }

    void close() {
        depth--;
        write(() -> {
            breakLine();
            writer.writeEndElement();
        });
    }

    /** Writes an element with elements in it. */
    void element(String name, Runnable content, String... attributes) {
        open(name, attributes);
        content.run();
        close();
    }

    /** Writes an element without content. */
    void leaf(String name, String... attributes) {
        write(() -> {
            breakLine();
            writer.writeEmptyElement(name);
            put(attributes);
        });
    }

    /** Writes an element with a text in it. */
    void text(String name, String text, String... attributes) {
        write(() -> {
            breakLine();
            writer.writeStartElement(name);
            put(attributes);
            writer.writeCharacters(text);
            writer.writeEndElement();
        });
    }

    private void breakLine() throws XMLStreamException {
        writer.writeCharacters("\n" + " ".repeat(depth));
    }

    private void put(String... attributes) throws XMLStreamException {
        for (int i = 0; i + 1 < attributes.length; i += 2) {
            writer.writeAttribute(attributes[i], attributes[i + 1]);
        }
    }

    /** A step of writing. */
    private interface Step {
        void run() throws XMLStreamException;
    }

    private static void write(Step step) {
        try {
            step.run();
        } catch (XMLStreamException failure) {
            throw new IllegalStateException(failure);
        }
    }
}

package tallywell.report;

import java.util.AbstractList;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiFunction;
import org.apache.xmlbeans.SchemaTypeSystem;
import org.apache.xmlbeans.XmlError;
import org.apache.xmlbeans.XmlException;
import org.apache.xmlbeans.XmlObject;
import org.apache.xmlbeans.XmlOptions;

/**
 * Holds one part against the schemas: name and XML to what is wrong, the first line {@code checked} if the schemas describe
 * its root element. {@link OoxmlSchemas} loads this class beside the whole set of schemas.
 */
public final class SchemaCheck implements BiFunction<String, String, List<String>> {
    static final String CHECKED = "checked";

    /** Telling where an error stands takes time that grows with the part, so that thousands would take hours. */
    private static final int MOST = 20;

    private final SchemaTypeSystem types;

    /** Loads the schemas. */
    public SchemaCheck() throws ReflectiveOperationException {
        types = (SchemaTypeSystem) Class.forName("org.apache.poi.schemas.ooxml.system.ooxml.TypeSystemHolder")
                .getField("typeSystem")
                .get(null);
    }

    @Override
    public List<String> apply(String name, String xml) {
        List<String> result = new ArrayList<>();
        List<XmlError> found = new FirstErrors();
        try {
            XmlObject document = types.parse(xml, null, new XmlOptions());
            if (document.schemaType().getDocumentElementName() == null) {
                // Content types, core properties: described by other schemas.
                return result;
            }
            result.add(CHECKED);
            document.validate(new XmlOptions().setErrorListener(found));
        } catch (XmlException e) {
            result.add(name + ": " + e.getMessage());
        } catch (TooMany e) {
            result.add(name + ": and more");
        }
        found.forEach(each -> result.add(name + ": " + each.getMessage()));
        return result;
    }

    /** Ends the validation. */
    private static final class TooMany extends RuntimeException {
        private static final long serialVersionUID = 1L;
    }

    /** Takes no more errors than anyone reads. */
    private static final class FirstErrors extends AbstractList<XmlError> {
        private final List<XmlError> errors = new ArrayList<>();

        @Override
        public boolean add(XmlError error) {
            errors.add(error);
            if (errors.size() >= MOST) {
                throw new TooMany();
            }
            return true;
        }

        @Override
        public XmlError get(int index) {
            return errors.get(index);
        }

        @Override
        public int size() {
            return errors.size();
        }
    }
}

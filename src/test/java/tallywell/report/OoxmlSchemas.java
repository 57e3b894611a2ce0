package tallywell.report;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiFunction;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.apache.xmlbeans.XmlObject;

/**
 * The transitional schemas of ECMA-376 (ISO/IEC 29500-4), as poi-ooxml-full carries them compiled.
 *
 * <p>They are loaded apart from the class path, since the smaller set that the program ships with leaves most of them out
 * and tests are to see what users have.
 */
final class OoxmlSchemas {
    /**
     * Allowed by the text of the standard (ECMA-376-1:2016, 18.4.12, example) and written by every spreadsheet program, but
     * forgotten in the schema, where the element has a simple type.
     */
    private static final String SPACE = "<t xml:space=\"preserve\">";

    private final BiFunction<String, String, List<String>> check;

    private OoxmlSchemas(BiFunction<String, String, List<String>> check) {
        this.check = check;
    }

    /** Loads the schemas from the library that the build names. */
    @SuppressWarnings("unchecked")
    static OoxmlSchemas load() throws Exception {
        Path jar = Path.of(System.getProperty("ooxml.schemas", ""));
        if (!Files.isRegularFile(jar)) {
            throw new IllegalStateException(
                    "the build must name poi-ooxml-full as ooxml.schemas but named '" + jar + "'");
        }
        URL[] urls = {jar.toUri().toURL(), home(XmlObject.class), home(SchemaCheck.class)};
        URLClassLoader loader = new URLClassLoader(urls, new OnlyLogging());
        Object check = loader.loadClass(SchemaCheck.class.getName())
                .getDeclaredConstructor()
                .newInstance();
        return new OoxmlSchemas((BiFunction<String, String, List<String>>) check);
    }

    private static URL home(Class<?> type) {
        return type.getProtectionDomain().getCodeSource().getLocation();
    }

    /**
     * What is wrong with a workbook.
     *
     * @param checked takes the name of each part that the schemas describe
     */
    List<String> errors(byte[] workbook, List<String> checked) throws IOException {
        List<String> errors = new ArrayList<>();
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(workbook))) {
            for (ZipEntry part = zip.getNextEntry(); part != null; part = zip.getNextEntry()) {
                if (part.getName().endsWith(".xml")) {
                    String xml = new String(zip.readAllBytes(), StandardCharsets.UTF_8).replace(SPACE, "<t>");
                    List<String> found = new ArrayList<>(check.apply(part.getName(), xml));
                    if (found.remove(SchemaCheck.CHECKED)) {
                        checked.add(part.getName());
                    }
                    errors.addAll(found);
                }
            }
        }
        return errors;
    }

    /** Shows the schemas nothing of the class path but where to log. */
    private static final class OnlyLogging extends ClassLoader {
        OnlyLogging() {
            super(ClassLoader.getPlatformClassLoader());
        }

        @Override
        protected Class<?> findClass(String name) throws ClassNotFoundException {
            if (name.startsWith("org.apache.logging.")) {
                return OoxmlSchemas.class.getClassLoader().loadClass(name);
            }
            throw new ClassNotFoundException(name);
        }
    }
}

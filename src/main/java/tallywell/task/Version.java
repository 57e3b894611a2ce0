package tallywell.task;

import java.io.IOException;
import java.io.InputStream;
import java.util.Properties;

/** Which version of the program this is. */
public final class Version {
    private Version() {}

    /** The version, such as {@code 0.1.0}. */
    public static String text() {
        Properties properties = new Properties();
        try (InputStream stream = Version.class.getResourceAsStream("/tallywell/version.properties")) {
            if (stream == null) {
                throw new IllegalStateException("the program file is damaged: version.properties is missing");
            }
            properties.load(stream);
        } catch (IOException e) {
            throw new IllegalStateException("the program file is damaged: version.properties", e);
        }
        return properties.getProperty("version", "");
    }
}

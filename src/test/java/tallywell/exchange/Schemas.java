package tallywell.exchange;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion.VersionFlag;
import com.networknt.schema.ValidationMessage;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** JSON schemas, ours and published ones, by an independent validator. */
public final class Schemas {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private Schemas() {}

    /** A document as a tree. */
    public static JsonNode read(Path file) throws IOException {
        return MAPPER.readTree(Files.readString(file));
    }

    /** A document as a tree. */
    public static JsonNode parse(String text) throws IOException {
        return MAPPER.readTree(text);
    }

    /** Where a document departs from our schema of {@code results.json}. */
    public static List<String> ofResults(JsonNode document) throws IOException {
        return faults(VersionFlag.V202012, read(Path.of("docs/results.schema.json")), document);
    }

    /** Where a document departs from a published profile of Frictionless Data. */
    public static List<String> ofFrictionless(String profile, JsonNode document) throws IOException {
        try (InputStream in = Schemas.class.getResourceAsStream("/reference/frictionless/" + profile + ".json")) {
            return faults(VersionFlag.V4, MAPPER.readTree(in), document);
        }
    }

    private static List<String> faults(VersionFlag version, JsonNode schema, JsonNode document) {
        JsonSchema compiled = JsonSchemaFactory.getInstance(version).getSchema(schema);
        return compiled
                .validate(document, context -> context.getExecutionConfig().setFormatAssertionsEnabled(true))
                .stream()
                .map(ValidationMessage::getMessage)
                .sorted()
                .toList();
    }
}

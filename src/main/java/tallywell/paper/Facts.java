package tallywell.paper;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.GregorianCalendar;
import java.util.Locale;
import java.util.Map;
import java.util.TimeZone;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.common.PDMetadata;

/**
 * What a document says of itself.
 *
 * @param title of the document
 * @param author who did the work, or empty
 * @param subject what it is about
 * @param version of the program
 * @param made when
 */
record Facts(String title, String author, String subject, String version, Instant made) {
    private static final DateTimeFormatter TIME =
            DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm:ss'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);

    private static final Pattern FIELD = Pattern.compile("@([a-z]+)");

    private static final String FORM = """
            <?xpacket begin="\uFEFF" id="W5M0MpCehiHzreSzNTczkc9d"?>
            <x:xmpmeta xmlns:x="adobe:ns:meta/">
             <rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
              <rdf:Description rdf:about=""
                xmlns:dc="http://purl.org/dc/elements/1.1/"
                xmlns:xmp="http://ns.adobe.com/xap/1.0/"
                xmlns:pdf="http://ns.adobe.com/pdf/1.3/"
                xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/"
                xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/">
               <dc:title><rdf:Alt><rdf:li xml:lang="x-default">@title</rdf:li></rdf:Alt></dc:title>
               <dc:description><rdf:Alt><rdf:li xml:lang="x-default">@subject</rdf:li></rdf:Alt></dc:description>
               <dc:language><rdf:Bag><rdf:li>en</rdf:li></rdf:Bag></dc:language>
            @person   <xmp:CreateDate>@time</xmp:CreateDate>
               <xmp:ModifyDate>@time</xmp:ModifyDate>
               <xmp:CreatorTool>@program</xmp:CreatorTool>
               <pdf:Producer>@program</pdf:Producer>
               <pdfaid:part>2</pdfaid:part>
               <pdfaid:conformance>A</pdfaid:conformance>
               <pdfuaid:part>1</pdfuaid:part>
              </rdf:Description>
              <rdf:Description rdf:about=""
                xmlns:pdfaExtension="http://www.aiim.org/pdfa/ns/extension/"
                xmlns:pdfaSchema="http://www.aiim.org/pdfa/ns/schema#"
                xmlns:pdfaProperty="http://www.aiim.org/pdfa/ns/property#">
               <pdfaExtension:schemas><rdf:Bag><rdf:li rdf:parseType="Resource">
                <pdfaSchema:schema>PDF/UA identification schema</pdfaSchema:schema>
                <pdfaSchema:namespaceURI>http://www.aiim.org/pdfua/ns/id/</pdfaSchema:namespaceURI>
                <pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix>
                <pdfaSchema:property><rdf:Seq><rdf:li rdf:parseType="Resource">
                 <pdfaProperty:name>part</pdfaProperty:name>
                 <pdfaProperty:valueType>Integer</pdfaProperty:valueType>
                 <pdfaProperty:category>internal</pdfaProperty:category>
                 <pdfaProperty:description>Part of ISO 14289</pdfaProperty:description>
                </rdf:li></rdf:Seq></pdfaSchema:property>
               </rdf:li></rdf:Bag></pdfaExtension:schemas>
              </rdf:Description>
             </rdf:RDF>
            </x:xmpmeta>
            <?xpacket end="w"?>
            """;

    /** Writes the properties twice, as readers of either age look for them. */
    void describe(PDDocument document) throws IOException {
        PDDocumentInformation info = document.getDocumentInformation();
        info.setTitle(plain(title));
        info.setSubject(plain(subject));
        info.setProducer(program());
        info.setCreator(program());
        if (!author.isEmpty()) {
            info.setAuthor(plain(author));
        }
        GregorianCalendar time = new GregorianCalendar(TimeZone.getTimeZone("UTC"), Locale.ROOT);
        time.setTimeInMillis(1000 * made.getEpochSecond());
        info.setCreationDate(time);
        info.setModificationDate(time);
        PDMetadata metadata = new PDMetadata(document);
        metadata.importXMPMetadata(xmp().getBytes(StandardCharsets.UTF_8));
        document.getDocumentCatalog().setMetadata(metadata);
    }

    private String program() {
        return "Tallywell " + version;
    }

    private String xmp() {
        String person = author.isEmpty()
                ? ""
                : "   <dc:creator><rdf:Seq><rdf:li>" + escaped(author) + "</rdf:li></rdf:Seq></dc:creator>\n";
        Map<String, String> values = Map.of(
                "person",
                person,
                "time",
                TIME.format(made),
                "program",
                escaped(program()),
                "subject",
                escaped(subject),
                "title",
                escaped(title));
        return FIELD.matcher(FORM).replaceAll(field -> Matcher.quoteReplacement(values.get(field.group(1))));
    }
    /** Without what XML forbids and what steers; both kinds of properties must agree. */
    private static String plain(String text) {
        StringBuilder plain = new StringBuilder(text.length());
        text.codePoints().forEach(each -> {
            int type = Character.getType(each);
            boolean isOdd = type == Character.CONTROL || type == Character.SURROGATE || (each & 0xFFFE) == 0xFFFE;
            plain.appendCodePoint(!isOdd ? each : each < ' ' ? ' ' : Letters.REPLACEMENT);
        });
        return plain.toString();
    }

    private static String escaped(String text) {
        return plain(text).replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }
}

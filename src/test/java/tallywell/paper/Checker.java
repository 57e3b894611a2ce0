package tallywell.paper;

import java.io.ByteArrayInputStream;
import java.util.ArrayList;
import java.util.List;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;

/** Holds documents to ISO 19005-2 level A and ISO 14289-1, as the reference checker of the PDF Association reads them. */
final class Checker {
    private Checker() {}

    /** What is wrong with a document; nothing if it conforms to both. */
    static List<String> faults(byte[] document) throws Exception {
        VeraGreenfieldFoundryProvider.initialise();
        List<String> faults = new ArrayList<>();
        for (PDFAFlavour flavour : List.of(PDFAFlavour.PDFA_2_A, PDFAFlavour.PDFUA_1)) {
            try (PDFAParser parser =
                            Foundries.defaultInstance().createParser(new ByteArrayInputStream(document), flavour);
                    PDFAValidator validator = Foundries.defaultInstance().createValidator(flavour, false)) {
                ValidationResult result = validator.validate(parser);
                for (TestAssertion each : result.getTestAssertions()) {
                    faults.add(flavour + " " + each.getRuleId().getClause() + ": " + each.getMessage() + " at "
                            + each.getLocation().getContext());
                }
                if (!result.isCompliant() && faults.isEmpty()) {
                    faults.add(flavour + ": does not conform");
                }
            }
        }
        return faults;
    }
}

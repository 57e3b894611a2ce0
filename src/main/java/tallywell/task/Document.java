package tallywell.task;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import tallywell.notice.OutputException;
import tallywell.paper.SummaryDocument;
import tallywell.report.Report;

/** The summary as a PDF document, where one is wanted. */
final class Document implements AutoCloseable {
    private final Optional<Path> target;
    private final Optional<SummaryDocument> pages;

    private Document(Optional<Path> target, Optional<SummaryDocument> pages) {
        this.target = target;
        this.pages = pages;
    }

    static Document of(Optional<Path> target) throws OutputException {
        if (target.isEmpty()) {
            return new Document(target, Optional.empty());
        }
        try {
            return new Document(target, Optional.of(new SummaryDocument()));
        } catch (IOException e) {
            throw failed(target.get(), e);
        }
    }

    /** Adds the pages of a run. */
    void add(Report report) throws OutputException {
        if (pages.isPresent()) {
            try {
                pages.get().add(report);
            } catch (IOException e) {
                throw failed(target.orElseThrow(), e);
            }
        }
    }

    /**
     * Writes it beside the other outputs.
     *
     * @param workbook the workbook of the same call
     * @param sha256 its hash
     * @return the file, or none
     */
    List<Path> write(Path workbook, String sha256, Outputs outputs) throws OutputException {
        if (pages.isEmpty()) {
            return List.of();
        }
        Path file = target.orElseThrow();
        outputs.write(file, out -> pages.get().write(String.valueOf(workbook.getFileName()), sha256, out));
        return List.of(file);
    }

    private static OutputException failed(Path target, IOException e) {
        return new OutputException(target, "the document cannot be made (" + e.getMessage() + ")", e);
    }

    @Override
    public void close() throws OutputException {
        if (pages.isPresent()) {
            try {
                pages.get().close();
            } catch (IOException e) {
                throw failed(target.orElseThrow(), e);
            }
        }
    }
}

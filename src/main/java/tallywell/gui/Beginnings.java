package tallywell.gui;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import tallywell.desk.Examples;
import tallywell.desk.LayoutDesk;
import tallywell.desk.LayoutEdits;
import tallywell.desk.RunDraft;
import tallywell.plate.PlateFormat;

/** What can be begun on the start page. */
final class Beginnings implements StartPage.Begin {
    private final MainWindow window;
    private final Examples examples;

    Beginnings(MainWindow window) {
        this.window = window;
        examples = new Examples(window.home());
    }

    @Override
    public void example() {
        window.jobs()
                .run(
                        window.startSaid(),
                        Text.of("start.laying"),
                        progress -> examples.layOut(Examples.FIRST),
                        file -> window.open(file, this::guide));
    }

    private void guide(RunPage page) {
        page.said()
                .offer(
                        Text.of("example.about"),
                        Text.of("example.own"),
                        () -> window.openRun(page.desk().draft().onlyMethodAndLayout()));
        page.desk()
                .draft()
                .layout()
                .ifPresent(layout -> page.desk()
                        .selection()
                        .only(layout.value().where(content -> content.word().equals("3"))));
    }

    @Override
    public void exports() {
        window.openRun(RunDraft.EMPTY);
    }

    @Override
    public void draw() {
        window.openLayout(new LayoutDesk(LayoutEdits.empty(Text.of("layout.new"), PlateFormat.P96), Optional.empty()));
    }

    @Override
    public void earlier() {
        take(window.askOpen(Text.of("start.earlier")));
    }

    @Override
    public void open() {
        take(window.askOpen(Text.of("open.files")));
    }

    private void take(List<Path> files) {
        if (!files.isEmpty()) {
            window.openRun(RunDraft.EMPTY);
            window.runPage().ifPresent(page -> page.take(files));
        }
    }

    @Override
    public void practice() {
        window.jobs()
                .run(
                        window.startSaid(),
                        Text.of("start.laying"),
                        progress -> examples.layOut("cider-l-malic"),
                        file -> window.startSaid()
                                .hint(Text.of("start.practice.at", String.valueOf(file.getParent()))));
    }
}

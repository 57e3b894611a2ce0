package tallywell.gui;

import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import javax.swing.JButton;
import javax.swing.JPanel;
import javax.swing.KeyStroke;
import net.miginfocom.swing.MigLayout;
import tallywell.desk.Intake;
import tallywell.desk.LayoutDesk;
import tallywell.desk.LayoutEdits;
import tallywell.desk.LayoutShelf;
import tallywell.desk.LayoutWords;
import tallywell.desk.MethodWords;
import tallywell.desk.Origin;
import tallywell.desk.RunDesk;
import tallywell.desk.RunDraft;
import tallywell.desk.RunStore;
import tallywell.desk.SampleTable;
import tallywell.desk.SampleWords;
import tallywell.method.AssayMethod;
import tallywell.method.SampleList;
import tallywell.plate.Layout;

/** The four trays of a run: method, layout, samples, readings. */
final class RunTrays extends JPanel {
    private static final int MOST_OWN = 8;

    private final RunDesk desk;
    private final Host host;
    private final Said said;
    private final RunStore store = new RunStore();
    private final Tray method = new Tray(Text.of("tray.method"));
    private final Tray layout = new Tray(Text.of("tray.layout"));
    private final Tray samples = new Tray(Text.of("tray.samples"));
    private final Tray readings = new Tray(Text.of("tray.readings"));

    RunTrays(RunDesk desk, Host host, Said said, Consumer<List<Path>> taker) {
        super(new MigLayout(
                "insets 0, fillx, gapx 8",
                "[grow, fill, sg][grow, fill, sg][grow, fill, sg][grow, fill, sg][fill]",
                "[]"));
        this.desk = desk;
        this.host = host;
        this.said = said;
        setOpaque(false);
        method.action(Text.of("method.change"), this::changeMethod);
        method.action(Text.of("tray.open"), () -> taker.accept(host.askOpen(Text.of("tray.method"))));
        layout.action(Text.of("tray.open"), () -> taker.accept(host.askOpen(Text.of("tray.layout"))));
        layout.action(Text.of("layout.draw"), this::draw);
        samples.action(Text.of("samples.type"), this::typeSamples);
        samples.action(Text.of("tray.open"), () -> taker.accept(host.askOpen(Text.of("tray.samples"))));
        samples.action(
                Text.of("samples.none"),
                () -> desk.history().edit(desk.draft().withSamples(Optional.empty()), Text.of("samples.none")));
        readings.action(Text.of("tray.open.several"), () -> taker.accept(host.askOpen(Text.of("tray.readings"))));
        readings.action(
                Text.of("readings.type"),
                () -> TypedReadings.ask(this, desk.draft(), host, said, file -> taker.accept(List.of(file))));
        readings.action(Text.of("readings.look"), this::showReadings);
        readings.action(Text.of("readings.swap"), desk::reverseReadings);
        builtInMethods();
        layoutsAtHand();
        add(method);
        add(layout);
        add(samples);
        add(readings);
        add(always(taker));
    }

    /** What can be done whatever is there: open files, and change the look. */
    private JPanel always(Consumer<List<Path>> taker) {
        JPanel panel = new JPanel(new MigLayout("insets 0, gap 4, fill, flowy", "[fill]", "[grow, fill][grow, fill]"));
        panel.setOpaque(false);
        Runnable open = () -> taker.accept(host.askOpen(Text.of("open.files")));
        JButton button = Fields.button(Text.of("open.files"), open);
        button.setName("open-files");
        button.setToolTipText(Text.of("open.files.tip"));
        Keys.bind(this, KeyStroke.getKeyStroke(KeyEvent.VK_O, InputEvent.CTRL_DOWN_MASK), "open files", open);
        Looks looks = new Looks(host, said);
        looks.keys(this);
        panel.add(button);
        panel.add(looks.button());
        return panel;
    }

    /** The built-in methods go on top of the menu as soon as they are read. */
    private void builtInMethods() {
        host.jobs()
                .aside(
                        said,
                        progress -> {
                            List<Origin<AssayMethod>> methods = new ArrayList<>();
                            for (String id : store.builtIn()) {
                                methods.add(store.builtIn(id));
                            }
                            return methods;
                        },
                        methods -> {
                            for (int i = 0; i < methods.size(); i++) {
                                Origin<AssayMethod> each = methods.get(i);
                                String title =
                                        Text.of("method.builtin", each.value().title());
                                method.action(i, title, () -> take(each));
                            }
                        });
    }

    /** The layouts at hand go on top of the menu as soon as they are read. */
    private void layoutsAtHand() {
        LayoutShelf shelf = host.shelf();
        host.jobs().aside(said, progress -> shelf.menu(), layouts -> {
            List<LayoutShelf.Shelved> own = layouts.stream()
                    .filter(LayoutShelf.Shelved::own)
                    .limit(MOST_OWN)
                    .toList();
            List<LayoutShelf.Shelved> bundled =
                    layouts.stream().filter(each -> !each.own()).toList();
            int at = 0;
            for (LayoutShelf.Shelved each : own) {
                layoutAction(at++, each.layout());
            }
            if (!own.isEmpty() && !bundled.isEmpty()) {
                layout.separator(at++);
            }
            for (LayoutShelf.Shelved each : bundled) {
                layoutAction(at++, each.layout());
            }
            layout.separator(at);
        });
    }

    private void layoutAction(int at, Origin<Layout> each) {
        String words = each.value().name() + "  ·  " + LayoutWords.of(each.value());
        layout.action(at, words, () -> desk.history().edit(desk.draft().withLayout(each), Text.of("edit.layout")))
                .setIcon(new LayoutGlyph(each.value()));
    }

    private void take(Origin<AssayMethod> chosen) {
        desk.history().edit(desk.draft().withMethod(chosen), Text.of("edit.method"));
    }

    /** Opens the form of the method. */
    void changeMethod() {
        if (desk.draft().method().isEmpty()) {
            said.hint(Text.of("method.first"));
            return;
        }
        Origin<AssayMethod> from = desk.draft().method().get();
        host.jobs()
                .run(
                        said,
                        Text.of("method.reading"),
                        progress -> store.text(from),
                        text -> MethodDialog.ask(this, from.value(), text, host.shown())
                                .ifPresent(this::take));
    }

    private void draw() {
        Layout start = desk.draft()
                .layout()
                .map(Origin::value)
                .orElseGet(() ->
                        LayoutEdits.empty(Text.of("layout.new"), desk.draft().format()));
        host.openLayout(new LayoutDesk(start, desk.draft().layout().flatMap(Origin::file)));
    }

    private void typeSamples() {
        if (desk.draft().layout().isEmpty()) {
            said.hint(Text.of("samples.layout"));
            return;
        }
        RunDraft draft = desk.draft();
        host.jobs()
                .run(
                        said,
                        Text.of("samples.reading"),
                        progress -> SampleTable.of(draft, host.shown()),
                        table -> SampleDialog.ask(this, table, host.shown()).ifPresent(this::samples));
    }

    private void samples(Origin<SampleList> typed) {
        Optional<Origin<SampleList>> list = typed.value().bySlot().isEmpty() ? Optional.empty() : Optional.of(typed);
        desk.history().edit(desk.draft().withSamples(list), Text.of("edit.samplelist"));
    }

    void showReadings() {
        if (desk.draft().readings().isEmpty()) {
            said.hint(Text.of("need.READINGS") + " " + Text.of("need.drop"));
        } else {
            ReadingsDialog.show(this, desk, host.shown());
        }
    }

    void refresh() {
        RunDraft draft = desk.draft();
        method.beside(draft.method().map(each -> rule(each.value())).orElse(""));
        draft.method()
                .ifPresentOrElse(
                        each -> method.show(
                                each.value().title(), MethodWords.of(each.value(), host.shown()), Tray.State.GOOD),
                        () -> method.show(Text.of("tray.missing"), Text.of("tray.method.need"), Tray.State.MISSING));
        draft.layout()
                .ifPresentOrElse(
                        each -> layout.show(each.value().name(), LayoutWords.of(each.value()), Tray.State.GOOD),
                        () -> layout.show(Text.of("tray.missing"), Text.of("tray.layout.need"), Tray.State.MISSING));
        draft.samples()
                .ifPresentOrElse(
                        each -> showSamples(each, draft),
                        () -> samples.show(
                                Text.of("samples.bynumber"), Text.of("samples.optional"), Tray.State.MISSING));
        refreshReadings(draft);
    }

    private void showSamples(Origin<SampleList> list, RunDraft draft) {
        SampleWords words = SampleWords.of(list.value(), draft.layout().map(Origin::value), host.shown());
        samples.show(list.name(), words.text(), words.fits() ? Tray.State.GOOD : Tray.State.LOOK);
    }

    private void refreshReadings(RunDraft draft) {
        if (draft.readings().isEmpty()) {
            readings.show(Text.of("tray.missing"), Text.of("tray.readings.need"), Tray.State.MISSING);
            return;
        }
        String names = draft.readings().stream().map(Intake::name).collect(Collectors.joining(", "));
        Intake first = draft.readings().get(0);
        if (draft.needs().contains(RunDraft.Need.AFTER)) {
            readings.show(names, Text.of("need.AFTER"), Tray.State.LOOK);
        } else if (draft.needs().contains(RunDraft.Need.TRIGGER_TIME)) {
            readings.show(names, Text.of("need.TRIGGER_TIME"), Tray.State.LOOK);
        } else if (!first.triggerAtS().isEmpty()) {
            readings.show(
                    names,
                    Text.of(
                            "readings.inside",
                            host.shown().plain(first.triggerAtS().get(0))),
                    Tray.State.GOOD);
        } else {
            String order = draft.readings().stream()
                    .map(each -> Text.of(each.triggerBefore() ? "readings.trigger" : "readings.no", each.name()))
                    .collect(Collectors.joining(" · "));
            readings.show(names, order, Tray.State.GOOD);
        }
    }

    /** What was guessed of the readings, in words. */
    String guess() {
        List<Intake> all = desk.draft().readings();
        if (all.size() == 1) {
            return all.get(0).triggerAtS().isEmpty()
                    ? Text.of("need.AFTER") + " " + Text.of("need.drop")
                    : Text.of(
                            "readings.guess.inside",
                            host.shown().plain(all.get(0).triggerAtS().get(0)));
        }
        return Text.of(
                "readings.guess",
                all.get(0).name(),
                all.subList(1, all.size()).stream().map(Intake::name).collect(Collectors.joining(", ")),
                desk.orderEvidence(host.shown()));
    }

    private static String rule(AssayMethod method) {
        var step = method.steps().get(0);
        return Text.of("calibration." + step.calibration().word()) + " · "
                + Text.of("creep." + step.creep().word());
    }

    Tray readings() {
        return readings;
    }
}

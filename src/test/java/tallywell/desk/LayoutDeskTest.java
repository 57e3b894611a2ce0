package tallywell.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static tallywell.desk.DeskFixture.wells;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tallywell.plate.Content;
import tallywell.plate.Layout;
import tallywell.plate.PlateFormat;
import tallywell.quantity.Quantity;
import tallywell.quantity.Unit;

/** A layout on its way from the drawing to files, menus and runs. */
class LayoutDeskTest {
    private static final String NEW = "New layout";

    @TempDir
    private Path folder;

    private final LayoutDesk desk = new LayoutDesk(LayoutEdits.empty(NEW, PlateFormat.P96), Optional.empty());

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            cider_forty-in-duplicate.yaml | Cider forty in duplicate
            must.yaml                     | Must
            Wine 2026.v2.yaml             | Wine 2026.v2
            """)
    void aFileNameMakesATitle(String file, String title) {
        assertThat(FileNames.title(Path.of("somewhere", file))).isEqualTo(title);
    }

    @Test
    void onlyALayoutWithoutATitleGetsOne() {
        desk.title(NEW, "Must", "rename");
        assertThat(desk.layout().name()).isEqualTo("Must");
        desk.title(NEW, "Other", "rename");
        assertThat(desk.layout().name()).isEqualTo("Must");
    }

    @Test
    void aRunTakesTheFileOnlyIfItHoldsWhatIsDrawn() throws Exception {
        assertThat(desk.drawn().file()).isEmpty();
        Path file = folder.resolve("x.yaml");
        desk.selection().only(wells("A1"));
        desk.paint(new Content.Sample(1), "");
        desk.save(file);
        assertThat(desk.drawn().file()).hasValue(file);
        desk.paint(new Content.Sample(2), "");
        assertThat(desk.drawn().file()).isEmpty();
        assertThat(desk.drawn().value().slots()).containsExactly(2);
    }

    @Test
    void theShelfListsOnesOwnLayoutsFirstEachGroupByTitle() throws Exception {
        Examples examples = new Examples(folder);
        examples.layOutLayouts();
        Path shelf = folder.resolve("plate-layouts");
        int bundled = new LayoutShelf(List.of(shelf)).menu().size();
        for (String title : List.of("Zero", "alpha")) {
            Layout own = LayoutEdits.paint(LayoutEdits.empty(title, PlateFormat.P96), wells("A1"), LayoutEdits.blank());
            LayoutDesk.write(own, shelf.resolve(title + ".yaml"));
        }
        List<LayoutShelf.Shelved> menu = new LayoutShelf(List.of(shelf)).menu();
        assertThat(menu).hasSize(bundled + 2);
        assertThat(menu.subList(0, 2))
                .extracting(each -> each.layout().value().name())
                .containsExactly("alpha", "Zero");
        assertThat(menu.subList(2, menu.size())).noneMatch(LayoutShelf.Shelved::own);
        assertThat(menu.subList(2, menu.size()))
                .extracting(each -> each.layout().value().name())
                .isSortedAccordingTo(String.CASE_INSENSITIVE_ORDER);
        assertThat(Examples.isBundledLayout(shelf.resolve("triplicates.yaml"))).isTrue();
        assertThat(Examples.isBundledLayout(folder.resolve("triplicates.yaml"))).isFalse();
    }

    @Test
    void aSeriesSaysWhichLevelGoesWhereAndWhatIsLeft() {
        Layout empty = LayoutEdits.empty("x", PlateFormat.P96);
        List<tallywell.plate.Well> eight = wells("A1", "A2", "B1", "B2", "C1", "C2", "D1", "D2");
        Filling beside = new Filling(Filling.Order.COLUMNS, 2, Replicates.BESIDE, true);
        assertThat(beside.room(empty, eight)).isEqualTo(4);
        List<Quantity> six = LayoutEdits.series(Quantity.of(0.6, Unit.GRAM_PER_LITRE), 6, 1);
        SeriesLook look = SeriesLook.of(empty, eight, six, "", beside, new Shown(','));
        assertThat(look.lines())
                .containsExactly("0,1 g/L: A1, A2", "0,2 g/L: B1, B2", "0,3 g/L: C1, C2", "0,4 g/L: D1, D2");
        assertThat(look.homeless()).isEqualTo(2);
        assertThat(look.free()).isZero();
        assertThat(look.layout().where(Content.Standard.class::isInstance)).hasSize(8);
        SeriesLook few = SeriesLook.of(empty, eight, six.subList(0, 1), "", beside, Shown.POINT);
        assertThat(few.free()).isEqualTo(3);
    }

    @Test
    void howReplicatesWerePlacedIsRemembered() throws Exception {
        Path file = folder.resolve("settings.properties");
        Settings settings = new Settings(file);
        assertThat(settings.replicates()).isEqualTo(Replicates.BELOW);
        settings.replicates(Replicates.BESIDE);
        settings.save();
        assertThat(new Settings(file).replicates()).isEqualTo(Replicates.BESIDE);
        Files.writeString(file, "replicates=SOMEWHERE\n");
        assertThat(new Settings(file).replicates()).isEqualTo(Replicates.BELOW);
    }
}

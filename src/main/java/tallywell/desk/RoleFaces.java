package tallywell.desk;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.method.Sample;
import tallywell.method.SampleList;
import tallywell.plate.Content;
import tallywell.plate.Layout;
import tallywell.plate.PerAnalyte;
import tallywell.plate.Well;
import tallywell.plate.WellMap;
import tallywell.quantity.Quantity;

/** What the wells of a layout show: roles, slots, levels. */
public final class RoleFaces {
    private final Shown shown;
    private final Optional<SampleList> samples;

    /**
     * Faces of a kind.
     *
     * @param samples what is in the slots, where that is known
     */
    public RoleFaces(Shown shown, Optional<SampleList> samples) {
        this.shown = shown;
        this.samples = samples;
    }

    /** The plate of a layout. */
    public Faces of(Layout layout) {
        return new Faces(WellMap.of(layout.format(), well -> face(well, layout.at(well))), 0, 0, "", "");
    }

    /** The plate of a layout with what was found about its wells. */
    public Faces of(Layout layout, List<Finding> findings) {
        return new Faces(
                WellMap.of(layout.format(), well -> {
                    WellFace face = face(well, layout.at(well));
                    List<String> about = findings.stream()
                            .filter(each -> each.needsLook() && each.wells().contains(well))
                            .map(Finding::title)
                            .toList();
                    return about.isEmpty()
                            ? face
                            : new WellFace(
                                    face.shape(),
                                    face.label(),
                                    face.value(),
                                    OptionalDouble.empty(),
                                    List.of(WellFace.Badge.LOOK),
                                    false,
                                    Optional.empty(),
                                    face.words() + " · " + String.join(" · ", about));
                }),
                0,
                0,
                "",
                "");
    }

    WellFace face(Well well, Content content) {
        String label = label(content);
        String value = value(content);
        String words = well + " · " + words(content);
        return WellFace.plain(shape(content), label, value, words);
    }

    /** How a content is drawn. */
    public static WellFace.Shape shape(Content content) {
        if (content instanceof Content.Blank blank) {
            return blank.triggered() ? WellFace.Shape.BLANK : WellFace.Shape.BLANK_UNTRIGGERED;
        }
        if (content instanceof Content.Standard) {
            return WellFace.Shape.STANDARD;
        }
        if (content instanceof Content.Control) {
            return WellFace.Shape.CONTROL;
        }
        if (content instanceof Content.Sample) {
            return WellFace.Shape.SAMPLE;
        }
        if (content instanceof Content.SampleBlank) {
            return WellFace.Shape.SAMPLE_BLANK;
        }
        return content instanceof Content.Spike ? WellFace.Shape.SPIKE : WellFace.Shape.UNUSED;
    }

    /** First line in any view: short enough for a well. */
    String label(Content content) {
        if (content instanceof Content.Blank) {
            return "blank";
        }
        if (content instanceof Content.Standard standard) {
            return number(standard.level());
        }
        if (content instanceof Content.Sample sample) {
            return Integer.toString(sample.slot());
        }
        if (content instanceof Content.SampleBlank blank) {
            return blank.of() + " blank";
        }
        if (content instanceof Content.Spike spike) {
            return spike.of() + " spike";
        }
        return content instanceof Content.Control control ? control.word() : "";
    }

    private String value(Content content) {
        if (content instanceof Content.Standard standard) {
            return (unit(standard.level()) + " " + content.group()).strip();
        }
        if (content instanceof Content.Sample sample) {
            return samples.flatMap(list -> list.in(sample.slot()))
                    .map(Sample::name)
                    .filter(name -> !name.equals(Integer.toString(sample.slot())))
                    .orElse("");
        }
        boolean untriggered = content instanceof Content.Blank blank && !blank.triggered();
        return ((untriggered ? "no trigger " : "") + content.group()).strip();
    }

    /** The content in words. */
    public String words(Content content) {
        String group = content.group().isEmpty() ? "" : " · group " + content.group();
        if (content instanceof Content.Blank blank) {
            return (blank.triggered() ? "blank" : "blank without trigger") + group;
        }
        if (content instanceof Content.Standard standard) {
            return "standard " + all(standard.level()) + group;
        }
        if (content instanceof Content.Control control) {
            String assigned = control.assigned().isEmpty() ? "" : " · assigned " + all(control.assigned());
            return "control " + control.name() + assigned + " · dilution "
                    + shown.plain(control.dilution().factor()) + group;
        }
        if (content instanceof Content.Sample sample) {
            return samples.flatMap(list -> list.in(sample.slot()))
                    .map(each -> "sample " + sample.slot() + " · " + each.name() + " · dilution "
                            + shown.plain(each.dilution().factor())
                            + (each.group().isEmpty() ? "" : " · group " + each.group()))
                    .orElse("sample " + sample.slot());
        }
        if (content instanceof Content.SampleBlank blank) {
            return "sample blank of " + blank.of() + group;
        }
        if (content instanceof Content.Spike spike) {
            return "spike on sample " + spike.of() + " · added " + all(spike.added()) + group;
        }
        return "not used";
    }

    private String number(PerAnalyte level) {
        return level.quantities().stream()
                .findFirst()
                .map(quantity -> shown.plain(quantity.value()))
                .orElse("");
    }

    private static String unit(PerAnalyte level) {
        return level.quantities().stream()
                .findFirst()
                .map(quantity -> quantity.unit().symbol())
                .orElse("");
    }

    private String all(PerAnalyte quantities) {
        return quantities.byName().entrySet().stream()
                .sorted(java.util.Map.Entry.comparingByKey())
                .map(entry -> (entry.getKey() + " " + text(entry.getValue())).strip())
                .reduce((one, other) -> one + ", " + other)
                .orElse("");
    }

    private String text(Quantity quantity) {
        return shown.plain(quantity.value()) + " " + quantity.unit();
    }
}

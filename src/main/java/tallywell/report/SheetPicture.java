package tallywell.report;

/** A picture for a sheet of the workbook, made elsewhere; cannot change. */
public final class SheetPicture {
    private final String title;
    private final byte[] png;
    private final double form;

    /**
     * A picture.
     *
     * @param title what it shows, for those who cannot see it
     * @param png the bytes of a PNG file
     * @param form height over width
     */
    public SheetPicture(String title, byte[] png, double form) {
        if (!(form > 0 && form <= Double.MAX_VALUE)) {
            throw new IllegalArgumentException("form must be > 0 but was " + form);
        }
        this.title = title;
        this.png = png.clone();
        this.form = form;
    }

    String title() {
        return title;
    }

    /** Shared, not copied: inside this package nobody writes into it. */
    byte[] png() {
        return png;
    }

    double form() {
        return form;
    }
}

package tallywell.paper;

/** The letters of the printed form. */
enum Face {
    PLAIN("DejaVuSans.ttf"),
    BOLD("DejaVuSans-Bold.ttf");

    private final String file;

    Face(String file) {
        this.file = file;
    }

    /** Where the program carries the face. */
    String resource() {
        return "/tallywell/fonts/" + file;
    }
}

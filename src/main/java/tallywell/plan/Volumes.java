package tallywell.plan;

import tallywell.method.Planning;

/** How much is made of a solution. */
final class Volumes {
    private static final double ROUND_UL = 100;

    private Volumes() {}

    /** What the laboratory usually makes, or more where the wells take more, rounded up to 100 µL. */
    static double made(Planning planning, double wellsUl) {
        double wanted = wellsUl * (1 + planning.overage());
        return wanted <= planning.diluteToUl() ? planning.diluteToUl() : Math.ceil(wanted / ROUND_UL) * ROUND_UL;
    }
}

package tallywell.desk;

/** What the wells of a run can show. */
public enum PlateShow {
    /** Role and sample. */
    ROLE,
    /** Absorbance before the trigger. */
    BEFORE,
    /** Absorbance after the reaction. */
    AFTER,
    /** ΔA. */
    DELTA_A,
    /** Creep in mA/min. */
    CREEP,
    /** Concentration in the original sample. */
    CONCENTRATION,
    /** Difference of net ΔA from the mean of its replicates. */
    REPLICATES,
    /** The readings as a small trace. */
    TRACES
}

package tallywell.method;

/** The way of the light through the liquid. */
public sealed interface LightPath {
    /**
     * Length of the way in cm.
     *
     * @param volumeUl volume of liquid in µL
     */
    double cm(double volumeUl);

    /**
     * A beam across, as in a cuvette.
     *
     * @param lengthCm in cm, positive
     */
    record Fixed(double lengthCm) implements LightPath {
        /** Refuses lengths that are not positive. */
        public Fixed {
            if (!(lengthCm > 0)) {
                throw new IllegalArgumentException("lengthCm must be > 0 but was " + lengthCm);
            }
        }

        @Override
        public double cm(double volumeUl) {
            return lengthCm;
        }
    }

    /**
     * A beam from above or below, as in a microplate: the liquid's height is volume over area.
     *
     * @param wellAreaMm2 area of the well's cross-section in mm², positive
     */
    record Vertical(double wellAreaMm2) implements LightPath {
        private static final double MM_PER_CM = 10;

        /** Refuses areas that are not positive. */
        public Vertical {
            if (!(wellAreaMm2 > 0)) {
                throw new IllegalArgumentException("wellAreaMm2 must be > 0 but was " + wellAreaMm2);
            }
        }

        @Override
        public double cm(double volumeUl) {
            return volumeUl / wellAreaMm2 / MM_PER_CM;
        }
    }

    /**
     * A beam from above or below whose way is measured well by well, from the absorption of water in the near infra-red. The
     * way by volume and area serves for plans and as the common way that each ΔA is stated for; it cancels from results.
     *
     * @param wellAreaMm2 area of the well's cross-section in mm², positive
     */
    record Measured(double wellAreaMm2) implements LightPath {
        /** Refuses areas that are not positive. */
        public Measured {
            if (!(wellAreaMm2 > 0)) {
                throw new IllegalArgumentException("wellAreaMm2 must be > 0 but was " + wellAreaMm2);
            }
        }

        @Override
        public double cm(double volumeUl) {
            return new Vertical(wellAreaMm2).cm(volumeUl);
        }
    }
}

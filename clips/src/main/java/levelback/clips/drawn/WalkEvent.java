package levelback.clips.drawn;

import levelback.scoring.value.Leg;

/** Something that breaks the even walk; flagged in the truth. Places count in strides since she entered the picture. */
public sealed interface WalkEvent {

    /** Strides since she entered the picture; 0 or more. */
    double atStride();

    /** How truth files name it. */
    String text();

    /**
     * She stops and stands on four feet, then walks on. A foot in the air is set down short first.
     *
     * @param atStride strides since she entered
     * @param holdS how long she stands, in seconds, 0.8 to 10
     */
    record Stop(double atStride, double holdS) implements WalkEvent {
        public Stop {
            requirePlace(atStride);
            if (!(holdS >= 0.8 && holdS <= 10)) {
                throw new IllegalArgumentException("holdS must be 0.8 to 10: " + holdS);
            }
        }

        @Override
        public String text() {
            return "stop";
        }
    }

    /**
     * A foot slides forward as it takes weight.
     *
     * @param atStride strides since she entered; the first touch-down of the leg from there on slips
     * @param leg which foot
     * @param slideM how far, in metres, 0.02 to 0.15
     */
    record Slip(double atStride, Leg leg, double slideM) implements WalkEvent {
        public Slip {
            requirePlace(atStride);
            if (!(slideM >= 0.02 && slideM <= 0.15)) {
                throw new IllegalArgumentException("slideM must be 0.02 to 0.15: " + slideM);
            }
        }

        @Override
        public String text() {
            return "slip";
        }
    }

    /**
     * She backs up.
     *
     * @param atStride strides since she entered
     * @param leaves true: until she is out of the picture on the side she came from; false: 0.6 of a stride, then on
     */
    record TurnBack(double atStride, boolean leaves) implements WalkEvent {
        public TurnBack {
            requirePlace(atStride);
        }

        @Override
        public String text() {
            return "turn-back";
        }
    }

    private static void requirePlace(double atStride) {
        if (!(atStride >= 0 && atStride < 100)) {
            throw new IllegalArgumentException("atStride must be 0 to 100: " + atStride);
        }
    }
}

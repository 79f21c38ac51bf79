package levelback.clips.corpus;

import java.util.Arrays;
import java.util.Random;

/** Ways in which a film gets broken: a bad card, a bad copy, a bad line, or somebody who means it. */
enum Mutation {
    /** Single bytes anywhere. */
    BYTES {
        @Override
        byte[] change(byte[] film, Random random) {
            for (int i = 0; i < 20; i++) {
                film[random.nextInt(film.length)] = (byte) random.nextInt(256);
            }
            return film;
        }
    },
    /** Bytes in the head, where lengths and tables stand. */
    HEAD {
        @Override
        byte[] change(byte[] film, Random random) {
            for (int i = 0; i < 6; i++) {
                film[random.nextInt(Math.min(1000, film.length))] = (byte) random.nextInt(256);
            }
            return film;
        }
    },
    /** A piece of zeros. */
    ZEROS {
        @Override
        byte[] change(byte[] film, Random random) {
            int from = random.nextInt(film.length);
            Arrays.fill(film, from, from + piece(film, from, random), (byte) 0);
            return film;
        }
    },
    /** Cut off. */
    CUT {
        @Override
        byte[] change(byte[] film, Random random) {
            return Arrays.copyOf(film, 1 + random.nextInt(film.length));
        }
    },
    /** Bits in the tail, where MP4 has its tables. */
    TAIL {
        @Override
        byte[] change(byte[] film, Random random) {
            for (int i = 0; i < 6; i++) {
                film[film.length - 1 - random.nextInt(Math.min(3000, film.length))] ^= (byte) (1 << random.nextInt(8));
            }
            return film;
        }
    },
    /** A piece left out. */
    GAP {
        @Override
        byte[] change(byte[] film, Random random) {
            int from = random.nextInt(film.length);
            int length = piece(film, from, random);
            byte[] shorter = new byte[film.length - length];
            System.arraycopy(film, 0, shorter, 0, from);
            System.arraycopy(film, from + length, shorter, from, film.length - from - length);
            return shorter.length == 0 ? film : shorter;
        }
    },
    /** A number of four bytes, such as a length or a count, that is huge, negative or nothing. */
    WRONG_LENGTH {
        @Override
        byte[] change(byte[] film, Random random) {
            int[] wrong = {0, -1, Integer.MAX_VALUE, Integer.MIN_VALUE, 1, 0x00FFFFFF, 7};
            for (int i = 0; i < 3 && film.length > 8; i++) {
                int at = random.nextBoolean() ? random.nextInt(Math.min(2000, film.length - 4)) : tailAt(film, random);
                int value = wrong[random.nextInt(wrong.length)];
                for (int b = 0; b < 4; b++) {
                    film[at + b] = (byte) (value >> (24 - 8 * b));
                }
            }
            return film;
        }

        private int tailAt(byte[] film, Random random) {
            return film.length - 4 - random.nextInt(Math.min(3000, film.length - 4));
        }
    },
    /** A piece that stands there twice. */
    TWICE {
        @Override
        byte[] change(byte[] film, Random random) {
            int from = random.nextInt(film.length);
            int length = piece(film, from, random);
            byte[] longer = Arrays.copyOf(film, film.length + length);
            System.arraycopy(film, from, longer, from + length, film.length - from);
            return longer;
        }
    },
    /** A piece of noise. */
    NOISE {
        @Override
        byte[] change(byte[] film, Random random) {
            int from = random.nextInt(film.length);
            byte[] noise = new byte[piece(film, from, random)];
            random.nextBytes(noise);
            System.arraycopy(noise, 0, film, from, noise.length);
            return film;
        }
    };

    private static int piece(byte[] film, int from, Random random) {
        return 1 + random.nextInt(Math.min(4000, film.length - from));
    }

    /** May change the bytes it is given. */
    abstract byte[] change(byte[] film, Random random);
}

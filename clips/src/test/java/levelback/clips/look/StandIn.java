package levelback.clips.look;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Base64;
import java.util.Scanner;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.Pointer;

/** Stands in for the process that looks, and does what the name of the file says. */
final class StandIn {

    private StandIn() {}

    /** Held, so that it is not collected. */
    private static final BytePointer[] EATEN = new BytePointer[200];

    /** An address that nobody owns. */
    private static final class Nowhere extends Pointer {
        Nowhere() {
            address = 8;
        }
    }

    public static void main(String[] arguments) throws InterruptedException {
        try (Scanner in = new Scanner(System.in, StandardCharsets.US_ASCII)) {
            while (in.hasNextLine()) {
                String path = in.nextLine().split(" ", 3)[2];
                Path file = Path.of(new String(Base64.getDecoder().decode(path), StandardCharsets.UTF_8));
                behave(file.getFileName().toString());
            }
        }
    }

    private static void behave(String name) throws InterruptedException {
        switch (name) {
            case "crashes" -> Pointer.memset(new Nowhere(), 1, 64);
            case "hangs" -> Thread.sleep(600_000);
            case "never-ends" -> {
                while (true) {
                    System.out.println(LookChild.ALIVE);
                    Thread.sleep(20);
                }
            }
            case "eats" -> {
                for (int i = 0; i < EATEN.length; i++) {
                    EATEN[i] = new BytePointer(32L << 20).fill(1);
                    System.out.println(LookChild.ALIVE);
                    Thread.sleep(5);
                }
            }
            case "babbles" -> System.out.println("something else");
            case "ends" -> Runtime.getRuntime().halt(0);
            default -> System.out.println(LookChild.FINE);
        }
    }
}

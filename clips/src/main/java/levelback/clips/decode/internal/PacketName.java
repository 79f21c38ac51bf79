package levelback.clips.decode.internal;

import org.bytedeco.javacpp.Pointer;

/** A number dressed as an address, to travel through the decoder with a packet. Never followed. */
final class PacketName extends Pointer {

    PacketName(long number) {
        rename(number);
    }

    void rename(long number) {
        this.address = number;
    }
}

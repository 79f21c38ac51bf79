/*
 * Seek and decode with nothing but libavformat and libavcodec: what an exact seek costs at the least. Prints wall and
 * processor time in ms for all targets together.
 *
 *   cc -O2 bare.c -o bare -lavformat -lavcodec -lavutil
 *   bare FILE THREADS PTS...
 */
#include <libavcodec/avcodec.h>
#include <libavformat/avformat.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

static AVFormatContext *format;
static AVCodecContext *decoder;
static AVPacket *packet;
static AVFrame *frame;
static int stream, ended;

static double ms(clockid_t clock) {
    struct timespec t;
    clock_gettime(clock, &t);
    return t.tv_sec * 1e3 + t.tv_nsec / 1e6;
}

static int next(void) {
    while (avcodec_receive_frame(decoder, frame) < 0) {
        if (ended) return -1;
        int error;
        while ((error = av_read_frame(format, packet)) >= 0 && packet->stream_index != stream) av_packet_unref(packet);
        ended = error < 0;
        avcodec_send_packet(decoder, ended ? NULL : packet);
        av_packet_unref(packet);
    }
    return 0;
}

int main(int count, char **args) {
    if (count < 4 || avformat_open_input(&format, args[1], NULL, NULL) < 0) return 2;
    avformat_find_stream_info(format, NULL);
    stream = av_find_best_stream(format, AVMEDIA_TYPE_VIDEO, -1, -1, NULL, 0);
    AVCodecParameters *shape = format->streams[stream]->codecpar;
    const AVCodec *codec = avcodec_find_decoder(shape->codec_id);
    decoder = avcodec_alloc_context3(codec);
    avcodec_parameters_to_context(decoder, shape);
    decoder->thread_count = atoi(args[2]);
    if (avcodec_open2(decoder, codec, NULL) < 0) return 2;
    packet = av_packet_alloc();
    frame = av_frame_alloc();
    next();
    double wall = ms(CLOCK_MONOTONIC), cpu = ms(CLOCK_PROCESS_CPUTIME_ID);
    for (int i = 3; i < count; i++) {
        long long pts = atoll(args[i]);
        av_seek_frame(format, stream, pts, AVSEEK_FLAG_BACKWARD);
        avcodec_flush_buffers(decoder);
        ended = 0;
        while (next() == 0 && frame->pts < pts) av_frame_unref(frame);
        av_frame_unref(frame);
    }
    printf("%.3f %.3f\n", ms(CLOCK_MONOTONIC) - wall, ms(CLOCK_PROCESS_CPUTIME_ID) - cpu);
    return 0;
}

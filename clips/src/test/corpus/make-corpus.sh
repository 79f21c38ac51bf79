#!/bin/sh
# Makes the films that the FFmpeg preset itself can't encode, with Debian 12's ffmpeg (libx264, libx265), and beside each
# its framemd5 list: the truth of a decode from the start. Everything in them is drawn by ffmpeg's own test sources.
#   make-corpus.sh FOLDER [small|all]
# "small" is what is committed under clips/src/test/resources/corpus (under 1 MB); "all" adds the larger set of the slow tests.
set -eu
out=$1
what=${2:-small}
mkdir -p "$out"
cd "$out"
ff() { ffmpeg -nostdin -v error -y "$@"; }
# One thread, so that every machine encodes the same bytes.
src="-f lavfi -i testsrc2=s=160x90:r=25:d=3 -threads 1"
x264="-c:v libx264 -preset fast -crf 30 -threads 1"
x265="-c:v libx265 -preset fast -crf 32"
x265p="pools=none:frame-threads=1:log-level=none"
drop="-vf select='not(eq(mod(n,7),3))*not(eq(mod(n,11),5))' -fps_mode vfr"

ff $src $x264 -bf 3 -g 25 -flags +cgop h264-b-closed.mp4
ff $src $x264 -bf 3 -b_strategy 0 -g 25 -x264-params open-gop=1:b-pyramid=normal:slices=3 h264-b-open-slices.mkv
ff $src $x264 -bf 3 -g 25 -x264-params open-gop=1 h264-b-open.ts
ff $src $x264 -bf 2 -g 25 h264-b.avi
ff $src $x264 -bf 2 -g 25 h264-b.mov
ff $src $x264 -bf 2 -g 25 -x264-params open-gop=1 -bsf:v h264_mp4toannexb h264-b-raw.h264
ff $src $x264 -x264-params intra-refresh=1:keyint=30 h264-intra-refresh.mkv
ff $src $x264 -bf 3 -g 250 h264-one-key.mp4
ff $src $drop $x264 -bf 3 -g 25 h264-variable.mp4
ff $src $drop $x264 -bf 3 -g 25 h264-variable.mkv
ff $src -vf setsar=4/3 $x264 -bf 2 -g 25 h264-wide-pixels.mp4
ff -f lavfi -i testsrc2=s=160x96:r=25:d=2 -threads 1 $x264 -flags +ilme+ildct -x264-params interlaced=1:tff=1 -g 20 h264-interlaced.ts
ff $src $x265 -x265-params "$x265p:bframes=3:keyint=25:open-gop=0" -tag:v hvc1 hevc-closed.mp4
ff $src $x265 -x265-params "$x265p:bframes=4:keyint=25:min-keyint=25:open-gop=1" hevc-open.mkv
ff $src $x265 -x265-params "$x265p:bframes=4:keyint=25:min-keyint=25:open-gop=1" hevc-open.ts
ff $src $drop $x265 -x265-params "$x265p:bframes=3:keyint=25" -tag:v hvc1 hevc-variable.mov
# Copies with another shell: turned, starting late, starting inside a group (edit list), beginning in mid-group, cut off.
ff -i h264-b-closed.mp4 -c copy -metadata:s:v rotate=90 -metadata creation_time=2026-03-14T05:30:00Z h264-turned.mp4
ff -i h264-b-closed.mp4 -t 1 -c copy -metadata:s:v rotate=270 h264-turned-back.mp4
ff -i h264-b-closed.mp4 -t 1 -c copy -metadata:s:v rotate=180 h264-turned-over.mp4
ff -itsoffset 7.5 -i h264-b-closed.mp4 -c copy -copyts h264-late.mkv
ff -ss 0.48 -i h264-b-closed.mp4 -c copy h264-edit-list.mp4
tail -c +$((188 * 30 + 1)) h264-b-open.ts > h264-mid-group.ts
head -c 17000 hevc-open.mkv > hevc-cut.mkv
ff -i h264-b-closed.mp4 -c copy -movflags +frag_keyframe+empty_moov h264-fragments.mp4

if [ "$what" = all ]; then
    big="-f lavfi -i testsrc2=s=320x180:r=30000/1001:d=6 -threads 1"
    ff $big $x264 -bf 16 -b_strategy 2 -g 120 -x264-params b-pyramid=strict big-h264-16b.mp4
    ff $big -vf tinterlace=interleave_top,fieldorder=tff $x264 -flags +ilme+ildct -x264-params interlaced=1 big-h264-mbaff.mp4
    ff $big -pix_fmt yuv422p10le $x264 -bf 3 big-h264-422-10.mkv
    ff $big -pix_fmt yuvj420p $x264 -bf 3 big-h264-full.mp4
    ff $big -pix_fmt yuv420p10le $x265 -x265-params "$x265p:bframes=4" big-hevc-10.mp4
    ff $big -c:v mpeg2video -bf 2 -g 15 -q:v 5 big-mpeg2.ts
    ff $big -c:v mpeg2video -bf 2 -g 15 -q:v 5 -flags +ilme+ildct -output_ts_offset 36000 big-mpeg2-hours.ts
    ff $big -c:v mpeg2video -bf 2 -g 15 -q:v 5 -output_ts_offset 95440 big-mpeg2-wrap.ts
    ff $big -c:v mpeg2video -bf 2 -g 15 -q:v 5 big-mpeg2.mpg
    ff $big -c:v mpeg2video -bf 2 -g 15 -q:v 5 -f mpeg2video big-mpeg2-raw.m2v
    ff $big -c:v mpeg4 -bf 2 -g 50 big-mpeg4-b.avi
    ff $big -c:v mpeg4 -bf 2 -g 50 big-mpeg4-b.mp4
    ff $big -c:v libvpx -b:v 300k -auto-alt-ref 1 -lag-in-frames 16 big-vp8-hidden.webm
    ff $big -c:v libvpx-vp9 -b:v 300k -auto-alt-ref 1 -lag-in-frames 25 -cpu-used 5 -row-mt 0 big-vp9-hidden.webm
    ff -f lavfi -i testsrc2=s=160x90:r=25:d=2 -c:v libaom-av1 -cpu-used 8 -b:v 200k big-av1.mkv
    ff $big -c:v prores_ks big-prores.mov
    ff $big -s 1280x720 -r 25 -t 1 -c:v dnxhd -b:v 75M -pix_fmt yuv422p -threads 1 big-dnxhd.mxf
    ff $big -c:v mjpeg -q:v 5 big-mjpeg.avi
    ff -f lavfi -i testsrc2=s=161x91:r=25:d=2 -threads 1 -pix_fmt yuv444p $x264 big-odd.mp4
    ff $big -frames:v 1 $x264 big-one.mp4
    ff -f lavfi -i testsrc2=s=160x90:r=25:d=2 -f lavfi -i testsrc=s=320x180:r=10:d=2 -map 0 -map 1 -threads 1 $x264 big-two.mkv
    ff -f lavfi -i testsrc2=s=160x90:r=25:d=2 -f lavfi -i sine=d=2 -threads 1 $x264 -c:a aac big-sound.mp4
    cat h264-b-open.ts h264-b-open.ts > big-joined.ts
    head -c 100000 big-mpeg2.ts > big-mpeg2-cut.ts
    ff $src $x265 -x265-params "$x265p:bframes=4:keyint=25:min-keyint=25:open-gop=1" -f hevc big-hevc-raw.hevc
    ff $src $x264 -bf 3 big-h264.flv
    ff $src -c:v wmv2 -b:v 300k big-wmv.asf
    # Zeros in the middle.
    cp h264-b-closed.mp4 big-zeros.mp4
    dd if=/dev/zero of=big-zeros.mp4 bs=1 seek=12000 count=3000 conv=notrunc 2> /dev/null
fi

for film in *.mp4 *.mov *.mkv *.webm *.avi *.ts *.h264 *.hevc *.m2v *.mpg *.mxf *.flv *.asf; do
    [ -f "$film" ] || continue
    ffmpeg -nostdin -v quiet -threads 1 -noautorotate -i "file:$film" -map 0:v:0 -fps_mode passthrough -f framemd5 - \
        > "$film.framemd5" || true
done

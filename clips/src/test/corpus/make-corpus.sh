#!/bin/sh
# Makes the films that the FFmpeg preset itself can't encode, with Debian 12's ffmpeg (libx264, libx265), and beside each
# its framemd5 list: the truth of a decode from the start. Everything in them is drawn by ffmpeg's own test sources.
#   make-corpus.sh FOLDER [small|all]
# "small" is what is committed under clips/src/test/resources/corpus (each under 60 kB); "all" adds the larger set of the
# slow tests. Beside each film FILE: FILE.framemd5, and FILE.frames, ffprobe's key flag, time stamp and best guess.
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

# One film of every kind that cameras, phones, body cameras and recorders make.
tiny="-f lavfi -i testsrc2=s=96x64:r=25:d=1.6 -threads 1"
fields="-f lavfi -i testsrc2=s=96x64:r=50:d=1.6 -threads 1 -vf tinterlace=interleave_top,fieldorder=tff"
h="-c:v libx264 -preset fast -crf 34 -threads 1"
e="-c:v libx265 -preset fast -crf 36"
cra="bframes=4:keyint=16:min-keyint=16:open-gop=1"
wide="-flags +ilme+ildct"
ff $tiny $h -bf 16 -b_strategy 0 -g 40 -x264-params b-pyramid=normal:ref=8 h264-16b.mp4
ff $tiny $h -bf 8 -b_strategy 0 -g 16 -x264-params open-gop=1:b-pyramid=strict h264-open-strict.mp4
ff $tiny $h -bf 3 -b_strategy 0 -g 16 -x264-params open-gop=1:b-pyramid=normal h264-open.mkv
ff $tiny $h -bf 2 -g 500 -x264-params intra-refresh=1:keyint=16 h264-refresh.ts
ff $fields $h $wide -x264-params interlaced=1:tff=1:open-gop=1 -bf 3 -g 16 h264-mbaff.mp4
ff -f lavfi -i testsrc2=s=96x64:r=50:d=1.6 -threads 1 -vf tinterlace=interleave_bottom,fieldorder=bff $h $wide -x264-params interlaced=1:bff=1 -bf 2 -g 16 h264-mbaff-bff.mkv
ff $tiny $h -g 1 h264-intra.mov
ff $tiny -pix_fmt yuv422p10le $h -g 1 h264-422-10-intra.mov
ff $tiny -pix_fmt yuv420p10le $h -bf 3 -g 16 h264-10bit.mp4
ff $tiny -pix_fmt yuv422p $h -bf 3 -g 16 h264-422.mkv
ff $tiny -vf scale=out_range=full -pix_fmt yuvj420p $h -bf 2 -g 16 h264-full-range.mp4
ff -f lavfi -i testsrc2=s=98x66:r=25:d=1.6 -threads 1 -vf format=yuv444p,crop=97:65:exact=1 $h -bf 2 -g 16 h264-odd-444.mp4
ff -f lavfi -i testsrc2=s=98x66:r=25:d=1.6 -threads 1 $h -bf 2 -g 16 h264-crop.mp4
ff $tiny -frames:v 1 $h h264-one.mp4
ff $tiny -frames:v 1 $h h264-one.ts
ff $tiny $h -bf 3 -g 16 h264.flv
ff $tiny -vf "setpts='(N/25+0.013*mod(N*7\,5))/TB'" -fps_mode passthrough $h -bf 3 -g 16 -video_track_timescale 1000000 h264-vfr-us.mp4
ff $tiny -vf "settb=1/1000,setpts='N*40+mod(N*37\,29)'" -enc_time_base -1 -fps_mode passthrough $h -bf 3 -g 16 h264-vfr-ms.mkv
ff $tiny -vf "setpts='if(gt(N\,12)\,PTS+3/TB\,PTS)'" -fps_mode passthrough $h -bf 3 -g 16 h264-gap.mp4
ff $tiny $h -bf 3 -g 16 -output_ts_offset 1.5 h264-late.mp4
ff $tiny $h -bf 3 -g 16 -use_editlist 0 -output_ts_offset 3 h264-late-no-edit.mp4
ff -itsoffset -0.5 -i h264-16b.mp4 -c copy -copyts -avoid_negative_ts disabled -movflags +negative_cts_offsets h264-negative.mp4
ff -itsoffset -0.52 -i h264-open.mkv -c copy -copyts -avoid_negative_ts disabled h264-negative.mov
ff -ss 0.9 -i h264-open-strict.mp4 -c copy h264-edit-open.mp4
ff -i h264-open-strict.mp4 -c copy -movflags +frag_every_frame+empty_moov h264-fragment-each.mp4
ff -i h264-16b.mp4 -c copy -movflags +dash+delay_moov -frag_duration 200000 -f mp4 h264-fragment-sidx.mp4
ff $tiny $h -bf 3 -g 16 a.ts
ff $tiny $h -bf 3 -g 16 -output_ts_offset 36000 h264-hours.ts
ff $tiny $h -bf 3 -g 16 -x264-params open-gop=1 -output_ts_offset 95441.5 h264-wrap.ts
cat h264-hours.ts a.ts > h264-joined-back.ts
cat a.ts h264-hours.ts > h264-joined-on.ts
cat a.ts a.ts > h264-joined-same.ts
rm a.ts
ff $tiny -c:v mpeg2video -bf 2 -g 12 -q:v 16 -output_ts_offset 36000 mpeg2-hours.ts
ff $tiny -c:v mpeg2video -bf 2 -g 12 -q:v 16 -output_ts_offset 95441.5 mpeg2-wrap.ts
ff $fields -c:v mpeg2video $wide -bf 2 -g 12 -q:v 16 mpeg2-interlaced.ts
ff $tiny -vf setsar=64/45 -c:v mpeg2video -bf 2 -g 12 -q:v 16 mpeg2-wide.mpg
ff $tiny -c:v mpeg2video -bf 2 -g 12 -q:v 16 -f mpeg2video mpeg2-raw.m2v
ff $tiny -c:v mpeg1video -bf 2 -g 12 -q:v 16 mpeg1.mpg
ff $tiny -frames:v 1 -c:v mpeg2video -q:v 16 mpeg2-one.mpg
ff $tiny $e -x265-params "$x265p:$cra" -tag:v hvc1 hevc-cra.mp4
ff $tiny $e -x265-params "$x265p:$cra" -f hevc hevc-raw.hevc
ff $tiny $e -x265-params "$x265p:$cra:bframes=8:b-adapt=0:b-pyramid=1" -output_ts_offset 95441.5 hevc-wrap.ts
ff -ss 0.9 -i hevc-cra.mp4 -c copy hevc-edit-list.mp4
ff -i hevc-cra.mp4 -ss 0.7 -c copy hevc-begins-at-cra.mkv
ff $tiny -pix_fmt yuv420p10le $e -x265-params "$x265p:bframes=4:keyint=16" -tag:v hvc1 hevc-10bit.mp4
ff $tiny -pix_fmt yuv422p10le $e -x265-params "$x265p:bframes=4:keyint=16" -tag:v hvc1 hevc-422-10.mov
ff -f lavfi -i testsrc2=s=96x64:r=50:d=1 -threads 1 $e -x265-params "$x265p:bframes=3:keyint=16:interlace=tff" hevc-fields.ts
ff $tiny -frames:v 1 $e -x265-params "$x265p" hevc-one.mkv
ff $tiny -c:v libvpx -b:v 60k -auto-alt-ref 1 -lag-in-frames 16 -g 20 vp8-hidden.webm
ff $tiny -c:v libvpx-vp9 -b:v 60k -auto-alt-ref 1 -lag-in-frames 25 -cpu-used 5 -row-mt 0 -g 20 vp9-hidden.webm
ff $tiny -c:v libvpx-vp9 -b:v 60k -auto-alt-ref 1 -lag-in-frames 25 -cpu-used 5 -row-mt 0 -g 20 vp9-hidden.mp4
ff $tiny -c:v libvpx-vp9 -pix_fmt yuv422p10le -profile:v 3 -b:v 60k -cpu-used 8 -row-mt 0 -g 20 vp9-422-10.ivf
ff $tiny -c:v libaom-av1 -cpu-used 8 -b:v 60k -lag-in-frames 19 -g 20 -threads 1 av1.mkv
ff $tiny -c:v libaom-av1 -cpu-used 8 -b:v 60k -lag-in-frames 19 -g 20 -threads 1 av1.mp4
ff $tiny -c:v libaom-av1 -cpu-used 8 -b:v 60k -lag-in-frames 19 -g 20 -threads 1 av1.obu
ff $tiny -c:v libaom-av1 -cpu-used 8 -frames:v 1 -threads 1 av1-one.webm
ff $tiny -c:v libxvid -bf 2 -g 20 -q:v 12 mpeg4-packed.avi
ff $tiny -c:v mpeg4 -bf 2 -g 20 -q:v 12 mpeg4-b.avi
ff $tiny -c:v mpeg4 $wide -bf 2 -g 20 -q:v 12 mpeg4-interlaced.avi
ff $tiny -c:v mpeg4 -g 20 -q:v 12 mpeg4.3gp
ff $tiny -c:v mpeg4 -bf 2 -g 20 -q:v 12 -f m4v mpeg4-raw.m4v
ff $tiny -vf "select='not(eq(mod(n,7),3))'" -fps_mode vfr -c:v mpeg4 -bf 0 -g 20 -q:v 12 mpeg4-dropped.avi
ff $tiny -t 0.8 -c:v mjpeg -q:v 20 mjpeg.avi
ff $tiny -t 0.8 -c:v mjpeg -q:v 20 -f mjpeg mjpeg-raw.mjpeg
ff $tiny -t 0.8 -c:v mjpeg -q:v 20 -f mpjpeg mjpeg-parts.mjpg
odd="-f lavfi -i testsrc2=s=98x66:r=25:d=1 -threads 1 -vf format=yuv444p,crop=97:65:exact=1"
ff $odd -pix_fmt yuvj422p -c:v mjpeg -q:v 20 mjpeg-odd.mkv
ff $odd -pix_fmt yuv420p -c:v mpeg4 -bf 2 -g 20 -q:v 12 mpeg4-odd.mp4
ff $odd -pix_fmt yuv420p -c:v libvpx-vp9 -b:v 60k -cpu-used 8 -row-mt 0 -g 20 vp9-odd.webm
ff $odd -pix_fmt yuv420p -c:v libvpx -b:v 60k -g 20 vp8-odd.webm
ff $odd -pix_fmt yuv422p10le -t 0.4 -c:v prores_ks -profile:v 0 prores-odd.mov
ff -f lavfi -i testsrc2=s=64x48:r=25:d=1 -threads 1 -c:v prores_ks -profile:v 0 prores.mov
ff -f lavfi -i testsrc2=s=64x48:r=25:d=0.3 -threads 1 -c:v prores_ks -profile:v 4 -pix_fmt yuva444p10le prores-alpha.mov
ff -f lavfi -i testsrc2=s=256x128:r=25:d=0.2 -threads 1 -c:v dnxhd -profile:v dnxhr_lb dnxhr.mov
ff -f lavfi -i testsrc2=s=256x128:r=25:d=0.2 -threads 1 -c:v dnxhd -profile:v dnxhr_lb dnxhr.mxf
ff -f lavfi -i testsrc=s=64x64:d=0.04 -frames:v 1 cover.png
ff -i h264-16b.mp4 -i cover.png -map 0 -map 1 -c copy -disposition:v:1 attached_pic h264-cover.mp4
ff -i h264-16b.mp4 -i cover.png -map 1 -map 0 -c copy -disposition:v:0 attached_pic h264-cover-first.mp4
ff -i h264-open.mkv -attach cover.png -metadata:s:t mimetype=image/png -c copy h264-cover.mkv
rm cover.png
ff $tiny -f lavfi -i testsrc=s=128x72:r=10:d=1.6 -map 1 -map 0 -threads 1 $h two.mp4
ff $tiny -f lavfi -i testsrc=s=128x72:r=10:d=1.6 -f lavfi -i sine=d=1.6 -map 2 -map 1 -map 0 -threads 1 $h -c:a aac -b:a 24k two-and-sound.ts
ff $tiny -c:v libtheora -q:v 2 theora.ogv
ff $tiny -c:v wmv2 -b:v 60k wmv.asf

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
    ff -f lavfi -i testsrc2=s=162x92:r=25:d=2 -threads 1 -vf format=yuv444p,crop=161:91:exact=1 $x264 big-odd.mp4
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

for film in *; do
    case $film in *.framemd5 | *.frames) continue ;; esac
    ffmpeg -nostdin -v quiet -threads 1 -noautorotate -i "file:$film" -map 0:V:0 -fps_mode passthrough -f framemd5 - \
        > "$film.framemd5" || true
    ffprobe -v quiet -threads 1 -select_streams V:0 -show_entries frame=key_frame,pts,best_effort_timestamp \
        -of csv=p=0 "file:$film" > "$film.frames" || true
done

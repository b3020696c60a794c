using FFMpegCore;

namespace GaitSeat.Footage;

/// <summary>Builds the command line that encodes a NUT stream on standard input.</summary>
internal static class EncodeCommand
{
    public static string Build(string path, EncodeSettings settings)
    {
        // Pictures are small enough that BT.709, the matrix of HD video, is stated rather than left to be guessed by the player.
        const string Colour = "-vf \"scale=out_color_matrix=bt709:out_range=tv:flags=bicubic+accurate_rnd+full_chroma_int,format=yuv420p\" "
            + "-colorspace bt709 -color_primaries bt709 -color_trc bt709 -color_range tv";

        // x264 writes its name and options into a supplemental message (type 6); it is taken out with the rest of the metadata.
        // MP4 has a field for the compressor's name that FFmpeg fills with its own; a fixed word stands there instead.
        const string NoMetadata = "-map_metadata -1 -map_chapters -1 -fflags +bitexact -flags:v +bitexact -metadata:s:v encoder=H.264 -bsf:v filter_units=remove_types=6";
        var preset = settings.Preset.ToString().ToLowerInvariant();
        return FFMpegArguments
            .FromFileInput("pipe:0", verifyExists: false, input => input.WithCustomArgument("-hide_banner -v error -y -protocol_whitelist pipe,file -f nut"))
            .OutputToUrl(CommandText.QuotedFile(path), output => output.WithCustomArgument(
                $"-map 0:v:0 {Colour} -fps_mode passthrough -enc_time_base 1:{ClipEncoder.TicksPerSecond} -c:v libx264 -preset {preset} -crf {settings.Crf} "
                + $"-g {settings.KeyFrameInterval} -threads {settings.Threads} {NoMetadata} "
                + $"-video_track_timescale {ClipEncoder.TicksPerSecond} -movflags +faststart -f mp4"))
            .Arguments;
    }
}

using System.Globalization;
using FFMpegCore;
using GaitSeat.Model;

namespace GaitSeat.Footage;

/// <summary>Builds the command line that decodes a clip to raw frames with their times on standard output.</summary>
internal static class DecodeCommand
{
    /// <summary>How far before the wanted time to begin where a container has no list of key frames, s. Groups of frames are rarely longer (common practice, no source).</summary>
    private const double BlindSeekMarginSeconds = 10;

    public static string Build(ClipInfo clip, ReadSettings settings, FrameColours colours, FrameChoice choice, int widthPx, int heightPx) =>
        FFMpegArguments
            .FromFileInput(CommandText.QuotedFile(clip.Path), verifyExists: false, input => input.WithCustomArgument(
                $"-nostdin -hide_banner -v error -threads {settings.DecoderThreads} {(choice == FrameChoice.KeyFrames ? "-skip_frame nokey " : "")}-protocol_whitelist file -format_whitelist {FormatLists.Allowed} "
                + $"-copyts {Seek(clip.Stream, settings)}"))
            .OutputToUrl("pipe:1", output => output.WithCustomArgument(
                $"-map 0:{clip.Stream.Index} -map_metadata -1 -vf \"{FilterChain.Build(clip, settings, colours, widthPx, heightPx)}\" "
                + $"-fps_mode passthrough -enc_time_base {clip.Stream.TickNumerator}:{clip.Stream.TickDenominator} -c:v rawvideo -fflags +bitexact -f nut -write_index 0"))
            .Arguments;

    /// <summary>
    /// The seek only saves decoding: it goes to a key frame before the wanted time, and <see cref="FilterChain"/> cuts at the exact tick.
    /// Times are the file's own throughout (<c>-copyts</c>), so they do not depend on where the seek landed.
    /// </summary>
    private static string Seek(StreamInfo stream, ReadSettings settings)
    {
        var margin = FormatLists.HasKeyFrameIndex(stream.Container) ? 0 : BlindSeekMarginSeconds;
        var seconds = (settings.StartSeconds ?? 0) - margin;
        if (seconds <= 0) return "";
        var fileTime = stream.ToSeconds(stream.OriginTicks) + seconds;
        return string.Create(CultureInfo.InvariantCulture, $"-noaccurate_seek -seek_timestamp 1 -ss {fileTime:0.000000}");
    }
}

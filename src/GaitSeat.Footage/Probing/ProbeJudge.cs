using GaitSeat.Model;

namespace GaitSeat.Footage;

/// <summary>Turns what ffprobe answered into yes, or into the reason why not.</summary>
internal sealed class ProbeJudge(ProbeCommand command, PacketScan scan, ProbeSettings settings)
{
    private const string Containers = "MP4, MOV, MKV, WebM, AVI, MPEG and the like";

    /// <exception cref="ClipSetAsideException">It is a no.</exception>
    public async Task CheckAsync(string path, ProbeAnswer answer, StreamLook? stream, CancellationToken cancellationToken)
    {
        // FFmpeg's own words, mov.c: a file that names data files elsewhere is opened without them.
        if (answer.Messages.Mention("Skipped opening external track"))
            throw No(ClipReasons.PointsElsewhere, $"'{path}' keeps its pictures in another file; give a file that holds them itself.");
        if (answer.Root is null) throw await NotOpenedAsync(path, answer.Messages, cancellationToken);
        // Only a file FFmpeg complains about is looked into; a sound one needs no second opinion.
        var index = answer.Messages.Count > 0 && FileStart.IsMp4(path) ? Mp4Index.Read(path) : null;
        if (index is { IsCut: true }) throw No(ClipReasons.Truncated, $"'{path}' is cut off within its index (moov). Copy it again from the camera.");
        if (index is { IsProtected: true }) throw No(ClipReasons.Encrypted, $"'{path}' is encrypted; give a copy without protection.");
        if (stream is null) throw No(ClipReasons.NoVideoStream, $"'{path}' has no video stream, only sound or data; a clip needs moving pictures.");
        CheckStream(path, answer.Messages, stream);
        if (stream.FramesSeen < settings.MinFrames) throw await TooFewFramesAsync(path, answer.Messages, stream, cancellationToken);
    }

    private async Task<ClipSetAsideException> NotOpenedAsync(string path, ToolMessages messages, CancellationToken cancellationToken)
    {
        var noIndex = messages.Mention("moov atom not found");
        if (noIndex && FileStart.IsMp4(path))
            return No(ClipReasons.Truncated, $"'{path}' is cut off: its index (moov), which cameras write last, is missing. Copy it again from the camera.");
        var format = await command.FormatNameAsync(path, cancellationToken);
        if (format is null || noIndex)
            return No(ClipReasons.NotAVideo, $"'{path}' is not a video FFmpeg knows; allowed are {Containers}.");
        if (FormatLists.NamesOtherFiles(format))
            return No(ClipReasons.PointsElsewhere, $"'{path}' is a playlist ({format}) that names other files; give the video files themselves.");
        if (FormatLists.IsPicture(format))
            return No(ClipReasons.StillImage, $"'{path}' is a picture ({format}); a clip needs moving pictures.");
        return messages.Mention("not on whitelist")
            ? No(ClipReasons.NotAVideo, $"'{path}' is of kind '{format}'; allowed are {Containers}.")
            : No(ClipReasons.Unreadable, $"'{path}' looks like '{format}' but cannot be opened: {messages.LastLine()}. Does a player show it?");
    }

    private void CheckStream(string path, ToolMessages messages, StreamLook stream)
    {
        if (stream.Encrypted || messages.Mention("DRM protected"))
            throw No(ClipReasons.Encrypted, $"'{path}' is encrypted; give a copy without protection.");
        if (stream.Codec is "" or "unknown" or "none" || messages.Mention("Unsupported codec"))
            throw No(ClipReasons.UnknownCodec, $"'{path}' is coded as '{(stream.Codec is "" ? stream.CodecTag : stream.Codec)}', for which this FFmpeg has no decoder; H.264, HEVC, VP9 and AV1 are safe.");
        if (Math.Max(stream.WidthPx, stream.HeightPx) > settings.MaxSidePx)
            throw No(ClipReasons.TooLargePicture, $"'{path}' is {stream.WidthPx} x {stream.HeightPx} px; up to {settings.MaxSidePx} px a side is allowed.");
    }

    private async Task<ClipSetAsideException> TooFewFramesAsync(string path, ToolMessages messages, StreamLook stream, CancellationToken cancellationToken)
    {
        if (stream.FramesSeen > 0)
            return No(ClipReasons.TooShort, $"'{path}' holds {stream.FramesSeen} frame(s); at least {settings.MinFrames} are needed.");
        if (IsCut(messages))
            return No(ClipReasons.Truncated, $"'{path}' is cut off before its first whole frame: {messages.LastLine()}. Copy it again from the camera.");
        var (_, packets) = await scan.RunAsync(path, stream.Stream, cancellationToken);
        return packets == 0
            ? No(ClipReasons.ZeroLength, $"'{path}' has a video stream of no length; record it again.")
            : No(ClipReasons.Unreadable, $"'{path}' cannot be decoded: {messages.LastLine()}. Does a player show it?");
    }

    /// <summary>FFmpeg's words for a file that ends too soon: mov.c, matroskadec.c.</summary>
    private static bool IsCut(ToolMessages messages) =>
        messages.Mention("partial file") || messages.Mention("ended prematurely") || messages.Mention("end of file");

    private static ClipSetAsideException No(string reason, string detail) => new(reason, detail);
}

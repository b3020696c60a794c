using System.Diagnostics;
using GaitSeat.Footage;
using GaitSeat.Model;

namespace GaitSeat.Cli.Marks;

/// <summary>Decodes one still to a frame. The pipeline itself refuses stills, so this stands outside it.</summary>
internal sealed class StillDecoder(FfmpegTools ffmpeg)
{
    /// <summary>The still as a frame of its own size; the caller disposes it.</summary>
    /// <param name="path">The picture.</param>
    /// <param name="index">The number the frame shall have.</param>
    /// <param name="timeSeconds">The time the frame shall have, s.</param>
    /// <param name="widthPx">What the picture must measure.</param>
    /// <param name="heightPx">What the picture must measure.</param>
    /// <param name="ct">Ends FFmpeg.</param>
    /// <exception cref="InvalidDataException">It cannot be decoded, or has another size.</exception>
    public async Task<Frame> DecodeAsync(string path, int index, double timeSeconds, int widthPx, int heightPx, CancellationToken ct)
    {
        string[] arguments = ["-nostdin", "-v", "error", "-i", path, "-frames:v", "1", "-f", "rawvideo", "-pix_fmt", "rgb24", "pipe:1"];
        using var process = Process.Start(new ProcessStartInfo(ffmpeg.FfmpegPath, arguments) { RedirectStandardOutput = true })!;
        using var bytes = new MemoryStream();
        await process.StandardOutput.BaseStream.CopyToAsync(bytes, ct);
        await process.WaitForExitAsync(ct);
        var needed = checked(widthPx * heightPx * 3);
        if (process.ExitCode != 0 || bytes.Length != needed)
            throw new InvalidDataException($"'{path}' gave {bytes.Length} bytes of picture; {needed} are needed for {widthPx} x {heightPx} px.");
        var frame = new Frame(index, timeSeconds, widthPx, heightPx);
        bytes.GetBuffer().AsSpan(0, needed).CopyTo(frame.Rgb);
        return frame;
    }
}

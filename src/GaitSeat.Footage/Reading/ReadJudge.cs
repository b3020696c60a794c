using GaitSeat.Model;

namespace GaitSeat.Footage;

/// <summary>Says, when the last frame is out, what of the clip is missing.</summary>
internal static class ReadJudge
{
    /// <summary>An end that comes this much before the stated length is worth a word, s. Sound, rounding and the last frame's own length account for less.</summary>
    private const double MissingEndSeconds = 0.5;

    /// <exception cref="ClipSetAsideException">There was no frame at all.</exception>
    public static void Conclude(ClipInfo clip, ReadSettings settings, FrameChoice choice, int exitCode, ToolMessages messages, ReadReport report)
    {
        if (clip.Interlaced) report.Add("Interlaced: deinterlaced to whole frames.");
        if (clip.Stream.IsHdr) report.Add($"High dynamic range ({clip.Stream.Transfer}): shown as coded, without tone mapping.");
        // Where key frames begin and end says nothing of the frames between them; there may even be none.
        if (choice == FrameChoice.KeyFrames) NoteFaults(exitCode, messages, report);
        else if (report.FramesRead == 0) RefuseEmpty(clip, settings, exitCode, messages);
        else NoteDamage(clip, settings, exitCode, messages, report);
    }

    private static void RefuseEmpty(ClipInfo clip, ReadSettings settings, int exitCode, ToolMessages messages)
    {
        // A part chosen beyond the end, or between two frames, is empty without anything being wrong.
        if (exitCode == 0 && messages.Count == 0 && (settings.StartSeconds is not null || settings.EndSeconds is not null)) return;
        throw new ClipSetAsideException(ClipReasons.Unreadable, $"'{clip.Path}' gave no frame: {messages.LastLine()}. Does a player show it?");
    }

    private static void NoteDamage(ClipInfo clip, ReadSettings settings, int exitCode, ToolMessages messages, ReadReport report)
    {
        var end = Math.Min(settings.EndSeconds ?? double.PositiveInfinity, clip.DurationSeconds);
        var missing = end - report.LastTimeSeconds;
        var frames = (int)Math.Round(missing * clip.AverageFrameRateHz) - 1;
        if (missing > MissingEndSeconds)
            report.Add(new LeftOut(LeftOutScope.Frame, ClipReasons.Truncated, Math.Max(1, frames),
                FormattableString.Invariant($"Ends at {report.LastTimeSeconds:0.00} s of {clip.DurationSeconds:0.00} s ({messages.LastLine()}); measured up to there."), report.LastTimeSeconds));
        else
            NoteFaults(exitCode, messages, report);
    }

    private static void NoteFaults(int exitCode, ToolMessages messages, ReadReport report)
    {
        if (messages.Count > 0 || exitCode != 0)
            report.Add(new LeftOut(LeftOutScope.Frame, ClipReasons.Damaged, messages.Count,
                $"FFmpeg reported {messages.Count} fault(s) in the clip, the last: {messages.LastLine()}; pictures there may be wrong."));
    }
}

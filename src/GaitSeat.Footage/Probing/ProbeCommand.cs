using System.Text.Json;
using GaitSeat.Model;

namespace GaitSeat.Footage;

/// <summary>What one run of ffprobe gave.</summary>
/// <param name="Root">Its JSON; null if it could not open the file.</param>
internal sealed record ProbeAnswer(JsonElement? Root, ToolMessages Messages);

/// <summary>Runs ffprobe over one file.</summary>
internal sealed class ProbeCommand(FfmpegTools tools, TimeSpan timeout)
{
    /// <summary>First try: enough packets for two frames where a frame is two field packets, with some to spare for re-ordering.</summary>
    private const int FewPackets = 8;

    /// <summary>Second try, when those gave too few: a clip trimmed without encoding may begin with a whole group of hidden frames (250 is x264's default group, and twice that for fields).</summary>
    private const int ManyPackets = 600;

    /// <summary>What part of the timeout ffprobe must have computed for the file itself to be at fault; a file that makes it run in circles takes all that a busy machine gives. Own choice.</summary>
    private const double ComputingShare = 0.25;

    /// <summary>Container, streams and first frames of a file; the stream is null where there is no video.</summary>
    /// <exception cref="ClipSetAsideException">ffprobe computed until the timeout.</exception>
    /// <exception cref="IOException">ffprobe waited until the timeout, for the drive or for a busy machine: another time it may do.</exception>
    public async Task<(ProbeAnswer Answer, StreamLook? Stream)> LookAsync(string path, int wantedFrames, CancellationToken cancellationToken)
    {
        var answer = await RunAsync(LookArguments(path, FewPackets), path, cancellationToken);
        var stream = answer.Root is { } root ? StreamLookParser.Parse(root) : null;
        if (stream is null || stream.Encrypted || stream.FramesSeen >= wantedFrames) return (answer, stream);
        answer = await RunAsync(LookArguments(path, ManyPackets), path, cancellationToken);
        return (answer, answer.Root is { } more ? StreamLookParser.Parse(more) : null);
    }

    /// <summary>FFmpeg's name of the container, whatever it is; only the first bytes are looked at and nothing is opened. Null if it knows none.</summary>
    public async Task<string?> FormatNameAsync(string path, CancellationToken cancellationToken)
    {
        const string Before = "Format ";
        var answer = await RunAsync($"-v debug {OnlyAllowed} -i \"{CommandText.QuotedFile(path)}\"", path, cancellationToken);
        foreach (var line in answer.Messages.Lines())
        {
            var start = line.IndexOf(Before, StringComparison.Ordinal);
            var end = line.IndexOf(" probed with", StringComparison.Ordinal);
            if (start >= 0 && end > start) return line[(start + Before.Length)..end];
        }

        return null;
    }

    private const string OnlyAllowed = $"-protocol_whitelist file -format_whitelist {FormatLists.Allowed}";

    private static string LookArguments(string path, int packets) =>
        $"-hide_banner -v warning {OnlyAllowed} -print_format json -show_format -show_streams -show_frames -select_streams v "
        + $"-read_intervals %+#{packets} -i \"{CommandText.QuotedFile(path)}\"";

    private async Task<ProbeAnswer> RunAsync(string arguments, string path, CancellationToken cancellationToken)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
        limit.CancelAfter(timeout);
        await using var process = ToolProcess.Start(tools.FfprobePath, arguments, withInput: false, limit.Token);
        using var output = new MemoryStream();
        await process.Output.CopyToAsync(output, CancellationToken.None);
        await process.WaitAsync();
        cancellationToken.ThrowIfCancellationRequested();
        if (limit.IsCancellationRequested)
        {
            throw process.UsedBeforeKill < timeout * ComputingShare
                ? new IOException($"'{path}' could not be probed within {timeout.TotalSeconds:0} s, most of them spent waiting; is its drive reachable, or the machine busy?")
                : new ClipSetAsideException(ClipReasons.Unreadable, $"'{path}' could not be probed within {timeout.TotalSeconds:0} s of computing");
        }

        return new(ParseJson(output), process.Messages);
    }

    /// <summary>ffprobe prints <c>{}</c> or a torn object when it fails.</summary>
    private static JsonElement? ParseJson(MemoryStream output)
    {
        try
        {
            var root = JsonDocument.Parse(output.ToArray()).RootElement;
            return root.TryGetProperty("format", out _) ? root : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }
}

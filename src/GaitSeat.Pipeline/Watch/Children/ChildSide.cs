using GaitSeat.Footage;
using GaitSeat.Pipeline.Season;
using GaitSeat.Pipeline.Watch.Policies;
using GaitSeat.Store;

namespace GaitSeat.Pipeline.Watch.Children;

/// <summary>
/// The clip's process as seen from inside: reads what is asked of it, does that one clip and says in JSON lines how it went. It stops when its input ends, which
/// it does when the worker asks for it and also when the worker is killed.
/// </summary>
public sealed class ChildSide(TextWriter output, Stream input)
{
    private readonly Lock _guard = new();

    public async Task RunAsync(IClipWorker worker, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(worker);
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(ct);
        using var lines = new StreamReader(input);
        if (await lines.ReadLineAsync(ct) is not { } line || JsonLines.Parse<ChildRequest>(line) is not { Clip: { } clip } request)
            throw new SeasonException("this command is for the worker, who says on standard input which clip it wants");
        _ = StopAtEndOfInputAsync(lines, stop);
        try
        {
            var report = await worker.DoAsync(clip, request.Session, new Teller(this), stop.Token);
            Write(new(Report: report));
        }
        catch (ClipElsewhereException e)
        {
            Write(new(Fault: new(ChildFaultKind.Elsewhere, e.Message)));
        }
        catch (ToolKilledException e)
        {
            Write(new(Fault: new(ChildFaultKind.ToolKilled, e.Message)));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or DatasetException)
        {
            Write(new(Fault: new(ChildFaultKind.InputOutput, e.Message)));
        }
    }

    private static async Task StopAtEndOfInputAsync(StreamReader lines, CancellationTokenSource stop)
    {
        while (await lines.ReadLineAsync() is not null)
        {
        }

        try
        {
            await stop.CancelAsync();
        }
        catch (ObjectDisposedException)
        {
            // The clip was done in the meantime.
        }
    }

    private void Write(ChildLine line)
    {
        lock (_guard)
        {
            output.WriteLine(JsonLines.Line(line));
            output.Flush();
        }
    }

    /// <summary>Tells of every tenth frame: often enough for a rate, seldom enough to cost nothing.</summary>
    private sealed class Teller(ChildSide side) : IProgress<int>
    {
        private const int Every = 10;

        public void Report(int value)
        {
            if (value % Every == 0) side.Write(new(Frames: value));
        }
    }
}

using GaitSeat.Pipeline.Clips;
using GaitSeat.Pipeline.Season;
using Spectre.Console;

namespace GaitSeat.Cli.Output;

/// <summary>Shows a run: a bar where there is a terminal, plain lines where there is none.</summary>
internal sealed class ProgressWatcher(IAnsiConsole console, TimeProvider time, ProgressTask? bar) : ISeasonWatcher
{
    private readonly long _begun = time.GetTimestamp();
    private int _clips;
    private int _done;
    private int _framesBefore;
    private int _framesInClip;

    public static async Task<SeasonSummary> ShowAsync(IAnsiConsole console, TimeProvider time, Func<ISeasonWatcher, Task<SeasonSummary>> run)
    {
        if (!console.Profile.Capabilities.Interactive || !console.Profile.Out.IsTerminal)
            return await run(new ProgressWatcher(console, time, null));

        return await console.Progress()
            .Columns(new TaskDescriptionColumn { Alignment = Justify.Left }, new ProgressBarColumn(), new PercentageColumn(), new RemainingTimeColumn())
            .StartAsync(context => run(new ProgressWatcher(console, time, context.AddTask("clips"))));
    }

    public void SeasonBegins(int clips)
    {
        _clips = clips;
        if (bar is not null) bar.MaxValue = clips;
    }

    public void ClipBegins(string clipFile)
    {
        _framesInClip = 0;
        Describe(clipFile);
    }

    public void Report(int value)
    {
        _framesInClip = Math.Max(_framesInClip, value);
        if (value % 10 == 0) Describe(null);
    }

    public void ClipEnds(ClipOutcome outcome)
    {
        _done++;
        _framesBefore += outcome.Frames;
        _framesInClip = 0;
        bar?.Increment(1);
        if (bar is null) console.WriteLine($"[{_done}/{_clips}] {outcome.ClipFile}: {Ended(outcome)}; {FramesPerSecond:0.0} frames/s");
    }

    public void Note(string text) => console.MarkupLineInterpolated($"[grey]note: {text}[/]");

    private double FramesPerSecond => (_framesBefore + _framesInClip) / Math.Max(0.001, time.GetElapsedTime(_begun).TotalSeconds);

    private void Describe(string? clipFile)
    {
        if (bar is null) return;
        var name = clipFile ?? bar.Description.Split("  ")[0];
        bar.Description = $"{Markup.Escape(name)}  clip {Math.Min(_done + 1, _clips)} of {_clips}, {FramesPerSecond:0.0} frames/s";
    }

    private static string Ended(ClipOutcome outcome) => outcome.End switch
    {
        ClipEnd.Measured => $"{outcome.Strides.Count} strides, {outcome.Findings.Count} findings, {outcome.Frames} frames",
        ClipEnd.AlreadyDone => "already done",
        ClipEnd.NoConsent => "no consent, not processed",
        ClipEnd.PutOff => "put off, could not be read",
        _ => $"set aside ({outcome.Reason}): {outcome.Detail}",
    };
}

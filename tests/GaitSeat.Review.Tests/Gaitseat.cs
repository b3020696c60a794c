using System.Text.RegularExpressions;
using GaitSeat.Cli;
using Spectre.Console;

namespace GaitSeat.Review.Tests;

/// <summary>The program as a user calls it, in this process.</summary>
internal static class Gaitseat
{
    private const int WidthColumns = 240;

    internal static async Task<(int Code, string Said)> RunAsync(params string[] args)
    {
        using var said = new Telling();
        var code = await CommandLine.RunAsync(args, said.Consoles, CancellationToken.None);
        return (code, said.ToString());
    }

    /// <summary>Output, complaints and results in the order they come.</summary>
    internal sealed class Telling : StringWriter
    {
        private readonly TaskCompletionSource _flushed = new(TaskCreationOptions.RunContinuationsAsynchronously);

        /// <summary>When the program had the text written out, as it does before it waits.</summary>
        internal Task Flushed => _flushed.Task;

        internal AnsiConsoles Consoles => new(Console(), Console(), this);

        public override Task FlushAsync(CancellationToken cancellationToken)
        {
            _flushed.TrySetResult();
            return Task.CompletedTask;
        }

        private IAnsiConsole Console()
        {
            var console = AnsiConsole.Create(new() { Out = new AnsiConsoleOutput(this), Ansi = AnsiSupport.No });
            console.Profile.Width = WidthColumns;
            return console;
        }
    }
}

/// <summary><c>gaitseat review</c> from its start until it is stopped, as by Ctrl-C.</summary>
internal sealed partial class RunningReview : IAsyncDisposable
{
    private readonly CancellationTokenSource _stop = new();
    private readonly Gaitseat.Telling _said = new();
    private Task<int> _run = Task.FromResult(0);

    internal string Link { get; private set; } = "";

    internal static async Task<RunningReview> StartAsync(params string[] args)
    {
        var review = new RunningReview();
        review._run = CommandLine.RunAsync(["review", .. args], review._said.Consoles, review._stop.Token);
        await Task.WhenAny(review._said.Flushed, review._run);
        var link = Printed().Match(review._said.ToString());
        Assert.True(link.Success, $"No link was printed: {review._said}");
        review.Link = link.Value;
        return review;
    }

    public async ValueTask DisposeAsync()
    {
        await _stop.CancelAsync();
        Assert.Equal(ExitCodes.Done, await _run);
        _stop.Dispose();
        await _said.DisposeAsync();
    }

    [GeneratedRegex(@"http://\S+token=\S+")]
    private static partial Regex Printed();
}

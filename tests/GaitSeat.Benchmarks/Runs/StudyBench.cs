using System.Diagnostics;
using System.Globalization;
using GaitSeat.Pipeline.Studies;
using GaitSeat.Study.Answers;

namespace GaitSeat.Benchmarks;

/// <summary>A whole study, report included, over a million strides of 500 riders in 2500 clips, in this process: time and the largest memory it held.</summary>
internal static class StudyBench
{
    private const string Study = """
        title: A million strides
        data_note: Simulated.
        question: How does the rise height change with the stirrup's length?
        kind: dose_response
        outcomes: [rise_height_cm]
        exposure: leather_cm
        adjustment: [stride_duration_s]
        """;

    /// <param name="folder">Where the dataset is made once and kept.</param>
    public static async Task<int> RunAsync(string folder, TextWriter output, CancellationToken ct)
    {
        var dataset = Path.Combine(folder, "dataset");
        var clock = Stopwatch.StartNew();
        if (!Directory.Exists(dataset))
        {
            await StudySeason.WriteAsync(dataset, new() { Riders = 500, LengthsPerRider = 5, StridesPerLength = 400, Horses = 120, EffectPerCm = 0.25, SessionSd = 0.3 }, 40, ct);
            output.WriteLine($"made {dataset} in {clock.Elapsed.TotalSeconds:0} s; start again to measure");
            return 0;
        }

        var file = Path.Combine(folder, "study.yaml");
        await File.WriteAllTextAsync(file, Study, ct);
        clock.Restart();
        var results = StudyJob.Run(new(file, dataset, null, Path.Combine(folder, "report"), "benchmark", "0"), ct);
        var answer = (DoseAnswer)results[0].Answers[0];
        using var process = Process.GetCurrentProcess();
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{answer.Rows} strides, {answer.Fit.Random[0].Levels.Count} riders: {clock.Elapsed.TotalSeconds:0.0} s ({process.TotalProcessorTime.TotalSeconds:0.0} s of processor time), at most {process.PeakWorkingSet64 / (1024.0 * 1024 * 1024):0.00} GiB; effect of 2 cm {answer.Effect.Estimate:0.000} ({answer.Effect.Low:0.000} to {answer.Effect.High:0.000}; truth 0.5)"));
        return 0;
    }
}

using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Exporters;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Loggers;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;

namespace GaitSeat.Benchmarks;

/// <summary>The parts of a run that are loops over numbers, each by itself, by BenchmarkDotNet.</summary>
internal static class KernelRun
{
    /// <param name="folder">Where BenchmarkDotNet leaves its reports.</param>
    /// <param name="args">Its own options, such as <c>--filter *Flow*</c>.</param>
    public static int Run(string folder, string[] args)
    {
        // In this process: the generated project of the usual way would have to be restored and built first.
        var config = ManualConfig.CreateEmpty()
            .AddJob(Job.ShortRun.WithToolchain(InProcessEmitToolchain.Instance))
            .AddLogger(ConsoleLogger.Default)
            .AddColumnProvider(DefaultConfig.Instance.GetColumnProviders().ToArray())
            .AddExporter(MarkdownExporter.GitHub)
            .WithArtifactsPath(folder);
        var summaries = BenchmarkSwitcher.FromTypes([typeof(PictureKernels), typeof(MotionKernels), typeof(TableKernels)]).Run(args.Length > 0 ? args : ["--filter", "*"], config);
        return summaries.Any() && summaries.All(s => !s.HasCriticalValidationErrors && s.Reports.All(r => r.Success)) ? 0 : 1;
    }
}

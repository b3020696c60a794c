using System.Text.Json;
using GaitSeat.Model;
using GaitSeat.Pipeline.Season;

namespace GaitSeat.Cli.Output;

/// <summary>The same summary for machines. Names as in the tables; a value that is not there is null.</summary>
internal static class JsonReport
{
    private static readonly JsonSerializerOptions _options = new() { WriteIndented = true, PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower };

    public static void Write(TextWriter writer, SeasonSummary summary) => writer.WriteLine(JsonSerializer.Serialize(
        new
        {
            summary.DatasetFolder,
            summary.PipelineHash,
            summary.ModelHash,
            ElapsedS = summary.Elapsed.TotalSeconds,
            summary.Frames,
            FramesPerS = summary.FramesPerSecond,
            summary.Strides,
            LeftOut = summary.LeftOutByReason,
            Clips = summary.Clips.Select(c => new
            {
                c.ClipFile,
                Status = c.End.ToTerm(),
                c.Reason,
                c.Detail,
                c.Frames,
                Spells = c.Spells.Select(s => new { Spell = s.Number, Gait = s.Gait.ToTerm(), StartS = s.StartSeconds, EndS = s.EndSeconds, s.StridesKept, s.StridesDropped }),
                Strides = c.Strides.Count,
                Findings = c.Findings.Select(f => new { Fault = f.Fault.ToTerm(), Probability = f.ProbabilityPastThreshold, StartS = f.StartSeconds, EndS = f.EndSeconds, f.Summary }),
                c.Pictures,
            }),
        },
        _options));
}

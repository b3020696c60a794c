using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using GaitSeat.Model;
using GaitSeat.Store;
using GaitSeat.Study.Planning;

namespace GaitSeat.Benchmarks;

/// <summary>A simulated season with known truth, written as a dataset by the program's own writer: one clip for each rider and length, lengths in the sheet.</summary>
public static class StudySeason
{
    public const string PipelineHash = "made-pipeline", ModelHash = "made-models";

    private static readonly DateOnly FirstDay = new(2026, 3, 1);

    /// <param name="plan">Riders, lengths and strides; each rider rides one horse, which others ride too.</param>
    /// <param name="pipelineHash">Of the run; several in one dataset are several runs.</param>
    public static async Task WriteAsync(string folder, SeasonPlanSettings plan, int seed, CancellationToken ct, string pipelineHash = PipelineHash)
    {
        var season = SimulatedSeason.Draw(plan with { HorsesPerRider = 1 }, new(seed));
        var dataset = Dataset.Open(folder);
        var clips = Enumerable.Range(0, plan.Riders * plan.LengthsPerRider);
        await Parallel.ForEachAsync(clips, ct, async (clip, token) =>
        {
            var first = clip * plan.StridesPerLength;
            var file = $"clip-{clip:D5}.mp4";
            var provenance = new Provenance(Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes($"{seed} {file}"))), file, pipelineHash, ModelHash, "0.1.0-made", Provenance.CurrentSchemaVersion);
            var session = new Session(
                file, FirstDay.AddDays(clip % plan.LengthsPerRider), null, season.Riders[first], season.Horses?[first] ?? "horse", new(170), clip % plan.LengthsPerRider, season.Exposure.Values[first], "left", true, null,
                new Dictionary<string, string> { ["coach_rise_cm"] = (season.Outcome.AsSpan(first, plan.StridesPerLength).ToArray().Average() + 0.5).ToString("R", CultureInfo.InvariantCulture) });
            var random = new Random(seed + clip);
            var strides = Enumerable.Range(0, plan.StridesPerLength).Select(i => StrideOf(i, season.Outcome[first + i], random)).ToArray();
            var spell = new Spell(1, Gait.RisingTrot, Facing.Left, 0, strides.Length, 0.9, 2.7, 9, 11, strides.Length, 1, Measured.Missing, 2.5);
            var motion = new ClipMotion([spell], strides, [], ClipMotion.Nothing.Trace);
            await dataset.WriteAsync(new(provenance, session, null, ClipStatus.Measured, null, null, null, motion, [], [new(LeftOutScope.Stride, "hole_in_points", 1, "0.2 s; at most 0.12", 1)], strides.Length * 20), withTracks: false, token);
        });
    }

    private static Stride StrideOf(int number, double rise, Random random)
    {
        var measures = new MeasureSet
        {
            [StrideMeasure.RiseHeightCm] = new(rise, 0.3 + 0.3 * random.NextDouble()),
            [StrideMeasure.StrideDuration] = new(0.7 + 0.05 * random.NextDouble(), 0.004),
        };
        foreach (var measure in Enum.GetValues<StrideMeasure>())
            if (measures[measure].IsMissing) measures[measure] = new(40 + random.NextDouble(), 0.5 + random.NextDouble());
        return new(1, number + 1, Facing.Left, number, number + 0.4, number + 0.8, 0.9, "good", measures);
    }
}

using GaitSeat.Faults.Training;

namespace GaitSeat.Faults.Tests.Season;

/// <summary>One training that several tests look at.</summary>
internal static class Trained
{
    internal static PlantedSeason Season { get; } = PlantedSeason.Make(riders: 24, clips: 10, seed: 4);

    private static readonly Lazy<TrainingOutcome> Once = new(() => Again(PlantedSeason.Quick));

    internal static TrainingOutcome Outcome => Once.Value;

    internal static TrainingOutcome Again(TrainingSettings settings, ModelInUse? inUse = null) =>
        new FaultTrainer(settings, new(), "test").Train(Season.Judged(noise: 0.05), inUse, CancellationToken.None);
}

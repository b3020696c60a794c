namespace GaitSeat.Store;

/// <summary>Folders that hold nothing any more: their names carry a rider's pseudonym, so they do not stay.</summary>
internal static class EmptyFolders
{
    /// <summary>Removes the empty ones below and including the root.</summary>
    internal static void Remove(string root)
    {
        if (!Directory.Exists(root)) return;
        foreach (var folder in Directory.EnumerateDirectories(root).ToList()) Remove(folder);
        if (!Directory.EnumerateFileSystemEntries(root).Any()) Directory.Delete(root);
    }
}

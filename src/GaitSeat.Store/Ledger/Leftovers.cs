using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>Temporary files of runs that were torn off. They are never read; this takes them away.</summary>
internal static class Leftovers
{
    /// <summary>Deletes what no running process holds open.</summary>
    internal static void Clean(string tableFolder)
    {
        if (!Directory.Exists(tableFolder)) return;
        foreach (var path in Directory.EnumerateFiles(tableFolder, "*" + AtomicFile.TemporaryExtension))
        {
            if (IsFree(path)) File.Delete(path);
        }
    }

    /// <summary>Another worker's file is open until it is renamed, and .NET then refuses to open it alone (a lock on Unix, sharing on Windows).</summary>
    private static bool IsFree(string path)
    {
        try
        {
            using var alone = new FileStream(path, FileMode.Open, FileAccess.ReadWrite, FileShare.None);
            return true;
        }
        catch (IOException)
        {
            return false;
        }
    }
}

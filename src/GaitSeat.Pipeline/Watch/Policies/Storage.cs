using System.Globalization;

namespace GaitSeat.Pipeline.Watch.Policies;

/// <summary>Where clips come from and tables go to: is it there, can it be written to, has it room?</summary>
/// <param name="freeBytes">Room on the disk of a folder; a parameter, so that tests can fill a disk.</param>
public sealed class Storage(string clipFolder, string datasetFolder, int freeMinimumMb, Func<string, long> freeBytes)
{
    private const long BytesPerMb = 1_000_000;

    /// <summary>Errors of the system that mean a full disk: ENOSPC and EDQUOT of Linux, ERROR_DISK_FULL and ERROR_HANDLE_DISK_FULL of Windows.</summary>
    private static readonly int[] _full = [28, 122, unchecked((int)0x80070070), unchecked((int)0x80070027)];

    public static long FreeBytesOf(string folder) => new DriveInfo(folder).AvailableFreeSpace;

    public static bool IsFull(IOException error)
    {
        ArgumentNullException.ThrowIfNull(error);
        return _full.Contains(error.HResult);
    }

    /// <summary>What keeps clips from being done just now, in a sentence; null if nothing does.</summary>
    public string? Problem()
    {
        try
        {
            if (!Directory.Exists(clipFolder)) return $"the clip folder '{clipFolder}' is gone";
            if (!Directory.Exists(datasetFolder)) return $"the dataset folder '{datasetFolder}' is gone";
            var free = freeBytes(datasetFolder) / BytesPerMb;
            if (free < freeMinimumMb)
                return string.Create(CultureInfo.InvariantCulture, $"the disk of '{datasetFolder}' has {free} MB left; {freeMinimumMb} MB are kept free (watch.storage.free_minimum_mb)");
            using var probe = new FileStream(
                Path.Combine(datasetFolder, $"write-check-{Guid.NewGuid():N}.tmp"), FileMode.CreateNew, FileAccess.Write, FileShare.None, 1, FileOptions.DeleteOnClose);
            probe.WriteByte(0);
            return null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return $"'{datasetFolder}' cannot be written to: {e.Message}";
        }
    }
}

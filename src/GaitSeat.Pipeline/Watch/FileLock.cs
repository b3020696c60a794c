namespace GaitSeat.Pipeline.Watch;

/// <summary>
/// A lock that goes when its process goes, however it goes: a file held open alone (flock on Unix, also over NFS; sharing on Windows). Files stay when the lock is
/// given back: taking them away would let two processes hold the same name.
/// </summary>
internal static class FileLock
{
    /// <returns>What holds the lock until it is disposed; null while another has it.</returns>
    public static FileStream? TryTake(string path)
    {
        try
        {
            return new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None, 1);
        }
        catch (IOException e) when (e is not (DirectoryNotFoundException or PathTooLongException) && !Policies.Storage.IsFull(e))
        {
            return null;
        }
    }
}

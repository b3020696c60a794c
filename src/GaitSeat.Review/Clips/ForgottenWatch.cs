using GaitSeat.Store;

namespace GaitSeat.Review.Clips;

/// <summary>Which clips were erased from the dataset while the page is open: <c>forgotten.json</c> as it stands now, so that a rider who is forgotten is gone from the page at once.</summary>
public sealed class ForgottenWatch(string datasetFolder)
{
    private readonly Lock _guard = new();
    private readonly string _path = Path.Combine(datasetFolder, ForgottenList.FileName);
    private (DateTime, long)? _read;
    private ForgottenList? _list;

    /// <exception cref="DatasetException">The list is there and cannot be read: nobody can then say who is not to be shown.</exception>
    public bool Has(string clipKey)
    {
        lock (_guard)
        {
            (DateTime, long)? now = new FileInfo(_path) is { Exists: true } file ? (file.LastWriteTimeUtc, file.Length) : null;
            if (now != _read) (_read, _list) = (now, now is null ? null : ForgottenList.Read(datasetFolder));
            return _list?.HasClip(clipKey) ?? false;
        }
    }
}

namespace GaitSeat.Store;

/// <summary>Where the dataset keeps copies of clips that browsers can play. They are made when asked for, and can be made again.</summary>
public static class ReviewCopies
{
    private const string FolderName = "review-copies";
    private const int KeyDigits = 16;

    public static string FolderOf(string datasetFolder) => Path.Combine(datasetFolder, FolderName);

    /// <summary>By the clip's key, so that it tells no name and an erasure finds it.</summary>
    public static string NameOf(string clipKey)
    {
        ArgumentNullException.ThrowIfNull(clipKey);
        return clipKey[..KeyDigits] + ".mp4";
    }
}

namespace GaitSeat.Store;

/// <summary>Where the dataset keeps copies of clips that browsers can play. They are made when asked for, and can be made again.</summary>
public static class ReviewCopies
{
    private const string FolderName = "review-copies";

    public static string FolderOf(string datasetFolder) => Path.Combine(datasetFolder, FolderName);

    /// <summary>By the clip's key, so that it tells no name and an erasure finds it.</summary>
    public static string NameOf(string clipKey) => ClipKey.InName(clipKey) + ".mp4";
}
